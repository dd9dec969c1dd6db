// SPDX-License-Identifier: MPL-2.0
#include "supernodal_solve.h"

#include <plate/core/wide_arithmetic.h>

#include <algorithm>
#include <cstddef>

namespace plate
{

namespace
{

using Index = std::ptrdiff_t;
constexpr Index strip = 4; // columns of a panel taken at once
constexpr Index step = 4;  // rows taken at once

/// One supernode, and the part of the vector that it touches.
struct Panel
{
  const int* rows;
  Index num_rows;
  Index num_columns;
  const double* values;
};

LIBPLATE_INLINED Panel panel(const SupernodalFactor& L, std::size_t supernode)
{
  const int first = L.first_row[supernode];
  return {.rows = L.rows.data() + first,
          .num_rows = L.first_row[supernode + 1] - first,
          .num_columns = L.first_column[supernode + 1] - L.first_column[supernode],
          .values = L.values + L.first_value[supernode]};
}

/// Rows `from` on of four columns, which follow each other in memory.
struct Strip
{
  const double* a;
  const double* b;
  const double* c;
  const double* d;
  Index num_rows;

  LIBPLATE_INLINED Strip(const Panel& p, Index column)
      : a(p.values + column * p.num_rows), b(a + p.num_rows), c(b + p.num_rows), d(c + p.num_rows), num_rows(p.num_rows)
  {
  }

