// SPDX-License-Identifier: MPL-2.0
// A whole top of a viola, moved in space, has the frequencies it had. What carries the frame of a model: nodes,
// normals, the axes of the material, the axis of each bar. Patches and masses are placed in the planform, x and y of
// the nodes; a support that rests holds z. These three can be turned about z and shifted along all axes, not tilted.
#include "sample_models.h"

#include <plate/design/build_model.h>
#include <plate/design/design_document.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>
#include <plate/solvers/modal.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>

#include <cmath>
#include <string>
#include <variant>

using namespace plate;

namespace
{

/// A demo top with f-holes and bar, on a coarse mesh.
Model top(const std::string& file)
{
  DesignDocument document = DesignDocument::from_file(std::string(EXAMPLES_DIR) + "/viola/" + file);
  document.set_number("mesh.size", 16.0);
  return build_model(document.design());
}

/// A rigid motion.
struct Motion
{
  Eigen::Matrix3d turn;
  Eigen::Vector3d shift; // [m]

  [[nodiscard]] Eigen::Vector3d of(const Eigen::Vector3d& point) const { return turn * point + shift; }
};

/// Moves what carries the frame, but for the places in the planform.
void move_in_space(Model& model, const Motion& motion)
{
  for (Eigen::Vector3d& node : model.mesh.nodes)
    node = motion.of(node);
  for (Eigen::Vector3d& normal : model.mesh.normals)
    normal = motion.turn * normal;
  model.material.axes = {.axis = motion.turn * model.material.axes.axis, .up = motion.turn * model.material.axes.up};
  for (Bar& bar : model.bars)
    bar.axis = motion.turn * bar.axis;
}

/// The place on the mid-surface above a point of the planform.
Eigen::Vector3d on_surface(const ShellMesh& mesh, const Eigen::Vector2d& at)
{
  const MeshPoint point = locate(mesh, at).value();
  const CubicTriangle::Vector N = CubicTriangle::shape(point.xi, point.eta);
  Eigen::Vector3d place = Eigen::Vector3d::Zero();
  for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    place += N(i) * mesh.nodes[static_cast<std::size_t>(mesh.triangles[point.triangle][static_cast<std::size_t>(i)])];
  return place;
}

Eigen::Vector2d in_plane(const Motion& motion, const Eigen::Vector2d& point)
{
  return motion.of({point.x(), point.y(), 0.0}).head<2>();
}

PlanformRegion moved(const PlanformRegion& region, const Motion& motion)
{
  if (const auto* polygon = std::get_if<PolygonRegion>(&region))
  {
    PolygonRegion out;
    for (const Eigen::Vector2d& corner : polygon->points)
      out.points.push_back(in_plane(motion, corner));
    return out;
  }
  EllipseRegion ellipse = std::get<EllipseRegion>(region);
  ellipse.centre = in_plane(motion, ellipse.centre);
  const double angle = std::atan2(motion.turn(1, 0), motion.turn(0, 0));
  ellipse.angle = Angle::radians(ellipse.angle.in_radians() + angle);
  return ellipse;
}

/// A ply whose fibres bend along the plate, as measured from the reference axis.
void bend_fibres(Model& model)
{
  model.directions = {{.ply = 0, .double_angle = {}}};
  for (const Eigen::Vector3d& node : model.mesh.nodes)
    model.directions[0].double_angle.emplace_back(std::cos(4.0 * node.x()), std::sin(4.0 * node.x()));
}

Laminate reinforcement()
{
  return test::stack(test::carbon_epoxy(), 0.1e-3, {30, -60});
}

Eigen::VectorXd frequencies(const Model& model)
{
  return solve_modes(assemble(model), {.num_modes = 10, .tolerance = 1e-11}).frequencies_hz;
}

/// Largest relative difference.
double difference(const Eigen::VectorXd& a, const Eigen::VectorXd& b)
{
  return (a.cwiseQuotient(b).array() - 1.0).abs().maxCoeff();
}

} // namespace

TEST_CASE("tilted and shifted in space a top keeps its frequencies, wood and laminate, with bar and mass")
{
  const Motion motion = {.turn = (Eigen::AngleAxisd(0.35, Eigen::Vector3d(1.0, -2.0, 0.5).normalized()) *
                                  Eigen::AngleAxisd(0.7, Eigen::Vector3d::UnitZ()))
                                     .toRotationMatrix(),
                         .shift = {0.1, 0.2, -0.3}};
  for (const char* file : {"spruce_top.toml", "laminate_top.toml"})
  {
    CAPTURE(file);
    Model model = top(file);
    REQUIRE(model.bars.size() == 1);
    bend_fibres(model);
    model.masses = {{{0.04, 0.03}, 5e-3}};
    // Everywhere, so that it has no edge in the planform.
    const PolygonRegion everywhere = {{{-9.0, -9.0}, {9.0, -9.0}, {9.0, 9.0}, {-9.0, 9.0}}};
    model.patches = {{.side = PlateSide::inside, .region = everywhere, .laminate = reinforcement()}};
    const Eigen::VectorXd before = frequencies(model);

    Model tilted = model;
    tilted.masses[0].at = motion.of(on_surface(model.mesh, model.masses[0].at)).head<2>();
    move_in_space(tilted, motion);
    CHECK(difference(before, frequencies(tilted)) < 1e-7);

    // It can fail: with the axes of the wood, or those of the bar, left behind it is another plate.
    Model other = tilted;
    other.material.axes = model.material.axes;
    CHECK(difference(before, frequencies(other)) > 1e-3);
    other = tilted;
    other.bars[0].axis = model.bars[0].axis;
    CHECK(difference(before, frequencies(other)) > 1e-3);
  }
}

TEST_CASE("turned about the vertical and shifted a top keeps its frequencies with patches, masses and supports")
{
  const Motion motion = {.turn = Eigen::AngleAxisd(2.1, Eigen::Vector3d::UnitZ()).toRotationMatrix(),
                         .shift = {-0.2, 0.1, 0.4}};
  Model model = top("laminate_top.toml");
  model.masses = {{{0.04, 0.03}, 5e-3}, {{-0.12, -0.06}, 3e-3}};
  model.patches = {{.side = PlateSide::inside,
                    .region = EllipseRegion{.centre = {0.01, 0.0}, .axes = {0.12, 0.06}, .angle = Angle::degrees(20)},
                    .laminate = reinforcement()},
                   {.side = PlateSide::outside,
                    .region = PolygonRegion{{{-0.15, -0.07}, {-0.08, -0.06}, {-0.1, 0.07}}},
                    .laminate = reinforcement()}};
  for (const EdgeSupport support : {EdgeSupport::free, EdgeSupport::rest, EdgeSupport::clamped})
  {
    CAPTURE(static_cast<int>(support));
    model.supports = {{.group = "outline", .support = support}};
    Model turned = model;
    move_in_space(turned, motion);
    for (PointMass& mass : turned.masses)
      mass.at = in_plane(motion, mass.at);
    for (Patch& patch : turned.patches)
      patch.region = moved(patch.region, motion);
    CHECK(difference(frequencies(model), frequencies(turned)) < 1e-7);
  }
}
