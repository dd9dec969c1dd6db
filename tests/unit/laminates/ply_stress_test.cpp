// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/core/error.h>
#include <plate/laminates/ply_stress.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>
#include <cmath>

using namespace plate;

namespace
{

constexpr double ply = 0.5e-3; // [m]

std::vector<PlacedPly> placed(const Laminate& laminate)
{
  std::vector<PlacedPly> plies;
  place_plies(laminate, total_thickness(laminate), plies);
  return plies;
}

PlyStresses flat_stresses(const std::vector<PlacedPly>& plies)
{
  return {plies, Eigen::Matrix3d::Identity(), {}};
}

/// In-plane stress (11, 22, 12) of a ply turned back to the laminate's axes; 5 = 12.
Eigen::Vector3d in_laminate(const MaterialComponents& stress, double degrees)
{
  const double c = std::cos(Angle::degrees(degrees).in_radians());
  const double s = std::sin(Angle::degrees(degrees).in_radians());
  return {c * c * stress(0) + s * s * stress(1) - 2.0 * c * s * stress(5),
          s * s * stress(0) + c * c * stress(1) + 2.0 * c * s * stress(5),
          c * s * (stress(0) - stress(1)) + (c * c - s * s) * stress(5)};
}

} // namespace

TEST_CASE("stretching one ply gives its reduced stiffness times the strain")
{
  const Laminate laminate = test::solid(test::carbon_epoxy(), 1e-3);
  const std::vector<PlacedPly> plies = placed(laminate);
  SectionStrains strains;
  strains.in_plane.col(0) << 1e-3, -2e-3, 3e-3;
  const MaterialComponents stress = flat_stresses(plies).stress(0, 0.2e-3, strains);
  // Q of [Kaw2006] table 2.1: 181.811, 2.8969, 10.3462, 7.17 GPa.
  CHECK(stress(0) == doctest::Approx(181.81114e6 - 2.0 * 2.8969244e6).epsilon(1e-6));
  CHECK(stress(1) == doctest::Approx(2.8969244e6 - 2.0 * 10.346159e6).epsilon(1e-6));
  CHECK(stress(5) == doctest::Approx(3.0 * 7.17e6).epsilon(1e-6));
  CHECK(std::abs(stress(3)) < 1e-3);
  CHECK(std::abs(stress(4)) < 1e-3);
}

TEST_CASE("the shear stress of a homogeneous plate is a parabola of 3/2 of the mean")
{
  const double h = 4e-3;
  const Laminate laminate = test::solid(test::isotropic(70e9, 0.3, 2700.0), h);
  const std::vector<PlacedPly> plies = placed(laminate);
  const PlyStresses stresses = flat_stresses(plies);
  SectionStrains strains;
  strains.shear << 1e-4, 0.0;
  const double force = 5.0 / 6.0 * 70e9 / 2.6 * h * 1e-4; // shear correction 5/6: any text on first-order plates
  CHECK(stresses.stress(0, 0.0, strains)(4) == doctest::Approx(1.5 * force / h));
  CHECK(stresses.stress(0, 0.25 * h, strains)(4) == doctest::Approx(1.5 * 0.75 * force / h));
  CHECK(std::abs(stresses.stress(0, 0.5 * h, strains)(4)) < 1e-6 * force / h);
  CHECK(std::abs(stresses.stress(0, 0.0, strains)(3)) < 1e-6 * force / h);
}

TEST_CASE("shear stress is continuous from ply to ply and makes up the shear force")
{
  const Laminate laminate = test::stack(test::carbon_epoxy(), ply, {0, 90, 0, 0, 90, 90});
  const std::vector<PlacedPly> plies = placed(laminate);
  const PlyStresses stresses = flat_stresses(plies);
  SectionStrains strains;
  strains.shear << 2e-4, -1e-4;
  const auto along_x = [&](std::size_t i, double z) // of a ply at 0 or 90 degrees
  {
    const MaterialComponents stress = stresses.stress(i, z, strains);
    return laminate.plies[i].angle.in_radians() > 1.0 ? -stress(3) : stress(4);
  };
  double force = 0.0;
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    const double middle = 0.5 * (plies[i].bottom + plies[i].top);
    force += ply / 6.0 * (along_x(i, plies[i].bottom) + 4.0 * along_x(i, middle) + along_x(i, plies[i].top));
    if (i + 1 < plies.size())
      CHECK(along_x(i, plies[i].top) == doctest::Approx(along_x(i + 1, plies[i].top)).epsilon(1e-9));
  }
  const SectionStiffness section = section_stiffness(plies, Eigen::Matrix3d::Identity(), {});
  CHECK(force == doctest::Approx((section.shear * strains.shear)(0)).epsilon(1e-9));
  CHECK(std::abs(along_x(5, plies[5].top)) < 1e-9 * std::abs(force) / ply);
}

