// SPDX-License-Identifier: MPL-2.0
#include "check_refused.h"
#include "run_plate.h"

#include <Eigen/SparseCore>
#include <doctest/doctest.h>

#include <fstream>
#include <set>
#include <string>
#include <vector>

using namespace plate::test;

namespace
{

/// What a reader that knows nothing but the format finds in a file.
struct Written
{
  std::string comments;
  Eigen::SparseMatrix<double> lower;
};

Written read(const std::string& path)
{
  std::ifstream in(path);
  std::string line;
  REQUIRE(std::getline(in, line));
  CHECK(line == "%%MatrixMarket matrix coordinate real symmetric");
  Written written;
  while (in.peek() == '%' && std::getline(in, line))
    written.comments += line + '\n';
  int rows = 0;
  int columns = 0;
  int entries = 0;
  in >> rows >> columns >> entries;
  std::vector<Eigen::Triplet<double>> triplets;
  int row = 0;
  int column = 0;
  double value = 0.0;
  while (in >> row >> column >> value)
  {
    CHECK(row >= column);
    triplets.emplace_back(row - 1, column - 1, value);
  }
  CHECK(static_cast<int>(triplets.size()) == entries);
  written.lower.resize(rows, columns);
  written.lower.setFromTriplets(triplets.begin(), triplets.end());
  return written;
}

} // namespace

TEST_CASE("modes --matrices writes stiffness and mass: a shift carries no energy and weighs what the plate weighs")
{
  const Workshop shop;
  const Run run = run_plate(
      {"modes", shop.write("flat.toml", quick_design()), "--count", "2", "--matrices", shop.path("a/matrices")});
  CHECK(run.status == 0);
  CHECK(shop.content("a/matrices") == std::set<std::string>{"mass.mtx", "stiffness.mtx"});
  const Written K = read(shop.path("a/matrices/stiffness.mtx"));
  const Written M = read(shop.path("a/matrices/mass.mtx"));
  CHECK(K.comments.find("N/m") != std::string::npos);
  CHECK(M.comments.find("kg") != std::string::npos);
  CHECK(M.comments.find("five each") != std::string::npos);
  REQUIRE(K.lower.rows() % 5 == 0);
  for (int direction = 0; direction < 3; ++direction)
  {
    Eigen::VectorXd shift = Eigen::VectorXd::Zero(K.lower.rows());
    for (Eigen::Index node = 0; node < shift.size() / 5; ++node)
      shift(5 * node + direction) = 1.0;
    const Eigen::VectorXd forces = K.lower.selfadjointView<Eigen::Lower>() * shift;
    const double stiffest = K.lower.diagonal().maxCoeff();
    CHECK(forces.cwiseAbs().maxCoeff() < 1e-10 * stiffest); // rounding
    const Eigen::VectorXd momentum = M.lower.selfadjointView<Eigen::Lower>() * shift;
    CHECK(shift.dot(momentum) == doctest::Approx(0.070).epsilon(1e-6)); // 350 x 200 x 2.5 mm, 400 kg/m3
  }
}

TEST_CASE("a folder for matrices that cannot be is refused before anything is computed")
{
  const Workshop shop;
  const std::string design = shop.write("flat.toml", quick_design());
  check_refused(run_plate({"modes", design, "--matrices", design}), "--matrices: " + design);
  check_refused(run_plate({"modes", design, "--matrices", design + "/deeper"}), "is no folder");
  check_refused(run_plate({"modes", design, "--matrices", ""}), "--matrices: the name of a folder is missing");
  CHECK(shop.content() == std::set<std::string>{"flat.toml"});
}
