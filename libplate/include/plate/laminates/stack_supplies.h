// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <plate/laminates/laminate.h>

#include <vector>

namespace plate
{

/// A sheet or core as the workshop has it; its angle is chosen by the search.
struct SupplySheet
{
  Material material;
  double thickness; ///< [m]
};

/// Whether stacks have a core in their middle.
enum class CoreUse
{
  none,
  allowed,
  required
};

/// What stacks may be made of.
struct StackSupplies
{
  std::vector<SupplySheet> sheets;
  std::vector<SupplySheet> cores = {};
  std::vector<Angle> angles;       ///< of sheets
  bool any_angle = false;          ///< angles are only where the search begins: refined ones lie between
  int max_plies = 8;               ///< of the whole stack, its core not counted
  bool symmetric = true;           ///< about the middle
  bool balanced = false;           ///< no in-plane coupling of stretching and shear
  CoreUse core = CoreUse::allowed; ///< without cores there is none
  int max_patch_plies = 0;         ///< of each patch, which may also be left out; 0: patches stay as they are
};

} // namespace plate
