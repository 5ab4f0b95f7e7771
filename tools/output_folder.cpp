// SPDX-License-Identifier: Apache-2.0
#include "tools/output_folder.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>
#include <utility>

#include "tools/written_files.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// A file open for writing. Every write and the close are checked: a full disk may show at either.
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

/// A folder of our own that is gone again, with all in it, unless kept.
class TemporaryFolder {
 public:
  /// Beside or in existing folders: the name is `stem` and a number that is free.
  explicit TemporaryFolder(const fs::path& stem) {
    constexpr int most = 1000;
    for (int number = 1;; ++number) {
      path_ = fs::path(stem).concat(fmt::format("-{}", number));
      if (mkdir(path_.c_str(), 0777) == 0) return;
      if (errno != EEXIST || number == most) throw DiskError(path_, errno);
    }
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  ~TemporaryFolder() {
    std::error_code ignored;
    if (!kept_) fs::remove_all(path_, ignored);
  }

  [[nodiscard]] const fs::path& path() const { return path_; }
  void keep() { kept_ = true; }

 private:
  fs::path path_;
  bool kept_ = false;
};

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
      if (mkdir(path->c_str(), 0777) != 0 && errno != EEXIST) {
        const int reason = errno;
        take_back();
        throw DiskError(*path, reason);
      }
      made_.push_back(*path);
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

void write_files(const fs::path& folder, const std::vector<File>& files) {
  for (const File& file : files) {
    OpenFile open(folder / file.name);
    open.write(file.content);
    open.close();
  }
}

void move(const fs::path& from, const fs::path& to) {
  if (rename(from.c_str(), to.c_str()) != 0) throw DiskError(to, errno);
}

void write_new(const fs::path& folder, const std::vector<File>& files) {
  FoldersAbove above(folder.parent_path());
  TemporaryFolder aside(fs::path(folder).concat(".writing"));
  write_files(aside.path(), files);
  move(aside.path(), folder);
  aside.keep();
  above.keep();
}

void write_into(const fs::path& folder, const std::vector<File>& files) {
  for (const File& file : files) {  // told before anything is replaced
    if (fs::is_directory(folder / file.name)) throw DiskError(folder / file.name, EISDIR);
  }
  const TemporaryFolder aside(folder / ".writing");
  write_files(aside.path(), files);
  const std::vector<fs::path> old = outdated(folder, files);
  for (const File& file : files) move(aside.path() / file.name, folder / file.name);
  for (const fs::path& path : old) {
    if (unlink(path.c_str()) != 0 && errno != ENOENT) throw DiskError(path, errno);
  }
}

}  // namespace

DiskError::DiskError(fs::path where, int error_number)
    : DiskError(std::move(where), std::system_category().message(error_number)) {}

DiskError::DiskError(fs::path where, const std::string& reason)
    : std::runtime_error(fmt::format("{}: {}", where.string(), reason)), path(std::move(where)) {}

void write_folder(const fs::path& folder, std::vector<File> files) {
  files.push_back({std::string(list_name), list_of(files)});
  try {
    fs::path target = folder;
    if (!target.has_filename()) target = target.parent_path();  // "DIR/" is DIR
    const fs::file_status status = fs::status(target);
    if (!fs::exists(status)) {
      write_new(target, files);
    } else if (fs::is_directory(status)) {
      write_into(target, files);
    } else {
      throw DiskError(target, ENOTDIR);
    }
  } catch (const fs::filesystem_error& error) {
    throw DiskError(error.path1().empty() ? folder : error.path1(), error.code().message());
  }
}

}  // namespace quoin::tools
