// SPDX-License-Identifier: MPL-2.0
// In-plane and bending stiffness of laminates laid flat.
#include "sample_models.h"

#include <doctest/doctest.h>

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <cmath>
#include <random>

using namespace plate;

namespace
{

const Eigen::Matrix3d flat_frame = Eigen::Matrix3d::Identity();

SectionStiffness flat_section(const Laminate& laminate)
{
  return section_stiffness(laminate, total_thickness(laminate), flat_frame, {});
}

Eigen::Matrix3d symmetric(double m11, double m12, double m16, double m22, double m26, double m66)
{
  Eigen::Matrix3d m;
  m << m11, m12, m16, m12, m22, m26, m16, m26, m66;
  return m;
}

/// Largest difference over the largest entry.
double difference(const Eigen::Matrix3d& a, const Eigen::Matrix3d& b)
{
  return (a - b).cwiseAbs().maxCoeff() / b.cwiseAbs().maxCoeff();
}

} // namespace

TEST_CASE("plane-stress stiffness of a ply turned by 30 and 60 degrees is the textbook's")
{
  // [Kaw2006] table 2.1 material; values recomputed independently, 8 digits [GPa].
  const auto Q = [](double degrees) -> Eigen::Matrix3d
  { return flat_section(test::solid(test::carbon_epoxy(), 1e-9, degrees)).P[0]; }; // 1e-9 m: N/m to GPa
  CHECK(difference(Q(0), symmetric(181.81114, 2.8969244, 0.0, 10.346159, 0.0, 7.17)) < 1e-7);
  CHECK(difference(Q(30), symmetric(109.37925, 32.462571, 54.192991, 23.646757, 20.053523, 36.735647)) < 1e-7);
  CHECK(difference(Q(60), symmetric(23.646757, 32.462571, 20.053523, 109.37925, 54.192991, 36.735647)) < 1e-7);
  CHECK(difference(Q(-30), symmetric(109.37925, 32.462571, -54.192991, 23.646757, -20.053523, 36.735647)) < 1e-7);
}

TEST_CASE("A, B and D of the textbook laminate [0/30/-45]")
{
  // [Kaw2006] examples 4.2 and 4.3, 5 mm plies, confirmed by recomputation. The book counts plies from the top with z
  // down, we count them from the inside with z outward: its first ply and ours both lie at the least z.
  const SectionStiffness s = flat_section(test::stack(test::carbon_epoxy(), 5e-3, {0, 30, -45}));
  CHECK(difference(s.P[0], symmetric(1.7392409e9, 3.8838641e8, 5.6633731e7, 4.5325351e8, -1.1406361e8, 4.5248254e8)) <
        1e-7);
  CHECK(difference(s.P[1], symmetric(-3.1288338e6, 9.8552155e5, -1.0716561e6, 1.1577907e6, -1.0716561e6, 9.8552155e5)) <
        1e-7);
  CHECK(difference(s.P[2], symmetric(3.3432034e4, 6.4609772e3, -5.2402937e3, 9.3197713e3, -5.5959131e3, 7.6627797e3)) <
        1e-7);
}

TEST_CASE("a laminate of four directions is isotropic in its plane, not in bending")
{
  // [0/45/-45/90]s of 0.125 mm plies, computed independently for this project from the textbook formulas.
  const SectionStiffness s =
      flat_section(test::stack(test::carbon_epoxy(), 0.125e-3, {0, 45, -45, 90, 90, -45, 45, 0}));
  CHECK(difference(s.P[0], symmetric(7.63682177e7, 2.26073555e7, 0, 7.63682177e7, 0, 2.68804311e7)) < 1e-8);
  CHECK((s.P[0](0, 0) - s.P[0](0, 1)) / 2.0 == doctest::Approx(s.P[0](2, 2)).epsilon(1e-12)); // what isotropic means
  CHECK(difference(s.P[2], symmetric(10.6907041, 1.5759708, 0.6697851, 2.6532832, 0.6697851, 1.9320604)) < 1e-7);
  CHECK(s.P[1].cwiseAbs().maxCoeff() < 1e-6);
  const Eigen::Matrix3d a = s.P[0].inverse();
  CHECK(1.0 / (a(0, 0) * 1e-3) == doctest::Approx(69.675741e9).epsilon(1e-7));
  CHECK(-a(0, 1) / a(0, 0) == doctest::Approx(0.29603094).epsilon(1e-7));
}

