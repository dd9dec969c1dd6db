// SPDX-License-Identifier: MPL-2.0
#include "read_geometry.h"

#include "located.h"

#include <plate/core/error.h>

#include <cmath>
#include <variant>

namespace plate
{
namespace
{

Arching read_arching(const TableReader& root, const Outline& outline, PointParts& parts)
{
  const TableReader table = root.table("arching");
  const std::string kind = table.word("kind", "flat");
  table.check_kind(kind);
  if (kind == "flat")
    return FlatArching{};
  if (kind == "points")
    return parts.arching(table, outline);
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
                         const Setup& setup, PointParts& parts)
{
  const std::string kind = table.text("kind");
  table.check_kind(kind);
  if (kind == "f")
    return read_f_hole(table, setup_table, outline, setup);
  if (kind == "points")
  {
    const std::string number = table.path().substr(table.path().rfind('.') + 1);
    return CurveHole{.loop = parts.curve(table, "soundhole " + number), .mirror = table.flag("mirror", true)};
  }
  return Slot{.centre = point(table.numbers("centre")),
              .length = table.number("length"),
              .width = table.number("width"),
              .angle = Angle::radians(table.number("angle")),
              .mirror = table.flag("mirror", true)};
}

/// Bouts, or measured: nobody measures a rectangle.
bool is_body(const Outline& outline)
{
  return std::holds_alternative<BoutsOutline>(outline) || std::holds_alternative<CurveOutline>(outline);
}

Outline read_outline_of_kind(const TableReader& table, const std::string& kind, PointParts& parts)
{
  if (kind == "points")
  {
    const CurveLoop loop = parts.curve(table, "outline");
    return located(table, "file", [&] { return curve_outline(loop); });
  }
  const double length = table.number("length");
  if (kind == "rectangle")
    return RectangleOutline{length, table.number("width")};
  if (kind == "ellipse")
    return EllipseOutline{length, table.number("width")};
  return BoutsOutline{length, table.number("lower_bout"), table.number("centre_bout"), table.number("upper_bout")};
}

ThicknessMap read_measured_thickness(const TableReader& table, const Outline& outline, double scale, PointParts& parts)
{
  SurfaceThickness map = parts.thickness(table, outline);
  map.scale = scale;
  located(table, "file", [&] { static_cast<void>(ThicknessField(outline, map)); });
  return map;
}

} // namespace

Outline read_outline(const TableReader& root, PointParts& parts)
{
  const TableReader table = root.table("outline");
  if (!table.exists())
    table.fail_here("missing; the table [outline] gives kind, length and widths of the plate");
  const std::string kind = table.text("kind");
  table.check_kind(kind);
  return located(table,
                 [&]
                 {
                   Outline outline = read_outline_of_kind(table, kind, parts);
                   static_cast<void>(outline_loop(outline)); // checks the measures
                   return outline;
                 });
}

Setup read_setup(const TableReader& root, const Outline& outline)
{
  // Shares of the body length: common practice for violin and viola, see the help of the keys.
  const TableReader table = root.table("setup");
  const double length = outline_length(outline);
  const double stop = table.optional_number("stop").value_or(length * (is_body(outline) ? 0.549 : 0.5));
  if (stop >= length)
    table.fail("stop", message("lies outside the plate, which is ", length * 1e3, " mm long"));
  return {.bridge_x = length / 2.0 - stop,
          .string_length = table.optional_number("string_length").value_or(0.926 * length),
          .bridge_feet = table.optional_number("bridge_feet").value_or(0.084 * length)};
}

ThicknessMap read_thickness(const TableReader& root, const Outline& outline, PointParts& parts)
{
  const double scale = root.table("layup").number("scale");
  const TableReader table = root.table("thickness");
  const std::string kind = table.word("kind", "uniform");
  table.check_kind(kind);
  if (kind == "uniform")
    return UniformThickness{scale * table.number("value")};
  if (kind == "points")
    return read_measured_thickness(table, outline, scale, parts);
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
                            const ThicknessMap& thickness, PointParts& parts)
{
  // Parts join one by one, so that what does not fit is reported where it is written.
  PlateGeometry geometry{
      .outline = outline, .arching = FlatArching{}, .thickness = thickness, .soundholes = {}, .bar = {}};
  located(root.table("outline"), [&] { check_geometry(geometry); });
  geometry.arching = read_arching(root, outline, parts);
  located(root.table("arching"), [&] { check_geometry(geometry); });
  constexpr std::size_t most_holes = 30; // with their mirror images; each is checked against all others
  const std::vector<TableReader> holes = root.tables("soundhole");
  if (holes.size() > most_holes)
    holes[most_holes].fail_here(message("one of ", holes.size(), " soundholes; at most ", most_holes, " are allowed"));
  for (const TableReader& hole : holes)
    located(hole,
            [&]
            {
              geometry.soundholes.push_back(read_soundhole(hole, root.table("setup"), outline, setup, parts));
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
