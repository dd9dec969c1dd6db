// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate
{
namespace
{

std::vector<Key> all_keys()
{
  using namespace key_declarations;
  std::vector<Key> keys;
  for (const std::vector<Key>& part :
       {plate_keys(), detail_keys(), material_keys(), layup_keys(), patch_keys(), load_keys(), use_keys(), body_keys()})
    keys.insert(keys.end(), part.begin(), part.end());
  return keys;
}

} // namespace

std::span<const Key> design_keys()
{
  static const std::vector<Key> keys = all_keys();
  return keys;
}

} // namespace plate
