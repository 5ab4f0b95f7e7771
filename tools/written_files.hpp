// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "tools/outputs.hpp"

namespace quoin::tools {

/// The name of the list of files that a run left in its folder.
inline constexpr std::string_view list_name = "files.sha256";

/// The list of some files: a line each, checksum and name, as the usual checksum programs read it.
[[nodiscard]] std::string list_of(const std::vector<File>& files);

/// Files in a folder that its list names and that are not among `files`: an earlier run wrote them
/// and this one does not. Only what is still as that run left it: a plain file in the folder itself
/// with the same checksum. Anything else is someone else's.
[[nodiscard]] std::vector<std::filesystem::path> outdated(const std::filesystem::path& folder,
                                                          const std::vector<File>& files);

}  // namespace quoin::tools
