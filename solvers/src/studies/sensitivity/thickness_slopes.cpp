// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/sensitivity.h>

#include "eigenvalue_slopes.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <numeric>

namespace plate
{

namespace
{

constexpr double relative_step = 3e-4; // of the mean thickness; as for parameters

/// The model with its plate thicker everywhere by `more` [m].
Model thickened(Model model, double more)
{
  for (double& thickness : model.mesh.thickness)
    thickness += more;
  std::vector<Ply>& plies = model.material.laminate.plies;
  const bool only_cores = std::all_of(plies.begin(), plies.end(), [](const Ply& ply) { return ply.material.core; });
  const auto counts = [&](const Ply& ply) { return only_cores || !ply.material.core; };
  double sum = 0.0;
  for (const Ply& ply : plies)
    sum += counts(ply) ? ply.thickness : 0.0;
  for (Ply& ply : plies)
    ply.thickness *= counts(ply) ? 1.0 + more / sum : 1.0;
  return model;
}

/// From the integral of a field over each triangle (columns) to its mean around each corner, linear in between.
Eigen::MatrixXd at_nodes(const ShellMesh& mesh, const Eigen::MatrixXd& integrals)
{
  const auto num_nodes = static_cast<Eigen::Index>(mesh.nodes.size());
  Eigen::MatrixXd sums = Eigen::MatrixXd::Zero(num_nodes, integrals.rows());
  Eigen::VectorXd areas = Eigen::VectorXd::Zero(num_nodes);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
    for (std::size_t corner = 0; corner < 3; ++corner)
    {
      const int node = mesh.triangles[t][corner];
      sums.row(node) += integrals.col(static_cast<Eigen::Index>(t)).transpose();
      areas(node) += triangle_area(mesh, t);
    }
  Eigen::MatrixXd field = Eigen::MatrixXd::Zero(num_nodes, integrals.rows());
  const CubicTriangle::Gradient places = CubicTriangle::node_coordinates();
  for (const auto& triangle : mesh.triangles)
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
    {
      const Eigen::RowVector3d shares(1.0 - places(i, 0) - places(i, 1), places(i, 0), places(i, 1));
      auto row = field.row(triangle[static_cast<std::size_t>(i)]);
      row.setZero(); // written by each triangle around the node, with the same value
      for (int corner = 0; corner < 3; ++corner)
      {
        const int node = triangle[static_cast<std::size_t>(corner)];
        row += shares(corner) * sums.row(node) / areas(node);
      }
    }
  return field;
}

} // namespace

Eigen::MatrixXd thickness_slopes(const Model& model, const DofMap& dofs, const ModalResult& modes)
{
  if (modes.shapes.cols() != modes.frequencies_hz.size() || modes.shapes.rows() != dofs.num_equations)
    throw InvalidInput(message("thickness_slopes: the shapes are ", modes.shapes.rows(), " by ", modes.shapes.cols(),
                               ", but there are ", dofs.num_equations, " unknowns and ", modes.frequencies_hz.size(),
                               " frequencies; give the modes of this model"));
  const std::vector<double>& thickness = model.mesh.thickness;
  const double step =
      relative_step * std::accumulate(thickness.begin(), thickness.end(), 0.0) / static_cast<double>(thickness.size());
  const sensitivity::EigenvalueSlopes eigenvalues(modes.frequencies_hz);
  const FormChanges changes =
      form_changes(thickened(model, -step), thickened(model, step), dofs, modes.shapes, eigenvalues.pairs());
  Eigen::MatrixXd integrals(modes.frequencies_hz.size(), changes.stiffness.cols());
  for (Eigen::Index t = 0; t < integrals.cols(); ++t)
    integrals.col(t) = eigenvalues.means(changes.stiffness.col(t), changes.mass.col(t)) / (2.0 * step);
  return at_nodes(model.mesh, integrals);
}

} // namespace plate
