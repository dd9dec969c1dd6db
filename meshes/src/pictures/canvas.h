// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "colour_map.h"
#include "polyline.h"

#include <Eigen/Core>

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>

namespace plate
{

inline constexpr Colour black{.red = 0.0, .green = 0.0, .blue = 0.0};
inline constexpr Colour white{.red = 1.0, .green = 1.0, .blue = 1.0};
inline constexpr Colour grey{.red = 0.35, .green = 0.35, .blue = 0.35};
inline constexpr Colour pale{.red = 0.85, .green = 0.85, .blue = 0.85};

/// How a line is drawn; lengths in picture units.
struct Pen
{
  Colour colour = black;
  double width = 1.0;
  double dash = 0.0; ///< length of dash and gap; 0 for a solid line
};

enum class Align
{
  left,
  centre,
  right
};

/// How text is set; the anchor is at the alignment's end, halfway up a capital letter.
struct TextStyle
{
  double size = 10.0; ///< of the font, picture units
  Colour colour = black;
  bool bold = false;
  Align align = Align::left;
  double turn = 0.0; ///< clockwise on the page [rad]
};

/// A page that becomes an SVG or PNG file, as the ending of its path says. Origin top left, y down; a PNG has two
/// pixels for each picture unit.
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
  void text(const Eigen::Vector2d& anchor, std::string_view words, const TextStyle& style);
  [[nodiscard]] double text_width(std::string_view words, const TextStyle& style) const;

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
