// SPDX-License-Identifier: MPL-2.0
#include <plate/design/design_model.h>

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/design/design.h>
#include <plate/meshes/mesher.h>

#include <utility>

namespace plate
{

DesignModel::DesignModel(DesignDocument document, std::vector<std::string> keys)
    : document_(std::move(document)), keys_(std::move(keys))
{
  for (const std::string& key : keys_)
    static_cast<void>(document_.unit(key));
}

Model DesignModel::build(std::span<const double> parameters)
{
  if (parameters.size() != keys_.size())
    throw InvalidInput(message("DesignModel: ", keys_.size(), " parameters are needed, got ", parameters.size()));
  DesignDocument changed = document_;
  for (std::size_t i = 0; i < keys_.size(); ++i)
    changed.set_number(keys_[i], parameters[i]);
  const Design design = changed.design();
  if (!first_)
  {
    first_ = mesh_planform(design.geometry, design.mesh);
    return build_model(design, *first_);
  }
  try
  {
    return build_model(design, move_planform(*first_, design.geometry));
  }
  catch (const NumericalFailure&)
  {
    ++num_remeshed_;
    return build_model(design);
  }
}

} // namespace plate
