// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <functional>
#include <map>
#include <set>
#include <string>

#include "tools/sweep/store.hpp"

namespace quoin::tools {

/// Puts rows into the file of a part and makes sure, at least once a second, that they stay.
/// Whoever reads the file meanwhile stops nobody: what cannot be made sure of now is tried again
/// later.
class Keeper {
 public:
  explicit Keeper(SweepStore& store) : store_(store) {}

  void add(const StoredRow& row) { store_.add(row); }
  /// Notes the files that rows name, by digest: as they were when this run first read them, so that
  /// one that changes meanwhile is found to have changed.
  void note(const std::map<std::string, std::string>& tables);

  /// Makes sure of what there is, if that was last done a while ago.
  void now_and_then();
  /// Makes sure of all; calls `wait` as often as that has to be tried again. Throws: DiskError
  /// where it is asked to stop and still cannot.
  void to_the_end(const std::function<void()>& wait, const std::function<bool()>& stop);

 private:
  using Clock = std::chrono::steady_clock;
  SweepStore& store_;
  std::set<std::string> noted_;
  Clock::time_point committed_ = Clock::now();
};

}  // namespace quoin::tools
