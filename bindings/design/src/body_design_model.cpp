// SPDX-License-Identifier: MPL-2.0
#include <plate/design/body_design_model.h>

#include "leaves_mesh.h"

#include <plate/core/error.h>
#include <plate/design/body_design.h>

#include <algorithm>
#include <string_view>
#include <utility>

namespace plate
{

namespace
{

constexpr std::string_view top_outline = "top.outline.";

/// Whether a key leaves both planforms, with the line on which the ribs stand, as they are.
bool leaves_planforms(std::string_view key)
{
  for (const std::string_view plate : {"top.", "back."})
    if (key.starts_with(plate))
      return leaves_mesh(key.substr(plate.size()));
  return key != "ribs.overhang" && key != "ribs.thickness" && !key.starts_with("ribs.plies.");
}

} // namespace

BodyDesignModel::BodyDesignModel(BodyDocument document, std::vector<std::string> keys)
    : document_(std::move(document)), keys_(std::move(keys))
{
  for (const std::string& key : keys_)
    static_cast<void>(document_.unit(key));
}

BodyDesign BodyDesignModel::design_at(std::span<const double> parameters) const
{
  if (parameters.size() != keys_.size())
    throw InvalidInput(message("BodyDesignModel: ", keys_.size(), " parameters are needed, got ", parameters.size()));
  BodyDocument changed = document_;
  for (std::size_t i = 0; i < keys_.size(); ++i)
  {
    changed.set_number(keys_[i], parameters[i]);
    if (keys_[i].starts_with(top_outline))
      changed.set_number("back.outline." + keys_[i].substr(top_outline.size()), parameters[i]);
  }
  return changed.design();
}

bool BodyDesignModel::keeps_planforms(std::span<const double> parameters) const
{
  for (std::size_t i = 0; i < keys_.size(); ++i)
    if (parameters[i] != first_point_[i] && !leaves_planforms(keys_[i]))
      return false;
  return true;
}

BodyPoint BodyDesignModel::build(std::span<const double> parameters)
{
  const BodyDesign design = design_at(parameters);
  if (!first_)
  {
    first_ = build_body(design);
    first_point_.assign(parameters.begin(), parameters.end());
    return {.body = first_->body, .air = body_air(*first_, design)};
  }
  BodyModel moved = move_body(*first_, design, {.keep_planforms = keeps_planforms(parameters)});
  BodyAir air = body_air(moved, design);
  return {.body = std::move(moved.body), .air = std::move(air)};
}

} // namespace plate
