// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "command_line.h"

#include <plate/design/body_document.h>
#include <plate/design/design_document.h>

#include <string>

namespace plate
{

/// The design file of a command with its overrides; checks the output folder as well, so that slips show at once.
[[nodiscard]] DesignDocument open_design(const CommonOptions& options);

/// Options for a file set beside the command's own, with nothing changed in it: --set is about the first.
[[nodiscard]] CommonOptions options_for(CommonOptions options, const std::string& file);

/// Whether the file is that of a body: it has a table [body].
[[nodiscard]] bool is_body_file(const CommonOptions& options);

/// As open_design() for the file of a body.
[[nodiscard]] BodyDocument open_body(const CommonOptions& options);

} // namespace plate
