// SPDX-License-Identifier: MPL-2.0
#include "compare_result.h"

#include "pair_measured.h"
#include "stopwatch.h"

#include <plate/core/error.h>

#include <algorithm>
#include <utility>

namespace plate
{
namespace
{

Eigen::VectorXd frequencies_hz(const std::vector<ComparedMode>& modes)
{
  Eigen::VectorXd hz(static_cast<Eigen::Index>(modes.size()));
  for (std::size_t i = 0; i < modes.size(); ++i)
    hz(static_cast<Eigen::Index>(i)) = modes[i].frequency_hz;
  return hz;
}

PairedModes paired_by_shape(const Compared& reference, const ComparedShapes& reference_shapes, const Compared& design)
{
  ShapeProducts products;
  try
  {
    products = shape_products(reference_shapes, shapes_of(design));
  }
  catch (const InvalidInput& error)
  {
    throw InvalidInput(message(design.title, " and ", reference.title, ": ", error.what()));
  }
  ModePairing pairing = pair_by_shape(products, frequencies_hz(reference.modes), frequencies_hz(design.modes));
  PairedModes out{.unpaired = {pairing.unpaired.begin(), pairing.unpaired.end()},
                  .groups = std::move(pairing.groups),
                  .assurance = std::move(pairing.assurance),
                  .share_left_out = products.share_left_out};
  for (const ShapePair& pair : pairing.pairs)
    out.pairs.push_back({.reference = static_cast<std::size_t>(pair.reference),
                         .mode = static_cast<std::size_t>(pair.other),
                         .assurance = pair.assurance,
                         .group_assurance = pair.group_assurance});
  return out;
}

/// @param is_body  whether the list is compared with bodies
PairedBy way_of(const MeasuredModes& measured, bool is_body)
{
  if (measured.with_shapes)
    return PairedBy::shape;
  return is_body ? PairedBy::name_and_frequency : PairedBy::name_and_order;
}

} // namespace

int num_searched(int num_reference)
{
  return num_reference + std::max(6, num_reference / 2); // as far as modes have been seen to move between laminates
}

CompareOutcome compare_designs(AnyDesign reference, std::vector<AnyDesign> designs, int count)
{
  const Stopwatch watch;
  Compared first = compute_compared(std::move(reference), count);
  const ComparedShapes shapes = shapes_of(first);
  CompareOutcome out{.title = first.title, .reference = first.modes, .designs = {}};
  for (AnyDesign& design : designs)
  {
    Compared other = compute_compared(std::move(design), num_searched(count));
    PairedModes paired = paired_by_shape(first, shapes, other);
    out.designs.push_back({.design = std::move(other), .paired = std::move(paired)});
  }
  out.reference_design = std::move(first);
  out.seconds = watch.seconds();
  return out;
}

CompareOutcome compare_measured(const MeasuredModes& measured, std::vector<AnyDesign> designs, int count)
{
  const Stopwatch watch;
  CompareOutcome out{.title = measured.title, .reference = {}, .designs = {}};
  for (const MeasuredMode& mode : measured.modes)
    out.reference.push_back(
        {.number = mode.number, .name = mode.name, .frequency_hz = mode.frequency_hz, .loss = mode.loss});
  const int searched = num_searched(std::max(count, measured.modes.back().number));
  for (AnyDesign& design : designs)
  {
    Compared other = compute_compared(std::move(design), searched);
    PairedModes paired =
        other.body() ? pair_measured_body(measured, other) : pair_measured(measured, other.plate()->result);
    out.designs.push_back({.design = std::move(other), .paired = std::move(paired)});
  }
  out.paired_by = way_of(measured, out.of_bodies());
  out.seconds = watch.seconds();
  return out;
}

} // namespace plate
