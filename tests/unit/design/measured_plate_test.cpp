// SPDX-License-Identifier: MPL-2.0
#include "../meshes/measured.h"
#include "sample_text.h"
#include "temporary_folder.h"

#include <plate/assembly/assemble.h>
#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/solvers/modal.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <string>

using namespace plate;
using namespace plate::test;

namespace
{

constexpr const char* parametric_top = EXAMPLES_DIR "/viola/spruce_top.toml";
constexpr double noise = 2e-4; // of every coordinate [m]
constexpr int num_modes = 12;

/// Frequencies on a mesh that is coarse, but of the same size in all cases [Hz].
Eigen::VectorXd frequencies(DesignDocument document)
{
  document.set_number("mesh.size", 12.0);
  return solve_modes(assemble(build_model(document.design())), {.num_modes = num_modes}).frequencies_hz;
}

/// Greatest difference of a mode of the same number [%].
double greatest_difference(const Eigen::VectorXd& a, const Eigen::VectorXd& b)
{
  return 100.0 * (a.array() / b.array() - 1.0).abs().maxCoeff();
}

void write_outline(const std::filesystem::path& path, const Outline& outline, Scatter& scatter)
{
  std::ofstream out(path);
  for (const Eigen::Vector2d& p : measure(outline_loop(outline), 0.003, noise, scatter).points)
    out << message(p.x() * 1e3, ",", p.y() * 1e3, "\n");
}

void write_arching(const std::filesystem::path& path, const PlateGeometry& plate, Scatter& scatter)
{
  const std::vector<Eigen::Vector2d> edge = sample(outline_loop(plate.outline), 100);
  const ArchSurface arch(plate.outline, plate.arching);
  std::ofstream out(path);
  for (int n = 0; n < 1500;)
  {
    const Eigen::Vector2d p(scatter.uniform(-0.2025, 0.2025), scatter.uniform(-0.118, 0.118));
    if (!is_inside(edge, p))
      continue;
    ++n;
    out << message(p.x() * 1e3, ",", p.y() * 1e3, ",", (arch.at(p).z + noise * scatter.normal()) * 1e3, "\n");
  }
}

} // namespace

TEST_CASE("a viola top measured with 0.2 mm of noise has the modes of the parametric one within 1 %")
{
  const DesignDocument parametric = DesignDocument::from_file(parametric_top);
  const PlateGeometry plate = parametric.design().geometry;
  const Eigen::VectorXd expected = frequencies(parametric);
  std::string text = bytes_of(parametric_top);
  // The tables of outline and arching are replaced by files of points.
  const auto replace_table = [&](const std::string& table, const std::string& by)
  {
    const std::size_t begin = text.find(table);
    text.replace(begin, text.find("\n\n", begin) - begin, table + by);
  };
  replace_table("[outline]\n", "kind = \"points\"\nfile = \"outline.csv\"\n");
  replace_table("[arching]\n", "kind = \"points\"\nfile = \"arching.csv\"\n");
  for (const std::uint32_t seed : {1U, 2U, 3U})
  {
    CAPTURE(seed);
    const TemporaryFolder folder;
    Scatter scatter(seed);
    write_outline(folder / "outline.csv", plate.outline, scatter);
    write_arching(folder / "arching.csv", plate, scatter);
    const DesignDocument measured = DesignDocument::from_text(text, "measured.toml", {.folder = folder.path()});
    const std::vector<PartFit> fits = measured.design().fits;
    REQUIRE(fits.size() == 2);
    for (const PartFit& fit : fits)
    {
      CAPTURE(fit.part);
      CHECK(fit.report.outliers.empty());
      CHECK(fit.report.rms > 0.8 * noise);
      CHECK(fit.report.rms < 1.1 * noise);
    }
    const double difference = greatest_difference(frequencies(measured), expected);
    MESSAGE("seed " << seed << ": greatest difference of a mode " << difference << " %");
    CHECK(difference < 1.0);
  }
}

TEST_CASE("the measured example runs and has the modes of the top it was taken from within 1 %")
{
  const DesignDocument measured = DesignDocument::from_file(EXAMPLES_DIR "/viola/measured_top.toml");
  CHECK(measured.design().fits.size() == 3);
  const double difference =
      greatest_difference(frequencies(measured), frequencies(DesignDocument::from_file(parametric_top)));
  MESSAGE("greatest difference of a mode " << difference << " %");
  CHECK(difference < 1.0);
}
