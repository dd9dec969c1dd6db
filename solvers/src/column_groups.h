// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace plate
{

/// Lower triangle of a symmetric matrix in compressed columns, rows in any order.
struct LowerColumns
{
  std::span<const int> outer; ///< first entry of each column, then the number of entries
  std::span<const int> inner; ///< row of each entry
  std::span<const int> place; ///< of the value of each entry among the values
  std::span<const double> values;
};

/// A symmetric matrix whose columns stand in groups with the same rows below, as those of the unknowns of a node do.
///
/// Its product with a vector reads the rows once for a group and goes through its columns side by side: half the time
/// of a product column by column.
class ColumnGroups
{
public:
  /// @param parts  first columns of parts that are multiplied apart, ascending, then the number of columns
  ColumnGroups(const LowerColumns& lower, std::span<const int> parts);

  /// Adds to z what the columns of the parts [from, to), and the rows that mirror them, make of x.
  ///
  /// @param work  buffer of the caller
  void multiply(std::size_t from, std::size_t to, const double* x, double* z, std::vector<double>& work) const;

  /// One group as the kernel sees it.
  struct Group
  {
    const int* rows;      // below the diagonal block
    std::ptrdiff_t size;  // of rows, a multiple of four: the last may stand for no entry
    const double* values; // the diagonal block with both triangles, then the columns below it
    int first_column;
    int num_columns;
  };

private:
  void add_group(const LowerColumns& lower, int first, int end);
  [[nodiscard]] Group group(std::size_t index) const;

  std::vector<int> first_column_; ///< of each group, then the number of columns
  std::vector<int> first_row_;    ///< of each group in rows_, then the size of rows_
  std::vector<int> rows_;
  std::vector<double> values_;
  std::vector<std::size_t> first_group_; ///< of each part, then the number of groups
  std::size_t most_rows_ = 0;            ///< of a group
};

} // namespace plate
