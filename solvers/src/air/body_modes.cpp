// SPDX-License-Identifier: MPL-2.0
#include <plate/core/units.h>
#include <plate/solvers/body_modes.h>

#include "../symmetric_product.h"

#include <plate/air/hole_in_cavity.h>
#include <plate/assembly/nodal_unknowns.h>
#include <plate/core/error.h>
#include <plate/post/mode_loss.h>
#include <plate/post/surface_integral.h>
#include <plate/solvers/static_shapes.h>

#include <algorithm>
#include <utility>

namespace plate
{
namespace
{

/// Times that shapes are refined, each of which takes off all but the square of the ratio of their frequency to that of
/// the first mode left out.
constexpr int refining_passes = 3;

void check(const Body& body, const BodySystem& assembled, const BodyAir& air, const Eigen::MatrixXd& drives)
{
  if (air.sides.size() != body.parts.size() || assembled.parts.size() != body.parts.size())
    throw InvalidInput(message("solve_body_modes: each of the ", body.parts.size(),
                               " parts needs a system and a side of the cavity; got ", assembled.parts.size(), " and ",
                               air.sides.size()));
  if (!(air.solids >= 0.0))
    throw InvalidInput(message("solve_body_modes: solids in the cavity cannot have a volume of ", air.solids, " m3"));
  if (drives.cols() != assembled.system.dofs.num_equations)
    throw InvalidInput(message("solve_body_modes: drives must act on the ", assembled.system.dofs.num_equations,
                               " unknowns of the body; got ", drives.cols()));
}

/// Load of a pressure of 1 on all walls from inside, by unknowns of the body.
Eigen::VectorXd pressure_load(const Body& body, const BodySystem& assembled)
{
  Eigen::VectorXd load = Eigen::VectorXd::Zero(assembled.system.dofs.num_equations);
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const ShellMesh& mesh = body.parts[p].model.mesh;
    const Eigen::VectorXd areas = nodal_areas(mesh);
    NodalUnknowns forces = NodalUnknowns::Zero(DofMap::dofs_per_node, areas.size());
    for (Eigen::Index i = 0; i < areas.size(); ++i)
      forces.col(i).head<3>() = areas(i) * mesh.normals[static_cast<std::size_t>(i)];
    load += assembled.parts[p].from_body.transpose() * on_unknowns(assembled.parts[p].dofs, forces);
  }
  return load;
}

/// Elastic modes, static shapes and rigid motions.
struct Motions
{
  Eigen::VectorXd frequencies_hz;
  Eigen::MatrixXd shapes;
  Eigen::Index elastic; ///< the first ones: all but the rigid
};

/// The modes in vacuo with the answers to loads.
Motions motions_of(const ModalSolver& solver, const System& system, const ModalResult& modes,
                   const Eigen::MatrixXd& loads)
{
  const ModalResult all = with_static_shapes(solver, system, modes, loads);
  const Eigen::MatrixXd rigid = unit_rigid_motions(system);
  Motions out{.frequencies_hz = Eigen::VectorXd::Zero(all.shapes.cols() + rigid.cols()),
              .shapes = Eigen::MatrixXd(all.shapes.rows(), all.shapes.cols() + rigid.cols()),
              .elastic = all.shapes.cols()};
  out.frequencies_hz.head(out.elastic) = all.frequencies_hz;
  out.shapes << all.shapes, rigid;
  return out;
}

ModalResult vacuum_modes(ModalSolver& solver, const System& system, int num_modes)
{
  ModalResult modes = solver.solve(system, {.num_modes = num_modes});
  if (modes.status != Status::converged)
    throw NumericalFailure(message("the modes of the body in vacuo did not converge: ", modes.summary()));
  return modes;
}

/// Displacements of a part's nodes as wall_flow() takes them, (3 num_nodes, n).
Eigen::MatrixXd wall_displacements(const DofMap& dofs, const Eigen::MatrixXd& own)
{
  Eigen::MatrixXd u(3 * static_cast<Eigen::Index>(dofs.equation.size()), own.cols());
  for (Eigen::Index i = 0; i < own.cols(); ++i)
    u.col(i) = nodal_displacements(dofs, own.col(i)).reshaped();
  return u;
}

/// Where the energy of a part of that name is counted.
std::string energy_name(const std::string& part)
{
  return part == "linings" || part == "blocks" ? "ribs" : part;
}

EnergyPart& part_named(std::vector<EnergyPart>& parts, const std::string& name, Eigen::Index n)
{
  for (EnergyPart& part : parts)
    if (part.name == name)
      return part;
  return parts.emplace_back(
      EnergyPart{.name = name, .stiffness = Eigen::MatrixXd::Zero(n, n), .mass = Eigen::MatrixXd::Zero(n, n)});
}

Eigen::MatrixXd between(const SparseMatrix& lower, const Eigen::MatrixXd& shapes)
{
  return shapes.transpose() * symmetric_product(lower, shapes);
}

/// What the walls do: flow from the cavity, energies, loss.
struct Walls
{
  Eigen::MatrixXd flow;
  StructureModes modes;
};

Walls walls_of(const Body& body, const BodySystem& assembled, const BodyAir& air, const CavitySpace& space,
               const Motions& motions)
{
  const Eigen::Index n = motions.shapes.cols();
  Walls out{.flow = Eigen::MatrixXd::Zero(space.num_unknowns(), n),
            .modes = {.frequencies_hz = motions.frequencies_hz, .loss = Eigen::VectorXd::Zero(n)}};
  const Eigen::VectorXd w2 = (two_pi * motions.frequencies_hz).cwiseAbs2();
  Eigen::MatrixXd stiffness_left = w2.asDiagonal();
  Eigen::MatrixXd mass_left = Eigen::MatrixXd::Identity(n, n);
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const BodyPart& part = body.parts[p];
    const PartSystem& system = assembled.parts[p];
    const Eigen::MatrixXd own = system.from_body * motions.shapes;
    out.flow +=
        wall_flow(space, {.mesh = &part.model.mesh, .side = air.sides[p], .outward = 1.0, .placement = part.placement},
                  wall_displacements(system.dofs, own));
    EnergyPart& energy = part_named(out.modes.parts, energy_name(part.name), n);
    const Eigen::MatrixXd K = between(system.K, own);
    const Eigen::MatrixXd M = between(system.M, own);
    energy.stiffness += K;
    energy.mass += M;
    stiffness_left -= K;
    mass_left -= M;
    const Eigen::Index elastic = motions.elastic;
    out.modes.loss.head(elastic) += mode_losses(part.model, system.dofs, own.leftCols(elastic))
                                        .cwiseProduct(K.diagonal().head(elastic))
                                        .cwiseQuotient(w2.head(elastic));
  }
  out.modes.parts.push_back({.name = "post", .stiffness = stiffness_left, .mass = mass_left});
  return out;
}

