// SPDX-License-Identifier: MPL-2.0
#include "nodal_fields.h"

#include "text_table.h"

#include <plate/core/error.h>
#include <plate/core/units.h>

namespace plate
{

std::vector<double> list_of(const Eigen::Ref<const Eigen::VectorXd>& values)
{
  return {values.begin(), values.end()};
}

std::string two_digits(Eigen::Index number)
{
  return (number < 10 ? "0" : "") + std::to_string(number);
}

std::string mode_field_name(Eigen::Index number, double frequency_hz, const std::string& name)
{
  return message("mode ", two_digits(number), " ", fixed(frequency_hz, 2), " Hz", name.empty() ? "" : " ", name);
}

NodalScalars thickness_field(const ShellMesh& mesh)
{
  NodalScalars out{.name = "thickness mm", .values = {}};
  for (const double t : mesh.thickness)
    out.values.push_back(t * millimetres);
  return out;
}

} // namespace plate
