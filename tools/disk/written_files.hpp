// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "tools/disk/file.hpp"

namespace quoin::tools {

/// The name of the list of files that a run left in its folder.
inline constexpr std::string_view list_name = "files.sha256";

/// Checksum and name of each file. A name may stand twice: while a folder is written into, either
/// content may be there.
using FileList = std::set<std::pair<std::string, std::string>>;

[[nodiscard]] FileList list_of(const std::vector<File>& files);

/// The list as the usual checksum programs read it, a line a file. Its first line, a remark to
/// them, holds the checksum of the others, by which a list of ours is told from anyone else's.
[[nodiscard]] std::string text_of(const FileList& list);

/// The list in a folder, if it is one that a run wrote and nobody changed; else empty. Names that
/// would lead out of the folder are left out.
[[nodiscard]] FileList list_in(const std::filesystem::path& folder);

/// Whether a run wrote what is at this name in a folder, by the folder's list, and it is as that
/// run left it: a plain file with the checksum. The list itself is ours if it is intact.
[[nodiscard]] bool is_ours(const std::filesystem::path& folder, const std::string& name,
                           const FileList& list);

/// Names in a folder that its list has and `files` has not: an earlier run wrote them and this one
/// does not. Only what is still ours.
[[nodiscard]] std::vector<std::string> outdated(const std::filesystem::path& folder,
                                                const std::vector<File>& files);

/// Names among `names` at which a folder holds something that is not ours.
[[nodiscard]] std::vector<std::string> foreign(const std::filesystem::path& folder,
                                               const std::vector<std::string>& names);

}  // namespace quoin::tools
