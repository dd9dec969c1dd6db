// SPDX-License-Identifier: MPL-2.0
// Fields that the element can represent and that are in equilibrium without load: the assembled stiffness must give the
// analytic energy, and no force on any unknown inside. First principles throughout.
#include "sample_models.h"

#include <plate/elements/glued_torsion.h>

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

/// Glues a spruce bar 6 mm wide, along the reference axis, under every triangle.
void glue_bar(Model& model, double height)
{
  BarFootprint footprint;
  for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t)
    footprint.triangles.push_back(static_cast<int>(t));
  footprint.station.assign(model.mesh.nodes.size(), 0.0);
  model.mesh.bars = {footprint};
  model.bars = {{.material = test::reference_spruce(),
                 .width = 6e-3,
                 .profile = {{0.0}, {height}},
                 .axis = model.material.axes.axis}};
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

TEST_CASE("a carved core under unequal skins bends and stretches without shear force if the directors lean")
{
  // As above; in an unsymmetric stack curvature brings shear strain too, G1 kappa, and stretching couples with bending.
  const Laminate laminate = {
      {{.material = test::carbon_epoxy(), .thickness = 0.3e-3, .angle = Angle::degrees(30)},
       {.material = test::reference_spruce(), .thickness = 1.8e-3, .angle = Angle::degrees(15), .grain = Grain::carved},
       {.material = test::carbon_epoxy(), .thickness = 0.1e-3, .angle = Angle::degrees(-20)}}};
  Model model = distorted_plate(laminate, Edges::straight);
  model.material.axes.up = Eigen::Vector3d(0.0, -std::sin(0.35), std::cos(0.35));
  const SectionStiffness s = section_of(model);
  REQUIRE(s.G1.cwiseAbs().maxCoeff() > 1e-5); // [m]
  const Eigen::Vector3d strain(2e-4, -1e-4, 3e-4);
  const Eigen::Vector3d kappa(0.3, -0.4, 0.2); // [1/m]
  const Eigen::Vector2d gamma = s.G0 * strain + s.G1 * kappa;
  const auto displacement = [&](const Eigen::Vector3d& x)
  {
    const double bent = 0.5 * (kappa(0) * x.x() * x.x() + kappa(1) * x.y() * x.y() + kappa(2) * x.x() * x.y());
    return Eigen::Vector3d(strain(0) * x.x() + 0.5 * strain(2) * x.y(), strain(1) * x.y() + 0.5 * strain(2) * x.x(),
                           gamma(0) * x.x() + gamma(1) * x.y() - bent);
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

TEST_CASE("a bar adds the energy of its own stretching, bending and shear, all at its own height")
{
  // A bar under the whole plate, its board tilted in the plane of its length, so that pulling it shears it. Where its
  // shear stress is zero its shear strain follows the strain at the middle of its height.
  const double tilt = 0.2;
  const double height = 8e-3;
  Model bare = distorted_plate(test::solid(test::isotropic(5e9, 0.0, 400.0), 3e-3), Edges::straight);
  Model barred = bare;
  for (Model* model : {&bare, &barred})
    model->material.axes.up = Eigen::Vector3d(-std::sin(tilt), 0.0, std::cos(tilt));
  for (Model* model : {&bare, &barred})
    model->material.axes.axis = Eigen::Vector3d(std::cos(tilt), 0.0, std::sin(tilt));
  glue_bar(barred, height);
  const double strain = 3e-4;
  const double kappa = 0.15; // [1/m]
  const double gamma = -5e-4;
  const test::Field field = {
      .displacement = [&](const Eigen::Vector3d& x)
      { return Eigen::Vector3d(strain * x.x(), 0.0, gamma * x.x() - 0.5 * kappa * x.x() * x.x()); },
      .director_change = [&](const Eigen::Vector3d& x) { return Eigen::Vector3d(kappa * x.x(), 0.0, 0.0); }};
  const double share = respond(barred, field).energy - respond(bare, field).energy;
  // The board at this angle: compliance along the bar and shear under pulling, [Jones1999] eq. 2.97 between L and T.
  const OrthotropicElastic m = test::reference_spruce().elastic;
  const double c = std::cos(tilt);
  const double s = -std::sin(tilt); // of the plate seen from the board
  const double S11 =
      std::pow(c, 4) / m.E1 + std::pow(s, 4) / m.E3 + c * c * s * s * (1.0 / m.G13 - 2.0 * m.nu13 / m.E1);
  const double e_L = c * c / m.E1 - m.nu13 * s * s / m.E1;
  const double e_T = s * s / m.E3 - m.nu13 * c * c / m.E1;
  const double S13 = 2.0 * c * s * (e_T - e_L) + (c * c - s * s) * c * s / m.G13;
  const double S55 =
      4.0 * c * c * s * s * (1.0 / m.E1 + 1.0 / m.E3 + 2.0 * m.nu13 / m.E1) + std::pow(c * c - s * s, 2) / m.G13;
  const double at_middle = strain - 0.5 * (3e-3 + height) * kappa;
  const double axial = height / S11 * (at_middle * at_middle + height * height / 12.0 * kappa * kappa);
  const double shear = 5.0 / 6.0 * height / (S55 - S13 * S13 / S11) * std::pow(gamma - S13 / S11 * at_middle, 2);
  REQUIRE(shear > 0.05 * axial);
  CHECK(share == doctest::Approx(0.5 * area * (axial + shear)).epsilon(1e-9));
}

TEST_CASE("twisting a plate twists the bar under it at half the rate of the plate's twist curvature")
{
  // w = -k/2 x y turns a section of the bar by dw/dy = -k/2 x: rate k/2. Nothing else strains the bar.
  const double height = 8e-3;
  const Model bare = distorted_plate(test::solid(test::isotropic(5e9, 0.0, 400.0), 3e-3), Edges::straight);
  Model barred = bare;
  glue_bar(barred, height);
  const double k = 0.3; // [1/m]
  const test::Field field = {.displacement = [&](const Eigen::Vector3d& x)
                             { return Eigen::Vector3d(0.0, 0.0, -0.5 * k * x.x() * x.y()); },
                             .director_change = [&](const Eigen::Vector3d& x)
                             { return Eigen::Vector3d(0.5 * k * x.y(), 0.5 * k * x.x(), 0.0); }};
  const double share = respond(barred, field).energy - respond(bare, field).energy;
  const std::vector<TorsionLayer> strip = {{.thickness = 3e-3, .G_across = 2.5e9, .G_normal = 2.5e9}}; // E 5 GPa, nu 0
  const double per_width =
      glued_torsional_stiffness(6e-3, {.thickness = height, .G_across = 704e6, .G_normal = 671e6}, strip) / 6e-3;
  CHECK(share == doctest::Approx(0.5 * area * per_width * 0.25 * k * k).epsilon(1e-9));
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
