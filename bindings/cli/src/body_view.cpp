// SPDX-License-Identifier: MPL-2.0
#include "body_view.h"

#include "design_pictures.h"

#include <utility>

namespace plate
{

BodyView body_view(const BodyModel& model, const std::string& title)
{
  BodyView view{.top = plate_view(model.body.parts[BodyModel::top].model, title),
                .back = plate_view(model.body.parts[BodyModel::back].model, title),
                .air = {.mesh = model.cavity.planform}};
  view.top.points.clear(); // the bridge's feet, which are no masses stuck on
  std::swap(view.back.left, view.back.right);
  return view;
}

} // namespace plate
