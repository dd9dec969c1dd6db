// SPDX-License-Identifier: MPL-2.0
// Fields that the element can represent and that are in equilibrium without load: the assembled stiffness must give the
// analytic energy, and no force on any unknown inside. First principles throughout.
#include "sample_models.h"

#include <doctest/doctest.h>

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

using namespace plate;

namespace
{

constexpr double length = 0.12; // [m]
constexpr double width = 0.08;  // [m]
constexpr double area = length * width;

enum class Edges
{
  curved,  ///< fields linear in the position are exact
  straight ///< irregular affine triangles: cubic displacement and quadratic director change are exact
};

Model distorted_plate(const Laminate& laminate, Edges edges)
{
  ShellMesh mesh = test::rectangle(length, width, 4, 3, total_thickness(laminate));
  test::distort(mesh, length, width, 0.06);
  if (edges == Edges::straight)
    test::straighten_edges(mesh);
  return test::plate_model(std::move(mesh), laminate);
}

/// Energy of a field, and the largest force on an unknown inside over the largest force at all.
struct Response
{
  double energy;
  double residual_inside;
};

Response respond(const Model& model, const test::Field& field)
{
  const System system = assemble(model);
  const Eigen::VectorXd u = test::unknowns_of(model, system.dofs, field);
  const Eigen::VectorXd force = system.K.selfadjointView<Eigen::Lower>() * u;
  std::set<int> on_boundary;
  for (const EdgeGroup& group : model.mesh.boundary)
    for (const auto& edge : group.edges)
      on_boundary.insert(edge.begin(), edge.end());
  // Forces and moments are compared among themselves.
  double inside[2] = {0.0, 0.0};
  double overall[2] = {0.0, 0.0};
  for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i)
    for (std::size_t k = 0; k < 5; ++k)
    {
      const double f = std::abs(force(system.dofs.equation[i][k]));
      const std::size_t kind = k < 3 ? 0 : 1;
      overall[kind] = std::max(overall[kind], f);
      if (on_boundary.count(static_cast<int>(i)) == 0)
        inside[kind] = std::max(inside[kind], f);
    }
  const double characteristic = 0.01; // [m] element size: moments of rounding are forces of rounding times this
  const double scale = std::max(overall[0], overall[1] / characteristic);
  return {.energy = 0.5 * u.dot(force), .residual_inside = std::max(inside[0], inside[1] / characteristic) / scale};
}

/// Symmetric laminate with every bending coupling.
Laminate symmetric_laminate()
{
  return test::stack(test::carbon_epoxy(), 0.4e-3, {20, -50, -50, 20});
}

/// Every coupling there is: B too.
Laminate general_laminate()
{
  return test::stack(test::carbon_epoxy(), 0.4e-3, {20, -50, 90});
}

SectionStiffness section_of(const Model& model)
{
  return section_stiffness(model.material.laminate, total_thickness(model.material.laminate),
                           shell_frame(Eigen::Vector3d::UnitZ(), model.material.axes), model.material.axes);
}

const auto no_change = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); };
const auto no_shift = [](const Eigen::Vector3d&) { return Eigen::Vector3d(0.0, 0.0, 0.0); };

} // namespace

TEST_CASE("constant membrane strain is exact on curved-edge triangles")
{
  const Model model = distorted_plate(symmetric_laminate(), Edges::curved);
  const Eigen::Vector3d strain(3e-4, -2e-4, 5e-4);
  const Response r = respond(model, {.displacement =
                                         [&](const Eigen::Vector3d& x)
                                     {
                                       return Eigen::Vector3d(strain(0) * x.x() + 0.7 * strain(2) * x.y(),
                                                              strain(1) * x.y() + 0.3 * strain(2) * x.x(), 0.0);
                                     },
                                     .director_change = no_change});
  CHECK(r.energy == doctest::Approx(0.5 * area * strain.dot(section_of(model).P[0] * strain)).epsilon(1e-11));
  CHECK(r.residual_inside < 1e-10);
}

TEST_CASE("constant curvature of the directors alone has the energy of bending and of its shear strain")
{
  // Director change linear in the position, no deflection: the shear strain is the change itself.
  const Model model = distorted_plate(symmetric_laminate(), Edges::straight);
  const SectionStiffness s = section_of(model);
  const Eigen::Vector3d kappa(0.4, -0.3, 0.5); // [1/m]
  const auto beta = [&](const Eigen::Vector3d& x) {
    return Eigen::Vector3d(kappa(0) * x.x() + 0.5 * kappa(2) * x.y(), kappa(1) * x.y() + 0.5 * kappa(2) * x.x(), 0.0);
  };
  const Response r = respond(model, {.displacement = no_shift, .director_change = beta});
  // Mean of beta beta^T over the rectangle: second moments L^2/12 and W^2/12.
  Eigen::Matrix2d J;
  J << kappa(0), 0.5 * kappa(2), 0.5 * kappa(2), kappa(1);
  const Eigen::Matrix2d second = Eigen::Vector2d(length * length / 12.0, width * width / 12.0).asDiagonal();
  const double shear = (s.shear * J * second * J.transpose()).trace();
  CHECK(r.energy == doctest::Approx(0.5 * area * (kappa.dot(s.P[2] * kappa) + shear)).epsilon(1e-11));
}

