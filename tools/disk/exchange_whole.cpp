// SPDX-License-Identifier: Apache-2.0
#include <fcntl.h>
#include <sys/stat.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <optional>
#include <string_view>

#include "tools/disk/aside.hpp"
#include "tools/disk/replace.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// Whether a folder has attributes that a new one of the same mode would lack.
bool has_attributes(const fs::path& folder) {
  const ssize_t size = listxattr(folder.c_str(), nullptr, 0);
  if (size <= 0) return false;
  std::string names(static_cast<std::size_t>(size), '\0');
  if (listxattr(folder.c_str(), names.data(), names.size()) != size) return true;
  // Names one after another, each ended by a zero. The system gives its labels to every new folder.
  for (std::string_view left = names; !left.empty();) {
    const std::string_view name = left.substr(0, left.find('\0'));
    if (!name.starts_with("security.")) return true;
    left.remove_prefix(name.size() + 1);
  }
  return false;
}

/// Someone may stand in it: a folder that changes places would leave them in the old one.
bool is_current(const struct stat& folder) {
  struct stat here {};
  return stat(".", &here) == 0 && here.st_dev == folder.st_dev && here.st_ino == folder.st_ino;
}

/// Names of what the new folder has to take over; nothing where it holds more than files and links.
std::optional<std::vector<fs::path>> names_in(const fs::path& folder) {
  std::vector<fs::path> names;
  std::error_code failed;
  for (const auto& entry : fs::directory_iterator(folder, failed)) {
    const fs::file_status status = entry.symlink_status(failed);
    if (!fs::is_regular_file(status) && !fs::is_symlink(status)) return std::nullopt;
    names.push_back(entry.path().filename());
  }
  if (failed) return std::nullopt;
  return names;
}

/// Links into `to` what is in `from` and neither written nor outdated.
bool take_over(const fs::path& from, const fs::path& to, const std::vector<fs::path>& names,
               const std::vector<File>& files) {
  const std::vector<std::string> old = outdated(from, files);
  for (const fs::path& name : names) {
    if (std::find(old.begin(), old.end(), name.string()) != old.end()) continue;
    if (linkat(AT_FDCWD, (from / name).c_str(), AT_FDCWD, (to / name).c_str(), 0) == 0) continue;
    if (errno != EEXIST) return false;
  }
  return true;
}

bool like(const struct stat& wanted, const fs::path& folder) {
  struct stat now {};
  if (stat(folder.c_str(), &now) != 0 || now.st_uid != wanted.st_uid) return false;
  if (now.st_gid != wanted.st_gid && chown(folder.c_str(), now.st_uid, wanted.st_gid) != 0) {
    return false;
  }
  return chmod(folder.c_str(), wanted.st_mode & 07777) == 0;
}

}  // namespace

bool exchange_whole(const fs::path& folder, const std::vector<File>& files) {
  struct stat before {};
  if (stat(folder.c_str(), &before) != 0 || is_current(before) || has_attributes(folder)) {
    return false;
  }
  if (faccessat(AT_FDCWD, folder.parent_path().c_str(), W_OK | X_OK, AT_EACCESS) != 0) return false;
  const auto names = names_in(folder);
  if (!names) return false;
  Aside aside(stem_beside(folder));
  write_files(aside.path(), files);
  if (!take_over(folder, aside.path(), *names, files) || !like(before, aside.path())) return false;
  if (renameat2(AT_FDCWD, aside.path().c_str(), AT_FDCWD, folder.c_str(), RENAME_EXCHANGE) != 0) {
    return false;
  }
  aside.keep();  // now the old run
  take_away(aside.path(), folder);
  return true;
}

}  // namespace quoin::tools
