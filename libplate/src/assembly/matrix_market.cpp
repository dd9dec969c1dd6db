// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/matrix_market.h>

#include <array>
#include <charconv>
#include <ostream>
#include <string>

namespace plate
{
namespace
{

std::string comment_lines(std::string_view comment)
{
  std::string lines = "% ";
  for (const char c : comment)
  {
    lines += c;
    if (c == '\n')
      lines += "% ";
  }
  return lines;
}

/// Appends a number as short as it can be read back exactly.
template <class Number>
void append(std::string& text, Number number)
{
  std::array<char, 32> digits;
  const auto [end, error] = std::to_chars(digits.data(), digits.data() + digits.size(), number);
  text.append(digits.data(), end);
}

} // namespace

void write_matrix_market(std::ostream& out, const SparseMatrix& lower, std::string_view comment)
{
  const Eigen::Map<const Eigen::VectorXd> values(lower.valuePtr(), lower.nonZeros());
  out << "%%MatrixMarket matrix coordinate real symmetric\n"
      << comment_lines(comment) << '\n'
      << lower.rows() << ' ' << lower.cols() << ' ' << (values.array() != 0.0).count() << '\n';
  std::string lines; // of one column: a stream that formats each number takes ten times as long
  for (Eigen::Index column = 0; column < lower.outerSize(); ++column)
  {
    lines.clear();
    for (SparseMatrix::InnerIterator entry(lower, column); entry; ++entry)
    {
      if (entry.value() == 0.0)
        continue;
      append(lines, entry.row() + 1);
      lines += ' ';
      append(lines, column + 1);
      lines += ' ';
      append(lines, entry.value());
      lines += '\n';
    }
    out << lines;
  }
}

} // namespace plate
