// SPDX-License-Identifier: MPL-2.0
#include "bar_strip.h"

#include <plate/assembly/parametric_model.h>
#include <plate/laminates/section.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace plate::match
{

namespace
{

using reduced::Point;

/// Logarithms of thickness and of the shear moduli in which the strip twists: along it and through it.
Point strip_of(const Laminate& laminate)
{
  const double h = total_thickness(laminate);
  const SectionStiffness section = section_stiffness(laminate, h, Eigen::Matrix3d::Identity(), MaterialAxes());
  return {std::log(h), std::log(12.0 * section.P[2](2, 2) / (h * h * h)), std::log(section.shear(0, 0) / h)};
}

/// The plate with a single ply of a strip's thickness and moduli.
class StripPlate : public ParametricModel
{
public:
  explicit StripPlate(const Model& start) : start_(start) {}

  Model build(std::span<const double> strip) override
  {
    Model model = start_;
    rebuild(strip, model);
    return model;
  }

  void rebuild(std::span<const double> strip, Model& model) override
  {
    const double along = std::exp(strip[1]);
    const double through = std::exp(strip[2]);
    // Torsion asks for shear moduli only; the rest makes a possible material of them.
    const OrthotropicElastic elastic = {.E1 = along,
                                        .E2 = along,
                                        .E3 = along,
                                        .G12 = along,
                                        .G13 = through,
                                        .G23 = through,
                                        .nu12 = 0.0,
                                        .nu13 = 0.0,
                                        .nu23 = 0.0};
    model.material.laminate.plies = {
        {.material = {.name = "strip", .elastic = elastic, .density = 1.0}, .thickness = std::exp(strip[0])}};
    std::fill(model.mesh.thickness.begin(), model.mesh.thickness.end(), std::exp(strip[0]));
  }

private:
  const Model& start_;
};

ParameterBox box_of(std::span<const Laminate> laminates)
{
  constexpr double margin = 0.05; // laminates in between may lie a little outside
  ParameterBox box;
  for (const Laminate& laminate : laminates)
  {
    const Point strip = strip_of(laminate);
    if (box.low.empty())
      box = {strip, strip};
    for (std::size_t k = 0; k < strip.size(); ++k)
    {
      box.low[k] = std::min(box.low[k], strip[k]);
      box.high[k] = std::max(box.high[k], strip[k]);
    }
  }
  for (std::size_t k = 0; k < box.low.size(); ++k)
  {
    box.low[k] -= margin;
    box.high[k] += margin;
  }
  return box;
}

constexpr double loss_step = 0.5; // of a loss factor, to either side: a difference is the derivative

/// Torsional stiffness of all bars, summed up over their tables, with changed moduli.
double torsion_after_loss_step(Model model, double step)
{
  for (Bar& bar : model.bars)
    bar.material = with_loss_step(bar.material, step);
  const std::vector<TriangleCover> covers = triangle_covers(model);
  double sum = 0.0;
  for (const BarFootprint& bar : model.mesh.bars)
    if (!bar.triangles.empty())
    {
      const std::vector<double>& table = covers[static_cast<std::size_t>(bar.triangles.front())].bar_torsion->stiffness;
      sum += std::accumulate(table.begin(), table.end(), 0.0);
    }
  return sum;
}

} // namespace

BarStrip::BarStrip(const Model& start, std::span<const Laminate> laminates) : box_(box_of(laminates))
{
  StripPlate plate(start);
  reference_ = plate.build(reduced::centre_of(box_));
  Model scratch = reference_;
  torsion_ = reduced::TorsionForm(plate, box_, reference_, scratch);
  const double more = torsion_after_loss_step(reference_, loss_step);
  const double less = torsion_after_loss_step(reference_, -loss_step);
  loss_ = (more - less) / (more + less) / loss_step;
}

std::vector<reduced::Vectors> BarStrip::terms(const std::vector<TriangleCover>& covers, const DofMap& dofs,
                                              const reduced::Vectors& vectors) const
{
  std::vector<reduced::Vectors> out;
  for (std::size_t i = 0; i < torsion_.num_terms(); ++i)
    out.push_back(torsion_.apply_term(i, reference_, covers, dofs, vectors));
  return out;
}

Eigen::VectorXd BarStrip::coefficients(const Laminate& laminate) const
{
  Point strip = strip_of(laminate);
  for (std::size_t k = 0; k < strip.size(); ++k)
    strip[k] = std::clamp(strip[k], box_.low[k], box_.high[k]);
  return torsion_.coefficients(reduced::unit_coordinates(box_, strip));
}

Eigen::VectorXd BarStrip::dissipation(const Laminate& laminate) const
{
  return loss_ * coefficients(laminate) + coefficients(with_loss_step(laminate, loss_step)) -
         coefficients(with_loss_step(laminate, -loss_step));
}

} // namespace plate::match
