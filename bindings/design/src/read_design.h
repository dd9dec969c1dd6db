// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "tree.h"

#include <optional>
#include <string>
#include <string_view>

namespace plate
{

struct BodyDesign;
struct BodyLoadDesign;
struct Design;
struct LayupDesign;
struct LoadDesign;
struct SheetMaterial;
class PointFiles;

/// Reads a checked tree into a design.
///
/// @param file   name for messages
/// @param files  of points that the tree names
/// @throws DesignError for the first contradiction
[[nodiscard]] Design read_design_tree(const Node& root, const std::string& file, PointFiles& files);

/// Reads no more of it than the layup.
[[nodiscard]] LayupDesign read_layup_tree(const Node& root, const std::string& file, PointFiles& files);

/// Reads what the plate has to carry.
[[nodiscard]] LoadDesign read_load_tree(const Node& root, const std::string& file, PointFiles& files);

/// Reads what a body with that top has to carry.
[[nodiscard]] BodyLoadDesign read_body_load_tree(const Node& root, const std::string& file, const Design& top);

/// Reads a body between two plates.
[[nodiscard]] BodyDesign read_body_tree(const Node& root, const std::string& file, const Design& top,
                                        const Design& back);
/// Reads one material. @throws InvalidInput if there is none of that name
[[nodiscard]] SheetMaterial read_material_tree(const Node& root, const std::string& file, std::string_view name);

/// Value of a key such as "material.spruce.E1" in the library of materials; nothing if it is no such key [SI].
[[nodiscard]] std::optional<double> library_number(std::string_view path);

} // namespace plate
