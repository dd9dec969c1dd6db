// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/solvers/studies/load.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace plate;

namespace
{

Material spruce_with_strength()
{
  Material material = test::reference_spruce();
  material.wood = true;
  material.strength = Strength{.Xt = 65e6, .Xc = 36e6, .Yt = 2.6e6, .Yc = 3.0e6, .S = 6.7e6};
  return material;
}

/// An arched rectangle with a square hole beside the middle.
Model arched_top()
{
  const std::vector<double> x = {-0.1, -0.075, -0.05, -0.025, 0.0, 0.025, 0.05, 0.075, 0.1};
  const std::vector<double> y = {-0.06, -0.04, -0.02, 0.0, 0.02, 0.04, 0.06};
  return test::plate_model(test::grid_mesh({.x = x,
                                            .y = y,
                                            .surface = test::biparabolic(0.2, 0.12, 0.008),
                                            .thickness = 2.5e-3,
                                            .keep = [](double cx, double cy)
                                            { return !(cx > 0.025 && cx < 0.05 && cy > 0.02 && cy < 0.04); }}),
                           test::solid(spruce_with_strength(), 2.5e-3, 0.0, Grain::carved));
}

LoadSetup setup()
{
  return {.strings = {.downforce = 80.0,
                      .feet = {Eigen::Vector2d(0.0, 0.015), Eigen::Vector2d(0.0, -0.015)},
                      .foot = {0.005, 0.01}},
          .handling = {.thumb = 30.0, .thumb_at = {-0.06, 0.0}, .knock = 20.0, .lift = 3.0}};
}

/// The study of that top, which several tests look at.
const LoadStudy& top_study()
{
  static const LoadStudy study = study_load(arched_top(), setup());
  return study;
}

const LoadCase& named(const LoadStudy& study, const std::string& name)
{
  const auto found =
      std::find_if(study.cases.begin(), study.cases.end(), [&](const LoadCase& c) { return c.name == name; });
  REQUIRE(found != study.cases.end());
  return *found;
}

} // namespace

TEST_CASE("every case of a top is in equilibrium, its energy half the work")
{
  const LoadStudy& study = top_study();
  REQUIRE(study.cases.size() == 6);
  for (const LoadCase& load : study.cases)
  {
    CAPTURE(load.name);
    CHECK(load.evidence.residual <= 1e-9);
    CHECK(load.balance_error <= 1e-9);
    CHECK(load.evidence.work / (2.0 * load.evidence.energy) == doctest::Approx(1.0).epsilon(1e-9));
    CHECK(load.strength.margin > 0.0);
    CHECK(load.strength.used.minCoeff() >= 0.0);
    CHECK(load.strength.used.maxCoeff() * load.strength.margin == doctest::Approx(1.0));
  }
}

TEST_CASE("strings press a top in under the bridge, twice the force twice as far")
{
  const LoadStudy& study = top_study();
  const LoadCase& strings = named(study, "strings");
  CHECK(strings.deflection < 0.0);
  CHECK_FALSE(strings.bare);
  for (const double foot : study.foot_deflections)
    CHECK(foot < 0.0);
  // The work of the force is force times the mean sinking of the feet.
  CHECK(strings.evidence.work ==
        doctest::Approx(-40.0 * (study.foot_deflections[0] + study.foot_deflections[1])).epsilon(1e-9));
  LoadSetup heavier = setup();
  heavier.strings.downforce *= 2.0;
  const LoadStudy twice = study_load(arched_top(), heavier);
  CHECK(named(twice, "strings").deflection / strings.deflection == doctest::Approx(2.0).epsilon(1e-9));
  CHECK(named(twice, "strings").strength.margin / strings.strength.margin == doctest::Approx(0.5).epsilon(1e-9));
  CHECK(twice.buckling.factors(0) / study.buckling.factors(0) == doctest::Approx(0.5).epsilon(1e-6));
}

TEST_CASE("frequencies under the strings go to zero as the load goes to the buckling load")
{
  // f^2 falls in proportion where mode and buckling shape are alike, faster for no mode: [Blevins1979].
  LoadSetup light = setup();
  light.num_modes = 1;
  const LoadStudy study = study_load(arched_top(), light);
  REQUIRE(study.buckling.factors.size() > 0);
  REQUIRE(study.loaded_frequencies_hz.size() == 1);
  CHECK(study.loaded_frequencies_hz(0) < study.frequencies_hz(0));
  LoadSetup beyond = light;
  beyond.strings.downforce *= 1.01 * study.buckling.factors(0);
  CHECK(study_load(arched_top(), beyond).loaded_frequencies_hz.size() == 0);
  LoadSetup close = light;
  close.strings.downforce *= 0.999 * study.buckling.factors(0);
  CHECK(study_load(arched_top(), close).loaded_frequencies_hz(0) < 0.2 * study.frequencies_hz(0));
}

TEST_CASE("a soundpost carries a part of the strings and stiffens the top")
{
  LoadSetup with_post = setup();
  with_post.posts = {{.region = EllipseRegion{.centre = {-0.01, -0.015}, .axes = {0.0065, 0.0065}}, .stiffness = 5e6}};
  const LoadStudy& bare = top_study();
  const LoadStudy posted = study_load(arched_top(), with_post);
  REQUIRE(posted.post_forces.size() == 1);
  CHECK(posted.post_forces[0] > 10.0);
  CHECK(posted.post_forces[0] < 80.0);
  CHECK(std::abs(posted.foot_deflections[1]) < 0.5 * std::abs(bare.foot_deflections[1]));
  CHECK(posted.foot_deflections[1] / posted.foot_deflections[0] < bare.foot_deflections[1] / bare.foot_deflections[0]);
  for (const LoadCase& load : posted.cases)
    CHECK(load.balance_error <= 1e-9);
}

TEST_CASE("a clamped rim is stiffer than a hinged one, that stiffer than one that only rests")
{
  std::vector<double> sink;
  for (const EdgeSupport rim : {EdgeSupport::clamped, EdgeSupport::hinged, EdgeSupport::rest})
  {
    LoadSetup held = setup();
    held.rim = rim;
    held.num_modes = 0;
    sink.push_back(std::abs(named(study_load(arched_top(), held), "strings").deflection));
  }
  CHECK(sink[0] < sink[1]);
  CHECK(sink[1] < sink[2]);
}

TEST_CASE("the wing is at the edge of the hole, the corner at a corner, the grip at the lower end")
{
  const LoadStudy& study = top_study();
  const Eigen::Vector2d wing = named(study, "wing").at;
  CHECK(wing.x() > 0.024);
  CHECK(wing.x() < 0.051);
  CHECK(wing.y() > 0.019);
  CHECK(wing.y() < 0.041);
  const Eigen::Vector2d corner = named(study, "corner").at;
  CHECK(std::abs(corner.x()) == doctest::Approx(0.1));
  CHECK(std::abs(corner.y()) == doctest::Approx(0.06));
  CHECK(named(study, "grip").at.x() < -0.08);
  CHECK(named(study, "grip").bare);
  // Weight of the plate, three times: areal mass 2.5 mm x 420 kg/m3 or so on its area.
  CHECK(named(study, "grip").force == doctest::Approx(3.0 * 9.81 * study.mass));
}

TEST_CASE("without strengths there is nothing to judge")
{
  Model model = arched_top();
  model.material.laminate.plies[0].material.strength.reset();
  CHECK_THROWS_WITH_AS(static_cast<void>(study_load(model, setup())), doctest::Contains("strength"), InvalidInput);
}
