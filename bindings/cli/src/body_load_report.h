// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "body_load_result.h"

#include <string>
#include <string_view>
#include <vector>

namespace plate
{

[[nodiscard]] std::string load_text(const BodyLoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_json(const BodyLoadOutcome& outcome, bool timing);
[[nodiscard]] std::string load_csv(const BodyLoadOutcome& outcome);

/// What a case is, in a line: "squeeze: 40.0 N on the ribs at the waist, from both sides".
[[nodiscard]] std::string case_words(const BodyLoadCase& load);

/// What the results of bodies rest on beside load_cautions().
[[nodiscard]] const std::vector<std::string_view>& body_load_notes();

/// All walls of a body.
[[nodiscard]] std::vector<const Model*> models_of(const BodyModel& model);

/// Share of the bridge's press that goes through a post [-].
[[nodiscard]] double post_share(const BodyLoadStudy& study, std::size_t post);

/// What the top passes on to the ribs along its edge under the strings, against z [N].
[[nodiscard]] double edge_force(const BodyLoadStudy& study);

} // namespace plate
