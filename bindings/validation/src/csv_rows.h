// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace plate::validation
{

/// Rows of a CSV text without its comments (#), empty lines and header; cells may be quoted, not broken over lines.
///
/// @param name    of the file, for error texts
/// @param header  the first row must be this
/// @throws IoError naming the line that has another number of cells than the header, or a header that is not this
[[nodiscard]] std::vector<std::vector<std::string>> csv_rows(std::string_view name, std::string_view text,
                                                             const std::vector<std::string>& header);

} // namespace plate::validation
