// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/held_signals.hpp"

#include <array>
#include <csignal>
#include <cstddef>
#include <mutex>

namespace quoin::tools {
namespace {

constexpr std::array<int, 3> signals{SIGINT, SIGTERM, SIGHUP};

volatile std::sig_atomic_t noted_signal = 0;

void note(int signal) { noted_signal = signal; }

/// What all that live share: how many they are, and what was done on signals before the first.
struct Shared {
  std::mutex mutex;
  int holders = 0;
  std::array<struct sigaction, signals.size()> before{};
};

Shared& shared() {
  static Shared all;
  return all;
}

}  // namespace

HeldSignals::HeldSignals() {
  Shared& all = shared();
  const std::lock_guard guard(all.mutex);
  if (all.holders++ > 0) return;
  noted_signal = 0;
  for (std::size_t k = 0; k < signals.size(); ++k) {
    sigaction(signals[k], nullptr, &all.before[k]);
    if (all.before[k].sa_handler == SIG_IGN) continue;
    struct sigaction noting {};  // without SA_RESTART: waiting for a lock ends too
    noting.sa_handler = note;
    sigaction(signals[k], &noting, nullptr);
  }
}

HeldSignals::~HeldSignals() {
  int signal = 0;
  {
    Shared& all = shared();
    const std::lock_guard guard(all.mutex);
    if (--all.holders > 0) return;
    for (std::size_t k = 0; k < signals.size(); ++k) sigaction(signals[k], &all.before[k], nullptr);
    signal = noted_signal;
    noted_signal = 0;
  }
  if (signal != 0) std::raise(signal);
}

bool HeldSignals::noted() { return noted_signal != 0; }

}  // namespace quoin::tools
