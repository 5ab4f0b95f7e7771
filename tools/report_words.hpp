// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string_view>

namespace quoin::tools {

/// What every report says beside its numbers, a sentence or two each.

/// By which rules, and what the method leaves out.
[[nodiscard]] std::span<const std::string_view> assumptions();

/// What can hurt people or houses.
[[nodiscard]] std::span<const std::string_view> cautions();

}  // namespace quoin::tools
