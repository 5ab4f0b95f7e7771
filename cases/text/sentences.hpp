// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

namespace quoin::cases {

/// Words that begin a sentence: "the angle" as "The angle".
[[nodiscard]] std::string capital(std::string words);

/// "brick", "brick and stone", "brick, stone and plaster".
[[nodiscard]] std::string joined(const std::vector<std::string>& names);

}  // namespace quoin::cases
