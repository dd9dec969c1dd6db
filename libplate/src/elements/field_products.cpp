// SPDX-License-Identifier: MPL-2.0
#include "field_products.h"

#include <plate/core/wide_arithmetic.h>

namespace plate::shell_kinematics
{

namespace
{

constexpr int lanes = 4;

/// out += left^T right for `depth` rows of both: four rows of `out` at a time, all columns.
LIBPLATE_INLINED void add_strain_products(int depth, const double* left, const double* right,
                                          double (*out)[num_frame_gradients])
{
  constexpr int vectors = num_frame_gradients / lanes;
  for (int row = 0; row < num_frame_gradients; row += 2)
  {
    FourDoubles sum[2][vectors];
    for (int r = 0; r < 2; ++r)
      for (int v = 0; v < vectors; ++v)
        sum[r][v] = *four(out[row + r] + lanes * v);
    for (int k = 0; k < depth; ++k)
      for (int r = 0; r < 2; ++r)
      {
        const double factor = left[k * num_frame_gradients + row + r];
        for (int v = 0; v < vectors; ++v)
          sum[r][v] += factor * *four(right + k * num_frame_gradients + lanes * v);
      }
    for (int r = 0; r < 2; ++r)
      for (int v = 0; v < vectors; ++v)
        *four(out[row + r] + lanes * v) = sum[r][v];
  }
}

LIBPLATE_INLINED void add_strains_body(int num_rows, const double* rows, const double* weights,
                                       double (*stiffness)[num_frame_gradients])
{
  constexpr int vectors = num_frame_gradients / lanes;
  double stresses[num_strains * num_frame_gradients];
  for (int row = 0; row < num_rows; ++row)
  {
    FourDoubles sum[vectors] = {};
    for (int k = 0; k < num_rows; ++k)
      for (int v = 0; v < vectors; ++v)
        sum[v] += weights[row * num_rows + k] * *four(rows + k * num_frame_gradients + lanes * v);
    for (int v = 0; v < vectors; ++v)
      *four(stresses + row * num_frame_gradients + lanes * v) = sum[v];
  }
  add_strain_products(num_rows, rows, stresses, stiffness);
}

/// A kind of field among the gradients: where its derivatives along e1, e2 and, for the director, its value start.
struct Kind
{
  int first;
  int num_functions; // derivatives, and the value if there are three
};
constexpr Kind shift = {.first = 0, .num_functions = 2};
constexpr Kind turn = {.first = 6, .num_functions = 3};

/// Adds products of functions for one pair of kinds; of a symmetric pair only tiles on and below the diagonal.
template <int n, Kind left, Kind right, bool symmetric>
LIBPLATE_INLINED void add_block(const ProductBuffers<n>& buffers, typename ProductBuffers<n>::Sum& sum)
{
  constexpr int padded = ProductBuffers<n>::padded;
  constexpr int vectors = padded / lanes;
  const int depth = buffers.num_points * left.num_functions;
  double factors[ProductBuffers<n>::most_points * left.num_functions][padded];
  double forces[ProductBuffers<n>::most_points * left.num_functions][3][padded];
  for (int a = 0; a < 3; ++a)
  {
    // What each function of the right kind brings to a component of the left kind at each point.
    for (int point = 0; point < buffers.num_points; ++point)
      for (int f = 0; f < left.num_functions; ++f)
      {
        const int k = point * left.num_functions + f;
        const double* stiffness = buffers.stiffness[point][left.first + 3 * f + a] + right.first;
        for (int v = 0; v < vectors; ++v)
        {
          *four(factors[k] + lanes * v) = *four(buffers.functions[point][f] + lanes * v);
          for (int b = 0; b < 3; ++b)
          {
            FourDoubles force = {};
            for (int g = 0; g < right.num_functions; ++g)
              force += stiffness[3 * g + b] * *four(buffers.functions[point][g] + lanes * v);
            *four(forces[k][b] + lanes * v) = force;
          }
        }
      }
    for (int tile = 0; tile < vectors; ++tile)
      for (int v = 0; v < (symmetric ? tile + 1 : vectors); ++v)
      {
        FourDoubles t[lanes][3] = {};
        for (int k = 0; k < depth; ++k)
          for (int i = 0; i < lanes; ++i)
            for (int b = 0; b < 3; ++b)
              t[i][b] += factors[k][lanes * tile + i] * *four(forces[k][b] + lanes * v);
        for (int i = 0; i < lanes; ++i)
          for (int b = 0; b < 3; ++b)
            *four(sum[a][lanes * tile + i][b] + lanes * v) += t[i][b];
      }
  }
}

template <int n>
LIBPLATE_INLINED void add_mass(ProductBuffers<n>& buffers)
{
  constexpr int vectors = ProductBuffers<n>::padded / lanes;
  for (int k = 0; k < 3; ++k)
    for (int i = 0; i < n; ++i)
    {
      FourDoubles sum[vectors];
      for (int v = 0; v < vectors; ++v)
        sum[v] = *four(buffers.mass[k][i] + lanes * v);
      for (int point = 0; point < buffers.num_points; ++point)
      {
        const double* N = buffers.functions[point][2];
        for (int v = 0; v < vectors; ++v)
          sum[v] += (buffers.inertia[point][k] * N[i]) * *four(N + lanes * v);
      }
      for (int v = 0; v < vectors; ++v)
        *four(buffers.mass[k][i] + lanes * v) = sum[v];
    }
}

template <int n>
LIBPLATE_INLINED void add_points_body(ProductBuffers<n>& buffers)
{
  add_block<n, shift, shift, true>(buffers, buffers.shift_shift);
  add_block<n, shift, turn, false>(buffers, buffers.shift_turn);
  add_block<n, turn, turn, true>(buffers, buffers.turn_turn);
  add_mass(buffers);
}

LIBPLATE_WIDE void add_strains_wide(int num_rows, const double* rows, const double* weights,
                                    double (*stiffness)[num_frame_gradients])
{
  add_strains_body(num_rows, rows, weights, stiffness);
}

void add_strains_usual(int num_rows, const double* rows, const double* weights,
                       double (*stiffness)[num_frame_gradients])
{
  add_strains_body(num_rows, rows, weights, stiffness);
}

template <int n>
LIBPLATE_WIDE void add_points_wide(ProductBuffers<n>& buffers)
{
  add_points_body(buffers);
}

template <int n>
void add_points_usual(ProductBuffers<n>& buffers)
{
  add_points_body(buffers);
}

template <int n>
void add_and_forget(ProductBuffers<n>& buffers)
{
  if (buffers.num_points > 0)
    has_wide_arithmetic() ? add_points_wide(buffers) : add_points_usual(buffers);
  buffers.num_points = 0;
}

} // namespace

void add_strains(int num_rows, const double* rows, const double* weights, double (*stiffness)[num_frame_gradients])
{
  has_wide_arithmetic() ? add_strains_wide(num_rows, rows, weights, stiffness)
                        : add_strains_usual(num_rows, rows, weights, stiffness);
}

void add_points(ProductBuffers<num_nodes>& buffers)
{
  add_and_forget(buffers);
}

} // namespace plate::shell_kinematics
