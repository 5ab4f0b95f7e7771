// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "tools/outputs.hpp"

namespace quoin::tools {

/// The disk failed.
struct DiskError : std::runtime_error {
  DiskError(std::filesystem::path where, int error_number);
  DiskError(std::filesystem::path where, const std::string& reason);
  std::filesystem::path path;
};

/// Writes files into a folder so that they appear complete or not at all: all are first written
/// aside, on the same disk. A new folder, with the folders above it that are missing, then appears
/// with everything in it. In an existing one each file takes the place of an older one of its name;
/// what an earlier run left there and this one does not write goes, unless it was changed since;
/// all other files stay as they are. A list of the files with their checksums is written beside
/// them. Throws: DiskError; nothing that was begun is then left behind.
void write_folder(const std::filesystem::path& folder, std::vector<File> files);

}  // namespace quoin::tools
