// SPDX-License-Identifier: MPL-2.0
#include <plate/post/measured_shape.h>

#include <plate/elements/cubic_triangle.h>
#include <plate/mesh/locate.h>

namespace plate
{

MeasuredLikeness measured_likeness(const ShellMesh& mesh, const Eigen::MatrixXd& normal_shapes,
                                   const MeasuredShape& shape)
{
  const PointLocator locator(mesh);
  Eigen::RowVectorXd product = Eigen::RowVectorXd::Zero(normal_shapes.cols());
  Eigen::RowVectorXd computed = product;
  double measured = 0.0;
  int num_places = 0;
  for (std::size_t i = 0; i < shape.places.size(); ++i)
  {
    const std::optional<MeshPoint> at = locator.locate(shape.places[i]);
    if (!at)
      continue;
    ++num_places;
    const double w = shape.displacement(static_cast<Eigen::Index>(i));
    const Eigen::RowVectorXd modes =
        CubicTriangle::shape(at->xi, at->eta).transpose() * normal_shapes(mesh.triangles[at->triangle], Eigen::all);
    product += w * modes;
    computed += modes.cwiseAbs2();
    measured += w * w;
  }
  const Eigen::RowVectorXd norms = measured * computed;
  return {.assurance = (norms.array() > 0.0).select(product.array().square() / norms.array(), 0.0),
          .num_places = num_places};
}

} // namespace plate
