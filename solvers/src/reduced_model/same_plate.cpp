// SPDX-License-Identifier: MPL-2.0
#include "same_plate.h"

#include <plate/core/error.h>

#include <algorithm>

namespace plate::reduced
{

namespace
{

[[noreturn]] void fail(const std::string& what)
{
  throw InvalidInput(message("ReducedModel: ", what,
                             "; its parameters may change materials, plies, thickness and masses on one mesh: solve "
                             "these points in full"));
}

bool same_bar(const Bar& a, const Bar& b)
{
  return a.width == b.width && a.axis == b.axis && a.profile.station == b.profile.station;
}

bool same_patch(const Patch& a, const Patch& b)
{
  return a.side == b.side && edge_of(a.region) == edge_of(b.region);
}

bool same_support(const SupportedEdge& a, const SupportedEdge& b)
{
  return a.group == b.group && a.support == b.support;
}

bool same_place(const PointMass& a, const PointMass& b)
{
  return a.at == b.at;
}

template <class Parts, class Same>
bool all_same(const Parts& a, const Parts& b, Same same)
{
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), same);
}

} // namespace

void check_same_plate(const Model& reference, const Model& model)
{
  if (model.mesh.triangles != reference.mesh.triangles || model.mesh.nodes != reference.mesh.nodes)
    fail("the nodes of the mesh move with the parameters");
  if (!all_same(reference.bars, model.bars, same_bar))
    fail("width, direction or length of a bar moves with the parameters");
  if (!all_same(reference.patches, model.patches, same_patch))
    fail("the edge of a patch moves with the parameters");
  if (!all_same(reference.supports, model.supports, same_support))
    fail("supports change with the parameters");
  if (!all_same(reference.masses, model.masses, same_place))
    fail("the place of a point mass moves with the parameters");
  if ((reference.air_density > 0.0) != (model.air_density > 0.0))
    fail("the air around the plate comes and goes with the parameters");
}

} // namespace plate::reduced
