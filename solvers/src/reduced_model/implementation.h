// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "mode_estimates.h"
#include "snapshot_vectors.h"

#include <plate/solvers/modal.h>
#include <plate/solvers/reduced_model.h>

#include <vector>

namespace plate
{

/// What a reduced model keeps, and how it is built: terms of stiffness and mass, then snapshots where the error is
/// worst.
struct ReducedModel::Implementation
{
  Implementation(ParametricModel& parametric, ParameterBox ranges, const ReducedOptions& wanted);

  [[nodiscard]] reduced::EstimatedModes estimate(const reduced::Coefficients& coefficients) const;

  /// Relative errors of the frequencies, calibrated.
  [[nodiscard]] Eigen::VectorXd errors(const reduced::EstimatedModes& modes) const;

  ParametricModel& design;
  ParameterBox box;
  ReducedOptions options;
  std::vector<reduced::Point> points; // at which terms are looked for and errors estimated; the first is the middle
  Model reference;                    // in the middle of the box
  std::vector<TriangleCover> covers;
  System plain; // of the reference without point masses
  double shift; // of the energy in which vectors are orthonormal and residuals are measured [1/s2]
  reduced::CoefficientMap map;
  reduced::ReducedSystem system;
  std::vector<reduced::Coefficients> candidates; // at the points
  reduced::ReducedPair middle;                   // stiffness and mass in the middle of the box
  ReducedFigures figures = {.effectivity = 1.0};
  Eigen::MatrixXd displacement_products; // of the basis, over the volume of the plate [m3]

private:
  [[nodiscard]] ModalResult solve(const reduced::Point& point);
  void add_vectors(const Eigen::MatrixXd& shapes, double drop);
  void add_snapshots(const std::vector<reduced::Point>& places);
  void calibrate(const reduced::Coefficients& coefficients, const ModalResult& full);
  void improve();
  [[nodiscard]] std::vector<reduced::Point> worst_points();
  void finish();

  reduced::EnergyMatrix energy_;
};

} // namespace plate
