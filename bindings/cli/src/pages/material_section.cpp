// SPDX-License-Identifier: MPL-2.0
#include "reference_page.h"

#include "markdown.h"

#include <plate/core/error.h>
#include <plate/materials/library.h>

#include <sstream>

namespace plate
{
namespace
{

/// Four digits that count: the constants are typical ones.
std::string shown_constant(double value)
{
  std::ostringstream out;
  out.precision(4);
  out << value;
  return out.str();
}

std::string pair_cell(const std::optional<Expansion>& expansion, double unit)
{
  return expansion ? message(shown_constant(expansion->along / unit), ", ", shown_constant(expansion->across / unit))
                   : std::string();
}

std::string constants_row(const Material& m)
{
  constexpr double gpa = 1e9;
  const OrthotropicElastic& e = m.elastic;
  std::vector<std::string> cells = {code(m.name)};
  for (const double modulus : {e.E1, e.E2, e.E3, e.G12, e.G13, e.G23})
    cells.push_back(shown_constant(modulus / gpa));
  for (const double value : {e.nu12, e.nu13, e.nu23, m.density})
    cells.push_back(shown_constant(value));
  return markdown_row(cells);
}

std::string further_row(const Material& m)
{
  std::string losses;
  for (const double factor : {m.loss.E1, m.loss.E2, m.loss.E3, m.loss.G12, m.loss.G13, m.loss.G23})
    losses += message(losses.empty() ? "" : ", ", shown_constant(100.0 * factor));
  return markdown_row({code(m.name), losses, pair_cell(m.thermal, 1e-6), pair_cell(m.swelling, 100.0),
                       m.moisture ? shown_constant(100.0 * m.moisture->content) : std::string(), m.core ? "yes" : ""});
}

} // namespace

std::string material_section()
{
  std::string constants =
      markdown_header({"Name", "E1", "E2", "E3", "G12", "G13", "G23", "nu12", "nu13", "nu23", "density"});
  std::string further = markdown_header({"Name", "loss", "expansion", "swelling", "moisture_content", "core"});
  std::string sources = markdown_header({"Name", "What it is", "Source"});
  for (const LibraryMaterial& entry : material_library())
  {
    constants += constants_row(entry.material);
    further += further_row(entry.material);
    sources += markdown_row({code(entry.material.name), std::string(entry.description), std::string(entry.source)});
  }
  return "## Built-in materials\n\n"
         "To be used by name without declaring them; typical values to begin with, no promise about a batch. Columns "
         "and\n"
         "units are those of the keys of `[material.NAME]`.\n\n" +
         constants + "\n" + further + "\n" + sources;
}

} // namespace plate
