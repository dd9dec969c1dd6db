// SPDX-License-Identifier: MPL-2.0
#include "body_box.h"
#include "relative.h"

#include <plate/core/error.h>
#include <plate/solvers/studies/body_load.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

using namespace plate;

namespace
{

constexpr double length = 0.3; // [m]
constexpr double width = 0.18;
constexpr double height = 0.04;

Laminate wood()
{
  Material material = test::reference_spruce();
  material.wood = true;
  material.strength = Strength{.Xt = 65e6, .Xc = 36e6, .Yt = 2.6e6, .Yc = 3.0e6, .S = 6.7e6};
  return test::solid(material, 3e-3);
}

std::vector<int> all_nodes(const BodyPart& part)
{
  std::vector<int> nodes(part.model.mesh.nodes.size());
  std::iota(nodes.begin(), nodes.end(), 0);
  return nodes;
}

/// A box with a post, and with a square hole in its top where asked for.
Body box(const Eigen::Vector2d& post_at, bool has_hole = false)
{
  const auto keep = [has_hole](double x, double y)
  { return !has_hole || !(x > 0.05 && x < 0.075 && y > 0.03 && y < 0.0525); };
  Body body =
      test::closed_box({.sides = {length, width, height}, .cells = {12, 8, 2}, .laminate = wood(), .keep = keep});
  const auto foot = [](const Eigen::Vector2d& at) { return EllipseRegion{.centre = at, .axes = {0.0065, 0.0065}}; };
  body.struts = {test::post(0, foot(post_at), 1, foot({post_at.x(), -post_at.y()}))};
  return body;
}

BodyLoadSetup setup(const Body& body, double tension = 200.0)
{
  return {.top = 0,
          .back = 1,
          .strings = {.tension = tension,
                      .bend = Angle::degrees(24.0),
                      .feet = {Eigen::Vector2d(-0.01, 0.016), Eigen::Vector2d(-0.01, -0.016)},
                      .foot = {0.005, 0.01},
                      .height = 0.03,
                      .saddle = {-0.5 * length, 0.0, 0.0},
                      .neck = {.part = 3, .nodes = all_nodes(body.parts[3])},
                      .lower = {.part = 2, .nodes = all_nodes(body.parts[2])}},
          .handling = {.thumb = 20.0, .thumb_at = {-0.08, 0.01}, .squeeze = 50.0, .knock = 10.0},
          .num_modes = 2};
}

/// A study several tests look at: the post under the foot at y < 0, a hole.
const BodyLoadStudy& study()
{
  static const Body body = box({-0.016, -0.016}, true);
  static const BodyLoadStudy result = study_load(body, setup(body));
  return result;
}

} // namespace

TEST_CASE("strings run over the crest of a bridge that halves their bend")
{
  const Eigen::Vector3d foot(0.02, 0.001, 0.015);
  const Eigen::Vector3d saddle(-0.15, 0.0, 0.002);
  const StringPath path = string_path(foot, 0.035, saddle, Angle::degrees(24.0));
  CHECK(path.crest.z() - foot.z() == test::relative(0.035, 1e-12));
  CHECK(path.to_neck.norm() == test::relative(1.0, 1e-12));
  CHECK(path.to_lower.norm() == test::relative(1.0, 1e-12));
  // Straight strings would make 180 degrees.
  CHECK(std::acos(path.to_neck.dot(path.to_lower)) * 180.0 / std::numbers::pi == test::relative(156.0, 1e-9));
  const Eigen::Vector3d to_saddle(saddle.x() - path.crest.x(), 0.0, saddle.z() - path.crest.z());
  CHECK(path.to_lower.cross(to_saddle.normalized()).norm() < 1e-12);
  const Eigen::Vector3d press = (path.to_neck + path.to_lower).normalized();
  CHECK(press.cross((path.crest - foot).normalized()).norm() < 1e-12); // no bending of the bridge
  CHECK(press.z() < -0.99);
  CHECK_THROWS_WITH_AS(static_cast<void>(string_path(foot, 0.035, saddle, Angle::degrees(10.0))),
                       doctest::Contains("lower bridge"), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(string_path(foot, 0.0, saddle, Angle::degrees(24.0))), InvalidInput);
  CHECK_THROWS_AS(static_cast<void>(string_path(foot, NAN, saddle, Angle::degrees(24.0))), InvalidInput);
}