TEST_CASE("carved wood on a slope carries the forces of its section")
{
  // The work of the stresses at held strain is that of the section: membrane force from the stresses, summed by Gauss.
  const double h = 3e-3;
  const Laminate laminate = test::solid(test::reference_spruce(), h, 0.0, Grain::carved);
  const std::vector<PlacedPly> plies = placed(laminate);
  const MaterialAxes axes;
  const Eigen::Matrix3d frame = shell_frame(Eigen::Vector3d(0.1, 0.25, 1.0).normalized(), axes);
  const PlyStresses stresses(plies, frame, axes);
  SectionStrains strains;
  strains.in_plane.col(0) << 2e-4, -1e-4, 3e-4;
  strains.in_plane.col(1) << 0.05, 0.08, -0.02;
  strains.shear << 1e-4, 3e-4;
  Eigen::Matrix3d force = Eigen::Matrix3d::Zero(); // of the stress tensor in the axes of the plate
  for (const double part : {-std::sqrt(0.6), 0.0, std::sqrt(0.6)})
  {
    const MaterialComponents s = stresses.stress(0, 0.5 * h * part, strains);
    Eigen::Matrix3d tensor;
    tensor << s(0), s(5), s(4), s(5), s(1), s(3), s(4), s(3), s(2);
    force += 0.5 * h * (part == 0.0 ? 8.0 / 9.0 : 5.0 / 9.0) * tensor; // the wood's axes are those of the plate
  }
  force = frame.transpose() * force * frame;
  const SectionStiffness section = section_stiffness(plies, frame, axes);
  const Eigen::Vector2d shear =
      section.shear * (strains.shear - section.G0 * strains.in_plane.col(0) - section.G1 * strains.in_plane.col(1));
  const Eigen::Vector3d membrane =
      section.P[0] * strains.in_plane.col(0) + section.P[1] * strains.in_plane.col(1) - section.G0.transpose() * shear;
  CHECK(force(0, 0) == doctest::Approx(membrane(0)).epsilon(1e-9));
  CHECK(force(1, 1) == doctest::Approx(membrane(1)).epsilon(1e-9));
  CHECK(force(0, 1) == doctest::Approx(membrane(2)).epsilon(1e-9));
  CHECK(force(0, 2) == doctest::Approx(shear(0)).epsilon(1e-9));
  CHECK(force(1, 2) == doctest::Approx(shear(1)).epsilon(1e-9));
  CHECK(std::abs(force(2, 2)) < 1e-9 * std::abs(membrane(0)));
}

TEST_CASE("a shear force that changes along a homogeneous plate bends its cross-section to a cubic")
{
  // Shear strain (3/2)(1 - 4 z^2/h^2) V / (G h) less its mean 6/5 V / (G h) integrates to V (0.3 z - 2 z^3/h^2) / (G
  // h), which has no moment; at the face its derivative along 1 is -0.1 V,1 / G.
  const double E = 70e9;
  const double nu = 0.3;
  const double G = E / (2.0 * (1.0 + nu));
  const double h = 4e-3;
  const Laminate laminate = test::solid(test::isotropic(E, nu, 2700.0), h);
  const std::vector<PlacedPly> plies = placed(laminate);
  SectionStrains strains;
  strains.shear_slope(0, 0) = 0.2; // [1/m]
  const double force_slope = 5.0 / 6.0 * G * h * 0.2;
  const MaterialComponents top = flat_stresses(plies).stress(0, 0.5 * h, strains);
  CHECK(top(0) / (-E / (1.0 - nu * nu) * 0.1 * force_slope / G) == doctest::Approx(1.0).epsilon(1e-9));
  CHECK(top(1) / top(0) == doctest::Approx(nu).epsilon(1e-9));
  const MaterialComponents quarter = flat_stresses(plies).stress(0, 0.25 * h, strains);
  CHECK(quarter(0) / top(0) == doctest::Approx(-0.4375).epsilon(1e-9)); // (0.3/4 - 2/64) / -0.1
}

