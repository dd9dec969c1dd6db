// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <string>

using namespace plate;
using namespace plate::test;

namespace
{

/// A folder with a design in spruce whose outline is an ellipse of points, 300 x 200 mm.
class MeasuredPlate
{
public:
  MeasuredPlate() { write("sub/edge.csv", ellipse(150.0, 100.0, 0.0, 0.0)); }

  void write(const std::string& name, const std::string& text) const
  {
    std::filesystem::create_directories((folder_ / name).parent_path());
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }

  [[nodiscard]] static std::string ellipse(double a, double b, double x, double y)
  {
    std::string text;
    for (int k = 0; k < 60; ++k)
    {
      const double angle = 2.0 * std::numbers::pi * k / 60.0;
      text += message(x + a * std::cos(angle), ",", y + b * std::sin(angle), "\n");
    }
    return text;
  }

  /// Heights of a dome and a thickness over the ellipse.
  [[nodiscard]] static std::string dome(double height, double elsewhere)
  {
    std::string text = "x,y,z,t\n";
    for (int i = -15; i <= 15; ++i)
      for (int j = -10; j <= 10; ++j)
        text += message(10 * i, ",", 10 * j, ",", height * (1.0 - i * i / 225.0 - j * j / 100.0), ",", elsewhere, "\n");
    return text;
  }

  [[nodiscard]] DesignDocument document(const std::string& text, FileAccess access = {}) const
  {
    write("top.toml", text);
    return DesignDocument::from_file(folder_ / "top.toml", std::move(access));
  }

  [[nodiscard]] std::string error(const std::string& text, FileAccess access = {}) const
  {
    try
    {
      static_cast<void>(document(text, std::move(access)).design());
    }
    catch (const DesignError& error)
    {
      return error.what();
    }
    return "no error";
  }

  [[nodiscard]] const std::filesystem::path& path() const { return folder_.path(); }

private:
  TemporaryFolder folder_;
};

std::string outline_of(const std::string& file)
{
  return "[outline]\nkind = \"points\"\nfile = \"" + file + "\"\n";
}

const std::string solid = "[thickness]\nvalue = 2.5\n[layup]\nsolid = \"spruce\"\n";

} // namespace

TEST_CASE("outline, arching, thickness and hole are read from files and their fits reported")
{
  const MeasuredPlate plate;
  plate.write("dome.csv", MeasuredPlate::dome(12.0, 2.5));
  plate.write("hole.csv", MeasuredPlate::ellipse(20.0, 5.0, 0.0, 50.0));
  const std::string text = outline_of("sub/edge.csv") + "[arching]\nkind = \"points\"\nfile = \"dome.csv\"\n" +
                           "[thickness]\nkind = \"points\"\nfile = \"dome.csv\"\n" +
                           "[[soundhole]]\nkind = \"points\"\nfile = \"hole.csv\"\nmirror = false\n" +
                           "[layup]\nsolid = \"spruce\"\nscale = 2\n";
  const Design design = plate.document(text).design();
  CHECK(outline_length(design.geometry.outline) == doctest::Approx(0.300).epsilon(1e-6));
  CHECK(outline_width(design.geometry.outline) == doctest::Approx(0.200).epsilon(1e-6));
  const ArchSurface arch(design.geometry.outline, design.geometry.arching);
  CHECK(arch.at({0.03, 0.02}).z == test::relative(0.012 * (1.0 - 0.04 - 0.04), 1e-3));
  CHECK(ThicknessField(design.geometry.outline, design.geometry.thickness).at({0.05, 0.0}) ==
        test::relative(0.005, 1e-6));
  CHECK(design.laminate.plies[0].thickness == test::relative(0.005));
  // Area of an ellipse less that of another; the points of the files leave 4e-6.
  CHECK(planform_area(design.geometry) == test::relative(std::numbers::pi * (0.15 * 0.1 - 0.02 * 0.005), 1e-5));
  REQUIRE(design.fits.size() == 4);
  CHECK(design.fits[0].part == "outline");
  CHECK(design.fits[0].file == "sub/edge.csv");
  CHECK(design.fits[0].report.points == 60);
  CHECK(design.fits[1].part == "thickness");
  CHECK(design.fits[2].part == "arching");
  CHECK(design.fits[2].report.points == 31 * 21);
  CHECK(design.fits[3].part == "soundhole 1");
}

