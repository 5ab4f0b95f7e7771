// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>

namespace quoin::tools {

/// Held by one run at a time on an existing folder; others wait. It goes with the process, however
/// that ends, and leaves nothing on the disk.
class FolderLock {
 public:
  /// Throws: DiskError where a signal that HeldSignals notes ends the waiting.
  explicit FolderLock(const std::filesystem::path& folder);
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;
  ~FolderLock();

  /// False where the folder cannot be read or its disk knows no locks.
  [[nodiscard]] bool held() const { return held_; }

 private:
  int descriptor_;
  bool held_ = false;
};

}  // namespace quoin::tools
