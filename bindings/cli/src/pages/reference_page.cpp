// SPDX-License-Identifier: MPL-2.0
#include "reference_page.h"

namespace plate
{

std::string reference_page()
{
  return "# Reference: keys, materials, commands\n\n"
         "Written by the program from its own tables; do not edit it. After a change of keys, materials or options:\n"
         "`cmake --build --preset release --target update_reference`. `design.schema.json` beside it is the same for "
         "editors:\ngive it in the first line of a design file, `#:schema ./design.schema.json`.\n\n" +
         key_section() + "\n" + match_key_section() + "\n" + material_section() + "\n" + command_section();
}

} // namespace plate
