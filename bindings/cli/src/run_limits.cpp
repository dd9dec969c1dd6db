// SPDX-License-Identifier: MPL-2.0
#include "run_limits.h"

#include <plate/design/design_error.h>
#include <plate/meshes/mesh_estimate.h>
#include <plate/solvers/modal_memory.h>

#include <cmath>
#include <fstream>
#include <limits>
#include <string>

namespace plate
{
namespace
{

constexpr double most_unknowns = 3e6;
constexpr double unknowns_per_node = 5.0; // three displacements, two turns of the normal
constexpr double mesh_size_mm = 1e3;      // from metres

/// What one run needs.
struct Needs
{
  double unknowns;
  double bytes;
};

Needs needs_of(const Design& design, const MeshOptions& options, int num_modes)
{
  const double unknowns = unknowns_per_node * estimate_mesh(design.geometry, options).num_nodes;
  return {unknowns, modal_memory(unknowns, num_modes)};
}

bool fits(const Needs& needs, const RunLimits& limits)
{
  return needs.unknowns <= limits.unknowns && needs.bytes <= limits.bytes;
}

/// The least size that fits, rounded up to two digits [mm]; infinity if even the coarsest does not.
double fitting_size(const Design& design, int num_modes, const RunLimits& limits)
{
  const double coarsest = outline_width(design.geometry.outline) / 2.0; // [m]
  MeshOptions options = design.mesh;
  options.size = coarsest;
  if (!fits(needs_of(design, options, num_modes), limits))
    return std::numeric_limits<double>::infinity();
  double too_fine = 1e-5; // [m]
  double coarse = coarsest;
  while (coarse > 1.02 * too_fine)
  {
    options.size = std::sqrt(too_fine * coarse);
    (fits(needs_of(design, options, num_modes), limits) ? coarse : too_fine) = options.size;
  }
  const double unit = std::pow(10.0, std::floor(std::log10(coarse * mesh_size_mm)) - 1.0);
  return std::ceil(coarse * mesh_size_mm / unit) * unit;
}

/// Memory that can be had without swapping [bytes]; infinity where the system does not say.
double available_memory()
{
  std::ifstream info("/proc/meminfo");
  std::string name;
  double kilobytes = 0.0;
  while (info >> name >> kilobytes)
  {
    if (name == "MemAvailable:")
      return 1024.0 * kilobytes;
    info.ignore(std::numeric_limits<std::streamsize>::max(), '\n');
  }
  return std::numeric_limits<double>::infinity();
}

std::string gigabytes(double bytes)
{
  return message(std::round(bytes / 1e8) / 10.0, " GB");
}

} // namespace

RunLimits run_limits()
{
  return {.unknowns = most_unknowns, .bytes = available_memory()};
}

double expected_unknowns(const Design& design)
{
  return needs_of(design, design.mesh, 1).unknowns;
}

bool fits_limits(const Design& design, int num_modes, const RunLimits& limits)
{
  return fits(needs_of(design, design.mesh, num_modes), limits);
}

void check_run(const DesignDocument& document, const Design& design, int num_modes, const RunLimits& limits)
{
  const Needs needs = needs_of(design, design.mesh, num_modes);
  if (fits(needs, limits))
    return;
  const std::string too_much = needs.unknowns > limits.unknowns
                                   ? message("at most ", limits.unknowns, " are allowed")
                                   : message("this machine has ", gigabytes(limits.bytes), " to spare");
  const double size = fitting_size(design, num_modes, limits);
  const std::string remedy = std::isfinite(size) ? message("mesh.size = ", size, " mm or more fits")
                                                 : "no mesh.size fits; ask for fewer modes or leave small holes out";
  throw DesignError(message(document.place("mesh.size"), ": gives about ", std::round(needs.unknowns),
                            " unknowns and takes ", gigabytes(needs.bytes), "; ", too_much, "; ", remedy));
}

void check_run(const BodyDocument& document, const BodyDesign& design, int num_modes, const RunLimits& limits)
{
  if (!(design.mesh_size > 0.0))
    return; // chosen, in proportion to the body
  MeshOptions options;
  options.size = design.mesh_size;
  Needs needs = {0.0, 0.0};
  for (const Design* plate : {&design.top, &design.back})
    needs.unknowns += needs_of(*plate, options, num_modes).unknowns;
  needs.bytes = modal_memory(needs.unknowns, num_modes);
  if (!fits(needs, limits))
    throw DesignError(message(document.place("mesh.size"), ": gives more than ", std::round(needs.unknowns),
                              " unknowns and takes ", gigabytes(needs.bytes), "; at most ", limits.unknowns,
                              " are allowed and this machine has ", gigabytes(limits.bytes),
                              " to spare; make mesh.size larger or leave it out"));
}

} // namespace plate
