// SPDX-License-Identifier: MPL-2.0
#include "match_trial.h"
#include "section_numbers.h"
#include "stack_space.h"

#include <doctest/doctest.h>

#include <unordered_set>

using namespace plate;
using namespace plate::match;
using namespace plate::test;

namespace
{

StackSupplies two_sheets()
{
  StackSupplies supplies;
  supplies.sheets = {{.material = *find_material("carbon_ud"), .thickness = 0.1e-3},
                     {.material = *find_material("flax_ud"), .thickness = 0.2e-3}};
  supplies.angles = {Angle::degrees(0.0), Angle::degrees(90.0), Angle::degrees(30.0), Angle::degrees(-30.0)};
  supplies.max_plies = 4;
  return supplies;
}

std::size_t num_allowed(const StackSpace& space)
{
  std::unordered_set<Stack, StackHash> seen;
  space.for_each([&](const Stack& stack) { seen.insert(stack); });
  return seen.size();
}

} // namespace

TEST_CASE("stacks are counted as combinatorics says")
{
  StackSupplies supplies = two_sheets();
  // Symmetric, 8 choices of a layer, no core: half of 1 or 2 layers, the middle repeated or not.
  CHECK(num_allowed(StackSpace(supplies)) == 8 + 8 + 64 + 64);
  CHECK(StackSpace(supplies).size() == doctest::Approx(144.0));
  supplies.symmetric = false;
  CHECK(num_allowed(StackSpace(supplies)) == 8 + 64 + 512 + 4096);
  supplies.symmetric = true;
  supplies.cores = {{.material = *find_material("balsa"), .thickness = 1e-3}};
  supplies.core = CoreUse::required;
  CHECK(num_allowed(StackSpace(supplies)) == 8 + 64);
  // 90 and -90 degrees are one choice.
  supplies.angles = {Angle::degrees(90.0), Angle::degrees(-90.0)};
  CHECK(num_allowed(StackSpace(supplies)) == 2 + 4);
}

TEST_CASE("balanced stacks do not shear when stretched")
{
  StackSupplies supplies = two_sheets();
  supplies.balanced = true;
  const StackSpace space(supplies);
  std::size_t count = 0;
  space.for_each(
      [&](const Stack& stack)
      {
        const Laminate laminate = space.laminate(stack);
        const Eigen::Matrix3d A =
            section_stiffness(laminate, total_thickness(laminate), Eigen::Matrix3d::Identity(), MaterialAxes()).P[0];
        CHECK(std::abs(A(0, 2)) < 1e-8 * A(0, 0));
        CHECK(std::abs(A(1, 2)) < 1e-8 * A(0, 0));
        ++count;
      });
  // 4 layers at 0 or 90: 4 + 4 + 16 + 16; and +30/-30 of one sheet in either order, repeated: 2 sheets, 2 orders.
  CHECK(count == 40 + 4);
}

TEST_CASE("neighbours are allowed, are others, and lead back")
{
  const StackSpace space(two_sheets());
  const Stack stack{.layers = {0, 3}};
  for (const Stack& neighbour : space.neighbours(stack))
  {
    CHECK(space.allowed(neighbour));
    CHECK(neighbour != stack);
    const std::vector<Stack> back = space.neighbours(neighbour);
    CHECK(std::find(back.begin(), back.end(), stack) != back.end());
  }
}

TEST_CASE("a symmetric stack is its own mirror image, a core lies in its middle")
{
  StackSupplies supplies = two_sheets();
  supplies.cores = {{.material = *find_material("balsa"), .thickness = 1e-3}};
  const StackSpace space(supplies);
  const Laminate laminate = space.laminate({.layers = {0, 5}, .core = 0});
  REQUIRE(laminate.plies.size() == 5);
  CHECK(laminate.plies[2].material.core);
  for (std::size_t i = 0; i < 5; ++i)
    CHECK(laminate.plies[i].material.name == laminate.plies[4 - i].material.name);
  CHECK(space.laminate({.layers = {0, 5}, .single_middle = true}).plies.size() == 3);
}

TEST_CASE("any laminate of a set is combined of some of them: the matrices are linear in the section's numbers")
{
  const StackSpace space(workshop());
  const Model plate = laminated_plate(space.laminate({.layers = {0}, .core = 0}));
  const std::vector<TriangleCover> covers = triangle_covers(plate);
  const SectionReader reader(plate, covers);
  std::mt19937_64 random(3);
  std::vector<Laminate> laminates;
  while (laminates.size() < 60)
    if (const Stack stack = space.random(random); space.allowed(stack))
      laminates.push_back(space.laminate(stack));
  const SectionNumbers units = section_units(reader, plate, laminates);
  Eigen::MatrixXd numbers(units.stiffness.size(), 60);
  for (Eigen::Index i = 0; i < 60; ++i)
    numbers.col(i) = reader.numbers(laminates[static_cast<std::size_t>(i)]).stiffness;
  const SectionCombination combination(numbers, units.stiffness);

  const Laminate other = space.laminate({.layers = {1, 7, 12}, .core = 2});
  const Eigen::VectorXd c = combination.coefficients(reader.numbers(other).stiffness);
  const auto stiffness = [&](const Laminate& laminate)
  {
    Model model = plate;
    model.material.laminate = laminate;
    std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), total_thickness(laminate));
    return assemble(model).K;
  };
  SparseMatrix difference = stiffness(other);
  const double size = difference.norm();
  for (std::size_t i = 0; i < combination.terms().size(); ++i)
    difference -=
        c(static_cast<Eigen::Index>(i)) * stiffness(laminates[static_cast<std::size_t>(combination.terms()[i])]);
  CHECK(difference.norm() < 1e-5 * size); // the terms miss a ten millionth of each number
}
