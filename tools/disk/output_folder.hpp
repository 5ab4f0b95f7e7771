// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "tools/disk/disk_error.hpp"
#include "tools/disk/file.hpp"

namespace quoin::tools {

/// What becomes of a file in the folder that a run would write and that none has written, or that
/// was changed since.
enum class Foreign { refused, replaced };

/// Whether files of these names can be written into a folder; asked before anything is solved. The
/// folder, or the nearest one above it that is there, must be a folder that may be written.
/// Throws: DiskError with what is in the way and the remedy.
void check_folder(const std::filesystem::path& folder, const std::vector<std::string>& names,
                  Foreign foreign = Foreign::refused);

/// The same of a folder for files that are not written at once: whether it can be one, and be
/// written. Throws: DiskError.
void check_place(const std::filesystem::path& folder);

/// Writes files into a folder so that they appear complete or not at all, and beside them a list of
/// their names and checksums, by which the next run knows them.
///
/// What is guaranteed, whether the disk fills up, a rename fails, or the program is ended at any
/// moment by any signal, SIGKILL among them:
/// * a new folder appears, with the folders above it that are missing, complete or not at all;
/// * an existing folder shows the earlier run or this one, never files of both, where it can be
///   exchanged whole (see replace.hpp: it holds no other folders, is ours, is not the current one).
///   Elsewhere a SIGKILL between two renames may leave files of both runs, until the next run;
/// * what no run wrote stays: refused by name, or replaced only where asked. Names no run writes
///   are never touched. What an earlier run wrote and this one does not goes, unless changed since;
/// * two runs into one folder write one after the other, where the disk knows locks;
/// * nothing is left aside, except by SIGKILL; the next run into the folder takes that away.
/// Not guaranteed: anything against loss of power.
/// Throws: DiskError.
void write_folder(const std::filesystem::path& folder, const std::vector<File>& files,
                  Foreign foreign = Foreign::refused);

}  // namespace quoin::tools
