// SPDX-License-Identifier: MPL-2.0
#include "json_text.h"

#include <nlohmann/json.hpp>

namespace plate
{

std::string json_text(const nlohmann::ordered_json& json)
{
  return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + '\n';
}

} // namespace plate
