// SPDX-License-Identifier: MPL-2.0
#include "open_design.h"

#include "output_folder.h"

namespace plate
{

DesignDocument open_design(const CommonOptions& options)
{
  DesignDocument document =
      DesignDocument::from_file(options.file, {.folder = {}, .allow_outside = options.allow_outside});
  for (const auto& [key, value] : options.overrides)
    document.set(key, value);
  if (!options.out.empty())
    check_output_folder({.path = options.out});
  return document;
}

} // namespace plate
