// SPDX-License-Identifier: MPL-2.0
// A round body under pressure beside shells of revolution: joints, thrust of the arches on the ribs, overhang.
#include "body_compliance.h"
#include "relative.h"
#include "shell_of_revolution.h"
#include "temporary_folder.h"

#include <plate/design/body_document.h>
#include <plate/design/build_body.h>

#include <doctest/doctest.h>

#include <fstream>
#include <numbers>
#include <string>
#include <vector>

using namespace plate;

namespace
{

constexpr double radius = 103.1; // of the plates [mm]
constexpr double rib_height = 38.0;
constexpr double rib_thickness = 4.0;
constexpr double overhang = 1.1;

/// Rise of the arch and thickness [mm].
struct Cap
{
  double rise, thickness;
};

const std::string material = "[material.even]\nE1 = 10\nE2 = 10\nE3 = 10\nG12 = 4\nG13 = 4\nG23 = 4\nnu12 = 0.25\n"
                             "nu13 = 0.25\nnu23 = 0.25\ndensity = 400\n";

std::string plate_text(const Cap& cap)
{
  const std::string width = std::to_string(2.0 * radius);
  const std::string arch =
      cap.rise > 0.0 ? "kind = \"elliptic\"\nheight = " + std::to_string(cap.rise) : "kind = \"flat\"";
  return "[outline]\nkind = \"ellipse\"\nlength = " + width + "\nwidth = " + width + "\n[arching]\n" + arch +
         "\n[thickness]\nvalue = " + std::to_string(cap.thickness) +
         "\n[layup]\nsolid = \"even\"\ngrain = \"follows\"\n" + material;
}

double body_compliance(const Cap& top, const Cap& back)
{
  const test::TemporaryFolder folder;
  std::ofstream(folder / "top.toml") << plate_text(top);
  std::ofstream(folder / "back.toml") << plate_text(back);
  const std::string text =
      "[body]\ntop = \"top.toml\"\nback = \"back.toml\"\n[ribs]\nheight = " + std::to_string(rib_height) +
      "\nthickness = " + std::to_string(rib_thickness) + "\noverhang = " + std::to_string(overhang) +
      "\nmaterial = \"even\"\n[linings]\nheight = 0\n[blocks]\nend = [0, 0]\ncorner = [0, 0]\n"
      "[mesh]\nsize = 20\n" +
      material;
  const BodyModel model = build_body(BodyDocument::from_text(text, "body.toml", {.folder = folder.path()}).design());
  return test::under_pressure(model.body, assemble(model.body)).work;
}

/// A paraboloid; returns its nodes from the crown to where the ribs stand.
std::vector<int> add_cap(test::ShellOfRevolution& shell, const Cap& cap, double z, double up)
{
  constexpr int inner = 2000; // elements inside the ribs
  constexpr int outer = 60;
  constexpr double rib = radius - overhang - 0.5 * rib_thickness;
  std::vector<int> nodes;
  for (int k = 0; k <= inner + outer; ++k)
  {
    const double r = k <= inner ? rib * k / inner : rib + (radius - rib) * (k - inner) / outer;
    nodes.push_back(shell.add_node(1e-3 * r, 1e-3 * (z + up * cap.rise * (1.0 - r * r / (radius * radius)))));
    if (k > 0 && up > 0.0)
      shell.add_element(nodes[nodes.size() - 2], nodes.back(), 1e-3 * cap.thickness);
    if (k > 0 && up < 0.0)
      shell.add_element(nodes.back(), nodes[nodes.size() - 2], 1e-3 * cap.thickness);
  }
  nodes.resize(inner + 1);
  return nodes;
}

double revolved_compliance(const Cap& top, const Cap& back, double wall = rib_thickness)
{
  test::ShellOfRevolution shell(10e9, 0.25);
  // Rims are apart by the ribs and half of either thickness; ribs reach from mid-surface to mid-surface.
  const int upper = add_cap(shell, top, 0.0, 1.0).back();
  const int lower = add_cap(shell, back, -rib_height - 0.5 * (top.thickness + back.thickness), -1.0).back();
  constexpr int count = 1000;
  int last = upper;
  for (int k = 1; k <= count; ++k)
  {
    const double z = shell.at(upper).y() + (shell.at(lower).y() - shell.at(upper).y()) * k / count;
    const int next = k == count ? lower : shell.add_node(shell.at(upper).x(), z);
    shell.add_element(last, next, 1e-3 * wall);
    last = next;
  }
  return shell.compliance();
}

} // namespace

TEST_CASE("shells of revolution know the clamped round plate")
{
  // Ribs a metre thick turn and move by nothing that counts; plates of radius R = 100 mm then swell by pi R^6 / (192 D)
  // in bending and pi R^4 / (8 S) in shear (Timoshenko and Woinowsky-Krieger, from memory).
  const Cap flat = {.rise = 0.0, .thickness = 3.0};
  const double D = 10e9 * 27e-9 / (12.0 * (1.0 - 0.0625));
  const double S = 5.0 / 6.0 * 4e9 * 3e-3;
  const double one = std::numbers::pi * (1e-6 / (192.0 * D) + 1e-4 / (8.0 * S));
  CHECK(revolved_compliance(flat, flat, 1000.0) == test::relative(2.0 * one, 1e-3));
}

TEST_CASE("a round body swells under pressure as shells of revolution do")
{
  const std::vector<std::vector<Cap>> bodies = {{{0.0, 3.0}, {0.0, 2.5}}, {{15.0, 3.0}, {10.0, 2.5}}};
  for (const std::vector<Cap>& plates : bodies)
  {
    const double expected = revolved_compliance(plates[0], plates[1]);
    const double computed = body_compliance(plates[0], plates[1]);
    MESSAGE("rise ", plates[0].rise, " mm: ", computed, " of ", expected, " m3/Pa");
    // The elements of revolution leave out the curvature through the thickness, of the order h/R = 0.8 %.
    CHECK(computed == test::relative(expected, 4e-3));
  }
}
