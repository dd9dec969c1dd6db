// SPDX-License-Identifier: MPL-2.0
#include "body_view.h"

#include "design_pictures.h"

#include <utility>

namespace plate
{

BodyView body_view(const BodyModel& model, const BodyDesign& design)
{
  const auto view = [&](std::size_t part, const Design& plate)
  { return body_plate_view(model.body.parts[part], plate, design.title); };
  return {.top = view(BodyModel::top, design.top),
          .back = view(BodyModel::back, design.back),
          .air = {.mesh = model.cavity.planform}};
}

PlateView body_plate_view(const BodyPart& part, const Design& design, const std::string& title)
{
  PlateView view = plate_view(part.model, title);
  view.regions.resize(design.patches.size());
  if (part.name == "top")
    view.points.clear();
  else
    std::swap(view.left, view.right);
  return view;
}

} // namespace plate
