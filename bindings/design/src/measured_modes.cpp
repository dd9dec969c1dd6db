// SPDX-License-Identifier: MPL-2.0
#include <plate/design/measured_modes.h>

#include "cells.h"
#include "measured_rows.h"
#include "named_file.h"
#include "plain_text.h"

#include <plate/design/design_error.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace plate
{
namespace
{

constexpr double lowest_hz = 1.0;
constexpr double highest_hz = 20000.0;
constexpr double most_number = 200.0; // as many as can be computed
constexpr double most_loss = 50.0;    // [%]
constexpr double most_place = 3000.0; // [mm]; as the longest plate
constexpr double millimetre = 1e-3;   // [m]
constexpr double per_cent = 0.01;

/// Makes rows into modes.
class MeasuredCheck
{
public:
  explicit MeasuredCheck(const std::string& file) : file_(file) {}

  [[nodiscard]] MeasuredModes modes(MeasuredRows rows) const
  {
    if (rows.rows.empty())
      throw DesignError(message(file_, ": no measured modes; give at least one line or [[mode]] with a frequency_hz"));
    if (!is_plain_text(rows.title))
      throw DesignError(message(file_, ": title: must be UTF-8 without control characters"));
    for (const MeasuredRow& row : rows.rows)
      check(row);
    check_names(rows.rows);
    number(rows.rows);
    MeasuredModes out{.title = rows.title.empty() ? std::filesystem::path(file_).filename().string() : rows.title,
                      .modes = {},
                      .with_shapes = !rows.rows.front().points.empty()};
    for (const MeasuredRow& row : rows.rows)
    {
      if (row.points.empty() == out.with_shapes)
        fail(row, "some modes have points and some have none; give them to all or to none");
      out.modes.push_back(mode(row));
    }
    return out;
  }

private:
  void check(const MeasuredRow& row) const
  {
    if (!row.frequency_hz)
      fail(row, "the frequency_hz is missing");
    in_range(row, "frequency_hz", *row.frequency_hz, lowest_hz, highest_hz, " Hz; kHz and rad/s must be converted");
    if (row.loss_percent)
      in_range(row, "loss_percent", *row.loss_percent, 0.0, most_loss, " %");
    if (row.number)
    {
      in_range(row, "mode", *row.number, 1.0, most_number, ", the first elastic mode is 1");
      if (*row.number != std::round(*row.number))
        fail(row, message("mode = ", *row.number, ": must be a whole number"));
    }
    if (!is_plain_text(row.name))
      fail(row, "name: must be UTF-8 without control characters");
    check_points(row);
  }

  void check_points(const MeasuredRow& row) const
  {
    if (row.points.empty())
      return;
    if (row.points.size() < fewest_measured_places)
      fail(row, message("points: there are ", row.points.size(), "; shapes are told apart from ",
                        fewest_measured_places, " on"));
    bool moves = false;
    for (const auto& [x, y, displacement] : row.points)
    {
      in_range(row, "points: x", x, -most_place, most_place, " mm");
      in_range(row, "points: y", y, -most_place, most_place, " mm");
      if (!std::isfinite(displacement))
        fail(row, "points: a displacement is not finite");
      moves = moves || displacement != 0.0;
    }
    if (!moves)
      fail(row, "points: all displacements are 0; leave the points out, or give the shape");
  }

  void in_range(const MeasuredRow& row, const std::string& key, double value, double low, double high,
                const std::string& unit) const
  {
    if (!(value >= low && value <= high)) // negated: also catches NaN
      fail(row, message(key, " = ", value, ": must be from ", low, " to ", high, unit));
  }

  void check_names(const std::vector<MeasuredRow>& rows) const
  {
    std::set<std::string> names;
    for (const MeasuredRow& row : rows)
      if (!row.name.empty() && !names.insert(row.name).second)
        fail(row, message("name = ", shown_cell(row.name), ": is the name of two modes"));
  }

  /// Numbers modes that have none and puts them in order.
  void number(std::vector<MeasuredRow>& rows) const
  {
    const auto numbered =
        std::count_if(rows.begin(), rows.end(), [](const MeasuredRow& row) { return row.number.has_value(); });
    std::stable_sort(rows.begin(), rows.end(),
                     [](const MeasuredRow& a, const MeasuredRow& b) { return *a.frequency_hz < *b.frequency_hz; });
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
      if (numbered == 0)
        rows[i].number = static_cast<double>(i + 1);
      else if (!rows[i].number)
        fail(rows[i], "some modes have a number and some have none; number all or none");
      else if (i > 0 && !(*rows[i].number > *rows[i - 1].number))
        fail(rows[i], message("mode ", *rows[i].number, " at ", *rows[i].frequency_hz, " Hz follows mode ",
                              *rows[i - 1].number, " at ", *rows[i - 1].frequency_hz,
                              " Hz; number modes by ascending frequency, each once, or leave the numbers out"));
    }
  }

  static MeasuredMode mode(const MeasuredRow& row)
  {
    MeasuredMode out{.number = static_cast<int>(*row.number), .name = row.name, .frequency_hz = *row.frequency_hz};
    if (row.loss_percent)
      out.loss = *row.loss_percent * per_cent;
    out.displacement.resize(static_cast<Eigen::Index>(row.points.size()));
    for (const auto& [x, y, displacement] : row.points)
    {
      out.displacement(static_cast<Eigen::Index>(out.places.size())) = displacement;
      out.places.emplace_back(x * millimetre, y * millimetre);
    }
    return out;
  }

  [[noreturn]] void fail(const MeasuredRow& row, const std::string& what) const
  {
    throw DesignError(message(file_, ":", row.line, ": ", what));
  }

  const std::string& file_;
};

} // namespace

std::string wrong_unit(const std::string& key)
{
  const std::string small = lower(key);
  const auto begins = [&](std::string_view start) { return small.rfind(start, 0) == 0; };
  if ((begins("freq") || begins("omega") || small == "hz" || small == "khz") && small != "frequency_hz")
    return "frequencies are read from frequency_hz, in Hz; kHz and rad/s must be converted";
  if ((begins("loss") || begins("damping") || begins("zeta") || small == "q") && small != "loss_percent")
    return "losses are read from loss_percent, in % (100 / Q, 200 times the damping ratio)";
  return {};
}

MeasuredModes parse_measured_modes(std::string_view text, const std::string& name)
{
  const bool toml = name.ends_with(".toml");
  return MeasuredCheck(name).modes(toml ? rows_of_toml(text, name) : rows_of_table(text, name));
}

MeasuredModes read_measured_modes(const std::filesystem::path& path)
{
  return parse_measured_modes(text_of(path), path.string());
}

} // namespace plate
