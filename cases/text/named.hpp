// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string>

#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

inline constexpr double needed = std::numeric_limits<double>::quiet_NaN();
inline constexpr double infinite = std::numeric_limits<double>::infinity();

/// One key of a map whose keys are names the author chose.
template <class T>
struct Named {
  std::string name;
  Mark mark;           ///< of the name
  const Node* node{};  ///< what it stands for
  T value;
};

}  // namespace quoin::cases
