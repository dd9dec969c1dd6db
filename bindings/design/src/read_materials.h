// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/materials/material.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// A material of a design with what only a layup needs to know.
struct StockMaterial
{
  Material material;
  std::optional<double> sheet_thickness; ///< [m]
  bool same_across_fibre = false;        ///< constants through the plate were not given but taken equal to those across
};

/// Materials a design may use: those it declares, then the library's.
class MaterialStock
{
public:
  /// @param root          table of the whole file
  /// @param surroundings  where humidity is given, materials with moisture data are taken there
  /// @throws DesignError if a declared material is incomplete or impossible
  MaterialStock(const TableReader& root, const Surroundings& surroundings);

  /// The material that a key of a table names.
  /// @throws DesignError naming the nearest material if there is none of that name
  [[nodiscard]] const StockMaterial& named_by(const TableReader& table, std::string_view key) const;

  /// The same, with a material of the library where the key is not given.
  [[nodiscard]] const StockMaterial& named_by(const TableReader& table, std::string_view key,
                                              std::string_view usual) const;

  /// The material of that name; null if there is none.
  [[nodiscard]] const StockMaterial* find(std::string_view name) const;

  /// What to say about a name that is no material.
  [[nodiscard]] std::string unknown(std::string_view name) const;

private:
  std::vector<StockMaterial> materials_;
};

} // namespace plate
