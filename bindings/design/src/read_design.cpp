// SPDX-License-Identifier: MPL-2.0
#include "read_design.h"

#include "point_parts.h"
#include "read_bar.h"
#include "read_geometry.h"
#include "read_layup.h"
#include "read_materials.h"
#include "read_support.h"
#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/design/design_error.h>

#include <filesystem>

namespace plate
{
namespace
{

MeshOptions read_mesh_options(const TableReader& root, const Outline& outline)
{
  const TableReader table = root.table("mesh");
  MeshOptions options;
  options.size = table.optional_number("size").value_or(options.size);
  const double coarsest = outline_width(outline) / 2.0; // fewer than two elements across are no mesh
  if (options.size > coarsest)
    table.fail("size", message("coarser than half the plate's width; at most ", coarsest * 1e3, " mm"));
  return options;
}

} // namespace

Design read_design_tree(const Node& root, const std::string& file, PointFiles& files)
{
  const TableReader table(root, file, "");
  const MaterialStock stock(table);
  PointParts parts(files);
  const Outline outline = read_outline(table, parts);
  const Setup setup = read_setup(table, outline);
  Laminate laminate = read_layup(table, stock);
  const ThicknessMap thickness = is_solid(table) ? read_thickness(table, outline, parts)
                                                 : ThicknessMap(UniformThickness{total_thickness(laminate)});
  PlateGeometry geometry = read_geometry(table, outline, setup, thickness, parts);
  std::optional<Bar> bar;
  if (geometry.bar)
    bar = read_bar(table.table("bar"), stock, *geometry.bar);
  return {.title = table.word("title", std::filesystem::path(file).stem().string()),
          .geometry = std::move(geometry),
          .laminate = std::move(laminate),
          .bar = std::move(bar),
          .supports = read_support(table, std::holds_alternative<RectangleOutline>(outline)),
          .setup = setup,
          .mesh = read_mesh_options(table, outline),
          .fits = parts.fits()};
}

} // namespace plate
