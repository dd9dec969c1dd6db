// SPDX-License-Identifier: MPL-2.0
// Plies that take directions of their own from point to point.
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace plate;

namespace
{

Eigen::VectorXd frequencies(const Model& model)
{
  return solve_modes(assemble(model), {.num_modes = 8}).frequencies_hz;
}

template <class AngleAt>
PlyDirections directions(const Model& model, std::size_t ply, AngleAt angle_at)
{
  PlyDirections out{.ply = ply, .double_angle = {}};
  for (const Eigen::Vector3d& node : model.mesh.nodes)
    out.double_angle.emplace_back(std::cos(2.0 * angle_at(node)), std::sin(2.0 * angle_at(node)));
  return out;
}

Model arched(const Laminate& laminate)
{
  test::GridPlate grid = {.x = test::lines_with_strips(0.15, 6, 2e-3),
                          .y = test::lines_with_strips(0.1, 4, 2e-3),
                          .surface = test::biparabolic(0.3, 0.2, 0.015),
                          .thickness = total_thickness(laminate)};
  return test::plate_model(test::grid_mesh(grid), laminate);
}

} // namespace

TEST_CASE("directions that are the same everywhere are the ply's angle; a fibre has no head and tail")
{
  const double angle = 0.4; // [rad]
  Laminate laminate = test::stack(test::carbon_epoxy(), 0.5e-3, {0, 90, 0});
  Model directed = arched(laminate);
  directed.directions = {directions(
      directed, 2, [&](const Eigen::Vector3d& x) { return x.y() > 0.02 ? angle + std::numbers::pi : angle; })};
  laminate.plies[2].angle = Angle::radians(angle);
  const Eigen::VectorXd ratio = frequencies(directed).cwiseQuotient(frequencies(arched(laminate)));
  CHECK((ratio.array() - 1.0).abs().maxCoeff() < 1e-9);
}

TEST_CASE("turning the plate by a quarter turns its fibres with it")
{
  // Fibres that fan out along x on a square plate, and the same plate drawn with x and y exchanged: angle t at (x, y)
  // becomes pi/2 - t at (y, x).
  const Laminate laminate = test::stack(test::carbon_epoxy(), 1e-3, {0});
  const auto fan = [](double x, double y) { return 0.2 + 3.0 * y + 4.0 * x * y; };
  Model one = test::plate_model(test::rectangle(0.2, 0.2, 6, 6, 1e-3), laminate);
  Model other = one;
  one.directions = {directions(one, 0, [&](const Eigen::Vector3d& p) { return fan(p.x(), p.y()); })};
  other.directions = {
      directions(other, 0, [&](const Eigen::Vector3d& p) { return std::numbers::pi / 2.0 - fan(p.y(), p.x()); })};
  const Eigen::VectorXd ratio = frequencies(one).cwiseQuotient(frequencies(other));
  // The two meshes cut their squares along different diagonals as seen from the fibres.
  CHECK((ratio.array() - 1.0).abs().maxCoeff() < 2e-3);
  Model straight = one;
  straight.directions.clear();
  CHECK((frequencies(straight).cwiseQuotient(frequencies(one)).array() - 1.0).abs().maxCoeff() > 0.02); // it matters
}

TEST_CASE("directions must fit the model")
{
  Model model = arched(test::stack(test::carbon_epoxy(), 0.5e-3, {0, 90}));
  model.directions = {directions(model, 2, [](const Eigen::Vector3d&) { return 0.0; })};
  CHECK_THROWS_AS(check_model(model), InvalidInput);
  model.directions[0].ply = 1;
  CHECK_NOTHROW(check_model(model));
  model.directions[0].double_angle.pop_back();
  CHECK_THROWS_AS(check_model(model), InvalidInput);
}
