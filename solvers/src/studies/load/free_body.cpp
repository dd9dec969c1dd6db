// SPDX-License-Identifier: MPL-2.0
#include "free_body.h"

#include <plate/post/surface_integral.h>

#include <cmath>
#include <utility>

namespace plate
{

namespace
{

std::vector<std::size_t> all_but(std::size_t count, std::size_t top, std::size_t back)
{
  std::vector<std::size_t> parts;
  for (std::size_t p = 0; p < count; ++p)
    if (p != top && p != back)
      parts.push_back(p);
  return parts;
}

void find_most_moved(const Body& body, BodyLoadCase& load)
{
  for (std::size_t p = 0; p < load.parts.size(); ++p)
  {
    const Eigen::VectorXd normal =
        normal_displacement(body.parts[p].model.mesh, load.parts[p].displacements.topRows<3>());
    Eigen::Index node = 0;
    if (normal.cwiseAbs().maxCoeff(&node) <= std::abs(load.deflection))
      continue;
    load.most_moved = {.part = p, .node = static_cast<int>(node)};
    load.deflection = normal(node);
  }
}

} // namespace

FreeBody::FreeBody(const Body& body, std::size_t top, std::size_t back)
    : body_(body), ribs_(all_but(body.parts.size(), top, back)), system_(assemble(body)), solver_(system_.system)
{
}

BodyLoadCase FreeBody::solve(BodyLoadCase load, const PartUnknowns& forces) const
{
  return finish(std::move(load), on_unknowns(system_, forces));
}

BodyLoadCase FreeBody::solve_moving(BodyLoadCase load, const PartUnknowns& forces) const
{
  const Eigen::VectorXd alone = on_unknowns(system_, forces);
  load.inertia = imbalance(system_.system, alone);
  return finish(std::move(load), balanced_by_inertia(system_.system, alone));
}

BodyLoadCase FreeBody::finish(BodyLoadCase load, const Eigen::VectorXd& forces) const
{
  load.evidence = solver_.solve(forces);
  load.balance_error = imbalance(system_.system, forces);
  for (const Eigen::Vector3d& force : strut_forces(body_, system_, load.evidence.x))
    load.post_forces.push_back(force.z());
  for (NodalUnknowns& u : at_nodes(system_, relative_to(body_, system_, ribs_, load.evidence.x)))
    load.parts.push_back({.displacements = std::move(u)});
  find_most_moved(body_, load);
  return load;
}

void FreeBody::add(std::size_t part, const PlanformRegion& region, const Eigen::Vector3d& force,
                   PartUnknowns& forces) const
{
  const BodyPart& wall = body_.parts[part];
  add_load(wall.model.mesh, AreaForce{.region = region, .force = wall.placement.linear().transpose() * force},
           forces[part]);
}

Eigen::Vector3d FreeBody::middle(std::size_t part, const PlanformRegion& region) const
{
  PartUnknowns unit = no_load(body_);
  add(part, region, Eigen::Vector3d::UnitZ(), unit);
  const BodyPart& wall = body_.parts[part];
  const Eigen::RowVectorXd shares = wall.placement.linear().row(2) * unit[part].topRows<3>();
  Eigen::Vector3d middle = Eigen::Vector3d::Zero();
  for (Eigen::Index i = 0; i < shares.size(); ++i)
    middle += shares(i) * wall.model.mesh.nodes[static_cast<std::size_t>(i)];
  return wall.placement * middle;
}

double FreeBody::mean_rise(std::size_t part, const PlanformRegion& region, const BodyLoadCase& load) const
{
  PartUnknowns unit = no_load(body_);
  add(part, region, Eigen::Vector3d::UnitZ(), unit);
  return unit[part].cwiseProduct(load.parts[part].displacements).sum();
}

} // namespace plate
