// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <csignal>

#include <array>

namespace quoin::tools {

/// While one lives, the signals that ask the program to end (SIGINT, SIGTERM, SIGHUP) are only
/// noted, in every thread, so that what was begun can be finished or taken back. When it goes, a
/// noted signal takes its course. Signals that are ignored stay so. One at a time.
class HeldSignals {
 public:
  HeldSignals();
  HeldSignals(const HeldSignals&) = delete;
  HeldSignals& operator=(const HeldSignals&) = delete;
  ~HeldSignals();

  /// Whether one was noted since.
  [[nodiscard]] static bool noted();

 private:
  static constexpr std::array<int, 3> signals{SIGINT, SIGTERM, SIGHUP};
  std::array<struct sigaction, signals.size()> before_{};
};

}  // namespace quoin::tools
