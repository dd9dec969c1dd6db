// SPDX-License-Identifier: MPL-2.0
#include "torsion_form.h"

#include <Eigen/QR>
#include <Eigen/SVD>

#include <algorithm>
#include <memory>

namespace plate::reduced
{

namespace
{

constexpr std::size_t most_polynomials = 36;
constexpr std::size_t num_checks = 4;
constexpr double negligible = 1e-6; // of the torsion

/// Table of each bar, from one of its triangles.
std::vector<BarTorsion> torsion_tables(const Model& model)
{
  const std::vector<TriangleCover> covers = triangle_covers(model);
  std::vector<BarTorsion> tables;
  for (const BarFootprint& bar : model.mesh.bars)
    tables.push_back(bar.triangles.empty() ? BarTorsion{}
                                           : *covers[static_cast<std::size_t>(bar.triangles.front())].bar_torsion);
  return tables;
}

Eigen::VectorXd values_of(const std::vector<BarTorsion>& tables)
{
  std::vector<double> values;
  for (const BarTorsion& table : tables)
    values.insert(values.end(), table.stiffness.begin(), table.stiffness.end());
  return Eigen::Map<const Eigen::VectorXd>(values.data(), static_cast<Eigen::Index>(values.size()));
}

std::vector<BarTorsion> with_values(std::vector<BarTorsion> tables, const Eigen::VectorXd& values)
{
  Eigen::Index at = 0;
  for (BarTorsion& table : tables)
    for (double& value : table.stiffness)
      value = values(at++);
  return tables;
}

std::vector<std::size_t> triangles_under_bars(const ShellMesh& mesh)
{
  std::vector<std::size_t> triangles;
  for (const BarFootprint& bar : mesh.bars)
    triangles.insert(triangles.end(), bar.triangles.begin(), bar.triangles.end());
  return triangles;
}

} // namespace

TorsionForm::TorsionForm(ParametricModel& design, const ParameterBox& box, const Model& reference, Model& scratch)
    : polynomials_(static_cast<Eigen::Index>(box.low.size()), most_polynomials)
{
  const std::size_t num_fitted = polynomials_.size() + polynomials_.size() / 2;
  std::vector<Point> points = corners_of(box, std::max<std::size_t>(2, num_fitted / 4));
  const std::vector<Point> inside = inner_points(box, num_fitted + num_checks - points.size());
  points.insert(points.end(), inside.begin(), inside.end());

  const std::vector<BarTorsion> middle = torsion_tables(reference);
  const auto count = static_cast<Eigen::Index>(points.size());
  Eigen::MatrixXd tables(values_of(middle).size(), count);
  Eigen::MatrixXd polynomials(static_cast<Eigen::Index>(polynomials_.size()), count);
  for (Eigen::Index i = 0; i < count; ++i)
  {
    const Point& point = points[static_cast<std::size_t>(i)];
    design.rebuild(point, scratch);
    tables.col(i) = values_of(torsion_tables(scratch));
    polynomials.col(i) = polynomials_.at(unit_coordinates(box, point));
  }

  const Eigen::JacobiSVD<Eigen::MatrixXd> svd(tables, Eigen::ComputeThinU);
  const auto rank = (svd.singularValues().array() > negligible * svd.singularValues()(0)).count();
  const Eigen::MatrixXd directions = svd.matrixU().leftCols(rank);
  const Eigen::Index fitted = count - static_cast<Eigen::Index>(num_checks);
  const Eigen::MatrixXd shares = directions.transpose() * tables;
  weights_ = polynomials.leftCols(fitted).transpose().colPivHouseholderQr().solve(shares.leftCols(fitted).transpose());
  weights_.transposeInPlace();
  const Eigen::MatrixXd missed = (tables - directions * weights_ * polynomials).rightCols(num_checks);
  error_ = missed.cwiseAbs().maxCoeff() / tables.cwiseAbs().maxCoeff();
  for (Eigen::Index k = 0; k < rank; ++k)
    terms_.push_back(with_values(middle, directions.col(k)));
}

Vectors TorsionForm::apply_term(std::size_t term, const Model& reference, const std::vector<TriangleCover>& covers,
                                const DofMap& dofs, const Vectors& vectors) const
{
  const auto torsion_alone = [&](std::size_t triangle, ElementMatrix& out)
  {
    TriangleCover cover = covers[triangle];
    ElementMatrix rest;
    element_matrix(Form::stiffness, reference, triangle, cover, rest);
    const BarTorsion& table = terms_[term][static_cast<std::size_t>(cover.bar)];
    cover.bar_torsion = std::make_shared<const BarTorsion>(table);
    element_matrix(Form::stiffness, reference, triangle, cover, out);
    out -= rest;
  };
  return apply(torsion_alone, triangles_under_bars(reference.mesh), reference.mesh, dofs, vectors);
}

Eigen::VectorXd TorsionForm::coefficients(const Eigen::VectorXd& unit_coordinates) const
{
  return weights_ * polynomials_.at(unit_coordinates);
}

} // namespace plate::reduced