TEST_CASE("an outlier is named by its line")
{
  const MeasuredPlate plate;
  std::string dome = MeasuredPlate::dome(12.0, 2.5);
  const std::string good = "\n0,0,12,2.5\n";
  dome.replace(dome.find(good), good.size(), "\n0,0,21,2.5\n");
  plate.write("dome.csv", dome);
  const Design design =
      plate.document(outline_of("sub/edge.csv") + "[arching]\nkind = \"points\"\nfile = \"dome.csv\"\n" + solid)
          .design();
  const PartFit& fit = design.fits[1];
  REQUIRE(fit.report.outliers.size() == 1);
  CHECK(fit.report.outliers[0].residual == test::relative(0.009, 0.02));
  CHECK(fit.outlier_lines[0] == 2 + 15 * 21 + 10); // after the names: the middle of 31 lines of 21 points
}

TEST_CASE("files are looked for in the folder of the design and nowhere else, unless allowed")
{
  const MeasuredPlate plate;
  const MeasuredPlate other;
  const std::string outside = (other.path() / "sub/edge.csv").string();
  const std::string up = "../" + other.path().filename().string() + "/sub/edge.csv";
  std::filesystem::create_symlink(outside, plate.path() / "link.csv");
  CHECK(plate.error(outline_of("sub/../sub/edge.csv") + solid) == "no error");
  for (const std::string& name : {outside, up, std::string("link.csv")})
  {
    CAPTURE(name);
    check_message(plate.error(outline_of(name) + solid), (plate.path() / "top.toml").string() + ":3: outline.file = ",
                  {"outside the folder", "--allow-outside"});
    CHECK(plate.error(outline_of(name) + solid, {.folder = {}, .allow_outside = true}) == "no error");
  }
  check_message(plate.error(outline_of("no.csv") + solid),
                (plate.path() / "top.toml").string() + ":3:", {"no such file"});
  check_message(plate.error(outline_of("sub") + solid),
                (plate.path() / "top.toml").string() + ":3:", {"no plain file"});
  check_message(plate.error(outline_of("sub/edge.csv\\u0000x") + solid),
                (plate.path() / "top.toml").string() + ":3:", {});
  check_message(error_of(outline_of("edge.csv") + solid), "top.toml:3: outline.file = \"edge.csv\"", {"no folder"});
  const DesignDocument text =
      DesignDocument::from_text(outline_of("edge.csv") + solid, "top.toml", {.folder = plate.path() / "sub"});
  CHECK(outline_length(text.design().geometry.outline) == doctest::Approx(0.300).epsilon(1e-6));
}

TEST_CASE("a file is read once for a document and its copies")
{
  const MeasuredPlate plate;
  const DesignDocument document = plate.document(outline_of("sub/edge.csv") + solid);
  static_cast<void>(document.design());
  plate.write("sub/edge.csv", "gone");
  DesignDocument copy = document;
  copy.set_number("layup.scale", 1.2);
  CHECK(copy.design().fits[0].report.points == 60);
  copy.set("outline.file", "sub/other.csv");
  CHECK_THROWS_AS(static_cast<void>(copy.design()), DesignError);
}

TEST_CASE("points that fit nothing are refused at their key, wrong lines at their line")
{
  const MeasuredPlate plate;
  plate.write("shifted.csv", MeasuredPlate::ellipse(150.0, 100.0, 150.0, 0.0));
  check_message(plate.error(outline_of("shifted.csv") + solid),
                (plate.path() / "top.toml").string() + ":3: outline.file", {"origin"});
  plate.write("eight.csv", "0,0\n50,40\n100,0\n50,-40\n0,0\n-50,40\n-100,0\n-50,-40\n");
  CHECK(plate.error(outline_of("eight.csv") + solid) != "no error");
  plate.write("wrong.csv", "1,2\n3,four\n");
  check_message(plate.error(outline_of("wrong.csv") + solid),
                (plate.path() / "wrong.csv").string() + ":2: y = \"four\"", {});
  plate.write("corner.csv", "0,0,2\n1,0,0\n0,1,0\n");
  check_message(plate.error(outline_of("corner.csv") + solid), "corner.csv:1: corner = 2", {"must be 1"});
  check_message(plate.error("[outline]\nkind = \"points\"\n" + solid), (plate.path() / "top.toml").string() + ":",
                {"outline.file", "missing"});
  check_message(plate.error(outline_of("sub/edge.csv") + "length = 300\n" + solid),
                (plate.path() / "top.toml").string() + ":4: outline.length = 300", {"not used with"});
  plate.write("half.csv", "x,y,z\n10,0,1\n20,5,1\n30,-5,1\n40,2,1\n50,0,1\n60,4,1\n70,3,1\n80,1,1\n90,6,1\n100,-8,1\n");
  check_message(plate.error(outline_of("sub/edge.csv") + "[arching]\nkind = \"points\"\nfile = \"half.csv\"\n" + solid),
                (plate.path() / "top.toml").string() + ":6: arching.file", {"% of the plate"});
}
