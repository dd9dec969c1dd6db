// SPDX-License-Identifier: MPL-2.0
#include "body_view.h"

#include "design_pictures.h"

#include <utility>

namespace plate
{

BodyView body_view(const BodyModel& model, const BodyDesign& design)
{
  BodyView view{.top = plate_view(model.body.parts[BodyModel::top].model, design.title),
                .back = plate_view(model.body.parts[BodyModel::back].model, design.title),
                .air = {.mesh = model.cavity.planform}};
  view.top.points.clear();                            // the bridge's feet, which are no masses stuck on
  view.top.regions.resize(design.top.patches.size()); // without the blocks' footprints, which follow
  view.back.regions.resize(design.back.patches.size());
  std::swap(view.back.left, view.back.right);
  return view;
}

} // namespace plate
