// SPDX-License-Identifier: MPL-2.0
#include <plate/laminates/ply_stress.h>

#include "section_plies.h"

#include <plate/core/error.h>
#include <plate/laminates/constants.h>

#include <Eigen/LU>

namespace plate
{

using namespace section_plies;

struct PlyStresses::Implementation
{
  std::vector<PlacedPly> placed;
  std::vector<PlyStiffness> plies;
  std::vector<ShearDistribution> shear;
  std::vector<Matrix6d> to_material; ///< stress in the axes of each ply from that in the frame
  SectionStiffness section;

  /// From (11, 22, 12) and (13, 23) in the frame.
  [[nodiscard]] MaterialComponents in_material(std::size_t ply, const Eigen::Vector3d& in_plane,
                                               const Eigen::Vector2d& through) const
  {
    MaterialComponents frame;
    frame << in_plane(0), in_plane(1), 0.0, through(1), through(0), in_plane(2);
    return to_material[ply] * frame;
  }

  /// Free strain of a ply per kelvin, in the frame.
  [[nodiscard]] Eigen::Vector3d expansion(const PlacedPly& ply) const
  {
    if (!ply.material->thermal)
      throw InvalidInput(message("stress of the cure: the thermal expansion of ", ply.material->name,
                                 " is not known; give material.", ply.material->name, ".expansion"));
    return free_strain(ply.angle, *ply.material->thermal);
  }

  /// Strain and curvature of the free section per kelvin.
  [[nodiscard]] Vector6d free_expansion() const
  {
    Vector6d forces = Vector6d::Zero();
    for (std::size_t i = 0; i < plies.size(); ++i)
    {
      const PlyStiffness& ply = plies[i];
      const Eigen::Vector3d stress = ply.P * expansion(placed[i]);
      forces.head<3>() += (ply.top - ply.bottom) * stress;
      forces.tail<3>() += 0.5 * (ply.top * ply.top - ply.bottom * ply.bottom) * stress;
    }
    return abd_matrix(section).inverse() * forces;
  }
};

PlyStresses::PlyStresses(std::span<const PlacedPly> plies, const Eigen::Matrix3d& frame, const MaterialAxes& axes)
    : implementation_(std::make_unique<Implementation>())
{
  Implementation& my = *implementation_;
  my.placed.assign(plies.begin(), plies.end());
  my.plies = ply_stiffnesses(plies, frame, axes);
  my.section = section_stiffness(plies, frame, axes);
  my.shear = shear_distributions(my.plies, my.section.P);
  for (const PlacedPly& ply : plies)
    my.to_material.push_back(stress_rotation(ply_axes_in_frame(ply.angle, ply.grain, frame, axes)));
}

PlyStresses::~PlyStresses() = default;
PlyStresses::PlyStresses(PlyStresses&&) noexcept = default;
PlyStresses& PlyStresses::operator=(PlyStresses&&) noexcept = default;

MaterialComponents PlyStresses::stress(std::size_t ply, double z, const SectionStrains& strains) const
{
  const Implementation& my = *implementation_;
  const SectionStiffness& section = my.section;
  const Eigen::Vector2d force = section.shear * (strains.shear - section.G0 * strains.in_plane.col(0) -
                                                 section.G1 * strains.in_plane.col(1)); // [N/m]
  const Eigen::Vector2d through = my.shear[ply].at(z) * force;
  const Eigen::Vector3d strain = strains.in_plane * Eigen::Vector3d(1.0, z, z * z);
  // From the stationary energy of DEVELOPERS.md, "Carved wood": shear stress relieves tilted material in the plane.
  const Eigen::Vector3d in_plane = my.plies[ply].P * strain - my.plies[ply].shear_from_strain.transpose() * through;
  return my.in_material(ply, in_plane, through);
}

MaterialComponents PlyStresses::cure_stress(std::size_t ply, double z, double change) const
{
  const Implementation& my = *implementation_;
  const Vector6d free = my.free_expansion();
  const Eigen::Vector3d strain = free.head<3>() + z * free.tail<3>() - my.expansion(my.placed[ply]);
  return my.in_material(ply, change * (my.plies[ply].P * strain), Eigen::Vector2d::Zero());
}

MaterialComponents strain_of(const Material& material, const MaterialComponents& stress)
{
  return compliance(material.elastic) * stress;
}

} // namespace plate