/// Holes as unknowns and as loads on the cavity; nothing for a closed body.
struct Holes
{
  Eigen::MatrixXd flow;
  HoleUnknowns unknowns;
  double conductance = 0.0; ///< [m]
};

Holes holes_of(const BodyAir& air, const CavitySpace& space)
{
  if (air.holes.empty())
    return {.flow = Eigen::MatrixXd(space.num_unknowns(), 0), .unknowns = {.inertance = Eigen::MatrixXd(0, 0)}};
  const HoleFlow through = hole_flow(air.holes);
  const HolesInCavity holes = holes_in_cavity(space, through);
  return {.flow = holes.flow,
          .unknowns = {.inertance = holes.inertance,
                       .loss = Eigen::VectorXd::Constant(holes.inertance.rows(), air.hole_loss)},
          .conductance = conductance(through.inertance())};
}

Eigen::MatrixXd mean_over_height(const CavitySpace& space, const Eigen::MatrixXd& pressures)
{
  Eigen::MatrixXd out(static_cast<Eigen::Index>(space.mesh().planform.nodes.size()), pressures.cols());
  for (Eigen::Index i = 0; i < pressures.cols(); ++i)
    out.col(i) = space.mean_over_height(pressures.col(i));
  return out;
}

/// Moments with the uniform pressure in the air alone; what the solids do to the flow is left out.
AirMoments moments_of(const CavitySpace& space, const CavityModes& cavity, const Eigen::MatrixXd& flow, double volume)
{
  AirMoments moments = air_moments(space, cavity, flow);
  moments.volume = volume;
  return moments;
}

/// The whole of what moves, and its modes with the air.
struct Coupling
{
  Motions motions;
  Eigen::MatrixXd flow; ///< of the motions, then of the holes
  CoupledModes modes;
};

/// What the parts of the coupling share.
struct Cavity
{
  const CavitySpace& space;
  const CavityModes& modes;
  const Holes& holes;
  double volume; ///< [m3]
};

Coupling coupled(const Body& body, const BodySystem& assembled, const BodyAir& air, const Cavity& cavity,
                 Motions motions)
{
  const Walls walls = walls_of(body, assembled, air, cavity.space, motions);
  Coupling out{.motions = std::move(motions),
               .flow = Eigen::MatrixXd(cavity.space.num_unknowns(), walls.flow.cols() + cavity.holes.flow.cols()),
               .modes = {}};
  out.flow << walls.flow, cavity.holes.flow;
  out.modes = solve_coupled_modes(walls.modes, cavity.holes.unknowns,
                                  moments_of(cavity.space, cavity.modes, out.flow, cavity.volume), air.air);
  return out;
}

