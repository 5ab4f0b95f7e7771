// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace quoin::cases {

/// A commented case file with a survey; it reads without faults. Invented.
[[nodiscard]] std::string_view starting_survey();

/// A commented house file; it reads without faults beside case files of the names it uses.
[[nodiscard]] std::string_view starting_house();

}  // namespace quoin::cases
