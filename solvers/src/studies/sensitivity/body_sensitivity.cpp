// SPDX-License-Identifier: MPL-2.0
#include <plate/solvers/studies/body_sensitivity.h>

#include "../../symmetric_product.h"
#include "body_air_forms.h"
#include "eigenvalue_slopes.h"
#include "form_slopes.h"

#include <plate/core/error.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace plate
{

namespace
{

using sensitivity::AirForms;
using sensitivity::BodyAirForms;
using sensitivity::FormSlopes;

/// A body beside the one that was solved, with its matrices.
struct Neighbour
{
  BodyPoint point;
  BodySystem system;
};

/// The same with what its air does.
struct AirNeighbour
{
  BodyPoint point;
  AirForms forms;
};

/// Differences of bodies a step to either side of the one that was solved.
class BodySteps
{
public:
  BodySteps(ParametricBody& design, std::span<const SensitivityParameter> parameters, const SolvedBody& solved,
            Eigen::Index count, std::span<const VectorPair> pairs, int degree)
      : design_(design), parameters_(parameters), base_{.point = solved.point, .system = solved.system},
        shapes_(solved.modes.shapes.leftCols(count)), pairs_(pairs),
        air_(solved, count, degree), air_base_{.point = solved.point, .forms = air_.at(solved.point, pairs)}
  {
  }

  [[nodiscard]] FormSlopes slopes(std::size_t parameter) const
  {
    return sensitivity::combined(1.0, of_structure(parameter), 1.0, of_air(parameter));
  }

private:
  [[nodiscard]] std::optional<BodyPoint> point_at(std::size_t parameter, double value) const
  {
    try
    {
      return design_.build(sensitivity::point_beside(parameters_, parameter, value));
    }
    catch (const InvalidInput&)
    {
      return std::nullopt;
    }
  }

  [[nodiscard]] std::optional<Neighbour> neighbour(std::size_t parameter, double value) const
  {
    std::optional<BodyPoint> point = point_at(parameter, value);
    if (!point)
      return std::nullopt;
    BodySystem system = assemble(point->body);
    if (system.system.K.nonZeros() != base_.system.system.K.nonZeros())
      throw InvalidInput(message("sensitivities: parameter ", parameter + 1, " = ", value,
                                 ": the body has other unknowns there; leave it out"));
    return Neighbour{.point = std::move(*point), .system = std::move(system)};
  }

  [[nodiscard]] bool moves(const Neighbour& other) const
  {
    const auto same = [](const BodyPart& a, const BodyPart& b)
    { return a.model.mesh.nodes == b.model.mesh.nodes && a.placement.matrix() == b.placement.matrix(); };
    const std::vector<BodyPart>& parts = base_.point.body.parts;
    return !std::equal(parts.begin(), parts.end(), other.point.body.parts.begin(), same);
  }

  [[nodiscard]] FormSlopes change(const Neighbour& from, const Neighbour& to) const
  {
    const SparseMatrix K = to.system.system.K - from.system.system.K;
    const SparseMatrix M = to.system.system.M - from.system.system.M;
    return {.stiffness = between(K),
            .mass = between(M),
            .total_mass = to.system.system.mass - from.system.system.mass,
            .any = (K.coeffs() != 0.0).any() || (M.coeffs() != 0.0).any()};
  }

  [[nodiscard]] Eigen::VectorXd between(const SparseMatrix& lower) const
  {
    const Eigen::MatrixXd product = symmetric_product(lower, shapes_);
    Eigen::VectorXd values(static_cast<Eigen::Index>(pairs_.size()));
    for (std::size_t k = 0; k < pairs_.size(); ++k)
      values(static_cast<Eigen::Index>(k)) = shapes_.col(pairs_[k].first).dot(product.col(pairs_[k].second));
    return values;
  }

  [[nodiscard]] FormSlopes of_structure(std::size_t parameter) const
  {
    return sensitivity::slopes_by_steps(
        parameter, parameters_[parameter], base_, [&](double value) { return neighbour(parameter, value); },
        [&](const Neighbour& other) { return moves(other); },
        [&](const Neighbour& from, const Neighbour& to) { return change(from, to); });
  }

  [[nodiscard]] FormSlopes of_air(std::size_t parameter) const
  {
    const auto at = [&](double value) -> std::optional<AirNeighbour>
    {
      std::optional<BodyPoint> point = point_at(parameter, value);
      if (!point)
        return std::nullopt;
      AirForms forms = sensitivity::same_air(*point, base_.point) ? air_base_.forms : air_.at(*point, pairs_);
      return AirNeighbour{.point = std::move(*point), .forms = std::move(forms)};
    };
    const auto moved = [&](const AirNeighbour& other)
    { return !sensitivity::same_outlines(other.point.air.holes, base_.point.air.holes); };
    const auto changed = [](const AirNeighbour& from, const AirNeighbour& to)
    {
      return FormSlopes{.stiffness = to.forms.stiffness - from.forms.stiffness,
                        .mass = to.forms.mass - from.forms.mass,
                        .total_mass = 0.0,
                        .any = !sensitivity::same_air(from.point, to.point)};
    };
    return sensitivity::slopes_by_steps(parameter, parameters_[parameter], air_base_, at, moved, changed,
                                        {.moved = sensitivity::hole_step});
  }

  ParametricBody& design_;
  std::span<const SensitivityParameter> parameters_;
  Neighbour base_;
  Eigen::MatrixXd shapes_;
  std::span<const VectorPair> pairs_;
  BodyAirForms air_;
  AirNeighbour air_base_;
};

void check(const SolvedBody& solved, const SensitivityOptions& options)
{
  if (options.num_modes < 1 || solved.modes.coupled.frequencies_hz.size() < num_refined(options.num_modes))
    throw InvalidInput(message("body_sensitivities: ", options.num_modes, " modes take ",
                               num_refined(options.num_modes), " coupled ones; there are ",
                               solved.modes.coupled.frequencies_hz.size()));
}

} // namespace

BodySensitivityResult body_sensitivities(ParametricBody& design, std::span<const SensitivityParameter> parameters,
                                         const SolvedBody& solved, const SensitivityOptions& options, int degree)
{
  check(solved, options);
  sensitivity::check_parameters(parameters);
  const Eigen::Index count = num_refined(options.num_modes);
  const sensitivity::EigenvalueSlopes eigenvalues(solved.modes.coupled.frequencies_hz.head(count));
  const BodySteps steps(design, parameters, solved, count, eigenvalues.pairs(), degree);
  BodySensitivityResult result;
  result.close = eigenvalues.close_modes(options.num_modes);
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    if (options.progress && !options.progress(k, parameters.size()))
      return result;
    const FormSlopes slopes = steps.slopes(k);
    result.parameters.push_back(
        {.slopes_hz = eigenvalues.branches(slopes.stiffness, slopes.mass).head(options.num_modes),
         .mass_slope = slopes.total_mass,
         .acts = slopes.any});
  }
  result.complete = true;
  return result;
}

} // namespace plate
