// SPDX-License-Identifier: MPL-2.0
#include "relative.h"
#include "sample_text.h"

#include <plate/materials/library.h>

#include <string>

using namespace plate;
using namespace plate::test;

namespace
{

DesignDocument sandwich()
{
  return DesignDocument::from_text(bare_plate +
                                       "[layup]\nplies = [\n"
                                       "  { material = \"carbon_ud\", thickness = 0.2, angle = 0 },\n"
                                       "  { material = \"balsa\", thickness = 2 },\n]\n"
                                       "[[soundhole]]\nkind = \"slot\"\ncentre = [10, 50]\nlength = 60\nwidth = 6\n",
                                   "top.toml");
}

std::string error_of_set(DesignDocument document, const std::string& key, const std::string& value)
{
  try
  {
    document.set(key, value);
    static_cast<void>(document.design());
  }
  catch (const DesignError& error)
  {
    return error.what();
  }
  return "no error";
}

} // namespace

TEST_CASE("set changes keys of tables and of list entries counted from 1")
{
  DesignDocument document = sandwich();
  document.set("outline.length", "360");
  document.set("layup.plies.1.angle", "45");
  document.set("soundhole.1.centre.2", "55");
  document.set("arching.kind", "elliptic"); // a bare word, as a shell leaves it
  document.set("arching.height", "12.5");
  document.set("title", "two words");
  document.set("support.edges", "[\"free\", \"rest\", \"free\", \"free\"]");
  const Design design = document.design();
  CHECK(outline_length(design.geometry.outline) == doctest::Approx(0.360));
  CHECK(design.laminate.plies[0].angle.in_degrees() == doctest::Approx(45.0));
  CHECK(std::get<Slot>(design.geometry.soundholes[0]).centre.y() == test::relative(0.055));
  CHECK(std::get<EllipticArching>(design.geometry.arching).height == test::relative(0.0125));
  CHECK(design.title == "two words");
  REQUIRE(design.supports.size() == 1);
  CHECK(design.supports[0].group == "x+");
}

TEST_CASE("set changes a built-in material that the file does not declare")
{
  DesignDocument document = DesignDocument::from_text(small_plate, "top.toml");
  document.set("material.spruce.E1", "9");
  const Material material = document.design().laminate.plies[0].material;
  CHECK(material.elastic.E1 == doctest::Approx(9e9));
  CHECK(material.density == find_material("spruce")->density);
}

TEST_CASE("a copy of a document is not changed with it")
{
  const DesignDocument original = sandwich();
  DesignDocument copy = original;
  copy.set_number("outline.length", 300);
  CHECK(original.number("outline.length") == 350);
  CHECK(copy.number("outline.length") == 300);
}

TEST_CASE("an override is checked like the file and says where it comes from")
{
  check_message(error_of_set(sandwich(), "outline.lenght", "3"),
                "--set: outline.lenght:", {"nearest: outline.length", "lower_bout"});
  check_message(error_of_set(sandwich(), "outline.length", "-3"), "--set: outline.length = -3:", {"at least 10"});
  check_message(error_of_set(sandwich(), "outline.length", "long"), "--set: outline.length = \"long\":", {"number"});
  check_message(error_of_set(sandwich(), "layup.plies.3.angle", "3"),
                "--set: layup.plies.3.angle:", {"no entry 3", "has 2"});
  check_message(error_of_set(sandwich(), "layup.plies.0.angle", "3"), "--set: layup.plies.0.angle:", {"no entry 0"});
  check_message(error_of_set(sandwich(), "layup.plies.9999999999999999999999.angle", "3"), "--set: ", {"no entry"});
  check_message(error_of_set(sandwich(), "outline", "3"), "--set: outline:", {"table"});
  check_message(error_of_set(sandwich(), "", "3"), "--set: ", {"unknown key"});
  check_message(error_of_set(sandwich(), "outline.", "3"), "--set: ", {"unknown key"});
  check_message(error_of_set(sandwich(), "layup.solid", "spruce"), "top.toml:6: layup.plies",
                {"contradicts layup.solid"});
  check_message(error_of_set(DesignDocument::from_text(small_plate, "top.toml"), "soundhole.1.length", "70"),
                "--set: soundhole.1.length:", {"no entry 1"});
}

TEST_CASE("numbers are read in the unit of the key, with defaults from their declaration")
{
  const DesignDocument document = sandwich();
  CHECK(document.number("outline.length") == 350);
  CHECK(document.unit("outline.length") == "mm");
  CHECK(document.number("soundhole.1.centre.1") == 10);
  CHECK(document.number("layup.scale") == 1);
  CHECK(document.unit("layup.scale").empty());
  CHECK(document.number("material.balsa.E3") == doctest::Approx(find_material("balsa")->elastic.E3 / 1e9));
  CHECK(document.number("material.balsa.loss.4") == doctest::Approx(find_material("balsa")->loss.G12 * 100));
  CHECK_THROWS_AS(static_cast<void>(document.number("mesh.size")), DesignError);
  CHECK_THROWS_AS(static_cast<void>(document.number("title")), DesignError);
  CHECK_THROWS_AS(static_cast<void>(document.number("soundhole.1.centre")), DesignError);
  CHECK_THROWS_AS(static_cast<void>(document.unit("nothing")), DesignError);
}

TEST_CASE("the numeric keys of a file are found, lists number by number, with what was set")
{
  DesignDocument document = DesignDocument::from_text(
      "title = \"x\"\n[outline]\nkind = \"rectangle\"\nlength = 350\nwidth = 200\n"
      "[layup]\nplies = [{ material = \"carbon_ud\", thickness = 0.2 }, { material = \"balsa\", angle = 10 }]\n"
      "[material.oak]\nloss = [1, 2, 2, 2, 2, 2]\n[[mass]]\nat = [10, 20]\ngrams = 3\n"
      "[[patch]]\nshape = \"polygon\"\npoints = [[0, 0], [30, 0], [0, 20]]\n",
      "top.toml");
  document.set("arching.height", "12");
  const std::vector<std::string> expected = {"outline.length",      "outline.width",       "layup.plies.1.thickness",
                                             "layup.plies.2.angle", "material.oak.loss.1", "material.oak.loss.2",
                                             "material.oak.loss.3", "material.oak.loss.4", "material.oak.loss.5",
                                             "material.oak.loss.6", "mass.1.at.1",         "mass.1.at.2",
                                             "mass.1.grams",        "arching.height"};
  CHECK(document.numeric_keys() == expected);
}

TEST_CASE("a file that is not there or is a folder is an IoError")
{
  CHECK_THROWS_AS(static_cast<void>(DesignDocument::from_file("/nowhere/top.toml")), IoError);
  CHECK_THROWS_AS(static_cast<void>(DesignDocument::from_file("/")), IoError);
}
