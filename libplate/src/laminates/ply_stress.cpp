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
  std::vector<Warping> warping;
  /// Strain and curvature that take force and moment from the warping, per derivative of the shear force.
  Eigen::Matrix<double, 6, 4> straight_part;
  SectionStiffness section;

  /// Integrals of stress and of z times stress of the warping, exact: a cubic times z.
  [[nodiscard]] Eigen::Matrix<double, 6, 4> warping_forces() const
  {
    Eigen::Matrix<double, 6, 4> forces = Eigen::Matrix<double, 6, 4>::Zero();
    for (std::size_t i = 0; i < plies.size(); ++i)
    {
      const double half = 0.5 * (plies[i].top - plies[i].bottom);
      const double middle = 0.5 * (plies[i].top + plies[i].bottom);
      for (std::size_t q = 0; q < gauss_point.size(); ++q)
      {
        const double z = middle + half * gauss_point[q];
        const Eigen::Matrix<double, 3, 4> stress = half * gauss_weight[q] * plies[i].P * warping[i].strain(z);
        forces.topRows<3>() += stress;
        forces.bottomRows<3>() += z * stress;
      }
    }
    return forces;
  }

  /// Strain (11, 22, 12) of the warping without force and moment.
  [[nodiscard]] Eigen::Vector3d warping_strain(std::size_t ply, double z, const Eigen::Matrix2d& shear_slope) const
  {
    const Eigen::Matrix2d force_slope = section.shear * shear_slope; // [N/m2]
    const Eigen::Vector4d slopes(force_slope(0, 0), force_slope(1, 0), force_slope(0, 1), force_slope(1, 1));
    const Eigen::Matrix<double, 6, 1> straight = straight_part * slopes;
    return warping[ply].strain(z) * slopes + straight.head<3>() + z * straight.tail<3>();
  }

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
  my.warping = warpings(my.plies, my.shear, my.section.shear);
  my.straight_part = -abd_matrix(my.section).inverse() * my.warping_forces();
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
  const Eigen::Vector3d strain =
      strains.in_plane * Eigen::Vector3d(1.0, z, z * z) + my.warping_strain(ply, z, strains.shear_slope);
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
