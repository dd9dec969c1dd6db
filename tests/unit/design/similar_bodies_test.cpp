// SPDX-License-Identifier: MPL-2.0
// Derivatives of a body with its air that follow from similarity alone.
#include "sample_body.h"

#include <plate/design/body_design_model.h>

#include <doctest/doctest.h>

#include <cmath>

using namespace plate;
using namespace plate::test;

namespace
{

/// Factors on all lengths, all densities and all moduli, those of the air too.
struct Similarity
{
  double length;
  double density;
  double modulus;
};

void scale(Material& material, const Similarity& by)
{
  OrthotropicElastic& e = material.elastic;
  for (double* modulus : {&e.E1, &e.E2, &e.E3, &e.G12, &e.G13, &e.G23})
    *modulus *= by.modulus;
  material.density *= by.density;
}

void scale(Laminate& laminate, const Similarity& by)
{
  for (Ply& ply : laminate.plies)
  {
    ply.thickness *= by.length;
    scale(ply.material, by);
  }
}

void scale(std::vector<double>& lengths, const Similarity& by)
{
  for (double& length : lengths)
    length *= by.length;
}

void scale(PlanformRegion& region, const Similarity& by)
{
  if (auto* polygon = std::get_if<PolygonRegion>(&region))
  {
    for (Eigen::Vector2d& point : polygon->points)
      point *= by.length;
  }
  else
  {
    auto& ellipse = std::get<EllipseRegion>(region);
    ellipse.centre *= by.length;
    ellipse.axes *= by.length;
  }
}

void scale(ShellMesh& mesh, const Similarity& by)
{
  for (Eigen::Vector3d& node : mesh.nodes)
    node *= by.length;
  scale(mesh.thickness, by);
  for (BarFootprint& bar : mesh.bars)
    scale(bar.station, by);
}

double mass_factor(const Similarity& by)
{
  return by.density * std::pow(by.length, 3);
}

void scale(Model& model, const Similarity& by)
{
  scale(model.mesh, by);
  scale(model.material.laminate, by);
  for (Bar& bar : model.bars)
  {
    scale(bar.material, by);
    bar.width *= by.length;
    scale(bar.profile.station, by);
    scale(bar.profile.height, by);
  }
  for (Patch& patch : model.patches)
  {
    scale(patch.region, by);
    scale(patch.laminate, by);
  }
  for (PointMass& mass : model.masses)
  {
    mass.at *= by.length;
    mass.mass *= mass_factor(by);
  }
}

void scale(Body& body, const Similarity& by)
{
  for (BodyPart& part : body.parts)
  {
    scale(part.model, by);
    part.placement.translation() *= by.length;
  }
  for (Strut& strut : body.struts)
  {
    for (StrutFoot& foot : strut.feet)
      scale(foot.region, by);
    strut.E *= by.modulus;
    strut.G *= by.modulus;
    strut.density *= by.density;
    strut.diameter *= by.length;
  }
  for (FixedMass& mass : body.masses)
  {
    mass.mass *= mass_factor(by);
    mass.centre *= by.length;
    mass.inertia *= mass_factor(by) * by.length * by.length;
  }
}

void scale(BodyAir& air, const Similarity& by)
{
  scale(air.cavity.planform, by);
  air.cavity.back *= by.length;
  air.cavity.top *= by.length;
  for (HoleOutline& hole : air.holes)
  {
    for (Eigen::Vector2d& point : hole.points)
      point *= by.length;
    hole.wall_thickness *= by.length;
  }
  air.solids *= std::pow(by.length, 3);
  air.air.density *= by.density;
  air.air.sound_speed *= std::sqrt(by.modulus / by.density);
}

/// A body and those similar to it: parameters are the factors of a similarity.
class SimilarBodies final : public ParametricBody
{
public:
  explicit SimilarBodies(BodyPoint base) : base_(std::move(base)) {}

  [[nodiscard]] BodyPoint build(std::span<const double> parameters) override
  {
    const Similarity by = {.length = parameters[0], .density = parameters[1], .modulus = parameters[2]};
    BodyPoint point = base_;
    scale(point.body, by);
    scale(point.air, by);
    return point;
  }

private:
  BodyPoint base_;
};

/// Slopes of all modes over their frequencies by length, density and modulus, (num_modes, 3).
Eigen::MatrixXd relative_slopes(const std::string& holes)
{
  BodyDesignModel design(arched_box(holes), {});
  const FullSolve base = solve(design.build({}));
  SimilarBodies bodies(base.point);
  const std::vector<SensitivityParameter> factors(3, {.value = 1.0, .scale = 1.0});
  const BodySensitivityResult result =
      body_sensitivities(bodies, factors, base.solved(), {.num_modes = num_modes}, body_options.pressure_degree);
  REQUIRE(result.complete);
  // Mass goes with the cube of the length and with the density.
  CHECK(result.parameters[0].mass_slope == doctest::Approx(3.0 * base.system.system.mass).epsilon(1e-5));
  CHECK(result.parameters[1].mass_slope == doctest::Approx(base.system.system.mass).epsilon(1e-6));
  Eigen::MatrixXd slopes(num_modes, 3);
  for (Eigen::Index k = 0; k < 3; ++k)
    slopes.col(k) = result.parameters[static_cast<std::size_t>(k)].slopes_hz.cwiseQuotient(base.frequencies_hz());
  return slopes;
}

double farthest(const Eigen::VectorXd& values, double from)
{
  return (values.array() - from).abs().maxCoeff();
}

} // namespace

TEST_CASE(
    "similar closed bodies in similar air: frequencies go with 1 / length and with the root of modulus over density")
{
  const Eigen::MatrixXd slopes = relative_slopes("");
  CHECK(farthest(slopes.col(0), -1.0) < 1e-5);
  CHECK(farthest(slopes.col(1), -0.5) < 1e-6);
  CHECK(farthest(slopes.col(2), 0.5) < 1e-6);
}

TEST_CASE("similar bodies with holes: the same for modulus and density")
{
  // Not for length: what the mesh shows of the flow through holes is blurred over 5 mm, whatever their size.
  const Eigen::MatrixXd slopes = relative_slopes(slots);
  CHECK(farthest(slopes.col(1), -0.5) < 1e-6);
  CHECK(farthest(slopes.col(2), 0.5) < 1e-6);
}