TEST_CASE("warping of a laminate makes neither force nor moment")
{
  const std::vector<double> degrees = {0, 90, 30, -45};
  const Laminate laminate = test::stack(test::carbon_epoxy(), ply, degrees);
  const std::vector<PlacedPly> plies = placed(laminate);
  const PlyStresses stresses = flat_stresses(plies);
  SectionStrains strains;
  strains.shear_slope << 0.1, -0.2, 0.3, 0.4;
  Eigen::Vector3d force = Eigen::Vector3d::Zero();
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();
  double greatest = 0.0;
  for (std::size_t i = 0; i < plies.size(); ++i)
    for (const double part : {-std::sqrt(0.6), 0.0, std::sqrt(0.6)})
    {
      const double z = 0.5 * (plies[i].bottom + plies[i].top) + 0.5 * ply * part;
      const double weight = 0.5 * ply * (part == 0.0 ? 8.0 / 9.0 : 5.0 / 9.0);
      const Eigen::Vector3d stress = in_laminate(stresses.stress(i, z, strains), degrees[i]);
      force += weight * stress;
      moment += weight * z * stress;
      greatest = std::max(greatest, stress.cwiseAbs().maxCoeff());
    }
  CHECK(greatest > 1e4);
  CHECK(force.norm() < 1e-9 * greatest * ply);
  CHECK(moment.norm() < 1e-9 * greatest * ply * ply);
}

TEST_CASE("stress of the cure makes neither force nor moment")
{
  Material material = test::carbon_epoxy();
  material.thermal = Expansion{.along = 0.02e-6, .across = 22.5e-6};
  const std::vector<double> degrees = {0, 90, 30, -45};
  const Laminate laminate = test::stack(material, ply, degrees);
  const std::vector<PlacedPly> plies = placed(laminate);
  const PlyStresses stresses = flat_stresses(plies);
  Eigen::Vector3d force = Eigen::Vector3d::Zero();
  Eigen::Vector3d moment = Eigen::Vector3d::Zero();
  double greatest = 0.0;
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    const double middle = 0.5 * (plies[i].bottom + plies[i].top);
    const auto at = [&](double z) { return in_laminate(stresses.cure_stress(i, z, -100.0), degrees[i]); };
    const Eigen::Vector3d bottom = at(plies[i].bottom);
    const Eigen::Vector3d top = at(plies[i].top);
    force += ply * at(middle);
    moment += ply * (middle * at(middle) + ply / 12.0 * (top - bottom));
    greatest = std::max(greatest, bottom.cwiseAbs().maxCoeff());
  }
  CHECK(greatest > 10e6);
  CHECK(force.norm() < 1e-9 * greatest * ply);
  CHECK(moment.norm() < 1e-9 * greatest * ply * ply);
}

TEST_CASE("stress of the cure needs the expansion of every ply")
{
  const Laminate laminate = test::solid(test::carbon_epoxy(), 1e-3);
  const std::vector<PlacedPly> plies = placed(laminate);
  CHECK_THROWS_AS(static_cast<void>(flat_stresses(plies).cure_stress(0, 0.0, -100.0)), InvalidInput);
}

TEST_CASE("strain follows from stress by the compliance of the material")
{
  MaterialComponents stress = MaterialComponents::Zero();
  stress(0) = 181e6;
  stress(5) = 7.17e6;
  const MaterialComponents strain = strain_of(test::carbon_epoxy(), stress);
  CHECK(strain(0) == doctest::Approx(1e-3));
  CHECK(strain(1) == doctest::Approx(-0.28e-3));
  CHECK(strain(5) == doctest::Approx(1e-3));
}
