// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <stdexcept>

namespace quoin::tools {

/// A picture or a page cannot be painted.
struct PaintError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace quoin::tools
