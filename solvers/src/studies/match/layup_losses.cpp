// SPDX-License-Identifier: MPL-2.0
#include "layup_losses.h"

#include "../../reduced_model/snapshot_vectors.h"
#include "layup_modes.h"

#include <plate/laminates/section.h>

namespace plate::match
{

namespace
{

constexpr double step = 0.5; // of each loss factor, to either side: a difference is the derivative, but for 1e-4 of it

/// The plate with every modulus of patches and bars changed by `change` times its loss factor.
Model changed(Model model, double change)
{
  for (Patch& patch : model.patches)
    patch.laminate = with_loss_step(patch.laminate, change);
  for (Bar& bar : model.bars)
    bar.material = with_loss_step(bar.material, change);
  return model;
}

} // namespace

LayupLosses::LayupLosses(const Model& start, std::span<const TriangleCover> covers)
    : covers_(covers), more_(changed(start, step)), less_(changed(start, -step))
{
  for (std::size_t t = 0; t < covers.size(); ++t)
    if (covers[t].bar >= 0 || !covers[t].patches.empty())
      triangles_.push_back(t);
}

std::vector<Laminate> LayupLosses::further_samples(std::span<const Laminate> laminates)
{
  // Moduli that change apart give sections that those of the sheets as they are may not be combined to.
  constexpr double far = 10.0;
  std::vector<Laminate> out;
  for (const Laminate& laminate : laminates)
    out.push_back(with_loss_step(laminate, far));
  return out;
}

Eigen::VectorXd LayupLosses::numbers(const SectionReader& reader, const Laminate& laminate)
{
  return reader.numbers(with_loss_step(laminate, step)).stiffness -
         reader.numbers(with_loss_step(laminate, -step)).stiffness;
}

void LayupLosses::extend(std::span<const Laminate> laminates, const DofMap& dofs, const reduced::Vectors& basis,
                         const reduced::Vectors& added)
{
  if (triangles_.empty())
    return;
  terms_.resize(laminates.size());
  for (std::size_t i = 0; i < laminates.size(); ++i)
  {
    const Model more = with_laminate(more_, laminates[i]);
    const Model less = with_laminate(less_, laminates[i]);
    const auto difference = [&](std::size_t triangle, reduced::ElementMatrix& out)
    {
      reduced::ElementMatrix lower;
      reduced::element_matrix(reduced::Form::stiffness, more, triangle, covers_[triangle], out);
      reduced::element_matrix(reduced::Form::stiffness, less, triangle, covers_[triangle], lower);
      out -= lower;
    };
    reduced::extend_projection(basis, reduced::apply(difference, triangles_, more.mesh, dofs, added), terms_[i]);
  }
  packed_ = PackedTerms(terms_);
}

} // namespace plate::match
