// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_models.h"

#include <plate/core/error.h>

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <string>

using namespace plate;

namespace
{

std::string complaint(const Laminate& laminate)
{
  try
  {
    check_laminate(laminate);
  }
  catch (const InvalidInput& error)
  {
    return error.what();
  }
  return "";
}

Laminate sandwich()
{
  return {{{.material = test::reference_carbon(), .thickness = 0.2e-3},
           {.material = test::reference_balsa(), .thickness = 2.0e-3},
           {.material = test::reference_carbon(), .thickness = 0.3e-3}}};
}

} // namespace

TEST_CASE("thickness and areal mass add up over the plies")
{
  // 0.5 mm at 1580 kg/m3 and 2 mm at 100 kg/m3.
  CHECK(total_thickness(sandwich()) == test::relative(2.5e-3));
  CHECK(areal_mass(sandwich()) == doctest::Approx(0.79 + 0.2));
}

TEST_CASE("mass moments follow the places of the plies and scale with the local thickness")
{
  // Plies between -1.25, -1.05, 0.95 and 1.25 mm.
  const SectionMass mass = section_mass(sandwich(), 2.5e-3);
  CHECK(mass[0] == doctest::Approx(0.99));
  CHECK(mass[1] == test::relative(0.5e-6 * (1580 * (1.05 * 1.05 - 1.25 * 1.25) + 100 * (0.95 * 0.95 - 1.05 * 1.05) +
                                            1580 * (1.25 * 1.25 - 0.95 * 0.95))));
  const SectionMass halved = section_mass(sandwich(), 1.25e-3);
  for (std::size_t k = 0; k < mass.size(); ++k)
    CHECK(halved[k] == test::relative(mass[k] / std::pow(2.0, static_cast<double>(k) + 1.0)));
}

TEST_CASE("a laminate that cannot be is refused with the ply at fault")
{
  CHECK(complaint(sandwich()) == "");
  CHECK(complaint({}).find("at least one ply") != std::string::npos);
  Laminate bad = sandwich();
  bad.plies[1].thickness = 0.0;
  CHECK(complaint(bad).find("ply 2 (balsa): thickness") != std::string::npos);
  bad = sandwich();
  bad.plies[2].angle = Angle::degrees(std::numeric_limits<double>::quiet_NaN());
  CHECK(complaint(bad).find("ply 3 (carbon): angle") != std::string::npos);
  bad = sandwich();
  bad.plies[0].material.density = -1.0;
  CHECK(complaint(bad).find("ply 1 (carbon): density") != std::string::npos);
  bad = sandwich();
  bad.plies[1].material.elastic.E2 = 0.0;
  CHECK(complaint(bad).find("ply 2 (balsa): elastic constants: E2") != std::string::npos);
}

TEST_CASE("only a carved ply makes the section depend on the slope")
{
  Laminate laminate = sandwich();
  CHECK(follows_surface(laminate));
  laminate.plies[1].grain = Grain::carved;
  CHECK_FALSE(follows_surface(laminate));
}
