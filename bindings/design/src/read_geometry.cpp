// SPDX-License-Identifier: MPL-2.0
#include "read_geometry.h"

#include <plate/core/error.h>

#include <cmath>
#include <variant>

namespace plate
{
namespace
{

/// Runs a check of the geometry and puts the place in front of what it finds.
template <class Check>
void located(const TableReader& table, const Check& check)
{
  try
  {
    check();
  }
  catch (const InvalidInput& error)
  {
    table.fail_here(error.what());
  }
}

Arching read_arching(const TableReader& root)
{
  const TableReader table = root.table("arching");
  const std::string kind = table.word("kind", "flat");
  table.check_kind(kind);
  if (kind == "flat")
    return FlatArching{};
  const double height = table.number("height");
  if (kind == "cycloid")
    return CycloidArching{height};
  if (kind == "biparabolic")
    return BiparabolicArching{height};
  return EllipticArching{height};
}

Eigen::Vector2d point(const std::vector<double>& xy)
{
  return {xy[0], xy[1]};
}

FHole read_f_hole(const TableReader& table, const TableReader& setup_table, const Outline& outline, const Setup& setup)
{
  FHole hole{.length = table.optional_number("length"),
             .where = std::nullopt,
             .upper_eye = table.optional_number("upper_eye"),
             .lower_eye = table.optional_number("lower_eye"),
             .stem = table.optional_number("stem"),
             .tilt = std::nullopt,
             .mirror = table.flag("mirror", true)};
  if (const std::optional<double> tilt = table.optional_number("tilt"))
    hole.tilt = Angle::radians(*tilt);
  if (table.has("where"))
    hole.where = point(table.numbers("where"));
  else if (setup_table.has("stop")) // the nicks show where the bridge stands
    hole.where = Eigen::Vector2d(setup.bridge_x, f_hole_with_defaults(hole, outline).where->y());
  return hole;
}

Soundhole read_soundhole(const TableReader& table, const TableReader& setup_table, const Outline& outline,
                         const Setup& setup)
{
  const std::string kind = table.text("kind");
  table.check_kind(kind);
  if (kind == "f")
    return read_f_hole(table, setup_table, outline, setup);
  return Slot{.centre = point(table.numbers("centre")),
              .length = table.number("length"),
              .width = table.number("width"),
              .angle = Angle::radians(table.number("angle")),
              .mirror = table.flag("mirror", true)};
}

bool is_bouts(const Outline& outline)
{
  return std::holds_alternative<BoutsOutline>(outline);
}

} // namespace

Outline read_outline(const TableReader& root)
{
  const TableReader table = root.table("outline");
  if (!table.exists())
    table.fail_here("missing; the table [outline] gives kind, length and widths of the plate");
  const std::string kind = table.text("kind");
  table.check_kind(kind);
  const double length = table.number("length");
  if (kind == "rectangle")
    return RectangleOutline{length, table.number("width")};
  if (kind == "ellipse")
    return EllipseOutline{length, table.number("width")};
  return BoutsOutline{length, table.number("lower_bout"), table.number("centre_bout"), table.number("upper_bout")};
}

Setup read_setup(const TableReader& root, const Outline& outline)
{
  // Shares of the body length: common practice for violin and viola, see the help of the keys.
  const TableReader table = root.table("setup");
  const double length = outline_length(outline);
  const double stop = table.optional_number("stop").value_or(length * (is_bouts(outline) ? 0.549 : 0.5));
  if (stop >= length)
    table.fail("stop", message("lies outside the plate, which is ", length * 1e3, " mm long"));
  return {.bridge_x = length / 2.0 - stop,
          .string_length = table.optional_number("string_length").value_or(0.926 * length),
          .bridge_feet = table.optional_number("bridge_feet").value_or(0.084 * length)};
}

ThicknessMap read_thickness(const TableReader& root, double scale)
{
  const TableReader table = root.table("thickness");
  const std::string kind = table.word("kind", "uniform");
  table.check_kind(kind);
  if (kind == "uniform")
    return UniformThickness{scale * table.number("value")};
  return GraduatedThickness{.centre = scale * table.number("centre"),
                            .bouts = scale * table.number("bouts"),
                            .channel = scale * table.number("channel"),
                            .edge = scale * table.number("edge")};
}

BarFootprintShape read_bar_footprint(const TableReader& bar, double bridge_x)
{
  const Angle angle = Angle::radians(bar.number("angle"));
  const double centre = bar.number("centre");
  return {.centre = centre,
          .offset = bar.number("offset"),
          .length = bar.number("length"),
          .width = bar.number("width"),
          .angle = angle,
          .apex = (bridge_x - centre) / std::cos(angle.in_radians())};
}

PlateGeometry read_geometry(const TableReader& root, const Outline& outline, const Setup& setup,
                            const ThicknessMap& thickness)
{
  // Parts join one by one, so that what does not fit is reported where it is written.
  PlateGeometry geometry{
      .outline = outline, .arching = FlatArching{}, .thickness = thickness, .soundholes = {}, .bar = {}};
  located(root.table("outline"), [&] { check_geometry(geometry); });
  geometry.arching = read_arching(root);
  located(root.table("arching"), [&] { check_geometry(geometry); });
  constexpr std::size_t most_holes = 30; // with their mirror images; each is checked against all others
  const std::vector<TableReader> holes = root.tables("soundhole");
  if (holes.size() > most_holes)
    holes[most_holes].fail_here(message("one of ", holes.size(), " soundholes; at most ", most_holes, " are allowed"));
  for (const TableReader& hole : holes)
    located(hole,
            [&]
            {
              geometry.soundholes.push_back(read_soundhole(hole, root.table("setup"), outline, setup));
              check_geometry(geometry);
            });
  if (const TableReader bar = root.table("bar"); bar.exists())
  {
    geometry.bar = read_bar_footprint(bar, setup.bridge_x);
    located(bar, [&] { check_geometry(geometry); });
  }
  return geometry;
}

} // namespace plate
