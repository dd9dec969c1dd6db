// SPDX-License-Identifier: MPL-2.0
#include "try_design.h"

#include <plate/assembly/assemble.h>
#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/meshes/mesher.h>
#include <plate/solvers/modal.h>

#include <array>
#include <cmath>
#include <stdexcept>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace plate::test
{
namespace
{

constexpr int num_modes = 6;
constexpr double area_tolerance = 1e-3;
constexpr rlim_t most_seconds = 10;

bool area_fits(double area, double expected)
{
  return std::abs(area - expected) <= area_tolerance * expected;
}

std::string area_fault(const PlanformMesh& mesh, const Design& design, const RandomDesign& drawn)
{
  const double area = mesh_quality(mesh).area;
  const double of_curves = planform_area(design.geometry);
  if (!area_fits(area, of_curves))
    return message("mesh area ", area * 1e6, " mm2, of the curves ", of_curves * 1e6, " mm2");
  if (drawn.area && !area_fits(area * 1e6, *drawn.area))
    return message("mesh area ", area * 1e6, " mm2, by formula ", *drawn.area, " mm2");
  return {};
}

std::string modes_fault(const ModalResult& modes)
{
  if (modes.status != Status::converged)
    return "not converged: " + modes.summary();
  if (modes.rigid_frequencies_hz.size() != 6)
    return message(modes.rigid_frequencies_hz.size(), " rigid modes");
  const double first = modes.frequencies_hz.size() == num_modes ? modes.frequencies_hz[0] : 0.0;
  // A rigid motion carries rounding only; a hundredth of the first elastic mode would show in no digit of it.
  if (!(first > 0.0 && modes.frequencies_hz.allFinite() && modes.rigid_frequencies_hz.maxCoeff() < 0.01 * first))
    return message("rigid modes up to ", modes.rigid_frequencies_hz.maxCoeff(), " Hz, first elastic one at ", first,
                   " Hz");
  return {};
}

Trial run(const RandomDesign& drawn)
{
  try
  {
    const Design design = DesignDocument::from_text(drawn.text, "random.toml").design();
    const PlanformMesh mesh = mesh_planform(design.geometry, design.mesh);
    std::string fault = area_fault(mesh, design, drawn);
    if (fault.empty())
      fault = modes_fault(solve_modes(assemble(build_model(design, mesh)), {.num_modes = num_modes}));
    return {fault.empty() ? Ending::modes : Ending::failed, fault};
  }
  catch (const InvalidInput& error)
  {
    return {Ending::refused, error.what()};
  }
  catch (const std::exception& error)
  {
    return {Ending::failed, error.what()};
  }
}

[[noreturn]] void run_in_child(const RandomDesign& drawn, int pipe_end)
{
  const rlimit limit{.rlim_cur = most_seconds, .rlim_max = most_seconds};
  static_cast<void>(::setrlimit(RLIMIT_CPU, &limit)); // without it a hang ends with the time limit of the test itself
  const Trial trial = run(drawn);
  const std::string bytes = static_cast<char>(trial.ending) + trial.says;
  static_cast<void>(!::write(pipe_end, bytes.data(), bytes.size())); // a missing answer counts as a crash
  ::_exit(0);
}

std::string read_all(int pipe_end)
{
  std::string bytes;
  std::array<char, 1024> buffer{};
  for (ssize_t n = 0; (n = ::read(pipe_end, buffer.data(), buffer.size())) > 0;)
    bytes.append(buffer.data(), static_cast<std::size_t>(n));
  return bytes;
}

} // namespace

Trial try_design(const RandomDesign& drawn)
{
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0)
    throw std::runtime_error("cannot make a pipe");
  const pid_t child = ::fork();
  if (child < 0)
    throw std::runtime_error("cannot start a process");
  if (child == 0)
    run_in_child(drawn, ends[1]);
  ::close(ends[1]);
  const std::string bytes = read_all(ends[0]);
  ::close(ends[0]);
  int status = 0;
  ::waitpid(child, &status, 0);
  if (bytes.empty())
    return {Ending::failed,
            WIFSIGNALED(status) ? message("ended by signal ", WTERMSIG(status)) : "ended without an answer"};
  return {static_cast<Ending>(bytes[0]), bytes.substr(1)};
}

} // namespace plate::test
