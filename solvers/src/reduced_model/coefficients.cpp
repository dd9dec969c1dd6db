// SPDX-License-Identifier: MPL-2.0
#include "coefficients.h"

#include "same_plate.h"

namespace plate::reduced
{

CoefficientMap::CoefficientMap(ParametricModel& design, const ParameterBox& box, const Model& reference,
                               const std::vector<TriangleCover>& covers, const std::vector<Point>& samples,
                               double tolerance)
    : design_(design), box_(box), reference_(reference), stiffness_(Form::stiffness, reference, covers),
      mass_(Form::mass, reference, covers), scratch_(reference)
{
  for (const Point& point : samples)
  {
    design_.rebuild(point, scratch_);
    check_same_plate(reference_, scratch_);
    stiffness_.add_sample(scratch_);
    mass_.add_sample(scratch_);
  }
  stiffness_.choose(tolerance);
  mass_.choose(tolerance);
  for (const Eigen::Index term : stiffness_.terms())
    terms_.stiffness.push_back(samples[static_cast<std::size_t>(term)]);
  for (const Eigen::Index term : mass_.terms())
    terms_.mass.push_back(samples[static_cast<std::size_t>(term)]);
  if (!reference.bars.empty())
    torsion_ = TorsionForm(design_, box_, reference_, scratch_);
}

Coefficients CoefficientMap::at(std::span<const double> point) const
{
  design_.rebuild(point, scratch_);
  check_same_plate(reference_, scratch_);
  Coefficients out{.stiffness = stiffness_.combine(scratch_),
                   .torsion = {},
                   .mass = mass_.combine(scratch_),
                   .point_masses = {},
                   .air_density = scratch_.air_density};
  if (torsion_.num_terms() > 0)
    out.torsion = torsion_.coefficients(unit_coordinates(box_, point));
  out.point_masses.resize(static_cast<Eigen::Index>(scratch_.masses.size()));
  for (std::size_t i = 0; i < scratch_.masses.size(); ++i)
    out.point_masses(static_cast<Eigen::Index>(i)) = scratch_.masses[i].mass;
  return out;
}

} // namespace plate::reduced