/// Loads under which the structure would take at rest the shapes it has in the lowest modes: inertia and air.
Eigen::MatrixXd loads_of_modes(const Body& body, const BodySystem& assembled, const BodyAir& air, const Cavity& cavity,
                               const Coupling& coupling, Eigen::Index count)
{
  const Eigen::MatrixXd pressures =
      cavity_pressures(cavity.space, cavity.modes, coupling.flow, coupling.modes, air.air).leftCols(count);
  const Eigen::MatrixXd shapes = coupling.motions.shapes * coupling.modes.structure.leftCols(count);
  const Eigen::VectorXd w2 = (two_pi * coupling.modes.frequencies_hz.head(count)).cwiseAbs2();
  Eigen::MatrixXd loads = symmetric_product(assembled.system.M, shapes) * w2.asDiagonal();
  for (std::size_t p = 0; p < body.parts.size(); ++p)
  {
    const BodyPart& part = body.parts[p];
    const Eigen::MatrixXd forces = wall_forces(
        cavity.space, {.mesh = &part.model.mesh, .side = air.sides[p], .outward = 1.0, .placement = part.placement},
        pressures);
    NodalUnknowns nodal = NodalUnknowns::Zero(DofMap::dofs_per_node, forces.rows() / 3);
    for (Eigen::Index i = 0; i < count; ++i)
    {
      nodal.topRows<3>() = forces.col(i).reshaped(3, nodal.cols());
      loads.col(i) += assembled.parts[p].from_body.transpose() * on_unknowns(assembled.parts[p].dofs, nodal);
    }
  }
  return loads;
}

} // namespace

BodyModes solve_body_modes(const Body& body, const BodySystem& assembled, const BodyAir& air,
                           const Eigen::MatrixXd& drives, const BodyOptions& options)
{
  check(body, assembled, air, drives);
  Eigen::MatrixXd loads(drives.cols(), drives.rows() + 1);
  loads << drives.transpose(), pressure_load(body, assembled);
  ModalSolver solver;
  const ModalResult modes = vacuum_modes(solver, assembled.system, options.structure_modes);
  const CavitySpace space(air.cavity, options.pressure_degree);
  const double volume = space.volume() - air.solids;
  if (!(volume > 0.0))
    throw InvalidInput(message("solve_body_modes: solids of ", air.solids, " m3 leave no air in a cavity of ",
                               space.volume(), " m3; make them smaller"));
  const CavityModes cavity = solve_cavity_modes(space, air.air, {.num_modes = options.cavity_modes});
  if (cavity.status != Status::converged)
    throw NumericalFailure("the modes of the air in the body did not converge; take fewer or a finer mesh");
  const Holes holes = holes_of(air, space);
  const Cavity shared = {.space = space, .modes = cavity, .holes = holes, .volume = volume};
  const auto under = [&](const Eigen::MatrixXd& all_loads)
  { return coupled(body, assembled, air, shared, motions_of(solver, assembled.system, modes, all_loads)); };
  Coupling coupling = under(loads);
  for (int pass = 0; pass < refining_passes && options.refined_modes > 0; ++pass)
  {
    const Eigen::Index count = std::min<Eigen::Index>(options.refined_modes, coupling.modes.frequencies_hz.size());
    Eigen::MatrixXd more(loads.rows(), loads.cols() + count);
    more << loads, loads_of_modes(body, assembled, air, shared, coupling, count);
    coupling = under(more);
  }
  const Eigen::VectorXd rigid_walls_hz =
      air.holes.empty()
          ? cavity.frequencies_hz
          : solve_coupled_modes({}, holes.unknowns, moments_of(space, cavity, holes.flow, volume), air.air)
                .frequencies_hz;
  Eigen::MatrixXd shapes = coupling.motions.shapes * coupling.modes.structure;
  Eigen::MatrixXd pressures =
      mean_over_height(space, cavity_pressures(space, cavity, coupling.flow, coupling.modes, air.air));
  Eigen::MatrixXd moved = drives * coupling.motions.shapes;
  return {.coupled = std::move(coupling.modes),
          .structure = std::move(coupling.motions.shapes),
          .drives = std::move(moved),
          .shapes = std::move(shapes),
          .pressures = std::move(pressures),
          .cavity_shapes = mean_over_height(space, cavity.shapes),
          .cavity_hz = cavity.frequencies_hz,
          .rigid_walls_hz = rigid_walls_hz,
          .volume = volume,
          .conductance = holes.conductance};
}

} // namespace plate
