// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <Eigen/Core>

#include <doctest/doctest.h>

#include <cairo.h>

#include <array>
#include <filesystem>
#include <functional>

namespace plate::test
{

/// Pixels of a PNG as Cairo reads it.
class Pixels
{
public:
  enum class Hue
  {
    warm, ///< red exceeds blue by more than 60 of 255: outward displacement
    cold  ///< blue exceeds red by as much: inward
  };
  /// Columns first to last - 1.
  using Columns = std::array<int, 2>;

  explicit Pixels(const std::filesystem::path& path) : surface_(cairo_image_surface_create_from_png(path.c_str()))
  {
    REQUIRE(cairo_surface_status(surface_) == CAIRO_STATUS_SUCCESS);
  }
  ~Pixels() { cairo_surface_destroy(surface_); }
  Pixels(const Pixels&) = delete;
  Pixels& operator=(const Pixels&) = delete;

  [[nodiscard]] int width() const { return cairo_image_surface_get_width(surface_); }
  [[nodiscard]] int height() const { return cairo_image_surface_get_height(surface_); }

  /// Red, green, blue, 0 to 255; in memory Cairo keeps a pixel as the bytes blue, green, red on this machine's order.
  [[nodiscard]] std::array<int, 3> at(int x, int y) const
  {
    const unsigned char* pixel =
        cairo_image_surface_get_data(surface_) + y * cairo_image_surface_get_stride(surface_) + 4 * x;
    return {pixel[2], pixel[1], pixel[0]};
  }

  /// Mean place of the pixels of a hue above a row.
  [[nodiscard]] Eigen::Vector2d centre_of(Hue hue, const Columns& columns, int below_row) const
  {
    Eigen::Vector2d sum = Eigen::Vector2d::Zero();
    double count = 0.0;
    for_each(hue, columns, below_row,
             [&](const Eigen::Vector2d& place)
             {
               sum += place;
               count += 1.0;
             });
    REQUIRE(count > 100.0);
    return sum / count;
  }
  [[nodiscard]] Eigen::Vector2d centre_of(Hue hue, int below_row) const
  {
    return centre_of(hue, {0, width()}, below_row);
  }

  /// Width and height of the box around all warm pixels above a row.
  [[nodiscard]] Eigen::Vector2d extent_of_warm(const Columns& columns, int below_row) const
  {
    Eigen::Vector2d low(1e9, 1e9);
    Eigen::Vector2d high(-1e9, -1e9);
    for_each(Hue::warm, columns, below_row,
             [&](const Eigen::Vector2d& place)
             {
               low = low.cwiseMin(place);
               high = high.cwiseMax(place);
             });
    return high - low;
  }

private:
  void for_each(Hue hue, const Columns& columns, int below_row,
                const std::function<void(const Eigen::Vector2d&)>& visit) const
  {
    for (int y = 0; y < below_row; ++y)
      for (int x = columns[0]; x < columns[1]; ++x)
      {
        const auto [red, green, blue] = at(x, y);
        if ((hue == Hue::warm ? red - blue : blue - red) > 60)
          visit(Eigen::Vector2d(x, y));
      }
  }

  cairo_surface_t* surface_;
};

} // namespace plate::test
