// SPDX-License-Identifier: MPL-2.0
#include "canvas.h"

#include "file_output.h"

#include <plate/core/error.h>

#include <cairo-svg.h>
#include <cairo.h>

#include <array>
#include <cctype>
#include <cmath>
#include <numbers>

namespace plate
{

namespace
{

constexpr double pixels_per_unit = 2.0;

cairo_status_t append_bytes(void* target, const unsigned char* bytes, unsigned int count)
{
  static_cast<std::string*>(target)->append(bytes, bytes + count);
  return CAIRO_STATUS_SUCCESS;
}

/// Cairo numbers its surfaces over the life of the process; a fixed number makes equal pictures equal bytes.
std::string with_fixed_surface_number(const std::string& svg)
{
  constexpr std::string_view mark = "id=\"surface";
  std::string result;
  std::size_t done = 0;
  for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, done))
  {
    result.append(svg, done, at + mark.size() - done);
    done = at + mark.size();
    while (done < svg.size() && std::isdigit(static_cast<unsigned char>(svg[done])) != 0)
      ++done;
    result += '1';
  }
  return result.append(svg, done);
}

} // namespace

struct Canvas::Page
{
  std::filesystem::path path;
  bool is_svg = false;
  double width = 0.0;
  double height = 0.0;
  std::string bytes;
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

  void set_font(const TextStyle& style) const
  {
    cairo_select_font_face(context, "sans-serif", CAIRO_FONT_SLANT_NORMAL,
                           style.bold ? CAIRO_FONT_WEIGHT_BOLD : CAIRO_FONT_WEIGHT_NORMAL);
    cairo_set_font_size(context, style.size);
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
    page_->surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(pixels_per_unit * page_->width),
                                                static_cast<int>(pixels_per_unit * page_->height));
  page_->context = cairo_create(page_->surface);
  if (!page_->is_svg)
    cairo_scale(page_->context, pixels_per_unit, pixels_per_unit);

  // Unhinted outlines: text has the same width in both formats and on any screen.
  cairo_font_options_t* options = cairo_font_options_create();
  cairo_font_options_set_antialias(options, CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  cairo_set_font_options(page_->context, options);
  cairo_font_options_destroy(options);

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
  const std::array<double, 2> dashes = {pen.dash, pen.dash};
  cairo_set_dash(page_->context, dashes.data(), pen.dash > 0.0 ? 2 : 0, 0.0);
  cairo_set_line_cap(page_->context, pen.dash > 0.0 ? CAIRO_LINE_CAP_BUTT : CAIRO_LINE_CAP_ROUND);
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

void Canvas::text(const Eigen::Vector2d& anchor, std::string_view words, const TextStyle& style)
{
  constexpr double capital_height = 0.73; // of the font size; close enough for sans-serif fonts
  const double shift = style.align == Align::left ? 0.0 : style.align == Align::centre ? 0.5 : 1.0;
  const double width = text_width(words, style);
  page_->set_font(style);
  page_->set_colour(style.colour);
  cairo_save(page_->context);
  cairo_translate(page_->context, anchor[0], anchor[1]);
  cairo_rotate(page_->context, style.turn);
  cairo_move_to(page_->context, -shift * width, 0.5 * capital_height * style.size);
  cairo_show_text(page_->context, std::string(words).c_str());
  cairo_restore(page_->context);
}

double Canvas::text_width(std::string_view words, const TextStyle& style) const
{
  page_->set_font(style);
  cairo_text_extents_t extents;
  cairo_text_extents(page_->context, std::string(words).c_str(), &extents);
  return extents.x_advance;
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
  write_whole_file(page_->path, page_->is_svg ? with_fixed_surface_number(page_->bytes) : page_->bytes);
}

} // namespace plate
