// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/sensitivity.h>

#include "eigenvalue_slopes.h"
#include "model_steps.h"

#include <plate/core/error.h>
#include <plate/elements/cubic_triangle.h>
#include <plate/post/surface_integral.h>

#include <algorithm>
#include <numeric>

namespace plate
{

namespace
{

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

/// Values at the nodes of the functions that are linear in a triangle and 1 at one of its corners.
Eigen::Matrix<double, CubicTriangle::num_nodes, 3> corner_shares()
{
  const CubicTriangle::Gradient places = CubicTriangle::node_coordinates();
  Eigen::Matrix<double, CubicTriangle::num_nodes, 3> shares;
  shares << 1.0 - places.col(0).array() - places.col(1).array(), places;
  return shares;
}

/// From the integral of a field over each triangle (columns) to its mean around each corner, linear in between.
Eigen::MatrixXd at_nodes(const ShellMesh& mesh, const Eigen::MatrixXd& integrals)
{
  const auto num_nodes = static_cast<Eigen::Index>(mesh.nodes.size());
  const Eigen::Matrix<double, CubicTriangle::num_nodes, 3> shares = corner_shares();
  Eigen::MatrixXd sums = Eigen::MatrixXd::Zero(num_nodes, integrals.rows());
  Eigen::VectorXd areas = Eigen::VectorXd::Zero(num_nodes);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
  {
    const Eigen::Vector3d parts = shares.transpose() * nodal_areas(mesh, t);
    for (int corner = 0; corner < 3; ++corner)
    {
      const int node = mesh.triangles[t][static_cast<std::size_t>(corner)];
      sums.row(node) += parts(corner) / parts.sum() * integrals.col(static_cast<Eigen::Index>(t)).transpose();
      areas(node) += parts(corner);
    }
  }
  Eigen::MatrixXd field(num_nodes, integrals.rows());
  for (const auto& triangle : mesh.triangles)
  {
    Eigen::MatrixXd corners(3, integrals.rows());
    for (int corner = 0; corner < 3; ++corner)
    {
      const int node = triangle[static_cast<std::size_t>(corner)];
      corners.row(corner) = sums.row(node) / areas(node);
    }
    for (int i = 0; i < CubicTriangle::num_nodes; ++i)
      field.row(triangle[static_cast<std::size_t>(i)]) = shares.row(i) * corners;
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
  const double step = sensitivity::relative_step * std::accumulate(thickness.begin(), thickness.end(), 0.0) /
                      static_cast<double>(thickness.size());
  const sensitivity::EigenvalueSlopes eigenvalues(modes.frequencies_hz);
  const FormChanges changes =
      form_changes(thickened(model, -step), thickened(model, step), dofs, modes.shapes, eigenvalues.pairs());
  Eigen::MatrixXd integrals(modes.frequencies_hz.size(), changes.stiffness.cols());
  for (Eigen::Index t = 0; t < integrals.cols(); ++t)
    integrals.col(t) = eigenvalues.means(changes.stiffness.col(t), changes.mass.col(t)) / (2.0 * step);
  return at_nodes(model.mesh, integrals);
}

} // namespace plate
