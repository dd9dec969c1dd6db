// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/solvers/reduced_model.h>

#include <cstddef>
#include <vector>

namespace plate::reduced
{

using Point = std::vector<double>;

/// @throws InvalidInput if there are no parameters or a range is not finite and ascending
void check_box(const ParameterBox& box);

/// @throws InvalidInput naming the parameter that lies outside
void check_inside(const ParameterBox& box, std::span<const double> point);

/// Coordinates of a point from -1 to 1 across the box.
[[nodiscard]] Eigen::VectorXd unit_coordinates(const ParameterBox& box, std::span<const double> point);

[[nodiscard]] Point centre_of(const ParameterBox& box);

/// Corners of the box, opposite ones next to each other; at most `most`.
[[nodiscard]] std::vector<Point> corners_of(const ParameterBox& box, std::size_t most);

/// Points spread evenly inside the box, the same on every run. @source [Halton1960]
[[nodiscard]] std::vector<Point> inner_points(const ParameterBox& box, std::size_t count, std::size_t skipped = 0);

} // namespace plate::reduced
