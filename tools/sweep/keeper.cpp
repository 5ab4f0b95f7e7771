// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/keeper.hpp"

#include "tools/disk/disk_error.hpp"
#include "tools/sweep/sweep.hpp"

namespace quoin::tools {
namespace {

constexpr auto between_commits = std::chrono::milliseconds(500);
constexpr int most_tries_when_stopped = 100;  // each takes a tenth of a second

}  // namespace

void Keeper::note(const std::map<std::string, std::string>& tables) {
  for (const auto& [name, digest] : tables) {
    if (noted_.insert(name).second) store_.set_note(sweep_notes::table + name, digest);
  }
}

void Keeper::now_and_then() {
  const Clock::time_point now = Clock::now();
  if (now - committed_ >= between_commits && store_.commit()) committed_ = now;
}

void Keeper::to_the_end(const std::function<void()>& wait, const std::function<bool()>& stop) {
  for (int tries = 0; !store_.commit();) {
    if (stop() && ++tries == most_tries_when_stopped)
      throw DiskError(store_.file(),
                      "another program reads it all the while; the rows that were "
                      "solved meanwhile are not kept");
    wait();
  }
  committed_ = Clock::now();
}

}  // namespace quoin::tools
