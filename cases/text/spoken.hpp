// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::cases {

/// A word as it is spoken, to be compared with others: capital letters of ASCII in lower case,
/// hyphens and underscores as blanks.
[[nodiscard]] std::string spoken(std::string_view word);

}  // namespace quoin::cases
