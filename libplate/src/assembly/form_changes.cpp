// SPDX-License-Identifier: MPL-2.0
#include <plate/assembly/form_changes.h>

#include "model_difference.h"

#include <plate/assembly/nodal_unknowns.h>
#include <plate/core/error.h>
#include <plate/core/parallel.h>
#include <plate/core/threads.h>

#include <algorithm>
#include <utility>

namespace plate
{

namespace
{

void check_same_topology(const Model& from, const Model& to)
{
  const auto fail = [](const auto&... what)
  { throw InvalidInput(message("form_changes: ", what..., "; compare models on one mesh, moved but not remade")); };
  if (from.mesh.triangles != to.mesh.triangles || from.mesh.nodes.size() != to.mesh.nodes.size())
    fail("the models have ", from.mesh.triangles.size(), " and ", to.mesh.triangles.size(),
         " triangles that are not the same");
  if (from.bars.size() != to.bars.size() || from.patches.size() != to.patches.size())
    fail("the models have ", from.bars.size(), " and ", to.bars.size(), " bars, ", from.patches.size(), " and ",
         to.patches.size(), " patches");
  const auto same_support = [](const SupportedEdge& a, const SupportedEdge& b)
  { return a.group == b.group && a.support == b.support; };
  if (!std::equal(from.supports.begin(), from.supports.end(), to.supports.begin(), to.supports.end(), same_support))
    fail("the models are held in different ways");
}

/// Matrices of one triangle of a model.
struct ElementForms
{
  ShellTriangle::Matrix K;
  ShellTriangle::Matrix M;
  double mass = 0.0; // [kg]

  void compute(const Model& model, std::size_t triangle, const TriangleCover& cover)
  {
    const ElementInput element = element_input(model, triangle, cover);
    ShellTriangle::MassMoments moments;
    ShellTriangle::matrices(element.nodes, model.material, element.parts, K, moments);
    ShellTriangle::expand_mass(moments, element.nodes, model.material.axes, M);
    mass = moments[0].sum();
  }
};

/// x^T A y for all pairs.
void products(const ShellTriangle::Matrix& A, const ShellTriangle::Displacements& x, std::span<const VectorPair> pairs,
              ShellTriangle::Displacements& buffer, Eigen::Ref<Eigen::VectorXd> out)
{
  buffer.noalias() = A * x;
  for (std::size_t k = 0; k < pairs.size(); ++k)
    out(static_cast<Eigen::Index>(k)) = x.col(pairs[k].first).dot(buffer.col(pairs[k].second));
}

void add_triangles(const Model& from, const Model& to, const ModelDifference& difference, const DofMap& dofs,
                   const Eigen::MatrixXd& vectors, std::span<const VectorPair> pairs, FormChanges& out)
{
  const std::vector<TriangleCover> covers_from = triangle_covers(from);
  const std::vector<TriangleCover> covers_to = triangle_covers(to);
  in_parallel(covers_from.size(), num_threads(),
              [&](std::size_t first, std::size_t last)
              {
                ShellTriangle::Displacements buffer(ShellTriangle::num_dofs, vectors.cols());
                ElementForms a;
                ElementForms b;
                for (std::size_t t = first; t < last; ++t)
                {
                  if (!difference.in_triangle(t, covers_from[t], covers_to[t]))
                    continue;
                  a.compute(from, t, covers_from[t]);
                  b.compute(to, t, covers_to[t]);
                  b.K -= a.K;
                  b.M -= a.M;
                  const ShellTriangle::Displacements local = of_triangle(from.mesh, dofs, vectors, t);
                  const auto column = static_cast<Eigen::Index>(t);
                  products(b.K, local, pairs, buffer, out.stiffness.col(column));
                  products(b.M, local, pairs, buffer, out.mass.col(column));
                  out.triangle_mass(column) = b.mass - a.mass;
                }
              });
}

void add_point_masses(const Model& model, double sign, const DofMap& dofs, const Eigen::MatrixXd& vectors,
                      std::span<const VectorPair> pairs, FormChanges& out)
{
  for (const PointMass& mass : model.masses)
  {
    const Eigen::MatrixXd u = displacement_rows(model, dofs, mass.at) * vectors;
    for (std::size_t k = 0; k < pairs.size(); ++k)
      out.point_mass(static_cast<Eigen::Index>(k)) +=
          sign * mass.mass * u.col(pairs[k].first).dot(u.col(pairs[k].second));
    out.stuck_on += sign * mass.mass;
  }
}

} // namespace

FormChanges form_changes(const Model& from, const Model& to, const DofMap& dofs, const Eigen::MatrixXd& vectors,
                         std::span<const VectorPair> pairs)
{
  check_same_topology(from, to);
  const auto num_triangles = static_cast<Eigen::Index>(from.mesh.triangles.size());
  const auto num_pairs = static_cast<Eigen::Index>(pairs.size());
  FormChanges out = {.stiffness = Eigen::MatrixXd::Zero(num_pairs, num_triangles),
                     .mass = Eigen::MatrixXd::Zero(num_pairs, num_triangles),
                     .triangle_mass = Eigen::VectorXd::Zero(num_triangles),
                     .point_mass = Eigen::VectorXd::Zero(num_pairs)};
  const ModelDifference difference(from, to);
  out.any = difference.any();
  if (!out.any)
    return out;
  add_triangles(from, to, difference, dofs, vectors, pairs, out);
  add_point_masses(to, 1.0, dofs, vectors, pairs, out);
  add_point_masses(from, -1.0, dofs, vectors, pairs, out);
  return out;
}

} // namespace plate
