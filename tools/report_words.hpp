// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "tools/results.hpp"

namespace quoin::tools {

/// What every report says beside its numbers, a sentence or two each.

/// By which rules, and what the method leaves out.
[[nodiscard]] std::span<const std::string_view> assumptions();

/// What can hurt people or houses.
[[nodiscard]] std::span<const std::string_view> cautions();

/// What a report was made from.
[[nodiscard]] std::string made_from(std::string_view file, std::string_view sha256);

/// The surface resistance of a space to the materials it touches, m2K/W; from the least to the most
/// where it is not one.
[[nodiscard]] std::string resistance_words(const solver::Solution& solution, SpaceId space);

}  // namespace quoin::tools
