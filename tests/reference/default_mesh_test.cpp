// SPDX-License-Identifier: MPL-2.0
// What the project claims of a plate as a user computes it: a design file without [mesh], so on the mesh it gets by
// default, against three-dimensional elasticity. Values of the cases "3D ..." of the validation, which computes them on
// grids of its own; the tolerances here are the claims [%].
#include <plate/assembly/assemble.h>
#include <plate/design/build_model.h>
#include <plate/design/design_document.h>
#include <plate/solvers/modal.h>
#include <plate/validation/reference_case.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

using namespace plate;

namespace
{

/// Constants of the cases, source as for their values.
const std::string materials = R"(
[material.wood]
E1 = 11.0
E2 = 0.858
E3 = 0.473
G12 = 0.704
G13 = 0.671
G23 = 0.033
nu12 = 0.372
nu13 = 0.467
nu23 = 0.435
density = 400.0
[material.carbon]
E1 = 142.0
E2 = 10.3
E3 = 10.3
G12 = 7.2
G13 = 7.2
G23 = 3.8
nu12 = 0.27
nu13 = 0.27
nu23 = 0.40
density = 1580.0
[material.core]
E1 = 0.060
E2 = 0.060
E3 = 3.0
G12 = 0.030
G13 = 0.110
G23 = 0.110
nu12 = 0.3
nu13 = 0.0005
nu23 = 0.0005
density = 100.0
)";

const std::string flat = "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[arching]\nkind = \"flat\"\n";
const std::string arched =
    "[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n[arching]\nkind = \"biparabolic\"\nheight = 15\n";
const std::string carved = "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"wood\"\n";
const std::string laid = carved + "grain = \"follows\"\n";
const std::string bar = "[setup]\nstop = 175\n[bar]\nmaterial = \"wood\"\nlength = 250\nwidth = 6\nheight = 12\n"
                        "end_height = 3\noffset = 20\n"; // highest at x = 0

std::string skins_on(const std::string& core)
{
  const std::string skin = "{ material = \"carbon\", thickness = 0.2 }";
  return "[layup]\nplies = [" + skin + ", " + core + ", " + skin + "]\n";
}

Design read(const std::string& text)
{
  return DesignDocument::from_text(text + materials, "claim.toml").design();
}

/// A rectangle cut through the plate, given by opposite corners.
CurveHole rectangle(const Eigen::Vector2d& low, const Eigen::Vector2d& high)
{
  const std::vector<Eigen::Vector2d> corners = {low, {low.x(), high.y()}, high, {high.x(), low.y()}};
  CurveHole hole;
  for (std::size_t i = 0; i < corners.size(); ++i)
    hole.loop.pieces.push_back(line(corners[i], corners[(i + 1) % corners.size()]));
  hole.mirror = true;
  return hole;
}

Design cut(Design design)
{
  design.geometry.soundholes = {rectangle({-0.055, 0.052}, {0.015, 0.060})};
  return design;
}

/// Largest difference of the modes of a case [%].
double difference(const std::string& name, const Design& design)
{
  const auto& cases = validation::reference_cases();
  const auto reference = std::find_if(cases.begin(), cases.end(), [&](const auto& c) { return c.name == name; });
  REQUIRE(reference != cases.end());
  const System system = assemble(build_model(design));
  const Eigen::VectorXd f = solve_modes(system, {.num_modes = 12}).frequencies_hz;
  double largest = 0.0;
  int compared = 0;
  for (Eigen::Index mode = 0; mode < 12; ++mode)
    for (const validation::ReferenceValue& value : reference->values)
      if (value.quantity == "f" + std::to_string(mode + 1) + "_hz")
      {
        largest = std::max(largest, std::abs(f(mode) / value.value - 1.0) * 100.0);
        ++compared;
      }
  REQUIRE(compared == 12);
  MESSAGE(name, ": largest difference ", largest, " %, ", system.K.rows(), " unknowns");
  return largest;
}

void check_claim(const std::string& name, const Design& design, double claim)
{
  const double found = difference(name, design);
  CHECK_MESSAGE(found < claim, name, ": ", found, " %");
}

} // namespace

TEST_CASE("spruce, flat and arched, on the default mesh")
{
  check_claim("3D flat spruce", read(flat + carved), 0.05);
  check_claim("3D laid spruce", read(arched + laid), 0.05);
  check_claim("3D carved spruce", read(arched + carved), 0.1);
}

TEST_CASE("laminates on the default mesh")
{
  const std::string code = "[layup]\ncode = \"[0/60/-60]s\"\nply = { material = \"carbon\", thickness = 0.25 }\n";
  check_claim("3D carbon [0/60/-60]s", read(arched + code), 0.25);
  check_claim("3D carbon on balsa", read(arched + skins_on("{ material = \"core\", thickness = 2.0 }")), 0.05);
  const std::string core = "{ material = \"wood\", thickness = 1.8, grain = \"carved\" }";
  check_claim("3D carbon on carved spruce", read(arched + skins_on(core)), 0.1);
}

TEST_CASE("cut-outs and bar on the default mesh")
{
  check_claim("3D carved spruce with cut-outs", cut(read(arched + carved)), 0.1);
  check_claim("3D laid spruce with cut-outs", cut(read(arched + laid)), 0.1);
  check_claim("3D carved spruce with bar", read(arched + carved + bar), 0.5);
  check_claim("3D carved spruce with bar and cut-outs", cut(read(arched + carved + bar)), 0.5);
}
