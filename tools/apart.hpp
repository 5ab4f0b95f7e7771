// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "tools/disk/file.hpp"

namespace quoin::tools {

/// Files made in a process of its own while this one goes on. The libraries that paint end their
/// process where the memory is not enough; so that is never ours.
class Apart {
 public:
  /// Begins. Call it while no other thread runs, and paint nothing before in this process: what
  /// letters are set with waits for ever for a thread that its copy lacks. Throws: PartError where
  /// there can be no process.
  explicit Apart(const std::function<std::vector<File>()>& make);
  Apart(const Apart&) = delete;
  Apart& operator=(const Apart&) = delete;
  ~Apart();

  /// Waits for the files; once. Throws: PartError, also where the process ended without them;
  /// std::bad_alloc where it had too little memory.
  [[nodiscard]] std::vector<File> files();

 private:
  int process_ = -1;
  int reading_ = -1;
};

}  // namespace quoin::tools
