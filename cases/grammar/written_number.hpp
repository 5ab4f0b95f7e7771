// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// A number and what follows it.
struct WrittenNumber {
  double value = 0.0;
  std::string digits;  ///< as written
  std::string unit;    ///< as normal_unit() leaves it; empty for a bare number
};

/// The number a text begins with, and its unit. Refuses what looks like a number and is none, or
/// could be read two ways: decimal commas, octal and hexadecimal numbers, grouped digits, .nan,
/// .inf.
[[nodiscard]] std::variant<WrittenNumber, Complaint> written_number(std::string_view text);

}  // namespace quoin::cases
