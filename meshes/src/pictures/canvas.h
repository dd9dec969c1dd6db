// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "polyline.h"
#include "text_style.h"

#include <Eigen/Core>

#include <array>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace plate
{

/// How a line is drawn; lengths in picture units.
struct Pen
{
  Colour colour = black;
  double width = 1.0;
  std::array<double, 4> dashes =
      {}; ///< dash, gap, dash, gap; zeros from the third on repeat, all zero for a solid line
};

/// Pixels of a picture, row by row from the top left; bytes of a value: nothing, red, green, blue.
struct PixelImage
{
  int width = 0;
  int height = 0;
  std::vector<std::uint32_t> pixels; ///< (width x height)
};

/// A page that becomes an SVG or PNG file, as the ending of its path says. Origin top left, y down.
class Canvas
{
public:
  /// @throws InvalidInput for an ending other than .svg and .png
  Canvas(const std::filesystem::path& path, const Eigen::Vector2d& size);
  ~Canvas();
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  /// Fills the inside of closed lines as one path, so that no seams show; lines inside lines are holes.
  void fill(std::span<const Polyline> outlines, const Colour& colour);
  void stroke(std::span<const Polyline> lines, const Pen& pen);
  void line(const Eigen::Vector2d& from, const Eigen::Vector2d& to, const Pen& pen);
  void rectangle(const Eigen::Vector2d& corner, const Eigen::Vector2d& size, const Colour& colour);
  void dot(const Eigen::Vector2d& centre, double radius, const Colour& colour);
  void ring(const Eigen::Vector2d& centre, double radius, const Pen& pen);
  /// A bar of colours running smoothly from left to right.
  void gradient(const Eigen::Vector2d& corner, const Eigen::Vector2d& size, std::span<const Colour> colours);
  /// An image with its top left at a corner, seen through closed lines only; lines inside lines are holes.
  void image(const PixelImage& image, const Eigen::Vector2d& corner, std::span<const Polyline> outlines);
  void text(const Eigen::Vector2d& anchor, std::string_view words, const TextStyle& style);

  /// Of the file for PNG, of images in it for SVG: smooth colours need no more.
  [[nodiscard]] double pixels_per_unit() const;
  [[nodiscard]] double width() const;
  [[nodiscard]] double height() const;

  /// Writes the file; call once, at the end.
  /// @throws IoError if the file cannot be written
  void write();

private:
  struct Page; // keeps Cairo out of the header
  std::unique_ptr<Page> page_;
};

} // namespace plate
