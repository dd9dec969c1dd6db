// SPDX-License-Identifier: MPL-2.0
#include "cross_products.h"

#include <plate/core/wide_arithmetic.h>

#include <algorithm>
#include <vector>

namespace plate::reduced
{

namespace
{

using Index = Eigen::Index;
constexpr Index block = 256; // rows taken at once: strips of both sets stay in the nearest cache
constexpr Index a_width = 4; // columns of a strip
constexpr Index b_width = 8; // the same; 4 x 8 sums fill half of the registers
constexpr Index num_fours = b_width / 4;

/// Some rows of a matrix, strip of columns by strip, each strip row by row; zeros fill up the last strip.
template <Index width>
class Strips
{
public:
  Strips(Index rows, Index columns) : num_((columns + width - 1) / width)
  {
    values_.assign(static_cast<std::size_t>(num_ * width * std::min(block, rows)), 0.0);
  }

  void take(const Vectors& from, Index row, Index count)
  {
    count_ = count;
    double* to = values_.data();
    for (Index first = 0; first < from.cols(); first += width)
    {
      const double* at = from.data() + row * from.cols() + first;
      const Index columns = std::min(width, from.cols() - first);
      for (Index r = 0; r < count; ++r, at += from.cols(), to += width)
        if (columns == width)
          for (Index k = 0; k < width; ++k)
            to[k] = at[k];
        else
          std::copy_n(at, columns, to);
    }
  }

  [[nodiscard]] Index num() const { return num_; }
  [[nodiscard]] const double* strip(Index number) const { return values_.data() + number * width * count_; }

private:
  Index num_;
  Index count_ = 0;
  std::vector<double> values_;
};

using LeftStrips = Strips<a_width>;
using RightStrips = Strips<b_width>;

/// Adds the products of two strips of some rows.
/// @param sums  a_width rows of b_width
LIBPLATE_INLINED void add_products(const double* a, const double* b, Index rows, double* sums)
{
  FourDoubles s[a_width][num_fours] = {};
  for (Index r = 0; r < rows; ++r, a += a_width, b += b_width)
    for (Index j = 0; j < num_fours; ++j)
    {
      const FourDoubles right = *four(b + 4 * j);
      for (Index i = 0; i < a_width; ++i)
        s[i][j] += a[i] * right;
    }
  for (Index i = 0; i < a_width; ++i)
    for (Index j = 0; j < num_fours; ++j)
      *four(sums + i * b_width + 4 * j) += s[i][j];
}

LIBPLATE_INLINED void add_all(const LeftStrips& a, const RightStrips& b, Index rows, double* sums)
{
  for (Index i = 0; i < a.num(); ++i)
    for (Index j = 0; j < b.num(); ++j, sums += a_width * b_width)
      add_products(a.strip(i), b.strip(j), rows, sums);
}

LIBPLATE_WIDE void add_all_wide(const LeftStrips& a, const RightStrips& b, Index rows, double* sums)
{
  add_all(a, b, rows, sums);
}

void add_all_usual(const LeftStrips& a, const RightStrips& b, Index rows, double* sums)
{
  add_all(a, b, rows, sums);
}

} // namespace

Eigen::MatrixXd cross_products(const Vectors& a, const Vectors& b)
{
  LeftStrips of_a(a.rows(), a.cols());
  RightStrips of_b(b.rows(), b.cols());
  std::vector<double> sums(static_cast<std::size_t>(of_a.num() * of_b.num() * a_width * b_width), 0.0);
  const auto add = has_wide_arithmetic() ? add_all_wide : add_all_usual;
  for (Index row = 0; row < a.rows(); row += block)
  {
    const Index count = std::min(block, a.rows() - row);
    of_a.take(a, row, count);
    of_b.take(b, row, count);
    add(of_a, of_b, count, sums.data());
  }
  Eigen::MatrixXd out(a.cols(), b.cols());
  for (Index i = 0; i < a.cols(); ++i)
    for (Index j = 0; j < b.cols(); ++j)
    {
      const Index tile = i / a_width * of_b.num() + j / b_width;
      out(i, j) = sums[static_cast<std::size_t>((tile * a_width + i % a_width) * b_width + j % b_width)];
    }
  return out;
}

} // namespace plate::reduced
