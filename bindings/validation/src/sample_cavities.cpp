// SPDX-License-Identifier: MPL-2.0
#include <plate/validation/sample_cavities.h>

#include <cstddef>
#include <utility>

namespace plate::validation
{

CavityMesh cavity_over(ShellMesh planform, const std::function<double(double x, double y)>& height)
{
  const auto n = static_cast<Eigen::Index>(planform.nodes.size());
  CavityMesh mesh = {.planform = std::move(planform), .back = Eigen::VectorXd::Zero(n), .top = Eigen::VectorXd(n)};
  for (Eigen::Index i = 0; i < n; ++i)
  {
    const Eigen::Vector3d& at = mesh.planform.nodes[static_cast<std::size_t>(i)];
    mesh.top(i) = height(at.x(), at.y());
  }
  return mesh;
}

} // namespace plate::validation
