// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <csignal>
#include <optional>

#include "tools/disk/held_signals.hpp"

namespace {

using quoin::tools::HeldSignals;

volatile std::sig_atomic_t ends = 0;
void end(int) { ends = ends + 1; }

/// The test's own way to end, in place of that of the runner of the tests.
class OwnEnd {
 public:
  OwnEnd() {
    ends = 0;
    struct sigaction own {};
    own.sa_handler = end;
    sigaction(SIGTERM, &own, &before_);
  }
  OwnEnd(const OwnEnd&) = delete;
  OwnEnd& operator=(const OwnEnd&) = delete;
  ~OwnEnd() { sigaction(SIGTERM, &before_, nullptr); }

 private:
  struct sigaction before_ {};
};

TEST_CASE("a held signal takes its course once nothing holds it any more") {
  const OwnEnd own;
  {
    const HeldSignals held;
    std::raise(SIGTERM);
    CHECK(HeldSignals::noted());
    CHECK(ends == 0);
  }
  CHECK(ends == 1);
  CHECK_FALSE(HeldSignals::noted());
}

TEST_CASE("signals held twice are let go by the last that goes whatever the order") {
  const OwnEnd own;
  std::optional<HeldSignals> first, second;
  first.emplace();
  second.emplace();
  first.reset();
  std::raise(SIGTERM);
  CHECK(ends == 0);
  second.reset();
  CHECK(ends == 1);
  // What was done on the signal before is done again.
  std::raise(SIGTERM);
  CHECK(ends == 2);
}

}  // namespace
