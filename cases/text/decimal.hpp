// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <charconv>

namespace quoin::cases {

/// As std::from_chars for a decimal number, also where the standard library has none for doubles.
/// What stands there begins with a digit, a point, or a minus before one.
std::from_chars_result from_decimal(const char* first, const char* last, double& value);

}  // namespace quoin::cases
