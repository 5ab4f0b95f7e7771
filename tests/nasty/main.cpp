// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <cstdint>
#include <cstdlib>
#include <ctime>
#include <string>

#include "tests/nasty/judgement.hpp"
#include "tests/nasty/referee.hpp"

/// quoin_nasty COUNT [FIRST] solves so many nasty sections, prints what is wrong with each and the
/// slowest time; exit code 1 where anything is wrong. Bands that a referee finds missed are
/// counted: of the bands of points, which are estimates, one or two of a hundred may be. Processor
/// times are printed, not judged.
int main(int argc, char** argv) {
  using quoin::testing::NastySection;
  const std::uint64_t count = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 300;
  const std::uint64_t first = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 0;
  std::uint64_t faulty = 0, not_reached = 0, slow = 0, bands = 0, missed = 0;
  double slowest = 0.0;
  for (std::uint64_t seed = first; seed < first + count; ++seed) {
    const NastySection section = quoin::testing::nasty_section(seed);
    const std::clock_t start = std::clock();
    quoin::testing::Judgement judgement = quoin::testing::judgement_of(section.problem);
    const double took = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    slowest = std::max(slowest, took);
    if (judgement.faults.empty()) judgement.faults = quoin::testing::colder_spots(section.problem);
    if (took > 2.0) ++slow;
    if (!judgement.accurate) ++not_reached;
    if (!judgement.faults.empty()) ++faulty;
    quoin::testing::Refereed referee;
    if (judgement.faults.empty()) referee = quoin::testing::refereed(section.problem, seed);
    bands += referee.bands;
    missed += referee.misses.size();
    if (judgement.faults.empty() && judgement.accurate && took < 1.0 && referee.misses.empty())
      continue;
    fmt::print("{:4} {:30} {:6.2f} s {:8} nodes{}", seed, section.family, took, judgement.nodes,
               judgement.accurate ? "" : ", not reached");
    for (const std::string& fault : judgement.faults) fmt::print("  !! {}", fault);
    for (const std::string& miss : referee.misses) fmt::print("  ? {}", miss);
    fmt::print("\n");
    std::fflush(stdout);
  }
  fmt::print(
      "{} sections: {} faulty, {} not reached, {} over 2 s, slowest {:.2f} s, {} of {} bands "
      "missed\n",
      count, faulty, not_reached, slow, slowest, missed, bands);
  return faulty == 0 ? 0 : 1;
}
