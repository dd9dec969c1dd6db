// SPDX-License-Identifier: MPL-2.0
#include "panel_system.h"

#include "panel_potential.h"

#include <plate/core/error.h>

#include <Eigen/Cholesky>

#include <algorithm>
#include <numbers>

namespace plate
{

namespace
{

/// The part of the functions in one panel.
struct PanelFunctions
{
  std::array<int, 3> unknown;
  Eigen::Matrix3d curl; ///< surface curls of the three hat functions times their factors, columns [1/m]
};

PanelFunctions functions_in(const PressureSpace& space, std::size_t triangle, const Panel& panel)
{
  PanelFunctions out;
  for (std::size_t i = 0; i < 3; ++i)
  {
    const auto vertex = static_cast<std::size_t>(space.panels.triangles[triangle][i]);
    out.unknown[i] = space.unknown[vertex];
    // The opposite side over twice the area.
    out.curl.col(static_cast<Eigen::Index>(i)) =
        space.factor[vertex] * (panel.corner[(i + 2) % 3] - panel.corner[(i + 1) % 3]) / (2.0 * panel.area);
  }
  return out;
}

/// Adds what two panels, or one and itself, bring to the lower triangle.
void add_pair(const PanelFunctions& a, const PanelFunctions& b, bool same, double potential, Eigen::MatrixXd& W)
{
  const Eigen::Matrix3d product = potential * a.curl.transpose() * b.curl;
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j)
    {
      const int u = a.unknown[i];
      const int v = b.unknown[j];
      if (u == PressureSpace::none || v == PressureSpace::none || (same && u < v))
        continue;
      // Of two panels both orders count; off the diagonal the other one belongs to the upper triangle.
      const double orders = !same && u == v ? 2.0 : 1.0;
      W(std::max(u, v), std::min(u, v)) += orders * product(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
    }
}

/// The weak form of the normal derivative of a double layer, lower triangle.
Eigen::MatrixXd double_layer(const PressureSpace& space)
{
  const std::vector<Panel> panels = panels_with_areas(space.panels);
  std::vector<PanelFunctions> functions;
  for (std::size_t t = 0; t < panels.size(); ++t)
    functions.push_back(functions_in(space, t, panels[t]));
  Eigen::MatrixXd W = Eigen::MatrixXd::Zero(space.num_unknowns, space.num_unknowns);
  for (std::size_t a = 0; a < panels.size(); ++a)
    for (std::size_t b = 0; b <= a; ++b)
      add_pair(functions[a], functions[b], a == b, inverse_distance(panels[a], panels[b]) / (4.0 * std::numbers::pi),
               W);
  return W;
}

} // namespace

Eigen::MatrixXd mass_per_density(const PressureSpace& space, const Eigen::MatrixXd& loads)
{
  Eigen::MatrixXd of_unknowns = Eigen::MatrixXd::Zero(space.num_unknowns, loads.cols());
  for (std::size_t v = 0; v < space.unknown.size(); ++v)
    if (space.unknown[v] != PressureSpace::none)
      of_unknowns.row(space.unknown[v]) += space.factor[v] * loads.row(static_cast<Eigen::Index>(v));
  Eigen::MatrixXd W = double_layer(space);
  const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> factor(W);
  if (factor.info() != Eigen::Success)
    throw NumericalFailure(message("air_mass: the matrix of ", space.panels.triangles.size(),
                                   " panels is not positive definite; a finer or more regular mesh may help"));
  const Eigen::MatrixXd half = factor.matrixL().solve(of_unknowns);
  return half.transpose() * half;
}

} // namespace plate
