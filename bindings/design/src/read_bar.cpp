// SPDX-License-Identifier: MPL-2.0
#include "read_bar.h"

#include <plate/core/error.h>

#include <cmath>

namespace plate
{

BarProfile straight_profile(double half_length, double apex, double height, double end_height)
{
  return {.station = {-half_length, apex, half_length}, .height = {end_height, height, end_height}};
}

BarProfile rounded_profile(double half_length, double apex, double height, double end_height)
{
  constexpr int num_points_a_side = 16; // straight pieces between them stay within 0.5 % of the height
  constexpr double roundness = 0.15;    // of the length of a side; common practice, no source
  const double whole = std::hypot(1.0, roundness) - roundness;
  BarProfile profile;
  for (int i = -num_points_a_side; i <= num_points_a_side; ++i)
  {
    const double u = static_cast<double>(i) / num_points_a_side;
    const double side = u < 0.0 ? apex + half_length : half_length - apex;
    const double fall = (std::hypot(u, roundness) - roundness) / whole;
    profile.station.push_back(apex + u * side);
    profile.height.push_back(height + (end_height - height) * fall);
  }
  return profile;
}

Bar read_bar(const TableReader& table, const MaterialStock& stock, const BarFootprintShape& footprint)
{
  const StockMaterial& material = stock.named_by(table, "material");
  if (material.same_across_fibre)
    table.fail("material", message("a bar keeps the axes of its board and needs E3, G13, G23, nu13, nu23 of its own; ",
                                   "material.", material.material.name, " gives none"));
  const double height = table.number("height");
  const double end_height = table.number("end_height");
  if (end_height > height)
    table.fail(table.has("end_height") ? "end_height" : "height",
               message("the ends (", end_height * 1e3, " mm) are higher than the bar at the bridge line (",
                       height * 1e3, " mm)"));
  const double half_length = footprint.length / 2.0;
  if (std::abs(footprint.apex) >= half_length)
    table.fail("length",
               message("the bridge line lies ", footprint.apex * 1e3, " mm from the bar's middle, beyond its ",
                       "end; change setup.stop, bar.centre or bar.length"));
  const bool rounded = table.word("profile", "straight") == "rounded";
  const Eigen::Vector2d axis = bar_axis(footprint);
  return {.material = material.material,
          .width = footprint.width,
          .profile = (rounded ? rounded_profile : straight_profile)(half_length, footprint.apex, height, end_height),
          .axis = {axis.x(), axis.y(), 0.0}};
}

} // namespace plate
