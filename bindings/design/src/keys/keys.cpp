// SPDX-License-Identifier: MPL-2.0
#include "declarations.h"

namespace plate
{
namespace
{

std::vector<Key> all_keys()
{
  using namespace key_declarations;
  return joined(
      {plate_keys(), detail_keys(), material_keys(), layup_keys(), patch_keys(), load_keys(), use_keys(), body_keys()});
}

} // namespace

std::vector<Key> key_declarations::joined(std::initializer_list<std::vector<Key>> parts)
{
  std::vector<Key> keys;
  for (const std::vector<Key>& part : parts)
    keys.insert(keys.end(), part.begin(), part.end());
  return keys;
}

std::span<const Key> match_keys()
{
  static const std::vector<Key> keys = key_declarations::match_keys();
  return keys;
}

std::span<const Key> keys_of(FileKind kind)
{
  return kind == FileKind::match ? match_keys() : design_keys();
}

std::span<const Key> design_keys()
{
  static const std::vector<Key> keys = all_keys();
  return keys;
}

} // namespace plate
