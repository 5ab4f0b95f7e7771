// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/model/survey.hpp"

namespace quoin::cases {

struct Variant;

/// Whether any surface of a space that is not outside runs within a box.
[[nodiscard]] bool meets_inside_surface(const Variant& variant, const SurveyBox& box);

}  // namespace quoin::cases
