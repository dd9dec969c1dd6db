// SPDX-License-Identifier: MPL-2.0
#include <plate/design/match_problem.h>

#include "check_tree.h"
#include "free_keys.h"
#include "located.h"
#include "named_file.h"
#include "plain_text.h"
#include "table_reader.h"

#include <plate/design/design.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace plate
{
namespace
{

/// Where a file named by a key lies; empty if the key is not given.
std::filesystem::path named_file(const TableReader& root, std::string_view key, const FileAccess& access)
{
  if (!root.has(key))
    return {};
  return located(root, key, [&] { return resolve(root.text(key), access); });
}

std::vector<double> thicknesses(const TableReader& available, const SheetMaterial& sheet)
{
  const std::string& name = sheet.material.name;
  const TableReader given = available.table("thickness");
  if (given.has(name))
    return given.numbers(name);
  if (sheet.material.core && available.has("core_thickness"))
    return available.numbers("core_thickness");
  if (!sheet.sheet_thickness)
    available.fail("materials",
                   message("how thick ", name, " is, is not known; set available.thickness.", name,
                           sheet.material.core ? " or available.core_thickness" : "", ", e.g. [0.1, 0.2]"));
  return {*sheet.sheet_thickness};
}

std::vector<Angle> angles(const TableReader& available)
{
  constexpr int step = 15; // degrees: shapes of plates turn with the fibre less than that
  std::vector<Angle> out;
  if (available.is_word("angles"))
    for (int degrees = -75; degrees <= 90; degrees += step)
      out.push_back(Angle::degrees(degrees));
  else if (available.has("angles"))
    for (const double radians : available.numbers("angles"))
      out.push_back(Angle::radians(radians));
  else
    for (const int degrees : {0, 90, 45, -45})
      out.push_back(Angle::degrees(degrees));
  return out;
}

CoreUse core_use(const TableReader& available)
{
  const std::string word = available.word("core", "allowed");
  return word == "none" ? CoreUse::none : word == "required" ? CoreUse::required : CoreUse::allowed;
}

int whole_number(const TableReader& table, std::string_view key)
{
  const double value = table.number(key);
  if (value != std::floor(value))
    table.fail(key, "must be a whole number");
  return static_cast<int>(value);
}

StackSupplies read_supplies(const TableReader& available, const DesignDocument& start)
{
  StackSupplies supplies{.sheets = {},
                         .angles = angles(available),
                         .any_angle = available.is_word("angles"),
                         .max_plies = whole_number(available, "max_plies"),
                         .symmetric = available.flag("symmetric", true),
                         .balanced = available.flag("balanced", false),
                         .core = core_use(available)};
  if (const TableReader patches = available.table("patches"); patches.has("max_plies"))
  {
    supplies.max_patch_plies = whole_number(patches, "max_plies");
    if (start.design().patches.empty())
      patches.fail("max_plies", "the start design has no [[patch]] whose plies could change");
  }
  const std::vector<std::string> names = available.words("materials");
  for (const std::string& name : names)
  {
    const SheetMaterial sheet = located(available, "materials", [&] { return start.material(name); });
    for (const double thickness : thicknesses(available, sheet))
      (sheet.material.core ? supplies.cores : supplies.sheets)
          .push_back({.material = sheet.material, .thickness = thickness});
  }
  if (supplies.sheets.empty())
    available.fail("materials", "all of them are cores; at least one must be a sheet, which may lie outside");
  if (supplies.core == CoreUse::required && supplies.cores.empty())
    available.fail("core", "none of the materials is a core (core = true)");
  const TableReader thickness = available.table("thickness");
  for (const std::string& name : thickness.names())
    if (std::find(names.begin(), names.end(), name) == names.end())
      thickness.fail(name, message("is none of available.materials; nearest: ", nearest_word(name, names)));
  return supplies;
}

MatchWishes read_wishes(const TableReader& wanted)
{
  MatchWishes wishes;
  if (wanted.has("count") && wanted.has("modes"))
    wanted.fail("count", "contradicts wanted.modes; give one of them");
  if (wanted.has("count"))
    wishes.count = whole_number(wanted, "count");
  else
    wishes.modes = wanted.has("modes") ? wanted.words("modes") : std::vector<std::string>{"M1", "M2", "M5"};
  const TableReader mass = wanted.table("mass_g");
  wishes.least_mass = mass.optional_number("min");
  wishes.most_mass = mass.optional_number("max");
  if (wishes.least_mass && wishes.most_mass && *wishes.least_mass > *wishes.most_mass)
    mass.fail("min", message("is above wanted.mass_g.max = ", *wishes.most_mass * 1e3, "; no plate is both"));
  wishes.least_margin = wanted.table("margin").optional_number("min");
  if (wanted.has("likeness"))
    wishes.likeness = wanted.number("likeness");
  wishes.loss = wanted.optional_number("loss");
  return wishes;
}

} // namespace

MatchProblem read_match_problem(const std::filesystem::path& path, FileAccess access, const KeyValues& overrides)
{
  access = with_folder(std::move(access), path);
  const std::string name = path.string();
  Node tree = parse_toml(text_of(path), name);
  const std::vector<GivenFreeKey> free = take_free_keys(tree, name);
  check_tree(tree, name, FileKind::match);
  const TableReader root(tree, name, "", FileKind::match);

  std::filesystem::path reference = named_file(root, "reference", access);
  std::filesystem::path measured = named_file(root, "measured", access);
  if (reference.empty() == measured.empty())
    root.fail(reference.empty() ? "reference" : "measured",
              reference.empty() ? "missing; one of reference (a design) and measured (a list of modes) must be given"
                                : "contradicts reference; give one of them");
  static_cast<void>(root.text("start"));
  const std::filesystem::path start_file = named_file(root, "start", access);
  DesignDocument start = DesignDocument::from_file(start_file, {.folder = {}, .allow_outside = access.allow_outside});
  for (const auto& [key, value] : overrides)
    start.set(key, value);
  const TableReader available = root.table("available");
  if (!available.exists())
    available.fail_here("missing; the table [available] says what the workshop has, at least its materials");
  StackSupplies supplies = read_supplies(available, start);
  MatchWishes wanted = read_wishes(root.table("wanted"));
  std::vector<FreeKey> checked = checked_free_keys(free, start, name);
  return {.title = root.word("title", shortened(path.stem().string(), 200)),
          .reference = std::move(reference),
          .measured = std::move(measured),
          .start = std::move(start),
          .allow_outside = access.allow_outside,
          .supplies = std::move(supplies),
          .wanted = std::move(wanted),
          .free = std::move(checked)};
}

} // namespace plate
