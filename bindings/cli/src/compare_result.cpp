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

ComparedPlate compared_plate(Design design, int count)
{
  LaminateResult layup = compute_laminate({.title = design.title, .laminate = design.laminate});
  ModesResult modes = compute_modes(std::move(design), count);
  modes.system.K.resize(0, 0); // the largest part, needed no more: several designs must fit side by side
  modes.system.M.resize(0, 0);
  return {.modes = std::move(modes), .layup = std::move(layup)};
}

std::vector<ReferenceMode> reference_modes(const ModesResult& result)
{
  std::vector<ReferenceMode> modes;
  for (std::size_t i = 0; i < result.names.size(); ++i)
  {
    const auto mode = static_cast<Eigen::Index>(i);
    modes.push_back({.number = static_cast<int>(i + 1),
                     .name = result.names[i],
                     .frequency_hz = result.modal.frequencies_hz[mode],
                     .loss = result.losses[mode]});
  }
  return modes;
}

ModeShapes shapes_of(const ModesResult& result)
{
  return mode_shapes(result.model, result.system.dofs, result.modal.shapes);
}

ComparedDesign paired_by_shape(const ModesResult& reference, const ModeShapes& reference_shapes, ComparedPlate plate)
{
  const ModesResult& modes = plate.modes;
  ShapeProducts products;
  try
  {
    products = shape_products(reference_shapes, shapes_of(modes));
  }
  catch (const InvalidInput& error)
  {
    throw InvalidInput(message(modes.design.title, " and ", reference.design.title, ": ", error.what()));
  }
  ModePairing pairing = pair_by_shape(products, reference.modal.frequencies_hz, modes.modal.frequencies_hz);
  ComparedDesign out{.plate = std::move(plate),
                     .pairs = {},
                     .unpaired = {pairing.unpaired.begin(), pairing.unpaired.end()},
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

} // namespace

int num_searched(int num_reference)
{
  return num_reference + std::max(6, num_reference / 2); // as far as modes have been seen to move between laminates
}

CompareOutcome compare_designs(Design reference, std::vector<Design> designs, int count)
{
  const Stopwatch watch;
  CompareOutcome out{.title = reference.title, .reference = {}, .designs = {}};
  out.reference_plate = compared_plate(std::move(reference), count);
  const ModesResult& modes = out.reference_plate->modes;
  out.reference = reference_modes(modes);
  const ModeShapes shapes = shapes_of(modes);
  for (Design& design : designs)
    out.designs.push_back(paired_by_shape(modes, shapes, compared_plate(std::move(design), num_searched(count))));
  out.seconds = watch.seconds();
  return out;
}

CompareOutcome compare_measured(const MeasuredModes& measured, std::vector<Design> designs, int count)
{
  const Stopwatch watch;
  CompareOutcome out{.title = measured.title,
                     .paired_by = measured.with_shapes ? PairedBy::shape : PairedBy::name_and_order,
                     .reference = {},
                     .designs = {}};
  for (const MeasuredMode& mode : measured.modes)
    out.reference.push_back(
        {.number = mode.number, .name = mode.name, .frequency_hz = mode.frequency_hz, .loss = mode.loss});
  const int searched = num_searched(std::max(count, measured.modes.back().number));
  for (Design& design : designs)
    out.designs.push_back(pair_measured(measured, compared_plate(std::move(design), searched)));
  out.seconds = watch.seconds();
  return out;
}

} // namespace plate
