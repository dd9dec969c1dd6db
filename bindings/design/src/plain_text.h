// SPDX-License-Identifier: MPL-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace plate
{

/// Whether a text is valid UTF-8 without control characters: it can go on a terminal, into JSON and into a picture.
[[nodiscard]] bool is_plain_text(std::string_view text);

/// A text made fit for a message of one line: control characters as blanks, bytes that are not UTF-8 as ?, cut at
/// `most` bytes.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t most = 60);

/// A text in quotes as a design file has it; it must be free of control characters. (std::quoted would be found for a
/// std::string too.)
[[nodiscard]] std::string in_quotes(std::string_view text);

} // namespace plate
