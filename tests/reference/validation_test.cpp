// SPDX-License-Identifier: MPL-2.0
// Every case of the validation: sources, tolerances and their reasons in data/.
#include <plate/validation/validation_page.h>

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <string>
#include <utility>

using namespace plate::validation;

namespace
{

/// Values that are beyond their tolerance and stay in: each is to be explained or mended, none is to be widened.
const std::set<std::pair<std::string, std::string>> open_values = {
    // Three plies, a/h 5: first-order theory with the equilibrium shear stiffness is 0.7 to 1.3 % low here. So it is on
    // a single ply (0.94 % at ratio 40), where 5/6 is the equilibrium: a section that thick warps in ways the theory
    // lacks. It vanishes quickly, 0.30 % at a/h 10 and 0.06 % at 20, where 5/6 of the sum over the plies has 0.48 and
    // 0.20 %: that this is within 0.6 % at a/h 5 is where its error changes sign.
    {"3D [0/90/0] square, a/h 5", "omega_at_ratio_20"},
    {"3D [0/90/0] square, a/h 5", "omega_at_ratio_30"},
    {"3D [0/90/0] square, a/h 5", "omega_at_ratio_40"},
    // Theory, not mesh: finer ones of ours take 0.03 % off. Against the same program a solid board at 15 degrees on
    // this
    // arch is within 0.03 %, unequal skins along the plate over a core at 0 degrees too, equal skins along the plate
    // over
    // a core at 15 degrees 0.09 %; all of it together 0.2 %. A core whose shear moduli are 33 and 671 MPa, aslant to
    // the
    // skins, shears in ways that one distribution for each direction does not show. A wrong sign costs 1 to 2 %.
    {"3D carbon on carved spruce, grain turned", "f3_hz"},
    {"3D carbon on carved spruce, grain turned", "f4_hz"},
    {"3D carbon on carved spruce, grain turned", "f5_hz"},
    {"3D carbon on carved spruce, grain turned", "f6_hz"},
    {"3D carbon on carved spruce, grain turned", "f7_hz"},
    {"3D carbon on carved spruce, grain turned", "f8_hz"},
    {"3D carbon on carved spruce, grain turned", "f9_hz"},
    {"3D carbon on carved spruce, grain turned", "f10_hz"},
    {"3D carbon on carved spruce, grain turned", "f11_hz"},
    {"3D carbon on carved spruce, grain turned", "f12_hz"},
    // The series of this one plate is up to 0.4 % high on twisting modes, that of 2R is not; its convergence is not
    // known.
    {"spruce plate 5R by a series", "f1_hz"},
    {"spruce plate 5R by a series", "f4_hz"},
    {"spruce plate 5R by a series", "f5_hz"},
    {"spruce plate 5R by a series", "f8_hz"},
    {"spruce plate 5R by a series", "f10_hz"},
    // 1.29 %: the independent series has 1.31 % with the same constants.
    {"measured spruce plate 2R", "mean_difference_percent"}};

std::string text_of(const char* path)
{
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

} // namespace

TEST_CASE("all values are within their tolerances but the open ones, and the page of the validation is current")
{
  std::vector<CaseResult> results;
  for (const ReferenceCase& reference : reference_cases())
  {
    results.push_back(run_case(reference));
    CHECK_MESSAGE(results.back().failure.empty(), reference.name, ": ", results.back().failure);
    for (const Comparison& value : results.back().comparisons)
      CHECK_MESSAGE(value.pass != open_values.contains({reference.name, value.quantity}), reference.name, " ",
                    value.quantity, ": computed ", value.computed, ", reference ", value.reference, ", difference ",
                    value.difference_percent, " % of at most ", value.tolerance_percent, " %");
  }
  const bool page_is_current = same_page(text_of(TESTS_DIR "/VALIDATION.md"), validation_page(results));
  CHECK_MESSAGE(page_is_current, "write it anew: cmake --build --preset release --target update_validation");
}

TEST_CASE("a page that says another thing is not the same")
{
  const std::string row = "| a | S | published | f1_hz | 10 | 10.0001 | 0.001 | 0.1 | yes |";
  CHECK(same_page(row, "| a | S | published | f1_hz | 10 | 10.0002 | 0.002 | 0.1 | yes |"));
  for (const char* other : {"| a | S | published | f1_hz | 10 | 10.001 | 0.001 | 0.1 | yes |",
                            "| a | S | published | f1_hz | 10 | 10.0001 | 0.010 | 0.1 | yes |",
                            "| a | S | published | f1_hz | 11 | 10.0001 | 0.001 | 0.1 | yes |",
                            "| a | S | published | f1_hz | 10 | 10.0001 | 0.001 | 0.1 | **no** |",
                            "| a | S | published | f1_hz | 10 | nan | nan | 0.1 | yes |", ""})
    CHECK_FALSE(same_page(row, other));
  CHECK_FALSE(same_page(row, row + "\n" + row));
}

TEST_CASE("there are cases enough, each with a known source, a mark and a reason")
{
  const std::string bibliography = text_of(TESTS_DIR "/BIBLIOGRAPHY.md");
  std::set<std::string> names;
  std::set<std::string> sources;
  for (const ReferenceCase& reference : reference_cases())
  {
    CAPTURE(reference.name);
    CHECK(names.insert(reference.name).second);
    sources.insert(reference.source);
    CHECK(bibliography.find("**[" + reference.source + "]**") != std::string::npos);
    CHECK(std::set<std::string>{"published", "recomputed", "from memory"}.contains(reference.mark));
    CHECK_FALSE(reference.theory.empty());
    CHECK_FALSE(reference.reason.empty());
    CHECK(std::all_of(reference.values.begin(), reference.values.end(),
                      [](const ReferenceValue& value) { return value.tolerance_percent > 0.0; }));
  }
  // What the project set itself: 80 cases from 15 sources.
  CHECK(names.size() >= 80);
  CHECK(sources.size() >= 15);
}
