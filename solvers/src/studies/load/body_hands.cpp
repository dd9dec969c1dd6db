// SPDX-License-Identifier: MPL-2.0
#include "body_hands.h"

#include "load_places.h"

#include <plate/core/error.h>
#include <plate/post/surface_integral.h>

#include <array>
#include <cmath>
#include <utility>

namespace plate
{

namespace
{

const Eigen::Vector3d up(0.0, 0.0, 1.0);

/// A press from both faces; what is left of a moment between both, their places differ by rounding, inertia takes.
BodyLoadCase thumb_case(const FreeBody& body, const BodyLoadSetup& setup)
{
  const BodyHandling& hand = setup.handling;
  const Eigen::Vector2d below(hand.thumb_at.x(), -hand.thumb_at.y());
  PartUnknowns forces = no_load(body.body());
  body.add(setup.top, disc(hand.thumb_at, hand.fingertip), -hand.thumb * up, forces);
  body.add(setup.back, disc(below, hand.fingertip), hand.thumb * up, forces);
  const Eigen::Vector3d at = body.middle(setup.top, disc(hand.thumb_at, hand.fingertip));
  return body.solve_moving({.name = "thumb", .at = at, .force = hand.thumb}, forces);
}

/// The ribs' nodes in the axes of the body.
std::vector<Eigen::Vector3d> rib_nodes(const FreeBody& body)
{
  std::vector<Eigen::Vector3d> nodes;
  for (const std::size_t p : body.ribs())
    for (const Eigen::Vector3d& node : body.body().parts[p].model.mesh.nodes)
      nodes.emplace_back(body.body().parts[p].placement * node);
  return nodes;
}

/// Where the ribs come closest to the centre line, half-way up, at y > 0 and opposite.
std::array<Eigen::Vector3d, 2> waist_of(const FreeBody& body)
{
  const std::vector<Eigen::Vector3d> nodes = rib_nodes(body);
  Eigen::AlignedBox3d box;
  for (const Eigen::Vector3d& node : nodes)
    box.extend(node);
  const double middle = box.center().x();
  const double reach = 0.25 * box.sizes().x(); // the waist is in the middle half
  constexpr double alike = 1e-6;               // [m]
  Eigen::Vector3d waist(HUGE_VAL, HUGE_VAL, 0.0);
  for (const Eigen::Vector3d& node : nodes)
    if (node.y() > box.center().y() && std::abs(node.x() - middle) < reach &&
        (node.y() < waist.y() - alike ||
         (node.y() < waist.y() + alike && std::abs(node.x() - middle) < std::abs(waist.x() - middle))))
      waist = node;
  waist.z() = box.center().z();
  return {waist, Eigen::Vector3d(waist.x(), 2.0 * box.center().y() - waist.y(), waist.z())};
}

/// Adds a force on the ribs that falls off around a place like a bell curve as wide as a disc.
void press_ribs(const FreeBody& body, const Eigen::Vector3d& place, double diameter, const Eigen::Vector3d& force,
                PartUnknowns& forces)
{
  const double deviation = 0.25 * diameter; // both spread alike
  PartUnknowns bell = no_load(body.body());
  double area = 0.0;
  for (const std::size_t p : body.ribs())
  {
    const BodyPart& part = body.body().parts[p];
    const Eigen::Vector3d direction = part.placement.linear().transpose() * force;
    add_surface_load(
        part.model,
        [&](const Eigen::Vector3d& at) -> Eigen::Vector3d
        {
          const double away = (part.placement * at - place).squaredNorm();
          return std::exp(-0.5 * away / (deviation * deviation)) * direction;
        },
        bell[p]);
    area += direction.dot(bell[p].topRows<3>().rowwise().sum()) / force.squaredNorm();
  }
  if (!(area > 0.0))
    throw InvalidInput(message("body: there are no ribs within reach of x = ", place.x() * 1e3,
                               ", y = ", place.y() * 1e3, " mm to be squeezed"));
  for (const std::size_t p : body.ribs())
    forces[p] += bell[p] / area;
}

BodyLoadCase squeeze_case(const FreeBody& body, const BodyHandling& hand)
{
  const auto [waist, opposite] = waist_of(body);
  PartUnknowns forces = no_load(body.body());
  const Eigen::Vector3d inward(0.0, -hand.squeeze, 0.0);
  press_ribs(body, waist, hand.hand, inward, forces);
  press_ribs(body, opposite, hand.hand, -inward, forces);
  return body.solve_moving({.name = "squeeze", .at = waist, .force = hand.squeeze}, forces);
}

/// Of the nodes of the top the one that gives most under a force along z.
std::size_t softest(const FreeBody& body, std::size_t top, const std::vector<std::size_t>& nodes)
{
  const System& system = body.system().system;
  Eigen::MatrixXd unit(system.dofs.num_equations, static_cast<Eigen::Index>(nodes.size()));
  for (std::size_t i = 0; i < nodes.size(); ++i)
  {
    PartUnknowns force = no_load(body.body());
    force[top](2, static_cast<Eigen::Index>(nodes[i])) = 1.0;
    unit.col(static_cast<Eigen::Index>(i)) = balanced_by_inertia(system, on_unknowns(body.system(), force));
  }
  Eigen::Index most = 0;
  body.solver().compliances(unit).maxCoeff(&most);
  return nodes[static_cast<std::size_t>(most)];
}

} // namespace

void add_hand_cases(const FreeBody& body, const BodyLoadSetup& setup, BodyLoadStudy& study)
{
  constexpr int nodes_tried = 24; // of each hole, as on a plate
  const BodyHandling& hand = setup.handling;
  study.cases.push_back(thumb_case(body, setup));
  study.cases.push_back(squeeze_case(body, hand));
  const ShellMesh& top = body.body().parts[setup.top].model.mesh;
  const std::vector<std::size_t> edge = hole_nodes(top, nodes_tried);
  if (edge.empty())
    return;
  const Eigen::Vector3d at = top.nodes[softest(body, setup.top, edge)];
  PartUnknowns forces = no_load(body.body());
  body.add(setup.top, disc(at.head<2>(), hand.knuckle), -hand.knock * up, forces);
  study.cases.push_back(body.solve_moving(
      {.name = "wing", .at = body.body().parts[setup.top].placement * at, .force = hand.knock}, forces));
}

} // namespace plate
