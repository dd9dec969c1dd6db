// SPDX-License-Identifier: MPL-2.0
#include "body_nodes.h"

#include "rigid_rows.h"

#include <plate/core/error.h>

#include <algorithm>
#include <cmath>

namespace plate
{

namespace
{

constexpr double parallel = 1e-6;   // walls whose normals differ by less lie in one plane [rad]
constexpr double same_place = 1e-6; // distance of the nodes of a joint over the size of the body

double size_of(const std::vector<BodyPart>& parts)
{
  Eigen::AlignedBox3d box;
  for (const BodyPart& part : parts)
    for (const Eigen::Vector3d& node : part.model.mesh.nodes)
      box.extend(part.placement * node);
  return box.diagonal().norm();
}

void check_member(const Body& body, const PartNode& member, const std::vector<std::vector<int>>& of_part)
{
  if (member.part >= body.parts.size())
    throw InvalidInput(message("body: a joint names part ", member.part, "; there are ", body.parts.size()));
  const std::vector<int>& nodes = of_part[member.part];
  if (member.node < 0 || static_cast<std::size_t>(member.node) >= nodes.size())
    throw InvalidInput(message("body: a joint names node ", member.node, " of ", body.parts[member.part].name,
                               ", which has ", nodes.size()));
  if (nodes[static_cast<std::size_t>(member.node)] >= 0)
    throw InvalidInput(message("body: node ", member.node, " of ", body.parts[member.part].name,
                               " is in two joints; put all nodes of a place into one"));
}

Eigen::Vector3d position_of(const std::vector<BodyPart>& parts, const PartNode& member)
{
  const BodyPart& part = parts[member.part];
  return part.placement * part.model.mesh.nodes[static_cast<std::size_t>(member.node)];
}

Eigen::Vector3d normal_of(const Body& body, const PartNode& member)
{
  const BodyPart& part = body.parts[member.part];
  return part.placement.linear() * part.model.mesh.normals[static_cast<std::size_t>(member.node)];
}

/// Axes of the rotations: the tangents of the first wall, and its normal if another wall stands at an angle to it.
void set_rotations(const Body& body, BodyNode& place)
{
  const PartNode& first = place.members.front();
  const BodyPart& part = body.parts[first.part];
  const Eigen::Vector3d& normal = part.model.mesh.normals[static_cast<std::size_t>(first.node)];
  place.rotation_axes = part.placement.linear() * shell_frame(normal, part.model.material.axes);
  const auto at_angle = [&](const PartNode& member)
  { return normal_of(body, member).cross(place.rotation_axes.col(2)).norm() > parallel; };
  place.num_rotations = std::any_of(place.members.begin(), place.members.end(), at_angle) ? 3 : 2;
}

void add_place(const Body& body, std::vector<PartNode> members, BodyNodes& out)
{
  for (const PartNode& member : members)
    out.of_part[member.part][static_cast<std::size_t>(member.node)] = static_cast<int>(out.nodes.size());
  BodyNode place;
  place.position = position_of(body.parts, members.front());
  place.members = std::move(members);
  set_rotations(body, place);
  out.nodes.push_back(std::move(place));
}

void add_joints(const Body& body, BodyNodes& out)
{
  const double tolerance = same_place * size_of(body.parts);
  for (const std::vector<PartNode>& joint : body.joints)
  {
    if (joint.size() < 2)
      throw InvalidInput(message("body: a joint needs two nodes or more; got ", joint.size()));
    for (const PartNode& member : joint)
    {
      check_member(body, member, out.of_part);
      const double apart = (position_of(body.parts, member) - position_of(body.parts, joint.front())).norm();
      if (!(apart <= tolerance))
        throw InvalidInput(message("body: nodes of ", body.parts[joint.front().part].name, " and ",
                                   body.parts[member.part].name, " in one joint are ", apart * 1e3,
                                   " mm apart; they must lie at one place"));
    }
    add_place(body, joint, out);
  }
}

/// Which unknowns of a place a support of one of its walls holds.
void hold(const BodyPart& part, const std::array<int, DofMap::dofs_per_node>& equations, std::array<bool, 4>& held)
{
  const auto is_held = [&](std::size_t k) { return equations[k] == DofMap::held; };
  constexpr std::size_t rotations = 3;
  held[rotations] = held[rotations] || is_held(3) || is_held(4);
  if (is_held(0) && is_held(1) && is_held(2))
  {
    held[0] = held[1] = held[2] = true;
    return;
  }
  for (std::size_t k = 0; k < 3; ++k)
  {
    if (!is_held(k))
      continue;
    const Eigen::Vector3d direction = part.placement.linear().col(static_cast<Eigen::Index>(k));
    Eigen::Index axis = 0;
    if (direction.cwiseAbs().maxCoeff(&axis) < 1.0 - 1e-12)
      throw InvalidInput(message("body: the support of ", part.name,
                                 " holds one direction that is no axis of the body; hold all three or none"));
    held[static_cast<std::size_t>(axis)] = true;
  }
}

} // namespace

std::vector<std::vector<PartNode>> nodes_at_one_place(const std::vector<BodyPart>& parts)
{
  struct Placed
  {
    PartNode node;
    Eigen::Vector3d position;
    bool taken = false;
  };
  std::vector<Placed> all;
  for (std::size_t p = 0; p < parts.size(); ++p)
    for (std::size_t i = 0; i < parts[p].model.mesh.nodes.size(); ++i)
    {
      const PartNode node = {.part = p, .node = static_cast<int>(i)};
      all.push_back({.node = node, .position = position_of(parts, node)});
    }
  std::stable_sort(all.begin(), all.end(),
                   [](const Placed& a, const Placed& b) { return a.position.x() < b.position.x(); });
  const double tolerance = same_place * size_of(parts);
  std::vector<std::vector<PartNode>> joints;
  for (auto first = all.begin(); first != all.end(); ++first)
  {
    if (first->taken)
      continue;
    std::vector<PartNode> joint = {first->node};
    for (auto other = first + 1; other != all.end() && other->position.x() - first->position.x() <= tolerance; ++other)
      if (!other->taken && (other->position - first->position).norm() <= tolerance)
      {
        other->taken = true;
        joint.push_back(other->node);
      }
    if (joint.size() > 1)
      joints.push_back(std::move(joint));
  }
  return joints;
}

BodyNodes body_nodes(const Body& body)
{
  if (body.parts.empty())
    throw InvalidInput("body: it has no parts");
  BodyNodes out;
  for (const BodyPart& part : body.parts)
    out.of_part.emplace_back(part.model.mesh.nodes.size(), -1);
  add_joints(body, out);
  for (std::size_t p = 0; p < body.parts.size(); ++p)
    for (std::size_t i = 0; i < out.of_part[p].size(); ++i)
      if (out.of_part[p][i] < 0)
        add_place(body, {{.part = p, .node = static_cast<int>(i)}}, out);
  return out;
}

MemberRows member_rows(const BodyPart& part, int node, const BodyNode& place)
{
  const Eigen::Matrix3d to_part = part.placement.linear().transpose();
  const Eigen::Matrix3d frame =
      shell_frame(part.model.mesh.normals[static_cast<std::size_t>(node)], part.model.material.axes);
  MemberRows rows = MemberRows::Zero(DofMap::dofs_per_node, place.num_unknowns());
  rows.topLeftCorner<3, 3>() = to_part;
  rows.bottomRightCorner(2, place.num_rotations) =
      frame.leftCols<2>().transpose() * to_part * place.rotation_axes.leftCols(place.num_rotations);
  return rows;
}

DofMap number_unknowns(const Body& body, const BodyNodes& nodes, const std::vector<DofMap>& parts)
{
  DofMap dofs;
  for (const BodyNode& place : nodes.nodes)
  {
    std::array<bool, 4> held = {}; // displacements, rotations
    for (const PartNode& member : place.members)
      hold(body.parts[member.part], parts[member.part].equation[static_cast<std::size_t>(member.node)], held);
    auto& equations = dofs.equation.emplace_back();
    for (std::size_t k = 0; k < equations.size(); ++k)
      equations[k] = held[std::min<std::size_t>(k, 3)] ? DofMap::held : dofs.num_equations++;
    dofs.third_rotation.push_back(held[3] || place.num_rotations < 3 ? DofMap::held : dofs.num_equations++);
  }
  return dofs;
}

std::vector<int> equations_at(const DofMap& dofs, const BodyNode& place, int node)
{
  const auto n = static_cast<std::size_t>(node);
  std::vector<int> equations(dofs.equation[n].begin(), dofs.equation[n].end());
  if (place.num_rotations == 3)
    equations.push_back(dofs.third_rotation[n]);
  return equations;
}

Eigen::MatrixXd rigid_motions(const BodyNodes& nodes, const DofMap& dofs)
{
  RigidRows rows(dofs.num_equations);
  for (std::size_t n = 0; n < nodes.nodes.size(); ++n)
  {
    const BodyNode& place = nodes.nodes[n];
    rows.reach(place.position);
    Eigen::Matrix<double, 6, 6> R = Eigen::Matrix<double, 6, 6>::Zero();
    R.topLeftCorner<3, 3>().setIdentity();
    for (int k = 0; k < 3; ++k)
      R.block<3, 1>(0, 3 + k) = Eigen::Vector3d::Unit(k).cross(place.position);
    R.bottomRightCorner<3, 3>() = place.rotation_axes.transpose();
    const std::vector<int> equations = equations_at(dofs, place, static_cast<int>(n));
    for (std::size_t k = 0; k < equations.size(); ++k)
      rows.add(equations[k], R.row(static_cast<Eigen::Index>(k)));
  }
  return rows.allowed();
}

} // namespace plate