TEST_CASE("unsymmetric stacks couple stretching with bending or twisting")
{
  // [0/90] and [45/-45], 0.125 mm plies, computed independently for this project from the textbook formulas.
  const SectionStiffness cross = flat_section(test::stack(test::carbon_epoxy(), 0.125e-3, {0, 90}));
  CHECK(difference(cross.P[0], symmetric(2.40196622e7, 7.24231111e5, 0, 2.40196622e7, 0, 1.7925e6)) < 1e-8);
  CHECK(difference(cross.P[1], symmetric(-1339.5701571, 0, 0, 1339.5701571, 0, 0)) < 1e-8);
  CHECK(difference(cross.P[2], symmetric(0.1251024, 0.003772, 0, 0.1251024, 0, 0.0093359)) < 1e-6);
  const SectionStiffness angle = flat_section(test::stack(test::carbon_epoxy(), 0.125e-3, {45, -45}));
  CHECK(difference(angle.P[0], symmetric(1.41644467e7, 1.05794467e7, 0, 1.41644467e7, 0, 1.16477155e7)) < 1e-8);
  CHECK(difference(angle.P[1], symmetric(0, 0, -669.7850786, 0, -669.7850786, 0)) < 1e-8);
  CHECK(difference(angle.P[2], symmetric(0.0737732, 0.0551013, 0, 0.0737732, 0, 0.0606652)) < 1e-6);
}

TEST_CASE("higher moments of a homogeneous ply are those of z^3 and z^4")
{
  const double h = 3e-3;
  const SectionStiffness s = flat_section(test::solid(test::carbon_epoxy(), h, 20));
  CHECK(s.P[3].cwiseAbs().maxCoeff() < 1e-12 * s.P[0].maxCoeff() * h * h * h);
  CHECK(s.P[4].isApprox(s.P[0] * std::pow(h, 4) / 80.0, 1e-12)); // integral of z^4 over h: h^5/80
}

TEST_CASE("plies scale together with the local thickness")
{
  const Laminate laminate = test::stack(test::carbon_epoxy(), 0.125e-3, {0, 30, -45});
  const SectionStiffness s = section_stiffness(laminate, 2.0 * total_thickness(laminate), flat_frame, {});
  const SectionStiffness one = flat_section(laminate);
  for (std::size_t k = 0; k < 5; ++k)
    CHECK(s.P[k].isApprox(std::pow(2.0, static_cast<double>(k) + 1.0) * one.P[k], 1e-12));
  CHECK(s.shear.isApprox(2.0 * one.shear, 1e-12));
}

TEST_CASE("turning the reference axis by the angle of the plies is the same as turning the plies")
{
  const double turn = 0.37;
  const Eigen::Vector3d normal = Eigen::Vector3d(0.2, -0.3, 1.0).normalized();
  const MaterialAxes axes;
  const Eigen::Matrix3d frame = shell_frame(normal, axes);
  // The turned axis lies in the tangent plane, so its projection is itself.
  const MaterialAxes turned = {.axis = Eigen::AngleAxisd(turn, normal) * frame.col(0), .up = normal};
  Laminate laminate = test::stack(test::carbon_epoxy(), 0.2e-3, {0, 50, -20});
  const SectionStiffness there = section_stiffness(laminate, 0.6e-3, shell_frame(normal, turned), turned);
  for (Ply& ply : laminate.plies)
    ply.angle = Angle::radians(ply.angle.in_radians() + turn);
  const SectionStiffness here = section_stiffness(laminate, 0.6e-3, frame, axes);

  // The same strain seen from the two frames: components turn as those of a tensor.
  std::mt19937 random(7);
  std::uniform_real_distribution<double> uniform(-1.0, 1.0);
  const Eigen::Rotation2Dd back(-turn);
  for (int i = 0; i < 5; ++i)
  {
    Eigen::Matrix2d e;
    e << uniform(random), uniform(random), 0.0, uniform(random);
    e(1, 0) = e(0, 1);
    const Eigen::Matrix2d e_turned = back * e * back.inverse();
    const Eigen::Vector3d strain(e(0, 0), e(1, 1), 2.0 * e(0, 1));
    const Eigen::Vector3d strain_turned(e_turned(0, 0), e_turned(1, 1), 2.0 * e_turned(0, 1));
    for (const std::size_t k : {0U, 1U, 2U})
      CHECK(strain.dot(here.P[k] * strain) ==
            doctest::Approx(strain_turned.dot(there.P[k] * strain_turned)).epsilon(1e-11));
  }
}

TEST_CASE("the frame of a point has the projected axis first and the normal last")
{
  const Eigen::Vector3d normal = Eigen::Vector3d(-0.4, 0.3, 1.0).normalized();
  const Eigen::Matrix3d frame = shell_frame(normal, {});
  CHECK((frame.transpose() * frame).isIdentity(1e-14));
  CHECK(frame.determinant() == doctest::Approx(1.0));
  CHECK(frame.col(2).isApprox(normal));
  // e1 lies in the plane of x and the normal, on the side of x: not the tangent in the vertical x-z plane.
  CHECK(std::abs(frame.col(0).dot(normal.cross(Eigen::Vector3d::UnitX()))) < 1e-14);
  CHECK(frame(0, 0) > 0.9);
  CHECK(std::abs(frame(1, 0)) > 0.05);
  const Eigen::Matrix3d wall = shell_frame(Eigen::Vector3d::UnitX(), {});
  CHECK((wall.transpose() * wall).isIdentity(1e-14));
  CHECK(wall.determinant() == doctest::Approx(1.0));
}
