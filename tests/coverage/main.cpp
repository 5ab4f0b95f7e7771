// SPDX-License-Identifier: Apache-2.0
// How often ranges hold the truth of made-up surveys, as a table. Long.
//
// usage: quoin_coverage [SURVEYS OF EACH KIND] [FIRST SEED]
#include <fmt/format.h>

#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "tests/coverage/coverage.hpp"

namespace {

using quoin::cases::ExplanationKind;
using quoin::testing::Detail;
using quoin::testing::Recipe;
using quoin::testing::Wrong;

struct Kind {
  const char* name;
  Recipe recipe;
};

const std::vector<Kind> kinds{
    {"corner 225, better", {Detail::corner_225, ExplanationKind::conducts_better}},
    {"corner 225, less", {Detail::corner_225, ExplanationKind::conducts_less}},
    {"corner 225, as drawn", {Detail::corner_225, ExplanationKind::as_drawn}},
    {"corner 225, covered", {Detail::corner_225, ExplanationKind::covered}},
    {"corner 225, both", {Detail::corner_225, ExplanationKind::better_and_covered}},
    {"corner 225, thermometer", {Detail::corner_225, ExplanationKind::thermometer_off}},
    {"corner 225, colder", {Detail::corner_225, ExplanationKind::colder_outside}},
    {"corner 327, better", {Detail::corner_327, ExplanationKind::conducts_better}},
    {"corner 327, as drawn", {Detail::corner_327, ExplanationKind::as_drawn}},
    {"corner 500, better", {Detail::corner_500, ExplanationKind::conducts_better}},
    {"wall 225, better", {Detail::wall_225, ExplanationKind::conducts_better}},
    {"wall 225, less", {Detail::wall_225, ExplanationKind::conducts_less}},
    {"better, few", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::nothing, true}},
    {"better, rough", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::rough}},
    {"better, wild", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::wild}},
    {"better, 1 K off", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::thermometer}},
    {"better, 300 of 560", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::extent}},
    {"better, Rsi 2 sd", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::resistance}},
    {"better, afternoon", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::afternoon}},
    {"better, graded", {Detail::corner_225, ExplanationKind::conducts_better, Wrong::graded}},
    {"as drawn, rough", {Detail::corner_225, ExplanationKind::as_drawn, Wrong::rough}},
    {"as drawn, wild", {Detail::corner_225, ExplanationKind::as_drawn, Wrong::wild}},
    {"as drawn, afternoon", {Detail::corner_225, ExplanationKind::as_drawn, Wrong::afternoon}},
};

}  // namespace

int main(int count, char** words) {
  const auto number = [&](int k, unsigned long otherwise) {
    return count > k ? std::strtoul(words[k], nullptr, 10) : otherwise;
  };
  const std::size_t surveys = number(1, 300);
  const auto first = static_cast<std::uint32_t>(number(2, 1));
  std::cout
      << "kind                     told ratio conductivity fRsi  best put aside named right\n";
  for (const Kind& kind : kinds) {
    const auto found = quoin::testing::coverage_of(kind.recipe, surveys, first);
    std::cout << fmt::format(
                     "{:24} {:4} {:5.2f} {:12.2f} {:4.2f}  {:4.2f} {:9.2f} {:5.2f} {:5.2f}\n",
                     kind.name, found.told, found.share(found.ratio),
                     found.share(found.conductivity), found.share(found.factor),
                     found.share(found.best_right), found.share(found.put_aside),
                     found.share(found.named),
                     found.named == 0 ? 1.0
                                      : static_cast<double>(found.named_right) /
                                            static_cast<double>(found.named))
              << std::flush;
  }
}
