// SPDX-License-Identifier: MPL-2.0
#include <plate/design/design_model.h>

#include "leaves_mesh.h"

#include <plate/core/error.h>
#include <plate/design/build_model.h>
#include <plate/design/design.h>
#include <plate/meshes/mesher.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace plate
{

bool leaves_mesh(std::string_view key)
{
  constexpr std::array<std::string_view, 4> tables = {"layup.", "material.", "thickness.", "surroundings."};
  const auto begins = [&](std::string_view table) { return key.starts_with(table); };
  return std::any_of(tables.begin(), tables.end(), begins) || key == "bar.height" || key == "bar.end_height" ||
         (key.starts_with("mass.") && key.ends_with(".grams")) ||
         (key.starts_with("patch.") && key.find(".plies.") != std::string_view::npos);
}

DesignModel::DesignModel(DesignDocument document, std::vector<std::string> keys)
    : document_(std::move(document)), keys_(std::move(keys))
{
  for (const std::string& key : keys_)
    static_cast<void>(document_.unit(key));
}

Design DesignModel::design_at(std::span<const double> parameters) const
{
  if (parameters.size() != keys_.size())
    throw InvalidInput(message("DesignModel: ", keys_.size(), " parameters are needed, got ", parameters.size()));
  DesignDocument changed = document_;
  for (std::size_t i = 0; i < keys_.size(); ++i)
    changed.set_number(keys_[i], parameters[i]);
  return changed.design();
}

Model DesignModel::build(std::span<const double> parameters)
{
  const Design design = design_at(parameters);
  if (!first_)
  {
    first_ = mesh_planform(design.geometry, design.mesh);
    first_point_.assign(parameters.begin(), parameters.end());
    first_model_ = build_model(design, *first_);
    return first_model_;
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

void DesignModel::rebuild(std::span<const double> parameters, Model& model)
{
  if (keeps_mesh())
    update_model(design_at(parameters), model);
  else if (first_ && keeps_first_mesh(parameters))
  {
    model = first_model_;
    update_model(design_at(parameters), model);
  }
  else
    model = build(parameters);
}

bool DesignModel::keeps_first_mesh(std::span<const double> parameters) const
{
  for (std::size_t i = 0; i < keys_.size(); ++i)
    if (parameters[i] != first_point_[i] && !leaves_mesh(keys_[i]))
      return false;
  return true;
}

bool DesignModel::keeps_mesh() const
{
  return std::all_of(keys_.begin(), keys_.end(), leaves_mesh);
}

} // namespace plate
