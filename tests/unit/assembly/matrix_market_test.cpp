// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/matrix_market.h>

#include <doctest/doctest.h>

#include <sstream>

using namespace plate;

namespace
{

SparseMatrix lower_of_three()
{
  SparseMatrix lower(3, 3);
  lower.insert(0, 0) = 2.0;
  lower.insert(2, 0) = -0.1;
  lower.insert(1, 1) = 0.0;
  lower.insert(2, 2) = 1e-300;
  lower.makeCompressed();
  return lower;
}

} // namespace

// The form, by the definition of the exchange format [Boisvert1996]: header, comments, size, one line per entry.
TEST_CASE("a symmetric matrix is written as header, comments, size and the entries of its lower triangle")
{
  std::ostringstream out;
  write_matrix_market(out, lower_of_three(), "first\nsecond");
  CHECK(out.str() == "%%MatrixMarket matrix coordinate real symmetric\n% first\n% second\n3 3 3\n1 1 2\n3 1 -0.1\n"
                     "3 3 1e-300\n");
}

TEST_CASE("numbers are read back bit for bit")
{
  SparseMatrix lower(1, 1);
  lower.insert(0, 0) = 0.1 + 0.2; // 0.30000000000000004
  std::ostringstream out;
  write_matrix_market(out, lower, "");
  std::istringstream in(out.str().substr(out.str().rfind("1 1 ") + 4));
  double value = 0.0;
  in >> value;
  CHECK(value == 0.1 + 0.2);
}
