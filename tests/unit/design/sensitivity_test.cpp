// SPDX-License-Identifier: MPL-2.0
// Derivatives by keys of a design file beside differences of full solves on the same mesh, moved.
#include <plate/design/design_model.h>
#include <plate/solvers/air_modes.h>
#include <plate/solvers/studies/sensitivity.h>

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <vector>

using namespace plate;

namespace
{

constexpr int num_modes = 4;

DesignDocument viola(const std::string& name)
{
  DesignDocument document = DesignDocument::from_file(std::filesystem::path(EXAMPLES_DIR) / "viola" / name);
  document.set_number("mesh.size", 18.0); // coarse: derivatives are those of the mesh, whatever its size
  return document;
}

/// Frequencies where one key differs, from a full solve.
Eigen::VectorXd solved(DesignModel& design, const Model& base, const std::vector<double>& point)
{
  Model model = base;
  design.rebuild(point, model);
  return solve_modes(assemble(model), {.num_modes = num_modes, .tolerance = 1e-12}).frequencies_hz;
}

void check_against_solves(const DesignDocument& document, const std::vector<std::string>& keys)
{
  DesignModel design(document, keys);
  std::vector<double> point;
  std::vector<SensitivityParameter> parameters;
  for (const std::string& key : keys)
  {
    point.push_back(document.number(key));
    const bool is_angle = key.ends_with("angle");
    parameters.push_back({.value = point.back(), .scale = is_angle ? 57.3 : point.back()});
  }
  const SensitivityResult result = sensitivities(design, parameters, {.num_modes = num_modes});
  for (std::size_t k = 0; k < keys.size(); ++k)
  {
    CAPTURE(keys[k]);
    // The grid for the torsion of a bar changes in steps with its height, so the differences keep to a small range.
    const double step = 1e-4 * parameters[k].scale;
    const auto at = [&](double steps)
    {
      std::vector<double> other = point;
      other[k] += steps * step;
      return solved(design, result.model, other);
    };
    const Eigen::VectorXd slopes = (at(1) - at(-1)) / (2.0 * step);
    const double mismatch =
        (result.parameters[k].slopes_hz - slopes).cwiseAbs().maxCoeff() / slopes.cwiseAbs().maxCoeff();
    CHECK(mismatch < 1e-5);
  }
}

} // namespace

TEST_CASE("derivatives of a carved viola top by its measures are those of full solves")
{
  check_against_solves(viola("spruce_top.toml"),
                       {"outline.length", "outline.centre_bout", "arching.height", "thickness.centre", "bar.width",
                        "bar.height", "setup.stop", "soundhole.1.length", "material.spruce.E1",
                        "material.spruce.density"});
}

TEST_CASE("derivatives of a laminated viola top by its plies are those of full solves")
{
  check_against_solves(viola("laminate_top.toml"), {"layup.plies.1.thickness", "layup.plies.2.angle", "layup.scale",
                                                    "layup.scale_core", "material.flax_cloth.nu12", "arching.height"});
}
