// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::tools {

/// The name of a folder for a file, after the file's own: without folders and ending; what could
/// lead elsewhere, hide it, steer a terminal or trouble another system becomes a hyphen or goes.
[[nodiscard]] std::string folder_name(std::string_view file);

/// A folder name for each file, no two alike, nor alike but for capital letters of ASCII.
[[nodiscard]] std::vector<std::string> folder_names(const std::vector<std::string>& files);

}  // namespace quoin::tools