  /// Starts to fetch the same rows of the strip after (+1) or before (-1) this one.
  LIBPLATE_INLINED void prefetch(Index row, Index direction) const
  {
    const Index ahead = row + direction * strip * num_rows;
    __builtin_prefetch(a + ahead);
    __builtin_prefetch(b + ahead);
    __builtin_prefetch(c + ahead);
    __builtin_prefetch(d + ahead);
  }
};

/// w := L^-1 w for the columns of a strip, and what follows from them in the rows below.
LIBPLATE_INLINED void eliminate_strip(const Strip& s, Index j, double* w)
{
  const double f0 = w[j] / s.a[j];
  const double f1 = (w[j + 1] - s.a[j + 1] * f0) / s.b[j + 1];
  const double f2 = (w[j + 2] - s.a[j + 2] * f0 - s.b[j + 2] * f1) / s.c[j + 2];
  const double f3 = (w[j + 3] - s.a[j + 3] * f0 - s.b[j + 3] * f1 - s.c[j + 3] * f2) / s.d[j + 3];
  w[j] = f0;
  w[j + 1] = f1;
  w[j + 2] = f2;
  w[j + 3] = f3;
  Index i = j + strip;
  for (; i + 2 * step <= s.num_rows; i += 2 * step)
  {
    s.prefetch(i, 1);
    for (Index k = i; k < i + 2 * step; k += step)
      *four(w + k) -= *four(s.a + k) * f0 + *four(s.b + k) * f1 + *four(s.c + k) * f2 + *four(s.d + k) * f3;
  }
  for (; i < s.num_rows; ++i)
    w[i] -= s.a[i] * f0 + s.b[i] * f1 + s.c[i] * f2 + s.d[i] * f3;
}

/// Of the numbers in two vectors.
LIBPLATE_INLINED double sum(const FourDoubles* vectors)
{
  const FourDoubles v = vectors[0] + vectors[1];
  return (v[0] + v[1]) + (v[2] + v[3]);
}

/// w := L^-T w for the columns of a strip, the rows below being solved.
LIBPLATE_INLINED void substitute_strip(const Strip& s, Index j, double* w)
{
  FourDoubles va[2] = {};
  FourDoubles vb[2] = {};
  FourDoubles vc[2] = {};
  FourDoubles vd[2] = {};
  Index i = j + strip;
  for (; i + 2 * step <= s.num_rows; i += 2 * step)
  {
    s.prefetch(i, -1);
    for (Index k = 0; k < 2; ++k)
    {
      const FourDoubles v = *four(w + i + step * k);
      va[k] += *four(s.a + i + step * k) * v;
      vb[k] += *four(s.b + i + step * k) * v;
      vc[k] += *four(s.c + i + step * k) * v;
      vd[k] += *four(s.d + i + step * k) * v;
    }
  }
  double pa = sum(va);
  double pb = sum(vb);
  double pc = sum(vc);
  double pd = sum(vd);
  for (; i < s.num_rows; ++i)
  {
    pa += s.a[i] * w[i];
    pb += s.b[i] * w[i];
    pc += s.c[i] * w[i];
    pd += s.d[i] * w[i];
  }
  w[j + 3] = (w[j + 3] - pd) / s.d[j + 3];
  w[j + 2] = (w[j + 2] - pc - s.c[j + 3] * w[j + 3]) / s.c[j + 2];
  w[j + 1] = (w[j + 1] - pb - s.b[j + 2] * w[j + 2] - s.b[j + 3] * w[j + 3]) / s.b[j + 1];
  w[j] = (w[j] - pa - s.a[j + 1] * w[j + 1] - s.a[j + 2] * w[j + 2] - s.a[j + 3] * w[j + 3]) / s.a[j];
}

LIBPLATE_INLINED void gather(const Panel& p, const double* y, double* w)
{
  std::copy_n(y + p.rows[0], p.num_columns, w);
  for (Index i = p.num_columns; i < p.num_rows; ++i)
    w[i] = y[p.rows[i]];
}

LIBPLATE_INLINED void solve_lower(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  for (std::size_t s = range.from; s < range.to; ++s)
  {
    const Panel p = panel(L, s);
    gather(p, y, w);
    Index j = 0;
    for (; j + strip <= p.num_columns; j += strip)
      eliminate_strip(Strip(p, j), j, w);
    for (; j < p.num_columns; ++j)
    {
      const double* column = p.values + j * p.num_rows;
      w[j] /= column[j];
      for (Index i = j + 1; i < p.num_rows; ++i)
        w[i] -= column[i] * w[j];
    }
    std::copy_n(w, p.num_columns, y + p.rows[0]);
    for (Index i = p.num_columns; i < p.num_rows; ++i)
      y[p.rows[i]] = w[i];
  }
}

LIBPLATE_INLINED void solve_upper(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  for (std::size_t s = range.to; s-- > range.from;)
  {
    const Panel p = panel(L, s);
    gather(p, y, w);
    Index j = p.num_columns;
    for (; j % strip != 0; --j)
    {
      const double* column = p.values + (j - 1) * p.num_rows;
      for (Index i = j; i < p.num_rows; ++i)
        w[j - 1] -= column[i] * w[i];
      w[j - 1] /= column[j - 1];
    }
    for (; j > 0; j -= strip)
      substitute_strip(Strip(p, j - strip), j - strip, w);
    std::copy_n(w, p.num_columns, y + p.rows[0]);
  }
}

LIBPLATE_WIDE void solve_lower_wide(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  solve_lower(L, range, y, w);
}

void solve_lower_usual(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  solve_lower(L, range, y, w);
}

LIBPLATE_WIDE void solve_upper_wide(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  solve_upper(L, range, y, w);
}

void solve_upper_usual(const SupernodalFactor& L, SupernodeRange range, double* y, double* w)
{
  solve_upper(L, range, y, w);
}

/// Room for the largest panel.
double* make_room(const SupernodalFactor& L, SupernodeRange range, std::vector<double>& work)
{
  int most = 0;
  for (std::size_t s = range.from; s < range.to; ++s)
    most = std::max(most, L.first_row[s + 1] - L.first_row[s]);
  work.resize(std::max(work.size(), static_cast<std::size_t>(most)));
  return work.data();
}

} // namespace

void supernodal_solve_lower(const SupernodalFactor& L, SupernodeRange supernodes, std::span<double> y,
                            std::vector<double>& work)
{
  double* w = make_room(L, supernodes, work);
  has_wide_arithmetic() ? solve_lower_wide(L, supernodes, y.data(), w) : solve_lower_usual(L, supernodes, y.data(), w);
}

void supernodal_solve_upper(const SupernodalFactor& L, SupernodeRange supernodes, std::span<double> y,
                            std::vector<double>& work)
{
  double* w = make_room(L, supernodes, work);
  has_wide_arithmetic() ? solve_upper_wide(L, supernodes, y.data(), w) : solve_upper_usual(L, supernodes, y.data(), w);
}

} // namespace plate
