// SPDX-License-Identifier: MPL-2.0
// Runs each kernel once under Callgrind, which writes the instructions of each into a file of its own: see
// check_instructions.py. Only code of our own is counted: BLAS and the factorisation choose theirs by the processor.
#include <plate/assembly/assemble.h>
#include <plate/laminates/section.h>
#include <plate/validation/sample_models.h>

#include <valgrind/callgrind.h>

#include <iostream>
#include <string>

namespace
{

using namespace plate;
using namespace plate::validation;

/// Counts what a function does, its first run left out: that one loads and allocates.
template <class Function>
void count(const std::string& name, Function run)
{
  run();
  CALLGRIND_ZERO_STATS;
  run();
  CALLGRIND_DUMP_STATS_AT(name.c_str());
  std::cout << name << '\n';
}

/// The arched plate of the validation cases on a coarse mesh with strips along its edges: 70 triangles.
Model arched(const Laminate& laminate)
{
  const double strip = 3e-3; // [m]
  return plate_model(grid_mesh({.x = lines_with_strips(0.175, 5, strip),
                                .y = lines_with_strips(0.10, 3, strip),
                                .surface = biparabolic(0.35, 0.20, 0.015),
                                .thickness = total_thickness(laminate)}),
                     laminate);
}

Laminate five_plies()
{
  return {.plies = {{.material = reference_carbon(), .thickness = 1e-4},
                    {.material = reference_carbon(), .thickness = 1e-4, .angle = Angle::degrees(60.0)},
                    {.material = reference_balsa(), .thickness = 2e-3},
                    {.material = reference_carbon(), .thickness = 1e-4, .angle = Angle::degrees(60.0)},
                    {.material = reference_carbon(), .thickness = 1e-4}}};
}

Laminate carved_spruce()
{
  return solid(reference_spruce(), 2.5e-3, 0.0, Grain::carved);
}

void count_elements(const std::string& name, const Model& model)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  ShellTriangle::Matrix matrix;
  count("element stiffness, " + name,
        [&]
        {
          for (std::size_t t = 0; t < covers.size(); ++t)
          {
            const ElementInput element = element_input(model, t, covers[t]);
            ShellTriangle::stiffness(element.nodes, model.material, element.parts, matrix);
          }
        });
  count("element mass, " + name,
        [&]
        {
          for (std::size_t t = 0; t < covers.size(); ++t)
          {
            const ElementInput element = element_input(model, t, covers[t]);
            ShellTriangle::mass(element.nodes, model.material, element.parts, matrix);
          }
        });
}

void count_section(const std::string& name, const Laminate& laminate)
{
  const MaterialAxes axes;
  const Eigen::Matrix3d frame = shell_frame(Eigen::Vector3d(0.1, 0.2, 1.0).normalized(), axes);
  const double thickness = total_thickness(laminate);
  SectionStiffness section;
  count("section, " + name,
        [&]
        {
          for (int repeat = 0; repeat < 100; ++repeat)
            section = section_stiffness(laminate, thickness, frame, axes);
        });
}

void count_all()
{
  const Model wood = arched(carved_spruce());
  count_elements("carved spruce", wood);
  count_elements("five plies", arched(five_plies()));
  count_section("carved spruce", carved_spruce());
  count_section("five plies", five_plies());
  System system;
  count("assembly", [&] { system = assemble(wood); });
  const Eigen::VectorXd x = Eigen::VectorXd::Ones(system.M.rows());
  Eigen::VectorXd y(x.size());
  count("mass product", [&] { y.noalias() = system.M.selfadjointView<Eigen::Lower>() * x; });
}

} // namespace

int main()
{
  count_all();
}
