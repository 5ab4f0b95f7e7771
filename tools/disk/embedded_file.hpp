// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace quoin::tools {

/// A file built into the program.
struct EmbeddedFile {
  std::string_view name;  ///< without folder
  std::string_view text;
};

}  // namespace quoin::tools
