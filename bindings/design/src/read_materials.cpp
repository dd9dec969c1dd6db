// SPDX-License-Identifier: MPL-2.0
#include "read_materials.h"

#include "key_path.h"
#include "read_design.h"

#include <plate/design/design_error.h>
#include <plate/materials/fibre_ply.h>
#include <plate/materials/library.h>
#include <plate/materials/moisture.h>

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace plate
{
namespace
{

struct Constant
{
  std::string_view key;
  double OrthotropicElastic::*field;
};

constexpr std::array<Constant, 4> in_plane = {{{"E1", &OrthotropicElastic::E1},
                                               {"E2", &OrthotropicElastic::E2},
                                               {"G12", &OrthotropicElastic::G12},
                                               {"nu12", &OrthotropicElastic::nu12}}};
constexpr std::array<Constant, 5> through_thickness = {{{"E3", &OrthotropicElastic::E3},
                                                        {"G13", &OrthotropicElastic::G13},
                                                        {"G23", &OrthotropicElastic::G23},
                                                        {"nu13", &OrthotropicElastic::nu13},
                                                        {"nu23", &OrthotropicElastic::nu23}}};
constexpr std::array<double LossFactors::*, 6> loss_fields = {&LossFactors::E1,  &LossFactors::E2,  &LossFactors::E3,
                                                              &LossFactors::G12, &LossFactors::G13, &LossFactors::G23};

/// Constants through the plate of a ply that is the same in all directions across its fibre.
void complete_across_fibre(OrthotropicElastic& e)
{
  e.E3 = e.E2;
  e.G13 = e.G12;
  e.nu13 = e.nu12;
  e.nu23 = 0.4; // common for fibre plies in epoxy; bending of a plate hardly feels it
  e.G23 = e.E2 / (2.0 * (1.0 + e.nu23));
}

/// Reads E3, G13, G23, nu13, nu23 of a material of its own: all of them or none.
void read_through_thickness(const TableReader& table, StockMaterial& stock)
{
  std::string missing;
  for (const Constant& constant : through_thickness)
    if (!table.has(constant.key))
      missing += message(missing.empty() ? "" : ", ", constant.key);
  stock.same_across_fibre = true;
  for (const Constant& constant : through_thickness)
  {
    if (!table.has(constant.key))
      continue;
    if (!missing.empty())
      table.fail(constant.key, "E3, G13, G23, nu13, nu23 are given together or not at all; missing: " + missing);
    stock.material.elastic.*constant.field = table.number(constant.key);
    stock.same_across_fibre = false;
  }
  if (stock.same_across_fibre)
    complete_across_fibre(stock.material.elastic);
}

/// A material without a namesake in the library.
StockMaterial read_own(const TableReader& table)
{
  StockMaterial stock{.material = {}, .sheet_thickness = {}};
  for (const Constant& constant : in_plane)
    stock.material.elastic.*constant.field = table.number(constant.key);
  read_through_thickness(table, stock);
  return stock;
}

bool changes_elastic(const TableReader& table)
{
  const auto given = [&](const Constant& constant) { return table.has(constant.key); };
  return std::any_of(in_plane.begin(), in_plane.end(), given) ||
         std::any_of(through_thickness.begin(), through_thickness.end(), given);
}

/// A library material with the constants the table changes.
StockMaterial read_changed(const TableReader& table, const Material& original)
{
  StockMaterial stock{.material = original, .sheet_thickness = {}};
  const auto change = [&](const Constant& constant)
  {
    if (const std::optional<double> value = table.optional_number(constant.key))
      stock.material.elastic.*constant.field = *value;
  };
  for (const Constant& constant : in_plane)
    change(constant);
  for (const Constant& constant : through_thickness)
    change(constant);
  if (changes_elastic(table))
    stock.material.moisture.reset(); // its moisture content is not known
  return stock;
}

/// Density and sheet thickness: given as such, or by the weight of the fibres.
void read_sheet(const TableReader& table, StockMaterial& stock)
{
  stock.sheet_thickness = table.optional_number("thickness");
  const std::optional<double> density_given = table.optional_number("density");
  if (table.has("fibre_weight"))
  {
    for (const char* key : {"thickness", "density"})
      if (table.has(key))
        table.fail(key, "contradicts fibre_weight, from which it follows; give one of the two ways");
    const FibrePly ply = {.fibre_weight = table.number("fibre_weight"),
                          .fibre_volume = table.number("fibre_volume"),
                          .fibre_density = table.number("fibre_density"),
                          .resin_density = table.number("resin_density")};
    stock.sheet_thickness = ply_thickness(ply);
    stock.material.density = ply_density(ply);
    return;
  }
  for (const char* key : {"fibre_volume", "fibre_density", "resin_density"})
    if (table.has(key))
      table.fail(key, "is used with fibre_weight, which is missing");
  if (density_given)
    stock.material.density = *density_given;
  else if (!find_material(stock.material.name))
    table.fail("density", message("missing; must be ", allowed_values(*find_key(table.path() + ".density")),
                                  ", or follow from fibre_weight, fibre_volume and fibre_density"));
}

std::optional<Expansion> read_expansion(const TableReader& table, std::string_view key,
                                        const std::optional<Expansion>& otherwise)
{
  if (!table.has(key))
    return otherwise;
  const std::vector<double> values = table.numbers(key);
  return Expansion{.along = values[0], .across = values[1]};
}

void read_strength(const TableReader& table, Material& material)
{
  const TableReader strength = table.table("strength");
  const auto given = [&](const char* key) { return strength.has(key); };
  constexpr std::array<const char*, 5> in_plane_strengths = {"Xt", "Xc", "Yt", "Yc", "S"};
  const bool has_through = given("S13") || given("S23");
  if (std::any_of(in_plane_strengths.begin(), in_plane_strengths.end(), given) || (strength.exists() && !has_through))
    material.strength = Strength{.Xt = strength.number("Xt"),
                                 .Xc = strength.number("Xc"),
                                 .Yt = strength.number("Yt"),
                                 .Yc = strength.number("Yc"),
                                 .S = strength.number("S")};
  for (const auto& [key, other] : {std::pair("S13", "S23"), std::pair("S23", "S13")})
    if (given(key) && !given(other))
      strength.fail(key, message("S13 and S23 are given together or not at all; missing: ", other));
  if (has_through)
    material.through_strength = ThroughStrength{.S13 = strength.number("S13"), .S23 = strength.number("S23")};
}

void read_moisture(const TableReader& table, Material& material)
{
  // Values of most species; the ratio is the mean of the spruces and maples of the library.
  constexpr double usual_intersection = 0.25;
  constexpr double usual_green_ratio = 1.25;
  const Material* original = find_material(material.name);
  const std::optional<MoistureData> known = original ? original->moisture : std::nullopt;
  const std::optional<double> content = table.optional_number("moisture_content");
  if (!content && !material.moisture)
    for (const char* key : {"green_ratio", "moisture_intersection"})
      if (table.has(key))
        table.fail(key, "is used with moisture_content, which is missing");
  if (!content && !material.moisture)
    return;
  const MoistureData usual = known.value_or(
      MoistureData{.content = 0.12, .intersection = usual_intersection, .green_ratio = usual_green_ratio});
  material.moisture =
      MoistureData{.content = content.value_or(usual.content),
                   .intersection = table.optional_number("moisture_intersection").value_or(usual.intersection),
                   .green_ratio = table.optional_number("green_ratio").value_or(usual.green_ratio)};
}

StockMaterial read_material(const TableReader& table, const std::string& name)
{
  const Material* original = find_material(name);
  StockMaterial stock = original ? read_changed(table, *original) : read_own(table);
  Material& material = stock.material;
  material.name = name;
  if (table.has("loss"))
  {
    const std::vector<double> loss = table.numbers("loss");
    for (std::size_t i = 0; i < loss_fields.size(); ++i)
      material.loss.*loss_fields[i] = loss[i];
  }
  material.core = table.flag("core", material.core);
  material.wood = table.flag("wood", material.wood);
  read_sheet(table, stock);
  material.thermal = read_expansion(table, "expansion", material.thermal);
  material.swelling = read_expansion(table, "swelling", material.swelling);
  read_strength(table, material);
  read_moisture(table, material);
  try
  {
    check_elastic(material.elastic);
  }
  catch (const InvalidInput& error)
  {
    table.fail_here(message("impossible material: ", error.what()));
  }
  return stock;
}

} // namespace

MaterialStock::MaterialStock(const TableReader& root, const Surroundings& surroundings)
{
  const TableReader declared = root.table("material");
  for (const std::string& name : declared.names())
    materials_.push_back(read_material(declared.table(name), name));
  for (const LibraryMaterial& built_in : material_library())
    if (!find(built_in.material.name))
      materials_.push_back({.material = built_in.material, .sheet_thickness = {}});
  if (surroundings.climate_given)
    for (StockMaterial& stock : materials_)
      stock.material = in_climate(stock.material, surroundings.climate);
}

const StockMaterial* MaterialStock::find(std::string_view name) const
{
  for (const StockMaterial& stock : materials_)
    if (stock.material.name == name)
      return &stock;
  return nullptr;
}

std::string MaterialStock::unknown(std::string_view name) const
{
  std::vector<std::string> names;
  std::string listed;
  for (const StockMaterial& stock : materials_)
  {
    names.push_back(stock.material.name);
    listed += (listed.empty() ? "" : ", ") + stock.material.name;
  }
  return message("no material of the name \"", name, "\"; nearest: \"", nearest_word(name, names),
                 "\"; declared or built in: ", listed);
}

const StockMaterial& MaterialStock::named_by(const TableReader& table, std::string_view key) const
{
  const std::string name = table.text(key);
  if (const StockMaterial* stock = find(name))
    return *stock;
  table.fail(key, unknown(name));
}

const StockMaterial& MaterialStock::named_by(const TableReader& table, std::string_view key,
                                             std::string_view usual) const
{
  return table.has(key) ? named_by(table, key) : *find(usual);
}

std::optional<double> library_number(std::string_view path)
{
  const std::vector<std::string> parts = split_path(path);
  if (parts.size() < 3 || parts[0] != "material")
    return std::nullopt;
  const Material* material = find_material(parts[1]);
  if (!material)
    return std::nullopt;
  for (const Constant& constant : in_plane)
    if (constant.key == parts[2])
      return material->elastic.*constant.field;
  for (const Constant& constant : through_thickness)
    if (constant.key == parts[2])
      return material->elastic.*constant.field;
  if (parts[2] == "density")
    return material->density;
  if (parts[2] == "loss" && parts.size() == 4 && parts[3].size() == 1 && parts[3] >= "1" && parts[3] <= "6")
    return material->loss.*loss_fields[std::stoul(parts[3]) - 1];
  return std::nullopt;
}

} // namespace plate
