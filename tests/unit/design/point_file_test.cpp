// SPDX-License-Identifier: MPL-2.0
#include "point_file.h"
#include "sample_text.h"

#include <array>
#include <string>
#include <vector>

using namespace plate;
using namespace plate::test;

namespace
{

constexpr std::array<PointColumn, 3> surface_columns{{{"x"}, {"y"}, {"z"}}};
constexpr std::array<PointColumn, 3> curve_columns{{{"x"}, {"y"}, {"corner", false}}};

PointTable surface(const std::string& text)
{
  return read_points(text, "arch.csv", surface_columns);
}
PointTable curve(const std::string& text)
{
  return read_points(text, "edge.csv", curve_columns);
}

std::string refusal(const std::string& text)
{
  try
  {
    static_cast<void>(surface(text));
  }
  catch (const DesignError& error)
  {
    return error.what();
  }
  return "no error";
}

} // namespace

TEST_CASE("commas, semicolons, tabs, comments, blank lines and a byte order mark are understood")
{
  for (const char* text :
       {"1,2,3\n-4.5,+5,6e-1\n", "1;2;3\n-4.5; 5 ;0.6", "1\t2\t3\r\n-4.5\t5\t0.6\r\n",
        "\xEF\xBB\xBF# a comment\n1,2,3 # another\n\n  \n-4.5,5,.6\n", "\"1\",\"2\",\"3\"\n-4.5,5,0.6"})
  {
    CAPTURE(text);
    const PointTable table = surface(text);
    REQUIRE(table.rows.size() == 2);
    CHECK(table.rows[0].values == std::array{1.0, 2.0, 3.0});
    CHECK(table.rows[1].values == std::array{-4.5, 5.0, 0.6});
  }
  CHECK(surface("# a comment\n\n1,2,3\n").rows[0].line == 3);
}

TEST_CASE("names put the columns in any order and others are ignored")
{
  const PointTable table = surface("name,Z,y,x\nfirst,3,2,1\n");
  CHECK(table.rows[0].values == std::array{1.0, 2.0, 3.0});
  CHECK(table.rows[0].line == 2);
}

TEST_CASE("the column corner is optional")
{
  CHECK_FALSE(curve("1,2\n3,4\n").has_optional);
  CHECK(curve("1,2,0\n3,4,1\n").has_optional);
  CHECK(curve("1,2,0\n3,4,1\n").rows[1].values[2] == 1.0);
  CHECK(curve("corner,x,y\n1,2,3\n").has_optional);
  CHECK_FALSE(curve("y,x\n1,2\n").has_optional);
}

TEST_CASE("files that hold no points are refused with file and line")
{
  const std::vector<std::array<std::string, 3>> table = {
      {"", "arch.csv: ", "no points"},
      {"# nothing\n\n", "arch.csv: ", "no points"},
      {"x,y,z\n", "arch.csv: ", "no points"},
      {"1,2\n", "arch.csv:1: ", "2 cells"},
      {"1,2,3\n1,2\n", "arch.csv:2: ", "2 cells; each line needs 3"},
      {"1,2,3\n1,2,3,4\n", "arch.csv:2: ", "4 cells"},
      {"1 2 3\n", "arch.csv:1: ", "1 cell"},
      {"x,y\n1,2\n", "arch.csv:1: ", "no column z"},
      {"x,y,z,x\n1,2,3,4\n", "arch.csv:1: ", "named twice"},
      {"1,2,3\n1,two,3\n", "arch.csv:2: y = \"two\"", "not a number"},
      {"1,2,3\n1,,3\n", "arch.csv:2: y = \"\"", "not a number"},
      {"1,2,3\n1,2,3mm\n", "arch.csv:2: z = \"3mm\"", "not a number"},
      {"1;2;3\n1,5;2;3\n", "arch.csv:2: x = \"1,5\"", "with a point"},
      {"1,2,3\n1,2,0x10\n", "arch.csv:2: z", "not a number"},
      {"1,2,nan\n", "arch.csv:1: z = \"nan\"", "finite"},
      {"1,inf,3\n", "arch.csv:1: y = \"inf\"", "finite"},
      {"1,2,1e999\n", "arch.csv:1: z", "finite"},
      {"1,2,3\n200000,2,3\n", "arch.csv:2: x", "at most 100000"},
      {std::string("1,2,3\n1,2,\0", 11), "arch.csv:2: ", "NUL"},
      {"1,2,3\n1,2,\x1b[31mred\n", "arch.csv:2: z", "not a number"},
      {std::string(3, '\xff') + ",2,3\n", "arch.csv:1: ", "no column x"},
      {std::string((std::size_t{16} << 20) + 1, '1'), "arch.csv: ", "bytes"},
  };
  for (const auto& [text, begin, part] : table)
    check_message(refusal(text), begin, {part});
  std::string many;
  for (int i = 0; i <= 200000; ++i)
    many += "1,2,3\n";
  check_message(refusal(many), "arch.csv:200001: ", {"more than 200000 points"});
}
