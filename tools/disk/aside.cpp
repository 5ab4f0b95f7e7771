// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/aside.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <utility>

#include "tools/disk/disk_error.hpp"
#include "tools/disk/held_signals.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// A file open for writing.
class OpenFile {
 public:
  explicit OpenFile(fs::path path)
      : path_(std::move(path)),
        descriptor_(open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666)) {
    if (descriptor_ < 0) throw DiskError(path_, errno);
  }
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;
  ~OpenFile() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }

  void write(std::string_view content) {
    while (!content.empty()) {
      const ssize_t written = ::write(descriptor_, content.data(), content.size());
      if (written < 0 && errno == EINTR) continue;
      if (written <= 0) throw DiskError(path_, written < 0 ? errno : ENOSPC);
      content.remove_prefix(static_cast<std::size_t>(written));
    }
  }

  void close() {
    if (::close(std::exchange(descriptor_, -1)) != 0) throw DiskError(path_, errno);
  }

 private:
  fs::path path_;
  int descriptor_;
};

/// Folders in `parent` whose names are those of a stem and a number.
std::vector<fs::path> numbered(const fs::path& stem) {
  std::vector<fs::path> found;
  const std::string start = stem.filename().string() + "-";
  std::error_code none;
  for (const auto& entry : fs::directory_iterator(stem.parent_path(), none)) {
    const std::string name = entry.path().filename().string();
    if (!name.starts_with(start) || name.size() == start.size()) continue;
    if (name.find_first_not_of("0123456789", start.size()) != std::string::npos) continue;
    if (fs::is_directory(entry.symlink_status(none))) found.push_back(entry.path());
  }
  return found;
}

}  // namespace

fs::path stem_beside(const fs::path& folder) {
  constexpr std::size_t longest = 200;  // bytes, so that the number has room in a name
  const std::string name = folder.filename().string().substr(0, longest);
  return folder.parent_path() / fmt::format(".{}.writing", name);
}

fs::path stem_within(const fs::path& folder) { return folder / ".writing"; }

Aside::Aside(const fs::path& stem) {
  constexpr int most = 1000;
  for (int number = 1;; ++number) {
    path_ = fs::path(stem).concat(fmt::format("-{}", number));
    if (mkdir(path_.c_str(), 0777) == 0) break;
    if (errno != EEXIST || number == most) throw DiskError(path_.parent_path(), errno);
  }
  if (faccessat(AT_FDCWD, path_.c_str(), W_OK | X_OK, AT_EACCESS) == 0) return;
  rmdir(path_.c_str());
  throw DiskError(path_.parent_path(), "the umask forbids to write in new folders");
}

Aside::~Aside() {
  std::error_code ignored;
  if (!kept_) fs::remove_all(path_, ignored);
}

void write_file(const fs::path& path, std::string_view content) {
  OpenFile file(path);
  file.write(content);
  file.close();
}

void write_files(const fs::path& folder, const std::vector<File>& files) {
  write_file(folder / list_name, text_of(list_of(files)));
  for (const File& file : files) {
    if (HeldSignals::noted()) throw DiskError(folder, EINTR);
    write_file(folder / file.name, file.content);
  }
}

void take_away(const fs::path& aside, const fs::path& folder) {
  std::error_code ignored;
  const FileList written = list_in(aside), current = list_in(folder);
  const auto is_listed = [](const FileList& list, const std::string& name) {
    return std::any_of(list.begin(), list.end(),
                       [&](const auto& entry) { return entry.second == name; });
  };
  fs::remove_all(aside / replaced_name, ignored);
  std::vector<fs::path> entries;
  for (const auto& entry : fs::directory_iterator(aside, ignored)) entries.push_back(entry.path());
  for (const fs::path& path : entries) {
    const std::string name = path.filename().string();
    if (name == list_name || is_listed(written, name) || is_listed(current, name) ||
        fs::exists(fs::symlink_status(folder / name, ignored))) {
      unlink(path.c_str());
    } else {
      renameat2(AT_FDCWD, path.c_str(), AT_FDCWD, (folder / name).c_str(), RENAME_NOREPLACE);
    }
  }
  rmdir(aside.c_str());
}

void tidy(const fs::path& folder) {
  for (const fs::path& stem : {stem_beside(folder), stem_within(folder)}) {
    for (const fs::path& left : numbered(stem)) take_away(left, folder);
  }
}

}  // namespace quoin::tools
