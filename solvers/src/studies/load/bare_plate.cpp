// SPDX-License-Identifier: MPL-2.0
#include "bare_plate.h"

#include "load_places.h"

#include <plate/core/error.h>

#include <Eigen/QR>

#include <utility>

namespace plate
{

namespace
{

constexpr double gravity = 9.81; // [m/s2]

/// A free plate, with its factorised stiffness.
class BarePlate
{
public:
  explicit BarePlate(const Model& model) : model_(free_of_supports(model)), system_(assemble(model_)), solver_(system_)
  {
  }

  [[nodiscard]] const ShellMesh& mesh() const { return model_.mesh; }
  [[nodiscard]] const System& system() const { return system_; }

  /// Weight times a factor, towards -z.
  [[nodiscard]] Eigen::VectorXd weight(double factor) const
  {
    NodalUnknowns fall = no_load(model_.mesh);
    fall.row(2).setConstant(-gravity * factor);
    return system_.M.selfadjointView<Eigen::Lower>() * on_unknowns(system_.dofs, fall);
  }

  [[nodiscard]] Eigen::VectorXd on_area(const PlanformRegion& region, const Eigen::Vector3d& force) const
  {
    NodalUnknowns forces = no_load(model_.mesh);
    add_load(model_.mesh, AreaForce{.region = region, .force = force}, forces);
    return on_unknowns(system_.dofs, forces);
  }

  /// The load held by forces that hands can exert, columns of `hands`, in the least combination that balances it.
  [[nodiscard]] Eigen::VectorXd held(const Eigen::VectorXd& load, const Eigen::MatrixXd& hands) const
  {
    const Eigen::VectorXd scale = system_.rigid_motions.colwise().norm();
    const Eigen::MatrixXd motions = system_.rigid_motions * scale.cwiseInverse().asDiagonal();
    const Eigen::MatrixXd work = motions.transpose() * hands;
    const Eigen::CompleteOrthogonalDecomposition<Eigen::MatrixXd> solve(work);
    Eigen::VectorXd balanced = load;
    for (int pass = 0; pass < 2; ++pass) // the second takes away the rounding of the first
      balanced -= hands * solve.solve(motions.transpose() * balanced);
    return balanced;
  }

  /// @param load  in equilibrium but for rounding, or for inertia that takes the rest
  [[nodiscard]] LoadCase solve(LoadCase load, const Eigen::VectorXd& forces) const
  {
    const Eigen::VectorXd balanced = balanced_by_inertia(system_, forces);
    load.bare = true;
    load.evidence = solver_.solve(balanced);
    load.displacements = at_nodes(system_.dofs, load.evidence.x);
    load.balance_error = imbalance(system_, balanced);
    return load;
  }

private:
  static Model free_of_supports(const Model& model)
  {
    Model bare = model;
    bare.supports.clear();
    return bare;
  }

  Model model_;
  System system_;
  StaticSolver solver_;
};

/// Forces and moments that thumb and finger on either face can exert on an area of two fingertips each way: six
/// columns.
Eigen::MatrixXd pinch(const BarePlate& plate, const Eigen::Vector2d& at, double fingertip)
{
  const Eigen::Vector2d ahead(0.5 * fingertip, 0.0);
  const Eigen::Vector2d aside(0.0, 0.5 * fingertip);
  const auto force = [&](const Eigen::Vector2d& place, const Eigen::Vector3d& direction)
  { return plate.on_area(disc(place, fingertip), direction); };
  const Eigen::Vector3d x = Eigen::Vector3d::UnitX();
  const Eigen::Vector3d y = Eigen::Vector3d::UnitY();
  const Eigen::Vector3d z = Eigen::Vector3d::UnitZ();
  Eigen::MatrixXd hands(plate.system().dofs.num_equations, 6);
  hands << force(at, x), force(at, y), force(at, z), force(at + ahead, z) - force(at - ahead, z),
      force(at + aside, z) - force(at - aside, z), force(at + ahead, y) - force(at - ahead, y);
  return hands;
}

LoadCase grip_case(const BarePlate& plate, const Handling& handling)
{
  const Eigen::Vector2d at =
      planform_place(plate.mesh(), lower_end(plate.mesh())) + Eigen::Vector2d(handling.fingertip, 0.0);
  const Eigen::VectorXd forces = plate.held(plate.weight(handling.lift), pinch(plate, at, handling.fingertip));
  return plate.solve({.name = "grip", .at = at, .force = gravity * handling.lift * plate.system().mass}, forces);
}

LoadCase two_fingers_case(const BarePlate& plate, const Handling& handling,
                          const std::array<Eigen::Vector2d, 2>& places)
{
  Eigen::MatrixXd hands(plate.system().dofs.num_equations, 2);
  for (std::size_t i = 0; i < places.size(); ++i)
    hands.col(static_cast<Eigen::Index>(i)) =
        plate.on_area(disc(places[i], handling.fingertip), Eigen::Vector3d::UnitZ());
  const Eigen::VectorXd forces = plate.held(plate.weight(handling.lift), hands);
  return plate.solve({.name = "two fingers",
                      .at = 0.5 * (places[0] + places[1]),
                      .force = gravity * handling.lift * plate.system().mass},
                     forces);
}

LoadCase corner_case(const BarePlate& plate, const Handling& handling, std::size_t corner)
{
  const Eigen::Vector2d at = planform_place(plate.mesh(), corner);
  const Eigen::VectorXd knock = plate.on_area(disc(at, handling.knuckle), {0.0, 0.0, -handling.knock});
  return plate.solve({.name = "corner", .at = at, .force = handling.knock}, knock);
}

} // namespace

void add_bare_cases(const Model& model, const LoadSetup& setup, LoadStudy& study)
{
  const BarePlate plate(model);
  study.mass = plate.system().mass;
  study.cases.push_back(grip_case(plate, setup.handling));
  if (const std::optional<std::size_t> corner = sharpest_corner(model.mesh))
    study.cases.push_back(corner_case(plate, setup.handling, *corner));
  if (const auto places = finger_places(model.mesh, plate.system().centre_of_gravity.head<2>()))
    study.cases.push_back(two_fingers_case(plate, setup.handling, *places));
}

} // namespace plate
