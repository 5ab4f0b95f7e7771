// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/held_signals.hpp"

#include <utility>

namespace quoin::tools {
namespace {

volatile std::sig_atomic_t noted_signal = 0;

void note(int signal) { noted_signal = signal; }

}  // namespace

HeldSignals::HeldSignals() {
  noted_signal = 0;
  for (std::size_t k = 0; k < signals.size(); ++k) {
    sigaction(signals[k], nullptr, &before_[k]);
    if (before_[k].sa_handler == SIG_IGN) continue;
    struct sigaction noting {};  // without SA_RESTART: waiting for a lock ends too
    noting.sa_handler = note;
    sigaction(signals[k], &noting, nullptr);
  }
}

HeldSignals::~HeldSignals() {
  for (std::size_t k = 0; k < signals.size(); ++k) sigaction(signals[k], &before_[k], nullptr);
  const int signal = noted_signal;
  noted_signal = 0;
  if (signal != 0) std::raise(signal);
}

bool HeldSignals::noted() { return noted_signal != 0; }

}  // namespace quoin::tools
