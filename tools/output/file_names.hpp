// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Names for the files of each variant, without folder or ending: lower-case ASCII letters, digits
/// and hyphens, each different.
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants);
[[nodiscard]] std::vector<std::string> file_stems(const std::vector<std::string>& variants);

}  // namespace quoin::tools
