// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace quoin::tools {

/// The disk failed, or must not be written as asked. Says the path, the reason and, where there is
/// one, the remedy.
struct DiskError : std::runtime_error {
  DiskError(std::filesystem::path where, int error_number);
  DiskError(std::filesystem::path where, const std::string& reason);
  std::filesystem::path path;
};

}  // namespace quoin::tools
