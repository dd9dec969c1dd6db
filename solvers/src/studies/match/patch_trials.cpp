// SPDX-License-Identifier: MPL-2.0
#include "patch_trials.h"

#include "../../reduced_model/element_forms.h"

#include <plate/assembly/assemble.h>
#include <plate/core/units.h>
#include <plate/post/mode_loss.h>

#include <Eigen/Eigenvalues>

#include <algorithm>

namespace plate::match
{

namespace
{

PatchPlies plies_of(const std::vector<Patch>& patches)
{
  PatchPlies out;
  for (const Patch& patch : patches)
    out.push_back(patch.laminate);
  return out;
}

/// The cover without the patches that are left out.
TriangleCover remaining(TriangleCover cover, const PatchPlies& patches)
{
  std::erase_if(cover.patches, [&](int patch) { return patches[static_cast<std::size_t>(patch)].plies.empty(); });
  return cover;
}

} // namespace

Model with_patches(Model model, const PatchPlies& patches)
{
  for (std::size_t i = 0; i < patches.size(); ++i)
    model.patches[i].laminate = patches[i];
  std::erase_if(model.patches, [](const Patch& patch) { return patch.laminate.plies.empty(); });
  return model;
}

std::vector<PatchPlies> neighbours(const PatchPlies& patches, const std::vector<Patch>& start,
                                   const std::vector<Ply>& choices, std::size_t most)
{
  std::vector<PatchPlies> out;
  for (std::size_t i = 0; i < patches.size(); ++i)
  {
    const bool outside = start[i].side == PlateSide::outside;
    const auto offer = [&](const Laminate& laminate)
    {
      out.push_back(patches);
      out.back()[i] = laminate;
    };
    // The ply farthest from the plate comes, goes or changes.
    const auto with = [&](Laminate laminate, const Ply& ply)
    {
      laminate.plies.insert(outside ? laminate.plies.end() : laminate.plies.begin(), ply);
      return laminate;
    };
    Laminate shorter = patches[i];
    if (!shorter.plies.empty())
      shorter.plies.erase(outside ? shorter.plies.end() - 1 : shorter.plies.begin());
    offer(start[i].laminate);
    offer({});
    offer(shorter);
    for (const Ply& ply : choices)
    {
      if (shorter.plies.size() < most)
        offer(with(shorter, ply));
      if (patches[i].plies.size() < most)
        offer(with(patches[i], ply));
    }
  }
  return out;
}

PatchTrials::PatchTrials(const Model& plate, const FullModes& solved, const Eigen::MatrixXd& others,
                         const ModeTargets& targets)
    : plate_(plate), solved_(solved), targets_(targets), covers_(reduced::without_torsion(triangle_covers(plate))),
      system_(assemble(plate)),
      vectors_(system_.dofs.num_equations, system_.rigid_motions.cols() + solved.modal.shapes.cols() + others.cols())
{
  vectors_ << system_.rigid_motions, solved.modal.shapes, others;
  vectors_.colwise().normalize();
  products_ = targets.products(plate, system_.dofs, vectors_);
  for (std::size_t t = 0; t < covers_.size(); ++t)
    if (!covers_[t].patches.empty())
      triangles_.push_back(t);
  const PatchedPart before = part(plies_of(plate.patches));
  const auto on_vectors = [this](const SparseMatrix& matrix)
  { return Eigen::MatrixXd(vectors_.transpose() * (matrix.selfadjointView<Eigen::Lower>() * vectors_).eval()); };
  rest_ = {.stiffness = on_vectors(system_.K) - before.stiffness,
           .inertia = on_vectors(system_.M) - before.inertia,
           .mass = system_.mass - before.mass};
  if (targets.losses() == Losses::computed)
    losses_ = mode_losses(plate, system_.dofs, solved.modal.shapes);
}

PatchTrials::PatchedPart PatchTrials::part(const PatchPlies& patches) const
{
  constexpr int num_dofs = ShellTriangle::num_dofs;
  Model changed = plate_;
  for (std::size_t i = 0; i < patches.size(); ++i)
    changed.patches[i].laminate = patches[i];
  const Eigen::MatrixXd& shapes = vectors_;
  PatchedPart out{.stiffness = Eigen::MatrixXd::Zero(shapes.cols(), shapes.cols()),
                  .inertia = Eigen::MatrixXd::Zero(shapes.cols(), shapes.cols()),
                  .mass = 0.0};
  Eigen::Matrix<double, num_dofs, 1> shift = Eigen::Matrix<double, num_dofs, 1>::Zero(); // of the triangle along x
  for (int row = 0; row < num_dofs; row += DofMap::dofs_per_node)
    shift(row) = 1.0;
  Eigen::MatrixXd local(num_dofs, shapes.cols());
  reduced::ElementMatrix matrix;
  for (const std::size_t t : triangles_)
  {
    const TriangleCover cover = remaining(covers_[t], patches);
    local.setZero();
    reduced::for_each_unknown(plate_.mesh, system_.dofs, t,
                              [&](int row, int equation) { local.row(row) = shapes.row(equation); });
    reduced::element_matrix(reduced::Form::stiffness, changed, t, cover, matrix);
    out.stiffness += local.transpose() * (matrix * local).eval();
    reduced::element_matrix(reduced::Form::mass, changed, t, cover, matrix);
    out.inertia += local.transpose() * (matrix * local).eval();
    out.mass += shift.dot(matrix * shift);
  }
  return out;
}

PatchTrials::Estimate PatchTrials::estimate(const PatchPlies& patches) const
{
  const PatchedPart after = part(patches);
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> eigen(rest_.stiffness + after.stiffness,
                                                                        rest_.inertia + after.inertia);
  const Eigen::Index first = system_.rigid_motions.cols();
  const Eigen::Index count = solved_.modal.frequencies_hz.size();
  const QuickModes modes{.frequencies_hz = eigen.eigenvalues().segment(first, count).cwiseMax(0.0).cwiseSqrt() / two_pi,
                         .shares = eigen.eigenvectors().middleCols(first, count),
                         .losses = losses_};
  return {.score = targets_.score(targets_.values(targets_.find(products_, modes))), .mass = rest_.mass + after.mass};
}

} // namespace plate::match
