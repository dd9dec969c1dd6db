// SPDX-License-Identifier: MPL-2.0
#include "edit_distance.h"

#include <doctest/doctest.h>

#include <string>

using plate::edit_distance;
using plate::slip_distance;

// Expected numbers: counted by hand from the definition (insert, delete, change, swap neighbours).
TEST_CASE("edit distance counts inserted, deleted, changed and swapped letters")
{
  CHECK(edit_distance("", "") == 0);
  CHECK(edit_distance("height", "height") == 0);
  CHECK(edit_distance("heigth", "height") == 1);
  CHECK(edit_distance("hight", "height") == 1);
  CHECK(edit_distance("heights", "height") == 1);
  CHECK(edit_distance("heeght", "height") == 1);
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(edit_distance("", "abc") == 3);
  CHECK(edit_distance("abc", "") == 3);
}

TEST_CASE("edit distance takes upper and lower case as equal")
{
  CHECK(edit_distance("e1", "E1") == 0);
}

TEST_CASE("edit distance stays quick on absurdly long words")
{
  CHECK(edit_distance(std::string(1000000, 'a'), std::string(1000000, 'b')) == 200);
}

TEST_CASE("a word cut short or carried on is one slip")
{
  CHECK(slip_distance("arch", "arching") == 1);
  CHECK(slip_distance("lengths", "length") == 1);
  CHECK(slip_distance("LEN", "length") == 1);
  CHECK(slip_distance("le", "length") == 4); // too little to go by
  CHECK(slip_distance("arch", "patch") == 2);
  CHECK(slip_distance("layup", "layup.scale") == 6); // a table is no short form of its keys
}
