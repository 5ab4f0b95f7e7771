// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/folder_lock.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <cerrno>

#include "tools/disk/disk_error.hpp"
#include "tools/disk/held_signals.hpp"

namespace quoin::tools {

FolderLock::FolderLock(const std::filesystem::path& folder)
    : descriptor_(open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
  if (descriptor_ < 0) return;
  int failed = flock(descriptor_, LOCK_EX);
  while (failed != 0 && errno == EINTR && !HeldSignals::noted()) {
    failed = flock(descriptor_, LOCK_EX);
  }
  if (failed != 0 && errno == EINTR) {
    close(descriptor_);
    throw DiskError(folder, EINTR);
  }
  held_ = failed == 0;
}

FolderLock::~FolderLock() {
  if (descriptor_ >= 0) close(descriptor_);
}

}  // namespace quoin::tools
