// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <functional>

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

/// Held by one run at a time on what a file stands for; others wait. The file is empty. It goes
/// with the lock; one that a killed run left is in no one's way.
class FileLock {
 public:
  /// `tell` is called before it waits, if it has to. Throws: DiskError where the file cannot be
  /// made or a signal that HeldSignals notes ends the waiting.
  FileLock(std::filesystem::path file, const std::function<void()>& tell);
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  ~FileLock();

  /// False where the disk knows no locks.
  [[nodiscard]] bool held() const { return held_; }

 private:
  std::filesystem::path file_;
  int descriptor_ = -1;
  bool held_ = false;
};

}  // namespace quoin::tools
