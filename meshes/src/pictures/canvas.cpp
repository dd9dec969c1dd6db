// SPDX-License-Identifier: MPL-2.0
#include "canvas.h"

#include "file_output.h"
#include "svg_output.h"

#include <plate/core/error.h>

#include <cairo-svg.h>
#include <cairo.h>

#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

constexpr double png_pixels_per_unit = 2.0;

cairo_status_t append_bytes(void* target, const unsigned char* bytes, unsigned int count)
{
  static_cast<std::string*>(target)->append(bytes, bytes + count);
  return CAIRO_STATUS_SUCCESS;
}

void set_font(cairo_t* context, const TextStyle& style)
{
  cairo_select_font_face(context, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                         style.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size(context, style.size);
}

/// Unhinted outlines: text has the same width in both formats and on any screen.
void set_font_options(cairo_t* context)
{
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_set_font_options(context, options);
  cairo_font_options_destroy(options);
}

double width_of(cairo_t* context, const std::string& words, const TextStyle& style)
{
  set_font(context, style);
  cairo_text_extents_t extents;
  cairo_text_extents(context, words.c_str(), &extents);
  return extents.x_advance;
}

} // namespace

struct Canvas::Page
{
  std::filesystem::path path;
  bool is_svg = false;
  double width = 0.0;
  double height = 0.0;
  std::string bytes;
  std::vector<PlacedText> texts;
  cairo_surface_t* surface = nullptr;
  cairo_t* context = nullptr;

  void set_colour(const Colour& colour) const { cairo_set_source_rgb(context, colour.red, colour.green, colour.blue); }

  void trace(std::span<const Polyline> lines) const
  {
    cairo_new_path(context);
    for (const Polyline& line : lines)
    {
      cairo_new_sub_path(context);
      for (const Eigen::Vector2d& point : line.points)
        cairo_line_to(context, point[0], point[1]);
      if (line.closed)
        cairo_close_path(context);
    }
  }
};

Canvas::Canvas(const std::filesystem::path& path, const Eigen::Vector2d& size) : page_(std::make_unique<Page>())
{
  const std::string ending = path.extension().string();
  if (ending != ".svg" && ending != ".png")
    throw InvalidInput(message("picture: ", path.string(), " ends in '", ending, "'; use .svg or .png"));
  page_->path = path;
  page_->is_svg = ending == ".svg";
  page_->width = std::ceil(size[0]);
  page_->height = std::ceil(size[1]);
  if (page_->is_svg)
    page_->surface = cairo_svg_surface_create_for_stream(append_bytes, &page_->bytes, page_->width, page_->height);
  else
    page_->surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(png_pixels_per_unit * page_->width),
                                   static_cast<int>(png_pixels_per_unit * page_->height));
  page_->context = cairo_create(page_->surface);
  if (!page_->is_svg)
    cairo_scale(page_->context, png_pixels_per_unit, png_pixels_per_unit);

  set_font_options(page_->context);
  cairo_set_line_join(page_->context, CAIRO_LINE_JOIN_ROUND);
  cairo_set_fill_rule(page_->context, CAIRO_FILL_RULE_EVEN_ODD);
  rectangle({0.0, 0.0}, {page_->width, page_->height}, white);
}

Canvas::~Canvas()
{
  cairo_destroy(page_->context);
  cairo_surface_destroy(page_->surface);
}

void Canvas::fill(std::span<const Polyline> outlines, const Colour& colour)
{
  page_->trace(outlines);
  page_->set_colour(colour);
  cairo_fill(page_->context);
}

