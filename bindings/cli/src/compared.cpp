// SPDX-License-Identifier: MPL-2.0
#include "compared.h"

#include <plate/core/error.h>

#include <utility>

namespace plate
{
namespace
{

LaminateResult layup_of(const Design& design)
{
  return compute_laminate({.title = design.title, .laminate = design.laminate});
}

/// Drops the largest part of a system; the numbers of its unknowns and its mass stay.
void drop_matrices(SparseMatrix& K, SparseMatrix& M)
{
  K = SparseMatrix();
  M = SparseMatrix();
}

Compared compared_plate(Design design, int count)
{
  LaminateResult layup = layup_of(design);
  ModesResult result = compute_modes(std::move(design), count);
  drop_matrices(result.system.K, result.system.M);
  Compared out{.title = result.design.title, .mass = result.system.mass, .modes = {}, .design = {}};
  for (std::size_t i = 0; i < result.names.size(); ++i)
  {
    const auto mode = static_cast<Eigen::Index>(i);
    out.modes.push_back({.number = static_cast<int>(i + 1),
                         .name = result.names[i],
                         .frequency_hz = result.modal.frequencies_hz(mode),
                         .loss = result.losses(mode)});
  }
  out.design = ComparedPlate{.result = std::move(result), .layup = std::move(layup)};
  return out;
}

Compared compared_body(BodyDesign design, int count)
{
  LaminateResult top = layup_of(design.top);
  LaminateResult back = layup_of(design.back);
  BodyResult result = compute_body(std::move(design), count);
  drop_matrices(result.system.system.K, result.system.system.M);
  for (PartSystem& part : result.system.parts)
    drop_matrices(part.K, part.M);
  Compared out{.title = result.design.title, .mass = result.system.system.mass, .modes = {}, .design = {}};
  const Eigen::VectorXd loss = result.modes.coupled.loss();
  for (std::size_t i = 0; i < result.traits.size(); ++i)
  {
    const std::optional<BodyModeName> name = name_of(result, i);
    out.modes.push_back({.number = static_cast<int>(i + 1),
                         .name = name ? name->name : "",
                         .frequency_hz = result.traits[i].frequency_hz,
                         .loss = loss(static_cast<Eigen::Index>(i))});
  }
  out.design = ComparedBody{.result = std::move(result), .top = std::move(top), .back = std::move(back)};
  return out;
}

} // namespace

Compared compute_compared(AnyDesign design, int count)
{
  if (auto* body = std::get_if<BodyDesign>(&design))
    return compared_body(std::move(*body), count);
  return compared_plate(std::get<Design>(std::move(design)), count);
}

ComparedShapes shapes_of(const Compared& compared)
{
  if (const ComparedBody* body = compared.body())
    return body_shapes(body->result, static_cast<Eigen::Index>(body->result.traits.size()));
  const ModesResult& result = compared.plate()->result;
  return mode_shapes(result.model, result.system.dofs, result.modal.shapes);
}

ShapeProducts shape_products(const ComparedShapes& reference, const ComparedShapes& other)
{
  if (reference.index() != other.index())
    throw InvalidInput("one is a plate and the other a body; compare plates with plates and bodies with bodies");
  if (const BodyShapes* body = std::get_if<BodyShapes>(&reference))
    return shape_products(*body, std::get<BodyShapes>(other));
  return shape_products(std::get<ModeShapes>(reference), std::get<ModeShapes>(other));
}

} // namespace plate
