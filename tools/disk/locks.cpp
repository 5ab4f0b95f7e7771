// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/locks.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

#include "tools/disk/disk_error.hpp"
#include "tools/disk/held_signals.hpp"

namespace quoin::tools {
namespace {

namespace fs = std::filesystem;

/// Waits until an open file or folder is this run's alone. False where its disk knows no locks.
/// Throws: DiskError where a noted signal ends the waiting.
bool is_locked(int descriptor, const fs::path& named) {
  while (flock(descriptor, LOCK_EX) != 0) {
    if (errno != EINTR) return false;
    if (HeldSignals::noted()) throw DiskError(named, EINTR);
  }
  return true;
}

bool is_open_as(int descriptor, const fs::path& file) {
  struct stat opened {
  }, named{};
  return fstat(descriptor, &opened) == 0 && stat(file.c_str(), &named) == 0 &&
         opened.st_dev == named.st_dev && opened.st_ino == named.st_ino;
}

}  // namespace

FolderLock::FolderLock(const fs::path& folder)
    : descriptor_(open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (descriptor_ < 0) return;
  try {
    held_ = is_locked(descriptor_, folder);
  } catch (const DiskError&) {
    close(descriptor_);
    throw;
  }
}

FolderLock::~FolderLock() {
  if (descriptor_ >= 0) close(descriptor_);
}

FileLock::FileLock(fs::path file, const std::function<void()>& tell) : file_(std::move(file)) {
  for (bool told = false;; told = true) {
    descriptor_ = open(file_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
    if (descriptor_ < 0) throw DiskError(file_, errno);
    try {
      held_ = flock(descriptor_, LOCK_EX | LOCK_NB) == 0;
      if (!held_ && errno == EWOULDBLOCK) {
        if (!told) tell();
        held_ = is_locked(descriptor_, file_);
      }
    } catch (...) {
      close(descriptor_);
      throw;
    }
    // Who held it before has taken the file away, and another may have made a new one.
    if (!held_ || is_open_as(descriptor_, file_)) return;
    close(descriptor_);
  }
}

FileLock::~FileLock() {
  if (held_) unlink(file_.c_str());
  close(descriptor_);
}

}  // namespace quoin::tools
