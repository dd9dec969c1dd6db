// SPDX-License-Identifier: MPL-2.0
#include "sample_models.h"

#include <plate/laminates/section.h>

#include <doctest/doctest.h>

#include <Eigen/Geometry>

using namespace plate;

TEST_CASE("moving the reference surface moves B and D by Steiner's rule and leaves the shear stiffness alone")
{
  // z = z' + c: A' = A, B' = B + c A, D' = D + 2 c B + c^2 A; the equilibrium shear stress knows no reference surface.
  Laminate laminate = test::stack(test::carbon_epoxy(), 0.2e-3, {0, 30, 90});
  laminate.plies.push_back({.material = test::reference_balsa(), .thickness = 1.5e-3, .grain = Grain::carved});
  const Eigen::Matrix3d frame = shell_frame(Eigen::Vector3d(0.1, -0.2, 1.0).normalized(), {});
  std::vector<PlacedPly> plies;
  place_plies(laminate, total_thickness(laminate), plies);
  const SectionStiffness here = section_stiffness(plies, frame, {});
  const double c = 0.7e-3;
  for (PlacedPly& ply : plies)
  {
    ply.bottom += c;
    ply.top += c;
  }
  const SectionStiffness moved = section_stiffness(plies, frame, {});
  const auto& P = here.P;
  CHECK((moved.P[0] - P[0]).norm() < 1e-12 * P[0].norm());
  CHECK((moved.P[1] - (P[1] + c * P[0])).norm() < 1e-12 * c * P[0].norm());
  CHECK((moved.P[2] - (P[2] + 2.0 * c * P[1] + c * c * P[0])).norm() < 1e-12 * c * c * P[0].norm());
  CHECK((moved.shear - here.shear).norm() < 1e-9 * here.shear.norm());
  CHECK((moved.G0 - here.G0).norm() < 1e-9 * here.G0.norm());
  CHECK((moved.G1 - (here.G1 + c * here.G0)).norm() < 1e-9 * c * here.G0.norm());
  CHECK(section_mass(plies)[0] == doctest::Approx(areal_mass(laminate)));
}