TEST_CASE("constant bending, twisting and stretching of an unsymmetric laminate is exact on irregular triangles")
{
  const Model model = distorted_plate(general_laminate(), Edges::straight);
  const SectionStiffness s = section_of(model);
  const Eigen::Vector3d strain(2e-4, 1e-4, -3e-4);
  for (const Eigen::Vector3d& kappa : {Eigen::Vector3d(0.5, 0.0, 0.0), Eigen::Vector3d(0.0, 0.5, 0.0),
                                       Eigen::Vector3d(0.0, 0.0, 0.5), Eigen::Vector3d(0.3, -0.4, 0.2)})
  {
    // Director follows the slope, so there is no shear strain: beta = -grad w.
    const auto displacement = [&](const Eigen::Vector3d& x)
    {
      return Eigen::Vector3d(strain(0) * x.x() + 0.5 * strain(2) * x.y(), strain(1) * x.y() + 0.5 * strain(2) * x.x(),
                             -0.5 * (kappa(0) * x.x() * x.x() + kappa(1) * x.y() * x.y() + kappa(2) * x.x() * x.y()));
    };
    const auto beta = [&](const Eigen::Vector3d& x) {
      return Eigen::Vector3d(kappa(0) * x.x() + 0.5 * kappa(2) * x.y(), kappa(1) * x.y() + 0.5 * kappa(2) * x.x(), 0.0);
    };
    const Response r = respond(model, {.displacement = displacement, .director_change = beta});
    const double energy =
        0.5 * area * (strain.dot(s.P[0] * strain) + 2.0 * strain.dot(s.P[1] * kappa) + kappa.dot(s.P[2] * kappa));
    CHECK(r.energy == doctest::Approx(energy).epsilon(1e-10));
    CHECK(r.residual_inside < 1e-9);
  }
}

TEST_CASE("constant shear force with linear moment is exact on irregular triangles")
{
  // beta1 = q x^2 / (2 D11) bends by kappa11 = q x / D11; equilibrium of moments asks for Q1 = M11,1 = q and
  // Q2 = M12,1 = q D16/D11, both constant; w makes the shear strain that they need.
  const Model model = distorted_plate(symmetric_laminate(), Edges::straight);
  const SectionStiffness s = section_of(model);
  const double q = 50.0; // [N/m]
  const double D11 = s.P[2](0, 0);
  const Eigen::Vector2d Q(q, q * s.P[2](0, 2) / D11);
  const Eigen::Vector2d gamma = s.shear.inverse() * Q;
  const auto displacement = [&](const Eigen::Vector3d& x)
  { return Eigen::Vector3d(0.0, 0.0, gamma(0) * x.x() + gamma(1) * x.y() - q * x.x() * x.x() * x.x() / (6.0 * D11)); };
  const auto beta = [&](const Eigen::Vector3d& x) { return Eigen::Vector3d(0.5 * q * x.x() * x.x() / D11, 0.0, 0.0); };
  const Response r = respond(model, {.displacement = displacement, .director_change = beta});
  const double mean_square = length * length / 12.0; // of x over the plate
  CHECK(r.energy == doctest::Approx(0.5 * area * (q * q / D11 * mean_square + Q.dot(gamma))).epsilon(1e-10));
  CHECK(r.residual_inside < 1e-9);
}

TEST_CASE("a board cut across its grain stretches without shear force if the directors may lean")
{
  // Material axes tilted out of the plate: at zero shear force membrane strain comes with shear strain G0 strain, and
  // the energy is that of the shear-free stiffness. Wrong coupling leaves shear forces, so energy and residual grow.
  Model model = distorted_plate(test::solid(test::reference_spruce(), 2.5e-3, 15, Grain::carved), Edges::curved);
  const double tilt = 0.35;
  const double run_out = 0.15;
  const Eigen::Vector3d axis = Eigen::Vector3d(std::cos(run_out), 0.0, std::sin(run_out));
  const Eigen::Vector3d up =
      Eigen::Vector3d(-std::sin(run_out) * std::cos(tilt), -std::sin(tilt), std::cos(run_out) * std::cos(tilt));
  REQUIRE(std::abs(axis.dot(up)) < 1e-15);
  model.material.axes = {.axis = axis, .up = up};
  const SectionStiffness s = section_of(model);
  REQUIRE(s.G0.cwiseAbs().maxCoeff() > 0.1);
  const Eigen::Vector3d strain(3e-4, -2e-4, 5e-4);
  const Eigen::Vector2d gamma = s.G0 * strain;
  const auto displacement = [&](const Eigen::Vector3d& x)
  {
    return Eigen::Vector3d(strain(0) * x.x() + 0.5 * strain(2) * x.y(), strain(1) * x.y() + 0.5 * strain(2) * x.x(),
                           gamma(0) * x.x() + gamma(1) * x.y());
  };
  const Response r = respond(model, {.displacement = displacement, .director_change = no_change});
  CHECK(r.energy == doctest::Approx(0.5 * area * strain.dot(s.P[0] * strain)).epsilon(1e-10));
  CHECK(r.residual_inside < 1e-9);
}

TEST_CASE("rigid motions of a distorted plate are free of force everywhere")
{
  const Model model = distorted_plate(general_laminate(), Edges::curved);
  const System system = assemble(model);
  const Eigen::MatrixXd KR = system.K.selfadjointView<Eigen::Lower>() * system.rigid_motions;
  // Against the forces that one node moved by the same amount would see.
  const double scale = Eigen::VectorXd(system.K.diagonal()).maxCoeff();
  CHECK(KR.cwiseAbs().maxCoeff() < 1e-12 * scale);
}