TEST_CASE("every case of a body is in equilibrium, its energy half the work")
{
  REQUIRE(study().cases.size() == 4);
  for (const BodyLoadCase& load : study().cases)
  {
    CAPTURE(load.name);
    CHECK(load.evidence.residual <= 1e-9);
    CHECK(load.balance_error <= 1e-9);
    CHECK(load.evidence.work == test::relative(2.0 * load.evidence.energy, 1e-9));
    REQUIRE(load.worst.has_value());
    for (const PartLoad& part : load.parts)
    {
      REQUIRE(part.strength.has_value());
      CHECK(part.strength->margin >= load.margin());
    }
    CHECK(load.margin() == load.parts[*load.worst].strength->margin);
  }
  // 2 T sin(bend / 2) along the bridge, which leans.
  const double press = 400.0 * std::sin(12.0 * std::numbers::pi / 180.0);
  const StringPath& path = study().path;
  CHECK(study().downforce == test::relative(-press * (path.to_neck + path.to_lower).normalized().z(), 1e-12));
}

TEST_CASE("the forces of the walls on the top are what bridge and post leave over")
{
  // The forces that hold its edge, from the top's own stiffness: K u is what bridge, post and ribs do to it.
  const Body body = box({-0.016, -0.016});
  const BodyLoadSetup loads = setup(body);
  const BodyLoadStudy result = study_load(body, loads);
  const BodySystem system = assemble(body);
  const PartSystem& top = system.parts[0];
  const Eigen::VectorXd own = top.from_body * result.cases.front().evidence.x;
  const NodalUnknowns force = at_nodes(top.dofs, top.K.selfadjointView<Eigen::Lower>() * own);
  double at_edge = 0.0;
  const std::vector<Eigen::Vector3d>& nodes = body.parts[0].model.mesh.nodes;
  for (std::size_t i = 0; i < nodes.size(); ++i)
    if (std::abs(nodes[i].x()) > 0.5 * length - 1e-9 || std::abs(nodes[i].y()) > 0.5 * width - 1e-9)
      at_edge += force(2, static_cast<Eigen::Index>(i));
  REQUIRE(result.cases.front().post_forces.size() == 1);
  CHECK(result.cases.front().post_forces[0] > 0.1 * result.downforce);
  CHECK(result.cases.front().post_forces[0] < 0.9 * result.downforce);
  CHECK(at_edge == test::relative(result.downforce - result.cases.front().post_forces[0], 1e-7));
  // The post shortens by F l / (E A).
  const double shortened = result.post_deflections[0][1] - result.post_deflections[0][0];
  CHECK(shortened ==
        test::relative(result.cases.front().post_forces[0] * height / (12e9 * 0.25 * std::numbers::pi * 36e-6), 1e-5));
}

TEST_CASE("twice the tension moves a body twice as far, at half the margin and half the buckling factor")
{
  const Body body = box({-0.016, -0.016}, true);
  BodyLoadSetup twice = setup(body, 400.0);
  twice.num_modes = 0;
  const BodyLoadStudy other = study_load(body, twice);
  const BodyLoadCase& strings = study().cases.front();
  CHECK(other.cases.front().deflection == test::relative(2.0 * strings.deflection, 1e-9));
  CHECK(other.cases.front().margin() == test::relative(0.5 * strings.margin(), 1e-9));
  CHECK(other.cases.front().post_forces[0] == test::relative(2.0 * study().cases.front().post_forces[0], 1e-9));
  REQUIRE(study().buckling.factors.size() > 0);
  CHECK(other.buckling.factors(0) == test::relative(0.5 * study().buckling.factors(0), 1e-6));
  CHECK(other.cases[1].deflection == test::relative(study().cases[1].deflection, 1e-9)); // the thumb's is the same
}

TEST_CASE("a body with its post in the middle and equal strings to both ends answers alike on both sides")
{
  // The mesh, each cell cut along one diagonal, is no mirror image of itself, but the same when turned by half about
  // the post; so are the strings when they fall alike to both ends.
  const Body body = box({0.0, 0.0});
  BodyLoadSetup loads = setup(body);
  loads.num_modes = 0;
  loads.strings.feet = {Eigen::Vector2d(0.0, 0.016), Eigen::Vector2d(0.0, -0.016)};
  loads.strings.saddle.z() = loads.strings.height - 0.5 * length * std::tan(12.0 * std::numbers::pi / 180.0);
  const BodyLoadStudy result = study_load(body, loads);
  CHECK(result.path.crest.x() == doctest::Approx(0.0).epsilon(1e-12));
  CHECK(result.foot_deflections[0] == test::relative(result.foot_deflections[1], 1e-7));
  const auto end = [&](std::size_t part) { return result.cases.front().parts[part].strength->margin; };
  CHECK(end(2) == test::relative(end(3), 1e-6));
  CHECK(end(4) == test::relative(end(5), 1e-6));
  const BodyLoadStudy& beside = study();
  CHECK(std::abs(beside.foot_deflections[1] / beside.foot_deflections[0] - 1.0) > 0.1); // the post stiffens its side
}

