// SPDX-License-Identifier: MPL-2.0
#include "part_files.h"

#include <algorithm>
#include <string>

namespace plate
{
namespace
{

ShellMesh placed(const BodyPart& part)
{
  ShellMesh mesh = part.model.mesh;
  for (Eigen::Vector3d& node : mesh.nodes)
    node = part.placement * node;
  for (Eigen::Vector3d& normal : mesh.normals)
    normal = part.placement.linear() * normal;
  return mesh;
}

} // namespace

void write_part_files(const OutputFolder& folder, const Body& body, const std::function<VtkFields(std::size_t)>& fields)
{
  const std::vector<BodyPart>& parts = body.parts;
  for (std::size_t p = 0; p < parts.size(); ++p)
  {
    const auto same = std::count_if(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(p),
                                    [&](const BodyPart& other) { return other.name == parts[p].name; });
    const std::string number = same > 0 ? "_" + std::to_string(same + 1) : "";
    write_vtu(folder.file(parts[p].name + number + ".vtu"), placed(parts[p]), fields(p));
  }
}

} // namespace plate
