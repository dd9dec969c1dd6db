// SPDX-License-Identifier: MPL-2.0
#include "error_study.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/meshes/mesher.h>
#include <plate/solvers/mode_errors.h>

#include <doctest/doctest.h>

#include <cmath>

namespace plate::test
{
namespace
{

constexpr double rounding = 1e-6;      // part of a frequency: digits of the eigensolver and of the truth end there
constexpr double fine_strips = 1.2e-3; // half a thickness of the plates or less [m]

double percent_of(int part, int whole)
{
  return 100.0 * part / whole;
}

Model model_of(const Design& design, double size, double strip_width)
{
  Design sized = design;
  sized.mesh.size = size;
  sized.mesh.strip_width = strip_width;
  return build_model(sized);
}

/// Modes are compared in their order: two that change places change errors, too, by no more than lies between them.
void count(const std::string& name, const ModalResult& modes, const Eigen::VectorXd& bars, const Eigen::VectorXd& truth,
           BarCount& sum)
{
  for (Eigen::Index mode = 0; mode < bars.size(); ++mode)
  {
    const double frequency = modes.frequencies_hz[mode];
    const double error = std::abs(frequency - truth[mode]);
    const bool is_rounding = error < rounding * frequency;
    const bool covered = is_rounding || error < bars[mode];
    ++sum.modes;
    sum.covered += covered ? 1 : 0;
    sum.tight += is_rounding || bars[mode] < 10.0 * error ? 1 : 0;
    if (!covered)
      MESSAGE(name, ", mode ", mode + 1, ": ", frequency, " Hz, error ", error, " above the bar of ", bars[mode]);
  }
}

} // namespace

BarCount study_error_bars(const StudyCase& plate, const StudyOptions& options)
{
  const Design design = DesignDocument::from_text(plate.design, plate.name).design();
  const double size = mesh_planform(design.geometry, design.mesh).options.size;
  const Model fine = model_of(design, size / options.overkill, fine_strips);
  const Eigen::VectorXd truth = solve_modes(assemble(fine), {.num_modes = options.num_modes}).frequencies_hz;
  BarCount sum;
  for (const double factor : options.size_factors)
  {
    const Model model = model_of(design, factor * size, 0.0);
    const System system = assemble(model);
    const ModalResult modes = solve_modes(system, {.num_modes = options.num_modes});
    count(message(plate.name, " at ", factor, " of the default size"), modes, mode_errors(model, system, modes), truth,
          sum);
  }
  return sum;
}

BarCount study_error_bars(const std::vector<StudyCase>& plates, const StudyOptions& options)
{
  BarCount sum;
  for (const StudyCase& plate : plates)
  {
    const BarCount of_plate = study_error_bars(plate, options);
    MESSAGE(plate.name, ": true error below the bar in ", percent_of(of_plate.covered, of_plate.modes),
            " %, bar below ten times the error in ", percent_of(of_plate.tight, of_plate.modes), " % of ",
            of_plate.modes, " modes");
    sum.modes += of_plate.modes;
    sum.covered += of_plate.covered;
    sum.tight += of_plate.tight;
  }
  MESSAGE("all plates: true error below the bar in ", percent_of(sum.covered, sum.modes),
          " %, bar below ten times the error in ", percent_of(sum.tight, sum.modes), " % of ", sum.modes, " modes");
  return sum;
}

} // namespace plate::test
