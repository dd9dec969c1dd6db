// SPDX-License-Identifier: MPL-2.0
#pragma once

#include "free_body.h"

namespace plate
{

/// Adds what hands do to a body: thumb, squeeze and, where it has a soundhole, a knock on that.
void add_hand_cases(const FreeBody& body, const BodyLoadSetup& setup, BodyLoadStudy& study);

} // namespace plate
