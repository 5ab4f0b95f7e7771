// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

namespace quoin::tools {

/// A file to be written.
struct File {
  std::string name;  ///< within the output folder
  std::string content;
};

}  // namespace quoin::tools
