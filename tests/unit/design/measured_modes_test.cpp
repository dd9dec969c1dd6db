// SPDX-License-Identifier: MPL-2.0
#include <plate/design/design_error.h>
#include <plate/design/measured_modes.h>

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace plate;

namespace
{

std::string refusal(const std::string& text, const std::string& name = "list.csv")
{
  try
  {
    static_cast<void>(parse_measured_modes(text, name));
  }
  catch (const DesignError& error)
  {
    return error.what();
  }
  return "no error";
}

struct Wrong
{
  std::string text;
  std::string says;
};

} // namespace

TEST_CASE("a table of measured modes is read by the names of its columns, in any order")
{
  for (const char* text :
       {"mode,name,frequency_hz,loss_percent\n1,M1,61.5,1.6\n2,,113,\n5,M5,262.0,1.5\n",
        "\xEF\xBB\xBFname;loss_percent;remark;frequency_hz;mode\nM5;1.5;loud;262.0;5\n;;;113;2\n# "
        "one\nM1;1.6;;61.5;1\n",
        "Frequency_Hz\tMode\tName\tLoss_percent\r\n61.5\t1\t\"M1\"\t1.6\r\n113\t2\t\t\r\n262\t5\tM5\t1.5"})
  {
    CAPTURE(text);
    const MeasuredModes measured = parse_measured_modes(text, "folder/list.csv");
    CHECK(measured.title == "list.csv");
    CHECK_FALSE(measured.with_shapes);
    REQUIRE(measured.modes.size() == 3);
    CHECK(measured.modes[0].number == 1);
    CHECK(measured.modes[0].name == "M1");
    CHECK(measured.modes[0].frequency_hz == 61.5);
    CHECK(*measured.modes[0].loss == doctest::Approx(0.016).epsilon(1e-14));
    CHECK(measured.modes[1].number == 2);
    CHECK(measured.modes[1].name.empty());
    CHECK_FALSE(measured.modes[1].loss.has_value());
    CHECK(measured.modes[2].number == 5);
  }
}

TEST_CASE("without numbers, modes count by ascending frequency")
{
  const MeasuredModes measured = parse_measured_modes("frequency_hz,name\n262,M5\n61.5,M1\n", "list.csv");
  REQUIRE(measured.modes.size() == 2);
  CHECK(measured.modes[0].name == "M1");
  CHECK(measured.modes[0].number == 1);
  CHECK(measured.modes[1].number == 2);
}

TEST_CASE("TOML holds a title and shapes too")
{
  const MeasuredModes measured = parse_measured_modes("title = \"Tapped in May\"\n"
                                                      "[[mode]]\nname = \"M1\"\nfrequency_hz = 61\nloss_percent = 1.6\n"
                                                      "points = [[10, 20, 1], [-10, 20, -1], [10, -20, -1.0],\n"
                                                      "  [-10, -20, 1], [0, 0, 0], [50.5, 0, 0.1]]\n",
                                                      "tapped.toml");
  CHECK(measured.title == "Tapped in May");
  CHECK(measured.with_shapes);
  REQUIRE(measured.modes.size() == 1);
  REQUIRE(measured.modes[0].places.size() == 6);
  CHECK(measured.modes[0].places[5].x() == doctest::Approx(0.0505).epsilon(1e-14)); // m
  CHECK(measured.modes[0].displacement(1) == -1.0);
}

