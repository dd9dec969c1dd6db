// SPDX-License-Identifier: MPL-2.0
#include "column_groups.h"

#include <plate/core/wide_arithmetic.h>

#include <algorithm>
#include <iterator>

namespace plate
{

namespace
{

using Index = std::ptrdiff_t;
constexpr int width = 5; // columns of a group at most: the unknowns of a node
constexpr int rows_at_once = 4;

/// Rows of a column from `end` on.
void find_rows(const LowerColumns& lower, int column, int end, std::vector<int>& rows)
{
  rows.clear();
  const auto at = [&](int c) { return lower.inner.begin() + lower.outer[static_cast<std::size_t>(c)]; };
  std::copy_if(at(column), at(column + 1), std::back_inserter(rows), [&](int row) { return row >= end; });
}

/// Where the group that starts with a column ends.
int end_of_group(const LowerColumns& lower, int first, int last)
{
  std::vector<int> rows;
  std::vector<int> others;
  int end = first + 1;
  for (; end < last; ++end)
  {
    find_rows(lower, first, end + 1, rows);
    find_rows(lower, end, end + 1, others);
    if (rows != others)
      break;
  }
  return end;
}

/// Of the numbers in a vector.
LIBPLATE_INLINED double sum(const FourDoubles& v)
{
  return (v[0] + v[1]) + (v[2] + v[3]);
}

/// @param v  room for twice the rows of the group
LIBPLATE_INLINED void multiply_group(const ColumnGroups::Group& g, const double* x, double* z, double* v)
{
  double own[width] = {};
  std::copy_n(x + g.first_column, g.num_columns, own);
  double* below = v + g.size;
  for (Index i = 0; i < g.size; ++i)
    v[i] = x[g.rows[i]];
  const double* a = g.values + width * width;
  FourDoubles sums[width] = {};
  for (Index i = 0; i < g.size; i += rows_at_once)
  {
    const FourDoubles other = *four(v + i);
    FourDoubles product = {};
    for (int k = 0; k < width; ++k)
    {
      const double* at = a + k * g.size + i;
      __builtin_prefetch(at + width * g.size);
      const FourDoubles entries = *four(at);
      sums[k] += entries * other;
      product += entries * own[k];
    }
    *four(below + i) = product;
  }
  for (Index i = 0; i < g.size; ++i)
    z[g.rows[i]] += below[i];
  for (int k = 0; k < g.num_columns; ++k)
  {
    double diagonal = 0.0;
    for (int l = 0; l < width; ++l)
      diagonal += g.values[width * k + l] * own[l];
    z[g.first_column + k] += sum(sums[k]) + diagonal;
  }
}

template <class GroupAt>
LIBPLATE_INLINED void multiply_groups(std::size_t from, std::size_t to, const GroupAt& group_at, const double* x,
                                      double* z, double* work)
{
  for (std::size_t g = from; g < to; ++g)
    multiply_group(group_at(g), x, z, work);
}

template <class GroupAt>
LIBPLATE_WIDE void multiply_wide(std::size_t from, std::size_t to, const GroupAt& group_at, const double* x, double* z,
                                 double* work)
{
  multiply_groups(from, to, group_at, x, z, work);
}

template <class GroupAt>
void multiply_usual(std::size_t from, std::size_t to, const GroupAt& group_at, const double* x, double* z, double* work)
{
  multiply_groups(from, to, group_at, x, z, work);
}

} // namespace

ColumnGroups::ColumnGroups(const LowerColumns& lower, std::span<const int> parts) : first_row_{0}, first_group_{0}
{
  values_.reserve(lower.values.size() + lower.values.size() / 4); // what fills up to vectors of four
  for (std::size_t part = 0; part + 1 < parts.size(); ++part)
  {
    for (int first = parts[part]; first < parts[part + 1];)
    {
      const int end = end_of_group(lower, first, std::min(parts[part + 1], first + width));
      add_group(lower, first, end);
      first = end;
    }
    first_group_.push_back(first_column_.size());
  }
  first_column_.push_back(parts.back());
}

void ColumnGroups::add_group(const LowerColumns& lower, int first, int end)
{
  std::vector<int> rows;
  find_rows(lower, first, end, rows);
  rows.resize((rows.size() + rows_at_once - 1) / rows_at_once * rows_at_once, first);
  const std::size_t at = values_.size();
  values_.resize(at + width * (width + rows.size()), 0.0);
  double* block = values_.data() + at;
  double* column_values = block + width * width;
  for (int column = first; column < end; ++column, column_values += rows.size())
  {
    double* next = column_values;
    for (auto entry = static_cast<std::size_t>(lower.outer[static_cast<std::size_t>(column)]);
         entry < static_cast<std::size_t>(lower.outer[static_cast<std::size_t>(column) + 1]); ++entry)
    {
      const int row = lower.inner[entry];
      const double value = lower.values[static_cast<std::size_t>(lower.place[entry])];
      if (row >= end)
        *next++ = value;
      else
        block[width * (row - first) + column - first] = block[width * (column - first) + row - first] = value;
    }
  }
  first_column_.push_back(first);
  rows_.insert(rows_.end(), rows.begin(), rows.end());
  first_row_.push_back(static_cast<int>(rows_.size()));
  most_rows_ = std::max(most_rows_, rows.size());
}

ColumnGroups::Group ColumnGroups::group(std::size_t index) const
{
  const Index row = first_row_[index];
  return {.rows = rows_.data() + row,
          .size = first_row_[index + 1] - row,
          .values = values_.data() + width * (width * static_cast<Index>(index) + row),
          .first_column = first_column_[index],
          .num_columns = first_column_[index + 1] - first_column_[index]};
}

void ColumnGroups::multiply(std::size_t from, std::size_t to, const double* x, double* z,
                            std::vector<double>& work) const
{
  work.resize(std::max(work.size(), 2 * most_rows_));
  const auto group_at = [this](std::size_t index) { return group(index); };
  has_wide_arithmetic() ? multiply_wide(first_group_[from], first_group_[to], group_at, x, z, work.data())
                        : multiply_usual(first_group_[from], first_group_[to], group_at, x, z, work.data());
}

} // namespace plate
