// SPDX-License-Identifier: MPL-2.0
#include <plate/design/starter.h>

#include "../plain_text.h"
#include "measures.h"
#include "writer.h"

#include <plate/core/error.h>
#include <plate/design/keys.h>
#include <plate/materials/library.h>
#include <plate/meshes/soundhole.h>

#include <array>
#include <cstddef>
#include <sstream>
#include <vector>

namespace plate
{
namespace
{

using Lines = std::vector<StarterLine>;

constexpr double mm = 1e-3;

/// At most four digits that count: more would promise what typical data cannot keep.
std::string written(double value)
{
  std::ostringstream out;
  out.precision(4);
  out << value;
  const std::string text = out.str();
  return text.find_first_of(".e") == std::string::npos ? text + ".0" : text;
}

StarterLine measured(const char* key, const Measure& measure)
{
  return {.key = key, .value = written(measure.value), .note = message("Usual: ", measure.usual)};
}

void append(Lines& lines, const Lines& more)
{
  lines.insert(lines.end(), more.begin(), more.end());
}

Lines shape_lines(const FamilyMeasures& m)
{
  const std::string over_all = message("Usual with the edge: ", m.overall_arching.usual, ", here ",
                                       written(m.overall_arching.value), " less an edge of ", written(m.edge.value));
  return {{.key = "outline.kind", .value = in_quotes("bouts")},
          measured("outline.length", m.length),
          measured("outline.lower_bout", m.lower_bout),
          measured("outline.centre_bout", m.centre_bout),
          measured("outline.upper_bout", m.upper_bout),
          {.key = "arching.kind", .value = in_quotes("cycloid")},
          {.key = "arching.height", .value = written(m.overall_arching.value - m.edge.value), .note = over_all}};
}

Lines thickness_lines(const FamilyMeasures& m)
{
  return {{.key = "thickness.kind", .value = in_quotes("graduated")},
          measured("thickness.centre", m.centre),
          measured("thickness.bouts", m.bouts),
          measured("thickness.channel", m.channel),
          measured("thickness.edge", m.edge)};
}

Lines hole_lines(const FamilyMeasures& m)
{
  const BoutsOutline outline{.length = m.length.value * mm,
                             .lower_bout = m.lower_bout.value * mm,
                             .centre_bout = m.centre_bout.value * mm,
                             .upper_bout = m.upper_bout.value * mm};
  const FHole hole = f_hole_with_defaults({.length = m.hole.value * mm}, outline);
  const double bridge_x = 0.5 * m.length.value - m.stop.value; // [mm]
  const auto own = [](const char* key, std::string value)
  { return StarterLine{.key = key, .value = std::move(value), .note = "Without it as here", .optional = true}; };
  return {{.key = "soundhole.1.kind", .value = in_quotes("f")},
          measured("soundhole.1.length", m.hole),
          own("soundhole.1.where", message("[", written(bridge_x), ", ", written(hole.where->y() / mm), "]")),
          own("soundhole.1.upper_eye", written(*hole.upper_eye / mm)),
          own("soundhole.1.lower_eye", written(*hole.lower_eye / mm)),
          own("soundhole.1.stem", written(*hole.stem / mm)),
          own("soundhole.1.tilt", written(hole.tilt->in_degrees()))};
}

Lines bridge_and_bar_lines(const FamilyMeasures& m)
{
  return {measured("setup.stop", m.stop),
          measured("setup.string_length", m.string_length),
          measured("setup.bridge_feet", m.bridge_feet),
          {.key = "bar.material", .value = in_quotes("spruce")},
          measured("bar.length", m.bar_length),
          measured("bar.width", m.bar_width),
          measured("bar.height", m.bar_height),
          {.key = "bar.end_height", .value = "3.5", .note = "Usual: 3 to 4"},
          {.key = "bar.profile", .value = in_quotes("rounded")},
          measured("bar.offset", m.bar_offset)};
}

/// Spruce as makers choose it; the ranges are common practice, no source.
Lines spruce_lines()
{
  return {{.key = "material.spruce.E1", .value = "11.5", .note = "Usual: 11 to 13, found: 9 to 16"},
          {.key = "material.spruce.E2", .value = "0.75", .note = "Usual: 0.6 to 1.1"},
          {.key = "material.spruce.E3", .value = "0.46", .note = "Usual: 0.4 to 0.6"},
          {.key = "material.spruce.G12", .value = "0.70", .note = "Usual: 0.6 to 1.0"},
          {.key = "material.spruce.G13", .value = "0.66", .note = "Usual: 0.55 to 0.9"},
          {.key = "material.spruce.G23", .value = "0.034", .note = "Usual: 0.03 to 0.05"},
          {.key = "material.spruce.nu12", .value = "0.38", .note = "Usual: 0.35 to 0.45"},
          {.key = "material.spruce.nu13", .value = "0.47"},
          {.key = "material.spruce.nu23", .value = "0.44"},
          {.key = "material.spruce.density", .value = "405.0", .note = "Usual: 380 to 480; weigh your board"},
          {.key = "material.spruce.loss",
           .value = "[0.8, 2.0, 2.0, 1.7, 1.7, 2.0]",
           .note = "Usual: 0.6 to 1.0 along, 1.8 to 2.5 across, 1.5 to 2 in shear"}};
}

/// The constants of a built-in material, to be replaced by one's own.
Lines built_in_lines(const std::string& name)
{
  constexpr double gpa = 1e9;
  const Material& m = *find_material(name);
  const OrthotropicElastic& e = m.elastic;
  const LossFactors& loss = m.loss;
  std::string losses;
  for (const double factor : {loss.E1, loss.E2, loss.E3, loss.G12, loss.G13, loss.G23})
    losses += message(losses.empty() ? "" : ", ", written(100.0 * factor));
  const std::string table = "material." + name + ".";
  Lines lines = {{.key = table + "E1", .value = written(e.E1 / gpa), .note = "As built in, like all below"},
                 {.key = table + "E2", .value = written(e.E2 / gpa)},
                 {.key = table + "E3", .value = written(e.E3 / gpa)},
                 {.key = table + "G12", .value = written(e.G12 / gpa)},
                 {.key = table + "G13", .value = written(e.G13 / gpa)},
                 {.key = table + "G23", .value = written(e.G23 / gpa)},
                 {.key = table + "nu12", .value = written(e.nu12)},
                 {.key = table + "nu13", .value = written(e.nu13)},
                 {.key = table + "nu23", .value = written(e.nu23)},
                 {.key = table + "density", .value = written(m.density)},
                 {.key = table + "loss", .value = message("[", losses, "]")}};
  if (m.core)
    lines.push_back({.key = table + "core", .value = "true"});
  return lines;
}

Lines balsa_lines()
{
  return {{.key = "material.balsa.density",
           .value = "150.0",
           .note = "Heavier than the built-in balsa by the resin it drinks; all else as built in"}};
}

constexpr const char* flax_angle = "20.0"; // along for stiffness, aside for the stiffness across and in shear

std::string flax_plies(const FamilyMeasures& m)
{
  const auto ply = [](const char* material, double thickness, const std::string& angle)
  {
    return message("  { material = \"", material, "\", thickness = ", written(thickness), ", angle = ", angle, " },\n");
  };
  const std::string left = ply("flax_ud", m.flax, flax_angle);
  const std::string right = ply("flax_ud", m.flax, message("-", flax_angle));
  return "[\n" + left + right + ply("balsa", m.core, "0.0") + right + left + "]";
}

Lines layup_lines(PlateMake make)
{
  if (make == PlateMake::laminate)
    return {{.key = "layup.scale", .value = "1.0", .note = "What a sweep of the laminate's thickness changes"},
            {.key = "layup.scale_core", .value = "1.0"}};
  return {{.key = "layup.solid", .value = in_quotes("spruce")}, {.key = "layup.grain", .value = in_quotes("carved")}};
}

std::string stuff(PlateMake make)
{
  return make == PlateMake::wood ? "spruce" : "flax laminate";
}

std::string capital(std::string_view word)
{
  std::string text(word);
  text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text;
}

constexpr const char* notes =
    R"(# Measures and constants are common practice of the trade, typical or invented; they describe no instrument
# that exists and promise nothing about yours. Lengths in mm, moduli in GPa, density in kg/m3, angles in degrees.
# x runs along the body to the neck, y to the bass side of the top, z outward; origin at half the length.
# A key behind # is optional; the value beside it is its default, or an example where the comment says what
# holds without it. Further keys of materials, and all others: REFERENCE.md.
# The first line is for editors that check TOML; plate start --out DIR writes the schema beside the design.
)";

std::string head(const FamilyMeasures& m, PlateMake make)
{
  return message("#:schema ./design.schema.json\n# A ", m.name, " top of ", stuff(make),
                 " to begin with: put in what you measured, and change what you like.\n", notes, "\n");
}

} // namespace

std::span<const std::string> family_names()
{
  static const std::array<std::string, 3> names = {"violin", "viola", "cello"};
  return names;
}

std::span<const std::string> make_names()
{
  static const std::array<std::string, 2> names = {"wood", "laminate"};
  return names;
}

std::string starter_design(InstrumentFamily family, PlateMake make)
{
  const FamilyMeasures& m = family_measures(family);
  const bool wood = make == PlateMake::wood;
  Lines lines = {
      {.key = "title", .value = in_quotes(message(capital(m.name), " top of ", stuff(make), " (typical data)"))}};
  append(lines, shape_lines(m));
  if (wood)
    append(lines, thickness_lines(m));
  append(lines, hole_lines(m));
  append(lines, bridge_and_bar_lines(m));
  append(lines, spruce_lines());
  if (!wood)
  {
    append(lines, built_in_lines("flax_ud"));
    append(lines, balsa_lines());
  }
  append(lines, layup_lines(make));
  return head(m, make) + write_starter(lines, wood ? std::string() : flax_plies(m));
}

} // namespace plate
