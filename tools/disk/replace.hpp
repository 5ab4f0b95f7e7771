// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <vector>

#include "tools/disk/file.hpp"

namespace quoin::tools {

/// Two ways to put the files of a run in the place of those of an earlier one in an existing
/// folder. Both leave what is not ours as it is, and take away what the earlier run wrote and this
/// one does not.

/// Makes a whole new folder beside the old one, with everyone else's files linked into it, and lets
/// the two change places at once: whoever looks, and whatever kills the program, the folder shows
/// the old run or the new one. False, with nothing done, where that cannot be: the folder is the
/// current one of the shell, holds other folders, belongs to someone else, carries access lists, is
/// a mount point, the folder above may not be written, or the disk knows neither links nor
/// exchanges. Throws: DiskError where the new files cannot be written; the old run then stays.
[[nodiscard]] bool exchange_whole(const std::filesystem::path& folder,
                                  const std::vector<File>& files);

/// Moves file after file, each at once, and moves all back where one fails. A kill between two of
/// them leaves files of both runs; the list in the folder then names both, so that the next run
/// knows them for ours and puts them right. Throws: DiskError; the old run then stays.
void replace_in_place(const std::filesystem::path& folder, const std::vector<File>& files);

}  // namespace quoin::tools
