// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What one variant does to the first.
struct Steps {
  std::vector<std::string> dried;  ///< materials that are drier
  bool built = false;              ///< something is drawn in another way, or of another material
  /// Rooms that are drier or warmer: "kitchen at 50 % humidity (now 62)".
  std::vector<std::string> airs;
  bool warmer = false;  ///< a room is
};
[[nodiscard]] Steps steps_of(const SolvedVariant& first, const SolvedVariant& later);

}  // namespace quoin::tools
