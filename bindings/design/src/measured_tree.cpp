// SPDX-License-Identifier: MPL-2.0
#include "measured_rows.h"
#include "plain_text.h"
#include "tree.h"

#include <plate/design/design_error.h>
#include <plate/design/keys.h>

#include <algorithm>
#include <cstddef>
#include <span>

namespace plate
{
namespace
{

/// Reads tables of a list of measured modes.
class MeasuredReader
{
public:
  explicit MeasuredReader(const std::string& file) : file_(file) {}

  [[nodiscard]] MeasuredRows read(const Node& root) const
  {
    check_keys(*root.table(), {"title", "mode"});
    MeasuredRows out;
    if (const Node* title = find_entry(*root.table(), "title"))
      out.title = text("title", *title);
    const Node* modes = find_entry(*root.table(), "mode");
    if (modes && !modes->list())
      fail(*modes, "mode", "must be tables [[mode]]");
    if (modes)
      for (const Node& mode : *modes->list())
        out.rows.push_back(row(mode));
    return out;
  }

private:
  [[nodiscard]] MeasuredRow row(const Node& mode) const
  {
    const Table* table = mode.table();
    if (!table)
      fail(mode, "mode", "must be tables [[mode]]");
    check_keys(*table, {"number", "name", "frequency_hz", "loss_percent", "points"});
    MeasuredRow out{.line = mode.line};
    for (const auto& [key, node] : *table)
      if (key == "name")
        out.name = text(key, node);
      else if (key == "points")
        out.points = points(node);
      else
        (key == "number"         ? out.number
         : key == "frequency_hz" ? out.frequency_hz
                                 : out.loss_percent) = number(key, node);
    return out;
  }

  void check_keys(const Table& table, const std::vector<std::string>& known) const
  {
    for (const auto& [key, node] : table)
    {
      if (const std::string fault = wrong_unit(key); !fault.empty())
        fail(node, key, fault);
      if (std::find(known.begin(), known.end(), key) == known.end())
        fail(node, key, message("unknown key; nearest: ", nearest_word(key, known)));
    }
  }

  [[nodiscard]] double number(const std::string& key, const Node& node) const
  {
    if (!node.number())
      fail(node, key, "must be a number");
    return *node.number();
  }

  [[nodiscard]] std::string text(const std::string& key, const Node& node) const
  {
    if (!node.text())
      fail(node, key, "must be text in quotes");
    return *node.text();
  }

  [[nodiscard]] std::vector<std::array<double, 3>> points(const Node& node) const
  {
    constexpr const char* what = "must be a list of [x, y, displacement], x and y in mm";
    if (!node.list())
      fail(node, "points", what);
    std::vector<std::array<double, 3>> out;
    for (const Node& point : *node.list())
    {
      if (!point.list() || point.list()->size() != 3)
        fail(point, "points", what);
      for (std::size_t k = 0; k < 3; ++k)
        if (!(*point.list())[k].number())
          fail(point, "points", what);
      out.push_back({*(*point.list())[0].number(), *(*point.list())[1].number(), *(*point.list())[2].number()});
    }
    return out;
  }

  [[noreturn]] void fail(const Node& node, const std::string& key, const std::string& what) const
  {
    throw DesignError(message(file_, ":", node.line, ": ", shortened(key), " = ", shown(node), ": ", what));
  }

  const std::string& file_;
};

} // namespace

MeasuredRows rows_of_toml(std::string_view text, const std::string& name)
{
  return MeasuredReader(name).read(parse_toml(text, name));
}

} // namespace plate
