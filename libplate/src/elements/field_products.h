// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_kinematics.h"

#include <array>
#include <cstddef>

namespace plate::shell_kinematics
{

/// Numbers that the kernel works on; functions and gradients fill whole vectors of four, what is beyond is zero.
template <int n>
struct ProductBuffers
{
  static constexpr int most_points = 16;
  static constexpr int padded = (n + 3) / 4 * 4; // functions
  using Sum = double[3][padded][3][padded];      // component and function, twice

  int num_points = 0;
  double functions[most_points][3][padded] = {}; // derivatives along e1 and e2 [1/m], value [-]
  double stiffness[most_points][num_frame_gradients][num_frame_gradients]; // on the gradients, times area
  double inertia[most_points][3]; // moments of the mass of order 0, 1, 2, times area

  Sum shift_shift = {};                // displacement with displacement; of its tiles only those of the lower triangle
  Sum shift_turn = {};                 // displacement with change of the director
  Sum turn_turn = {};                  // change of the director with itself; lower as above
  double mass[3][padded][padded] = {}; // moments of the mass
};

/// stiffness += rows^T weights rows for rows of gradients and symmetric weights.
void add_strains(int num_rows, const double* rows, const double* weights, double (*stiffness)[num_frame_gradients]);

/// Adds the points to the sums and forgets them.
///
/// Strains depend on fifteen gradients, and these on one function each: six blocks of products of functions, each the
/// product of two slim matrices, take less than half the arithmetic of rows of strains over all unknowns.
void add_points(ProductBuffers<num_nodes>& buffers);

/// Moments of the mass of order 0, 1, 2 about the mid-surface for pairs of functions [kg, kg m, kg m2].
template <int n>
using MassMoments = std::array<Eigen::Matrix<double, n, n>, 3>;

/// Stiffness and mass of n functions with five unknowns each, from terms at quadrature points.
template <int n>
class FieldProducts
{
public:
  using Matrix = Eigen::Matrix<double, 5 * n, 5 * n>;

  /// The terms that follow are at this point.
  void start_point(const FieldPoint<n>& field)
  {
    if (buffers_.num_points == ProductBuffers<n>::most_points)
      add_points(buffers_);
    const int point = buffers_.num_points++;
    for (int i = 0; i < n; ++i)
    {
      buffers_.functions[point][0][i] = field.dN(i, 0);
      buffers_.functions[point][1][i] = field.dN(i, 1);
      buffers_.functions[point][2][i] = field.N(i);
    }
    for (auto& row : buffers_.stiffness[point])
      for (double& value : row)
        value = 0.0;
  }

  /// Strain energy: rows of gradients and their stiffness.
  template <int num_rows>
  void add_energy(double area, const FrameGradientRows<num_rows>& rows,
                  const Eigen::Matrix<double, num_rows, num_rows>& C)
  {
    const Eigen::Matrix<double, num_rows, num_rows> weights = area * C;
    add_strains(num_rows, rows.data(), weights.data(), buffers_.stiffness[buffers_.num_points - 1]);
  }

  void set_inertia(double area, const std::array<double, 3>& moments)
  {
    for (std::size_t k = 0; k < moments.size(); ++k)
      buffers_.inertia[buffers_.num_points - 1][k] = area * moments[k];
  }

  /// Stiffness on the unknowns, both triangles.
  void stiffness(const Rotations<n>& rotations, Matrix& K)
  {
    add_points(buffers_);
    for (int j = 0; j < n; ++j)
      for (int i = j; i < n; ++i)
      {
        const Matrix32d R_i = rotations.template middleCols<2>(2 * i);
        const Matrix32d R_j = rotations.template middleCols<2>(2 * j);
        const int row = 5 * i;
        const int column = 5 * j;
        K.template block<3, 3>(row, column) = block(buffers_.shift_shift, i, j);
        K.template block<3, 2>(row, column + 3).noalias() = block(buffers_.shift_turn, i, j) * R_j;
        K.template block<2, 3>(row + 3, column).noalias() = (block(buffers_.shift_turn, j, i) * R_i).transpose();
        K.template block<2, 2>(row + 3, column + 3).noalias() =
            R_i.transpose() * (block(buffers_.turn_turn, i, j) * R_j);
      }
    K.template triangularView<Eigen::StrictlyUpper>() = K.transpose();
  }

  [[nodiscard]] MassMoments<n> mass()
  {
    add_points(buffers_);
    MassMoments<n> moments;
    for (std::size_t k = 0; k < moments.size(); ++k)
      for (int j = 0; j < n; ++j)
        for (int i = 0; i < n; ++i)
          moments[k](i, j) = buffers_.mass[k][j][i];
    return moments;
  }

private:
  static Eigen::Matrix3d block(const typename ProductBuffers<n>::Sum& sum, int i, int j)
  {
    Eigen::Matrix3d out;
    for (int a = 0; a < 3; ++a)
      for (int b = 0; b < 3; ++b)
        out(a, b) = sum[a][i][b][j];
    return out;
  }

  ProductBuffers<n> buffers_;
};

/// Mass on the unknowns, both triangles: shifts and changes of the director couple with their own kind of direction
/// only.
template <int n>
void expand_mass(const MassMoments<n>& moments, const Rotations<n>& rotations, Eigen::Matrix<double, 5 * n, 5 * n>& M)
{
  for (int j = 0; j < n; ++j)
    for (int i = 0; i < n; ++i)
    {
      const Matrix32d R_i = rotations.template middleCols<2>(2 * i);
      const Matrix32d R_j = rotations.template middleCols<2>(2 * j);
      M.template block<3, 3>(5 * i, 5 * j) = moments[0](i, j) * Eigen::Matrix3d::Identity();
      M.template block<3, 2>(5 * i, 5 * j + 3) = moments[1](i, j) * R_j;
      M.template block<2, 3>(5 * i + 3, 5 * j) = moments[1](i, j) * R_i.transpose();
      M.template block<2, 2>(5 * i + 3, 5 * j + 3).noalias() = moments[2](i, j) * (R_i.transpose() * R_j);
    }
}

} // namespace plate::shell_kinematics
