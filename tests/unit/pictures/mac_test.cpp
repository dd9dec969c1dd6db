// SPDX-License-Identifier: MPL-2.0
#include "svg_text.h"
#include "temporary_folder.h"

#include <plate/core/error.h>
#include <plate/meshes/mac_picture.h>

#include <doctest/doctest.h>

using namespace plate;
using namespace plate::test;

namespace
{

MacPicture sample_likeness(Eigen::Index rows, Eigen::Index columns)
{
  MacPicture picture{.rows = "Invented spruce", .columns = "Invented laminate", .values = {}};
  for (Eigen::Index i = 0; i < rows; ++i)
  {
    picture.row_labels.push_back("row " + std::to_string(i + 1));
    picture.pairs.push_back({.first = static_cast<std::size_t>(i), .second = static_cast<std::size_t>(i + 1)});
  }
  for (Eigen::Index j = 0; j < columns; ++j)
    picture.column_labels.push_back("column " + std::to_string(j + 1));
  picture.values = Eigen::MatrixXd::Zero(rows, columns);
  for (Eigen::Index i = 0; i < rows; ++i)
    picture.values(i, i + 1) = 0.9 - 0.07 * static_cast<double>(i);
  picture.values(0, 0) = 0.04;
  return picture;
}

std::size_t count(const std::string& text, const std::string& part)
{
  std::size_t found = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++found;
  return found;
}

} // namespace

TEST_CASE("A picture of likeness says rows, columns, values from 0.1 on and the scale, nothing over another")
{
  const TemporaryFolder folder;
  for (const auto& size : {std::pair(1, 2), std::pair(4, 6), std::pair(12, 18)})
  {
    CAPTURE(size.first);
    const MacPicture picture = sample_likeness(size.first, size.second);
    write_mac_picture(folder / "mac.svg", picture);
    const std::vector<WordBox> words = checked_words(folder / "mac.svg");
    for (const std::string expected : {"Likeness of modes", "row 1", "column 2", "0.90", "modal assurance criterion",
                                       "0.25", "modes paired with each other"})
    {
      CAPTURE(expected);
      CHECK(contains(words, expected));
    }
    CHECK_FALSE(contains(words, "0.04"));
  }
}

TEST_CASE("In a picture of likeness a value stands in its row and column")
{
  const TemporaryFolder folder;
  write_mac_picture(folder / "mac.svg", sample_likeness(3, 5));
  const std::vector<WordBox> words = words_in(bytes_of(folder / "mac.svg"));
  const auto find = [&](const std::string& wanted)
  {
    const auto found =
        std::find_if(words.begin(), words.end(), [&](const WordBox& box) { return box.words == wanted; });
    REQUIRE(found != words.end());
    return *found;
  };
  const WordBox value = find("0.83"); // second row, third column
  const WordBox row = find("row 2");
  const WordBox column = find("column 3");
  CHECK(std::abs(value.low[1] + value.high[1] - row.low[1] - row.high[1]) < 2.0);
  CHECK(std::abs(value.low[0] + value.high[0] - column.low[0] - column.high[0]) < 4.0);
}

TEST_CASE("Pairs are framed, and a picture has the same bytes each time")
{
  const TemporaryFolder folder;
  MacPicture picture = sample_likeness(3, 5);
  write_mac_picture(folder / "one.svg", picture);
  write_mac_picture(folder / "two.svg", picture);
  CHECK(bytes_of(folder / "one.svg") == bytes_of(folder / "two.svg"));
  picture.pairs.clear();
  write_mac_picture(folder / "none.svg", picture);
  const std::string frame = "stroke-width:2.2;";
  CHECK(count(bytes_of(folder / "one.svg"), frame) - count(bytes_of(folder / "none.svg"), frame) ==
        4); // one in the legend
}

TEST_CASE("What does not fit is no picture of likeness")
{
  const TemporaryFolder folder;
  const auto refused = [&](MacPicture picture)
  { CHECK_THROWS_AS(write_mac_picture(folder / "mac.svg", picture), InvalidInput); };
  refused({});
  MacPicture picture = sample_likeness(2, 3);
  picture.values(0, 0) = 1.2;
  refused(picture);
  picture = sample_likeness(2, 3);
  picture.values(0, 0) = std::numeric_limits<double>::quiet_NaN();
  refused(picture);
  picture = sample_likeness(2, 3);
  picture.row_labels.pop_back();
  refused(picture);
  picture = sample_likeness(2, 3);
  picture.pairs[0].second = 3;
  refused(picture);
}
