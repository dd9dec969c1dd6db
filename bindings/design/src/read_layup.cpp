// SPDX-License-Identifier: MPL-2.0
#include "read_layup.h"

#include "located.h"
#include "point_parts.h"

#include <plate/core/error.h>
#include <plate/laminates/laminate_code.h>

#include <array>
#include <cstddef>

namespace plate
{
namespace
{

/// The one of solid, code, plies that the table gives.
std::string_view layup_way(const TableReader& layup)
{
  constexpr std::array<std::string_view, 3> ways = {"solid", "code", "plies"};
  std::string_view found;
  for (const std::string_view way : ways)
  {
    if (!layup.has(way))
      continue;
    if (!found.empty())
      layup.fail(way, message("contradicts layup.", found, "; give one of solid, code, plies"));
    found = way;
  }
  if (found.empty())
    layup.fail_here(layup.exists() ? "one of solid, code, plies must be given"
                                   : "missing; the table [layup] says what the plate is made of");
  return found;
}

void check_companions(const TableReader& layup, std::string_view way)
{
  for (const std::string_view key : {"angle", "grain"})
    if (layup.has(key) && way != "solid")
      layup.fail(key, message("belongs to a solid plate; with layup.", way, " each ply has its own"));
  if (layup.has("ply") && way != "code")
    layup.fail("ply", message("belongs to layup.code and is not used with layup.", way));
}

double ply_thickness(const TableReader& ply, const StockMaterial& stock)
{
  if (const std::optional<double> given = ply.optional_number("thickness"))
    return *given;
  return stock.sheet_thickness ? *stock.sheet_thickness : ply.number("thickness");
}

/// Thickness of a solid plate where one number must do: in the middle, or of half the points measured.
double typical_thickness(const TableReader& thickness, PointFiles& files)
{
  const std::string kind = thickness.word("kind", "uniform");
  if (kind == "points")
    return located(thickness, "file", [&] { return files.median_thickness(thickness.text("file")); });
  return thickness.number(kind == "uniform" ? "value" : "centre");
}

Laminate read_solid(const TableReader& root, const TableReader& layup, const MaterialStock& stock, PointFiles& files)
{
  const TableReader thickness = root.table("thickness");
  if (!thickness.exists())
    thickness.fail_here("missing; a solid plate needs the table [thickness], e.g. value = 2.8");
  const StockMaterial& material = stock.named_by(layup, "solid");
  const bool carved = layup.word("grain", "carved") == "carved";
  if (carved && material.same_across_fibre)
    layup.fail("solid", message("carved wood needs E3, G13, G23, nu13, nu23 of its own; material.",
                                material.material.name, " gives none (or set layup.grain = \"follows\")"));
  return {{{.material = material.material,
            .thickness = typical_thickness(thickness, files),
            .angle = Angle::radians(layup.number("angle")),
            .grain = carved ? Grain::carved : Grain::laid}}};
}

} // namespace

Laminate read_ply_list(const TableReader& owner, const MaterialStock& stock)
{
  Laminate laminate;
  for (const TableReader& ply : owner.tables("plies"))
  {
    const StockMaterial& material = stock.named_by(ply, "material");
    const bool carved = ply.word("grain", "laid") == "carved";
    if (carved && material.same_across_fibre)
      ply.fail("grain", message("a carved ply needs E3, G13, G23, nu13, nu23 of its own; material.",
                                material.material.name, " gives none"));
    laminate.plies.push_back({.material = material.material,
                              .thickness = ply_thickness(ply, material),
                              .angle = Angle::radians(ply.number("angle")),
                              .grain = carved ? Grain::carved : Grain::laid});
  }
  if (laminate.plies.empty())
    owner.fail("plies", message(owner.has("plies") ? "is empty" : "missing",
                                "; list at least one ply { material = ..., thickness = ..., angle = ... }"));
  return laminate;
}

namespace
{

std::vector<CodePly> parse_code(const TableReader& layup)
{
  try
  {
    return parse_laminate_code(layup.text("code"));
  }
  catch (const InvalidInput& error)
  {
    layup.fail("code", error.what());
  }
}

/// A ply that a code names by its material.
Ply read_named_ply(const TableReader& layup, const MaterialStock& stock, const std::string& name)
{
  const StockMaterial* material = stock.find(name);
  if (!material)
    layup.fail("code", stock.unknown(name));
  if (!material->sheet_thickness)
    layup.fail("code", message("the code names a ply of ", name, ", whose thickness is not known; set material.", name,
                               ".thickness (mm)"));
  return {.material = material->material, .thickness = *material->sheet_thickness};
}

Laminate read_code(const TableReader& layup, const MaterialStock& stock)
{
  const TableReader ply = layup.table("ply");
  Laminate laminate;
  for (const CodePly& coded : parse_code(layup))
  {
    if (!coded.material.empty())
    {
      laminate.plies.push_back(read_named_ply(layup, stock, coded.material));
      continue;
    }
    if (!ply.exists())
      layup.fail("ply", "missing; it gives material and thickness of the plies that layup.code lists by angle, "
                        "ply = { material = \"carbon_ud\", thickness = 0.125 }");
    const StockMaterial& material = stock.named_by(ply, "material");
    laminate.plies.push_back(
        {.material = material.material, .thickness = ply_thickness(ply, material), .angle = coded.angle});
  }
  return laminate;
}

} // namespace

bool is_solid(const TableReader& root)
{
  return layup_way(root.table("layup")) == "solid";
}

Laminate read_layup(const TableReader& root, const MaterialStock& stock, PointFiles& files)
{
  const TableReader layup = root.table("layup");
  const std::string_view way = layup_way(layup);
  check_companions(layup, way);
  const TableReader thickness = root.table("thickness");
  if (way != "solid" && thickness.exists())
    thickness.fail_here(message("contradicts layup.", way,
                                ": a laminate's thickness comes from its plies; leave "
                                "[thickness] out"));
  Laminate laminate = way == "solid"  ? read_solid(root, layup, stock, files)
                      : way == "code" ? read_code(layup, stock)
                                      : read_ply_list(layup, stock);
  const double scale = layup.number("scale");
  const double scale_core = layup.number("scale_core");
  for (Ply& ply : laminate.plies)
    ply.thickness *= ply.material.core && way != "solid" ? scale_core : scale;
  return laminate;
}

std::vector<PlyDirectionField> read_directions(const TableReader& root, const Outline& outline, PointParts& parts)
{
  std::vector<PlyDirectionField> directions;
  const std::vector<TableReader> plies = root.table("layup").tables("plies");
  for (std::size_t i = 0; i < plies.size(); ++i)
  {
    const TableReader& ply = plies[i];
    if (!ply.has("angle_file"))
      continue;
    if (ply.has("angle"))
      ply.fail("angle", "contradicts angle_file, which gives the direction everywhere; leave one of them out");
    if (ply.word("grain", "laid") == "carved")
      ply.fail("grain", "a carved ply has the direction of its board; angle_file is for laid plies");
    directions.push_back({.ply = i, .field = parts.directions(ply, message("angle of ply ", i + 1), outline)});
  }
  return directions;
}

} // namespace plate
