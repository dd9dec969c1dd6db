// SPDX-License-Identifier: MPL-2.0
#include "read_design.h"

#include "plain_text.h"
#include "point_parts.h"
#include "read_bar.h"
#include "read_body.h"
#include "read_geometry.h"
#include "read_layup.h"
#include "read_load.h"
#include "read_materials.h"
#include "read_parts.h"
#include "read_support.h"
#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/design/design_document.h>
#include <plate/design/design_error.h>
#include <plate/materials/air.h>

#include <cstddef>
#include <filesystem>
#include <optional>
#include <utility>

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

/// The title; a name of a file may hold bytes that neither a terminal nor JSON can show.
std::string title_of(const TableReader& root, const std::string& file)
{
  constexpr std::size_t most = 200; // bytes: it stands in one line above tables and pictures
  const std::string title = root.word("title", shortened(std::filesystem::path(file).stem().string(), most));
  if (title.size() > most)
    root.fail("title", message("has ", title.size(), " bytes; at most ", most, " are allowed"));
  return title;
}

/// What holds an edge stands in the way of the air, and how is not part of the design.
void check_air(const TableReader& root, const Surroundings& surroundings, const std::vector<SupportedEdge>& supports)
{
  if (surroundings.air_density > 0.0 && !supports.empty())
    root.table("surroundings")
        .fail("air", "is computed for plates with free edges, round which it flows; use \"none\" or support.edge = "
                     "\"free\"");
}

Surroundings read_surroundings(const TableReader& root)
{
  const TableReader table = root.table("surroundings");
  Surroundings surroundings;
  surroundings.climate.temperature = table.number("temperature");
  if (table.word("air", "none") == "free")
    surroundings.air_density = air_density(surroundings.climate.temperature);
  if (const std::optional<double> humidity = table.optional_number("humidity"))
  {
    surroundings.climate.humidity = *humidity;
    surroundings.climate_given = true;
  }
  return surroundings;
}

/// Change of the temperature since the cure, if the file states one [K].
double read_cure_change(const TableReader& root, const Surroundings& surroundings)
{
  const std::optional<double> cure = root.table("layup").optional_number("cure_temperature");
  return cure ? surroundings.climate.temperature - *cure : 0.0;
}

} // namespace

Design read_design_tree(const Node& root, const std::string& file, PointFiles& files)
{
  const TableReader table(root, file, "");
  check_plate_tables(table);
  const Surroundings surroundings = read_surroundings(table);
  const MaterialStock stock(table, surroundings);
  PointParts parts(files);
  const Outline outline = read_outline(table, parts);
  const Setup setup = read_setup(table, outline);
  Laminate laminate = read_layup(table, stock, files);
  const ThicknessMap thickness = is_solid(table) ? read_thickness(table, outline, parts)
                                                 : ThicknessMap(UniformThickness{total_thickness(laminate)});
  PlateGeometry geometry = read_geometry(table, outline, setup, thickness, parts);
  std::optional<Bar> bar;
  if (geometry.bar)
    bar = read_bar(table.table("bar"), stock, *geometry.bar);
  std::vector<PlyDirectionField> directions = read_directions(table, outline, parts);
  std::vector<Patch> patches = read_patches(table, stock, geometry);
  for (const Patch& patch : patches)
    geometry.patches.push_back(patch.region);
  std::vector<PointMass> masses = read_masses(table, geometry);
  std::vector<SupportedEdge> supports = read_support(table, std::holds_alternative<RectangleOutline>(outline));
  check_air(table, surroundings, supports);
  return {.title = title_of(table, file),
          .geometry = std::move(geometry),
          .laminate = std::move(laminate),
          .bar = std::move(bar),
          .supports = std::move(supports),
          .directions = std::move(directions),
          .patches = std::move(patches),
          .masses = std::move(masses),
          .surroundings = surroundings,
          .cure_change = read_cure_change(table, surroundings),
          .setup = setup,
          .mesh = read_mesh_options(table, outline),
          .fits = parts.fits()};
}

LayupDesign read_layup_tree(const Node& root, const std::string& file, PointFiles& files)
{
  const TableReader table(root, file, "");
  check_plate_tables(table);
  return {.title = title_of(table, file),
          .laminate = read_layup(table, MaterialStock(table, read_surroundings(table)), files)};
}

SheetMaterial read_material_tree(const Node& root, const std::string& file, std::string_view name)
{
  const TableReader table(root, file, "");
  const MaterialStock stock(table, read_surroundings(table));
  const StockMaterial* material = stock.find(name);
  if (!material)
    throw InvalidInput(stock.unknown(name));
  return {.material = material->material, .sheet_thickness = material->sheet_thickness};
}

LoadDesign read_load_tree(const Node& root, const std::string& file, PointFiles& files)
{
  const TableReader table(root, file, "");
  return read_load(table, MaterialStock(table, read_surroundings(table)), read_design_tree(root, file, files));
}

BodyLoadDesign read_body_load_tree(const Node& root, const std::string& file, const Design& top)
{
  return read_body_load(TableReader(root, file, ""), top);
}

BodyDesign read_body_tree(const Node& root, const std::string& file, const Design& top, const Design& back)
{
  const TableReader table(root, file, "");
  return read_body(table, title_of(table, file), top, back);
}

} // namespace plate
