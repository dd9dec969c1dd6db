// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "shell_kinematics.h"

#include <span>

namespace plate::shell_kinematics
{

/// Functions that vanish at the corners of a quartic triangle: the two nodes and the bubble of each edge, then the
/// centre node and two bubbles inside.
inline constexpr int num_enriched_functions = 12;

/// Stiffness of these functions: edge by edge, and of each edge with those inside; edges among each other are left out.
struct EnrichedStiffness
{
  static constexpr int size = 15; // three functions of five unknowns
  using Block = Eigen::Matrix<double, size, size>;
  std::array<Block, 3> edge;
  std::array<Block, 3> inner_edge; ///< rows: inside
  Block inner;
};

/// The stiffness of a triangle with straight sides and the strains and section of its centre.
void enriched_stiffness(const ShellTriangleNodes& nodes, const ShellMaterial& material, const TriangleParts& parts,
                        const Rotations<num_enriched_functions>& rotations, EnrichedStiffness& out);

} // namespace plate::shell_kinematics
