// SPDX-License-Identifier: MPL-2.0
#include "free_keys.h"

#include "check_tree.h"
#include "plain_text.h"

#include <plate/design/design_error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <utility>

namespace plate
{
namespace
{

[[noreturn]] void fail(const GivenFreeKey& free, const std::string& file, const std::string& what)
{
  throw DesignError(
      message(place_of(free.range, file), ": free.", shortened(free.key), " = ", shown(free.range), ": ", what));
}

void collect(const Node& node, const std::string& path, std::vector<GivenFreeKey>& out)
{
  if (const Table* table = node.table())
    for (const auto& [name, child] : *table)
      collect(child, path.empty() ? name : path + "." + name, out);
  else
    out.push_back({.key = path, .range = node});
}

} // namespace

std::vector<GivenFreeKey> take_free_keys(Node& problem, const std::string& file)
{
  Table& table = std::get<Table>(problem.value);
  const auto entry = std::find_if(table.begin(), table.end(), [](const Entry& e) { return e.name == "free"; });
  if (entry == table.end())
    return {};
  if (!entry->node.table())
    throw DesignError(message(place_of(entry->node, file), ": free = ", shown(entry->node),
                              ": must be a table of keys with their ranges, e.g. \"arching.height\" = [14.0, 19.0]"));
  std::vector<GivenFreeKey> out;
  collect(entry->node, "", out);
  table.erase(entry);
  return out;
}

std::vector<FreeKey> checked_free_keys(const std::vector<GivenFreeKey>& given, const DesignDocument& start,
                                       const std::string& file)
{
  std::vector<FreeKey> out;
  for (const GivenFreeKey& free : given)
  {
    try
    {
      static_cast<void>(start.unit(free.key));
    }
    catch (const DesignError& error)
    {
      fail(free, file, error.what());
    }
    const List* list = free.range.list();
    const bool pair = list && list->size() == 2 && list->front().number() && list->back().number();
    if (!pair || !(*list->front().number() < *list->back().number()))
      fail(free, file, "must be the least and the greatest value, e.g. [14.0, 19.0]");
    if (free.key.starts_with("layup.") || free.key.starts_with("mesh."))
      fail(free, file, "is no shape of the plate: the layup is searched by itself, the mesh is none of the design");
    const FreeKey key{.key = free.key, .low = *list->front().number(), .high = *list->back().number()};
    for (const double value : {key.low, key.high})
    {
      DesignDocument changed = start;
      changed.set_number(key.key, value);
    }
    out.push_back(key);
  }
  return out;
}

} // namespace plate