TEST_CASE("a table in another unit, out of range or order, or empty is refused with its line")
{
  for (const Wrong& wrong : std::vector<Wrong>{
           {"", "list.csv: no measured modes"},
           {"# nothing\n", "list.csv: no measured modes"},
           {"mode,name,frequency_hz,loss_percent\n", "list.csv: no measured modes"},
           {"mode,frequency_khz\n1,0.0615\n",
            "list.csv:1: column \"frequency_khz\": frequencies are read from frequency_hz"},
           {"mode,frequency_rad_s\n1,386\n", "list.csv:1: column \"frequency_rad_s\""},
           {"omega\n386\n", "kHz and rad/s must be converted"},
           {"frequency\n61\n", "column \"frequency\""},
           {"frequency_hz,loss\n61,0.016\n", "losses are read from loss_percent, in %"},
           {"1,M1,61.5,1.6\n",
            "list.csv:1: there is no column frequency_hz; the first line holds names of columns: mode"},
           {"frequency_hz,frequency_hz\n1,2\n", "named twice"},
           {"frequency_hz\n0.0615\n0.113\n", "list.csv:2: frequency_hz = 0.0615: must be from 1 to 20000 Hz; kHz"},
           {"frequency_hz\n61\n-5\n", "list.csv:3: frequency_hz = -5"},
           {"frequency_hz\n61\nnan\n", "list.csv:3: frequency_hz = nan"},
           {"frequency_hz\n61\n1e9\n", "list.csv:3: frequency_hz = 1e+09"},
           {"mode,frequency_hz\n1,sixty\n", "list.csv:2: frequency_hz = \"sixty\": not a number"},
           {"mode,frequency_hz\n1,\n", "list.csv:2: the frequency_hz is missing"},
           {"mode;frequency_hz\n1;61,5\n", "frequency_hz = \"61,5\": not a number; decimals are written with a point"},
           {"mode,frequency_hz\n1,61,2\n", "list.csv:2: 3 cells; each line needs 2"},
           {"mode,frequency_hz\n0,61\n", "list.csv:2: mode = 0: must be from 1 to 200"},
           {"mode,frequency_hz\n1.5,61\n", "mode = 1.5: must be a whole number"},
           {"mode,frequency_hz\n2,61\n1,90\n", "list.csv:3: mode 1 at 90 Hz follows mode 2 at 61 Hz"},
           {"mode,frequency_hz\n1,61\n1,90\n", "list.csv:3: mode 1 at 90 Hz follows mode 1"},
           {"mode,frequency_hz\n1,61\n,90\n", "list.csv:3: some modes have a number and some have none"},
           {"name,frequency_hz\nM1,61\nM1,90\n", "list.csv:3: name = \"M1\": is the name of two modes"},
           {"frequency_hz,loss_percent\n61,160\n", "list.csv:2: loss_percent = 160: must be from 0 to 50 %"},
           {std::string("frequency_hz\n6\0001\n", 16), "list.csv:2: NUL byte"},
           {"name,frequency_hz\nM\xff,61\n", "list.csv:2: name: must be UTF-8"}})
  {
    CAPTURE(wrong.says);
    const std::string said = refusal(wrong.text);
    CAPTURE(said);
    CHECK(said.find(wrong.says) != std::string::npos);
  }
}

TEST_CASE("TOML with slips is refused with its line")
{
  const std::string mode = "[[mode]]\nfrequency_hz = 61\n";
  for (const Wrong& wrong : std::vector<Wrong>{
           {"", "list.toml: no measured modes"},
           {"title = \"none\"\n", "list.toml: no measured modes"},
           {"[[mode]]\nname = \"M1\"\n", "list.toml:1: the frequency_hz is missing"},
           {"[[mode]]\nfrequency_khz = 0.061\n", "list.toml:2: frequency_khz = 0.061: frequencies are read from"},
           {"[[mode]]\nhertz = 61\n", "list.toml:2: hertz = 61: unknown key; nearest: "},
           {"mode = 3\n", "list.toml:1: mode = 3: must be tables [[mode]]"},
           {"[[mode]]\nfrequency_hz = \"61\"\n", "list.toml:2: frequency_hz = \"61\": must be a number"},
           {mode + "name = 5\n", "list.toml:3: name = 5: must be text in quotes"},
           {mode + "points = [[1, 2, 3]]\n", "list.toml:1: points: there are 1; shapes are told apart from 6 on"},
           {mode + "points = [[1, 2]]\n", "must be a list of [x, y, displacement]"},
           {mode + "points = [[1,2,0],[2,2,0],[3,2,0],[4,2,0],[5,2,0],[6,2,0]]\n", "all displacements are 0"},
           {mode + "points = [[1,2,1],[2,2,0],[3,2,0],[4,2,0],[5,2,0],[9000,2,0]]\n", "points: x = 9000"},
           {mode + "points = [[1,2,1],[2,2,0],[3,2,0],[4,2,0],[5,2,0],[6,2,0]]\n[[mode]]\nfrequency_hz = 90\n",
            "list.toml:4: some modes have points and some have none"},
           {"[[mode]\n", "not valid TOML"}})
  {
    CAPTURE(wrong.says);
    const std::string said = refusal(wrong.text, "list.toml");
    CAPTURE(said);
    CHECK(said.find(wrong.says) != std::string::npos);
  }
}

TEST_CASE("a file that is none is refused")
{
  CHECK_THROWS_AS((void)read_measured_modes("/nowhere/list.csv"), IoError);
  CHECK_THROWS_AS((void)read_measured_modes("/"), IoError);
}