void Canvas::stroke(std::span<const Polyline> lines, const Pen& pen)
{
  page_->trace(lines);
  page_->set_colour(pen.colour);
  cairo_set_line_width(page_->context, pen.width);
  const bool is_dashed = pen.dashes[0] > 0.0;
  cairo_set_dash(page_->context, pen.dashes.data(), !is_dashed ? 0 : pen.dashes[2] > 0.0 ? 4 : 2, 0.0);
  cairo_set_line_cap(page_->context, is_dashed ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
  cairo_stroke(page_->context);
}

void Canvas::line(const Eigen::Vector2d& from, const Eigen::Vector2d& to, const Pen& pen)
{
  const Polyline both{.points = {from, to}};
  stroke({&both, 1}, pen);
}

void Canvas::rectangle(const Eigen::Vector2d& corner, const Eigen::Vector2d& size, const Colour& colour)
{
  page_->set_colour(colour);
  cairo_rectangle(page_->context, corner[0], corner[1], size[0], size[1]);
  cairo_fill(page_->context);
}

void Canvas::dot(const Eigen::Vector2d& centre, double radius, const Colour& colour)
{
  page_->set_colour(colour);
  cairo_new_path(page_->context);
  cairo_arc(page_->context, centre[0], centre[1], radius, 0.0, 2.0 * std::numbers::pi);
  cairo_fill(page_->context);
}

void Canvas::ring(const Eigen::Vector2d& centre, double radius, const Pen& pen)
{
  page_->set_colour(pen.colour);
  cairo_set_line_width(page_->context, pen.width);
  cairo_set_dash(page_->context, nullptr, 0, 0.0);
  cairo_new_path(page_->context);
  cairo_arc(page_->context, centre[0], centre[1], radius, 0.0, 2.0 * std::numbers::pi);
  cairo_stroke(page_->context);
}

void Canvas::gradient(const Eigen::Vector2d& corner, const Eigen::Vector2d& size, std::span<const Colour> colours)
{
  cairo_pattern_t* pattern = cairo_pattern_create_linear(corner[0], 0.0, corner[0] + size[0], 0.0);
  for (std::size_t k = 0; k < colours.size(); ++k)
    cairo_pattern_add_color_stop_rgb(pattern, static_cast<double>(k) / static_cast<double>(colours.size() - 1),
                                     colours[k].red, colours[k].green, colours[k].blue);
  cairo_rectangle(page_->context, corner[0], corner[1], size[0], size[1]);
  cairo_set_source(page_->context, pattern);
  cairo_fill(page_->context);
  cairo_pattern_destroy(pattern);
}

void Canvas::image(const PixelImage& image, const Eigen::Vector2d& corner, std::span<const Polyline> outlines)
{
  std::vector<std::uint32_t> pixels = image.pixels; // Cairo wants them writable
  cairo_surface_t* surface = cairo_image_surface_create_for_data(
      reinterpret_cast<unsigned char*>(pixels.data()), CAIRO_FORMAT_RGB24, image.width, image.height, 4 * image.width);
  cairo_save(page_->context);
  page_->trace(outlines);
  cairo_clip(page_->context);
  cairo_translate(page_->context, corner[0], corner[1]);
  cairo_scale(page_->context, 1.0 / pixels_per_unit(), 1.0 / pixels_per_unit());
  cairo_set_source_surface(page_->context, surface, 0.0, 0.0);
  if (!page_->is_svg) // pixel on pixel
    cairo_pattern_set_filter(cairo_get_source(page_->context), CAIRO_FILTER_NEAREST);
  cairo_paint(page_->context);
  cairo_restore(page_->context);
  cairo_surface_finish(surface);
  cairo_surface_destroy(surface);
}

void Canvas::text(const Eigen::Vector2d& anchor, std::string_view words, const TextStyle& style)
{
  constexpr double halo_width = 0.28; // of the font size
  const std::string text(words);
  const double width = width_of(page_->context, text, style);
  cairo_save(page_->context);
  cairo_translate(page_->context, anchor[0], anchor[1]);
  cairo_rotate(page_->context, style.turn);
  const Eigen::Vector2d start(-part_before_anchor(style.align) * width, 0.5 * capital_height * style.size);
  if (style.halo)
  {
    cairo_move_to(page_->context, start[0], start[1]);
    cairo_text_path(page_->context, text.c_str());
    page_->set_colour(white);
    cairo_set_line_width(page_->context, halo_width * style.size);
    cairo_set_dash(page_->context, nullptr, 0, 0.0);
    cairo_stroke(page_->context);
  }
  page_->set_colour(style.colour);
  cairo_move_to(page_->context, start[0], start[1]);
  cairo_show_text(page_->context, text.c_str());
  cairo_restore(page_->context);
  page_->texts.push_back({.words = text, .anchor = anchor, .width = width, .style = style});
}

double text_width(std::string_view words, const TextStyle& style)
{
  cairo_surface_t* surface = cairo_image_surface_create(CAIRO_FORMAT_A8, 1, 1);
  cairo_t* context = cairo_create(surface);
  set_font_options(context);
  const double width = width_of(context, std::string(words), style);
  cairo_destroy(context);
  cairo_surface_destroy(surface);
  return width;
}

double Canvas::pixels_per_unit() const
{
  return page_->is_svg ? 1.0 : png_pixels_per_unit;
}
double Canvas::width() const
{
  return page_->width;
}
double Canvas::height() const
{
  return page_->height;
}

void Canvas::write()
{
  cairo_surface_flush(page_->surface);
  if (!page_->is_svg)
    cairo_surface_write_to_png_stream(page_->surface, append_bytes, &page_->bytes);
  cairo_surface_finish(page_->surface);
  const cairo_status_t status = cairo_status(page_->context);
  const cairo_status_t surface_status = cairo_surface_status(page_->surface);
  if (status != CAIRO_STATUS_SUCCESS || surface_status != CAIRO_STATUS_SUCCESS)
    throw IoError(message("cannot draw ", page_->path.string(), ": ",
                          cairo_status_to_string(status != CAIRO_STATUS_SUCCESS ? status : surface_status)));
  write_whole_file(page_->path,
                   page_->is_svg ? with_searchable_text(with_own_numbers(page_->bytes), page_->texts) : page_->bytes);
}

} // namespace plate
