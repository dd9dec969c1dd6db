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

/// Unknowns: vertices off the edges; -1 for the others, where the pressure is the same on both faces.
std::vector<int> number_inner(const PanelMesh& mesh)
{
  const std::vector<bool> on_edge = edge_vertices(mesh);
  if (std::find(on_edge.begin(), on_edge.end(), true) == on_edge.end())
    throw InvalidInput("air_mass: the surface is closed; the mass of the air is that of a plate with edges");
  std::vector<int> unknown;
  int next = 0;
  for (const bool edge : on_edge)
    unknown.push_back(edge ? -1 : next++);
  return unknown;
}

/// Surface curls of the three hat functions of a panel: opposite sides over twice the area, columns [1/m].
Eigen::Matrix3d curls(const Panel& panel)
{
  Eigen::Matrix3d out;
  for (std::size_t i = 0; i < 3; ++i)
    out.col(static_cast<Eigen::Index>(i)) =
        (panel.corner[(i + 2) % 3] - panel.corner[(i + 1) % 3]) / (2.0 * panel.area);
  return out;
}

/// The weak form of the normal derivative of a double layer, lower triangle.
Eigen::MatrixXd double_layer(const PanelMesh& mesh, const std::vector<int>& unknown, Eigen::Index num_unknowns)
{
  const std::vector<Panel> panels = panels_with_areas(mesh);
  std::vector<Eigen::Matrix3d> curl;
  for (const Panel& panel : panels)
    curl.push_back(curls(panel));
  const auto unknown_of = [&](std::size_t panel, std::size_t corner)
  { return unknown[static_cast<std::size_t>(mesh.triangles[panel][corner])]; };
  Eigen::MatrixXd W = Eigen::MatrixXd::Zero(num_unknowns, num_unknowns);
  for (std::size_t a = 0; a < panels.size(); ++a)
    for (std::size_t b = 0; b <= a; ++b)
    {
      const double potential = inverse_distance(panels[a], panels[b]) / (4.0 * std::numbers::pi);
      const Eigen::Matrix3d product = potential * curl[a].transpose() * curl[b];
      for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j)
        {
          const int u = unknown_of(a, i);
          const int v = unknown_of(b, j);
          if (u < 0 || v < 0)
            continue;
          // Both (a, b) and (b, a) count; off the diagonal the second goes to the upper triangle.
          const double share = a == b ? (u == v ? 1.0 : 0.5) : (u == v ? 2.0 : 1.0);
          W(std::max(u, v), std::min(u, v)) +=
              share * product(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
        }
    }
  return W;
}

} // namespace

Eigen::MatrixXd moved_volume(const PanelMesh& panels, const Eigen::MatrixXd& loads)
{
  const std::vector<int> unknown = number_inner(panels);
  const auto num_unknowns = std::count_if(unknown.begin(), unknown.end(), [](int u) { return u >= 0; });
  Eigen::MatrixXd inner(num_unknowns, loads.cols());
  for (std::size_t v = 0; v < unknown.size(); ++v)
    if (unknown[v] >= 0)
      inner.row(unknown[v]) = loads.row(static_cast<Eigen::Index>(v));
  Eigen::MatrixXd W = double_layer(panels, unknown, num_unknowns);
  const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> factor(W);
  if (factor.info() != Eigen::Success)
    throw NumericalFailure(message("air_mass: the matrix of ", panels.triangles.size(),
                                   " panels is not positive definite; a finer or more regular mesh may help"));
  const Eigen::MatrixXd half = factor.matrixL().solve(inner);
  return half.transpose() * half;
}

} // namespace plate