TEST_CASE("strings bend a body towards them, sink its bridge and lower its frequencies")
{
  const BodyLoadStudy& result = study();
  CHECK(result.foot_deflections[0] < 0.0);
  CHECK(result.foot_deflections[1] < 0.0);
  CHECK(result.foot_deflections[0] < result.foot_deflections[1]); // less above the post
  CHECK(result.post_deflections[0][0] < 0.0);
  CHECK(result.post_deflections[0][1] < 0.0); // the back bulges
  REQUIRE(result.loaded_frequencies_hz.size() == 2);
  CHECK(result.loaded_frequencies_hz(0) < result.frequencies_hz(0));
  CHECK(result.loaded_frequencies_hz(0) > 0.5 * result.frequencies_hz(0));
}

TEST_CASE("frequencies under the strings go to zero as the load goes to the buckling load")
{
  const Body body = box({-0.016, -0.016}, true);
  const double factor = study().buckling.factors(0);
  BodyLoadSetup close = setup(body, 200.0 * 0.999 * factor);
  close.num_modes = 1;
  // f^2 falls at least in proportion, [Blevins1979]: below the root of a thousandth but for unlike shapes.
  const BodyLoadStudy result = study_load(body, close);
  REQUIRE(result.loaded_frequencies_hz.size() == 1);
  CHECK(result.loaded_frequencies_hz(0) < 0.2 * result.frequencies_hz(0));
  CHECK(study_load(body, setup(body, 200.0 * 1.01 * factor)).loaded_frequencies_hz.size() == 0);
}

TEST_CASE("a squeeze closes the ribs at the waist, a knock sinks the edge of the hole")
{
  const BodyLoadStudy& result = study();
  const BodyLoadCase& squeeze = result.cases[2];
  REQUIRE(squeeze.name == "squeeze");
  CHECK(squeeze.deflection < 0.0);
  CHECK(squeeze.most_moved.part >= 4); // a side
  CHECK(std::abs(squeeze.at.x()) < 1e-6);
  CHECK(squeeze.at.y() == test::relative(0.5 * width, 1e-9));
  const BodyLoadCase& wing = result.cases[3];
  REQUIRE(wing.name == "wing");
  CHECK(wing.at.x() > 0.049);
  CHECK(wing.at.x() < 0.076);
  CHECK(wing.deflection < 0.0);
  // What presses from both sides balances but for where the triangles feel it, which the body's inertia takes.
  CHECK(study().cases[1].inertia < 1e-3);
  CHECK(squeeze.inertia < 1e-3);
  CHECK(wing.inertia > 0.1);
  CHECK(study().cases[0].inertia == 0.0);
}

TEST_CASE("what a body cannot carry is refused")
{
  const Body body = box({-0.016, -0.016});
  BodyLoadSetup wrong = setup(body);
  wrong.back = 0;
  CHECK_THROWS_WITH_AS(static_cast<void>(study_load(body, wrong)), doctest::Contains("a top, a back and ribs"),
                       InvalidInput);
  wrong = setup(body);
  wrong.strings.feet[0].y() = 1.0;
  CHECK_THROWS_WITH_AS(static_cast<void>(study_load(body, wrong)), doctest::Contains("beside the plate"), InvalidInput);
  wrong = setup(body);
  wrong.cure_changes = {0.0};
  CHECK_THROWS_WITH_AS(static_cast<void>(study_load(body, wrong)), doctest::Contains("give one each"), InvalidInput);
  Body weak = box({-0.016, -0.016});
  for (BodyPart& part : weak.parts)
    part.model.material.laminate.plies[0].material.strength.reset();
  CHECK_THROWS_WITH_AS(static_cast<void>(study_load(weak, setup(weak))), doctest::Contains("has strengths"),
                       InvalidInput);
}
