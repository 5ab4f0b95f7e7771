// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/output_folder.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>

#include "tools/disk/aside.hpp"
#include "tools/disk/held_signals.hpp"
#include "tools/disk/locks.hpp"
#include "tools/disk/replace.hpp"
#include "tools/disk/written_files.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// The folders above a new one, made where missing and taken back unless kept.
class FoldersAbove {
 public:
  explicit FoldersAbove(const fs::path& folder) {
    std::vector<fs::path> missing;
    for (fs::path above = folder; !above.empty() && !fs::exists(above);
         above = above.parent_path()) {
      missing.push_back(above);
    }
    for (auto path = missing.rbegin(); path != missing.rend(); ++path) {
      if (mkdir(path->c_str(), 0777) == 0) {
        made_.push_back(*path);
      } else if (errno != EEXIST) {
        const int reason = errno;
        take_back();
        throw DiskError(*path, reason);
      }
    }
  }
  FoldersAbove(const FoldersAbove&) = delete;
  FoldersAbove& operator=(const FoldersAbove&) = delete;
  ~FoldersAbove() {
    if (!kept_) take_back();
  }
  void keep() { kept_ = true; }

 private:
  void take_back() {
    for (auto path = made_.rbegin(); path != made_.rend(); ++path) rmdir(path->c_str());
  }
  std::vector<fs::path> made_;
  bool kept_ = false;
};

/// "DIR/" and "DIR/." are DIR.
fs::path without_end(fs::path folder) {
  while (folder.has_parent_path() && folder != folder.root_path() &&
         (folder.filename().empty() || folder.filename() == ".")) {
    folder = folder.parent_path();
  }
  return folder;
}

void check_writable(const fs::path& folder) {
  if (faccessat(AT_FDCWD, folder.c_str(), W_OK | X_OK, AT_EACCESS) != 0) {
    throw DiskError(folder, errno);
  }
}

/// The nearest that is there must be a folder, and writable.
void check_nearest(const fs::path& folder) {
  for (fs::path above = folder;; above = above.parent_path()) {
    if (above.empty()) above = ".";
    const fs::file_status status = fs::status(above);
    if (fs::is_directory(status)) return check_writable(above);
    if (fs::exists(status)) {
      const bool itself = above == folder;
      throw DiskError(folder, fmt::format("{} is a file, not a folder (Not a directory); choose "
                                          "another folder with -o",
                                          itself ? "this" : above.string()));
    }
    if (fs::is_symlink(fs::symlink_status(above))) {
      throw DiskError(folder, fmt::format("{} is a link to {}, which is not there; choose another "
                                          "folder with -o",
                                          above == folder ? "this" : above.string(),
                                          fs::read_symlink(above).string()));
    }
  }
}

/// Asked only while the folder is locked: between the list of one run and the files of the next,
/// all would seem to be someone else's.
void check_held_names(const fs::path& folder, std::vector<std::string> names,
                      Foreign foreign_files) {
  if (!fs::is_directory(folder)) return;
  names.emplace_back(list_name);
  for (const std::string& name : names) {
    if (fs::is_directory(fs::symlink_status(folder / name))) throw DiskError(folder / name, EISDIR);
  }
  if (foreign_files == Foreign::replaced) return;
  const std::vector<std::string> found = foreign(folder, names);
  if (found.empty()) return;
  throw DiskError(folder, fmt::format("{} there {} not written by a run, or changed since; choose "
                                      "another folder with -o, or replace {} with --replace",
                                      fmt::join(found, ", "), found.size() == 1 ? "was" : "were",
                                      found.size() == 1 ? "it" : "them"));
}

/// A folder that can be one, as it was called: named, and in a place that may be written.
fs::path checked_place(const fs::path& called) {
  if (called.empty()) {
    throw DiskError("-o", "the folder has no name; give one, such as -o results");
  }
  const fs::path folder = without_end(called);
  check_nearest(folder);
  return folder;
}

/// The folder itself, whatever links lead there.
fs::path itself(const fs::path& folder) {
  return fs::exists(folder) ? fs::canonical(folder) : fs::absolute(folder);
}

/// `folder` has no links in it, the folder above it is there.
void write_locked(const fs::path& folder, const std::vector<File>& files) {
  if (fs::is_directory(folder)) {
    if (!exchange_whole(folder, files)) replace_in_place(folder, files);
    return;
  }
  Aside aside(stem_beside(folder));
  write_files(aside.path(), files);
  if (std::rename(aside.path().c_str(), folder.c_str()) != 0) throw DiskError(folder, errno);
  aside.keep();
}

void write(const fs::path& folder, const std::vector<File>& files, Foreign foreign) {
  std::vector<std::string> names;
  for (const File& file : files) names.push_back(file.name);
  const fs::path called = checked_place(folder);
  const fs::path target = itself(called);
  FoldersAbove above(target.parent_path());
  const FolderLock lock(target.parent_path());
  if (lock.held()) tidy(target);
  check_held_names(called, names, foreign);
  write_locked(target, files);
  above.keep();
}

/// The disk's own words for what the library of folders throws.
template <class Function>
void with_disk_errors(const fs::path& folder, Function function) {
  try {
    function();
  } catch (const fs::filesystem_error& error) {
    throw DiskError(error.path1().empty() ? folder : error.path1(), error.code().message());
  }
}

}  // namespace

void check_folder(const fs::path& folder, const std::vector<std::string>& names, Foreign foreign) {
  with_disk_errors(folder, [&] {
    const fs::path called = checked_place(folder);
    const FolderLock lock(itself(called).parent_path());
    check_held_names(called, names, foreign);
  });
}

void check_place(const fs::path& folder) {
  with_disk_errors(folder, [&] { static_cast<void>(checked_place(folder)); });
}

void write_folder(const fs::path& folder, const std::vector<File>& files, Foreign foreign) {
  const HeldSignals signals;
  with_disk_errors(folder, [&] { write(folder, files, foreign); });
}

}  // namespace quoin::tools
