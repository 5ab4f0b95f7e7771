// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::tools {

/// While one lives, the signals that ask the program to end (SIGINT, SIGTERM, SIGHUP) are only
/// noted, in every thread, so that what was begun can be finished or taken back. When the last one
/// goes, a noted signal takes its course. Signals that are ignored stay so. Threads may have some
/// at once, which may go in any order.
class HeldSignals {
 public:
  HeldSignals();
  HeldSignals(const HeldSignals&) = delete;
  HeldSignals& operator=(const HeldSignals&) = delete;
  ~HeldSignals();

  /// Whether one was noted since.
  [[nodiscard]] static bool noted();
};

}  // namespace quoin::tools
