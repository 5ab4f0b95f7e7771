// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/household_doubt.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tools/answer/survey/chance_words.hpp"
#include "tools/answer/survey/chances.hpp"
#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

/// What a week's log leaves uncertain of humidity, 95 %; common practice, no source.
constexpr double logged = 0.03;

bool is_open(const Chance& chance) {
  const Degree degree = degree_of(chance.broken);
  return degree == Degree::marginal || degree == Degree::likely;
}

/// How far the margin goes with the humidity, in its unit; 0 where it does not.
double reach_of_humidity(const Chance& chance) {
  for (const TornadoBar& bar : chance.tornado) {
    if (bar.of == InputOf::humidity) return std::abs(bar.high - bar.low);
  }
  return 0.0;
}

}  // namespace

void tell_household_doubt(const std::vector<const SolvedVariant*>& variants,
                          const cases::Household& household, SurveyFindings& findings) {
  if (!concludes(findings)) return;
  const SolvedVariant* where = nullptr;
  const Chance* widest = nullptr;
  for (const SolvedVariant* solved : variants) {
    for (const Chance& chance : solved->chances) {
      if (!is_open(chance)) continue;
      if (!household_carries(chance)) return;
      if (widest != nullptr && reach_of_humidity(chance) <= reach_of_humidity(*widest)) continue;
      where = solved;
      widest = &chance;
    }
  }
  if (widest == nullptr || reach_of_humidity(*widest) == 0.0) return;
  const cases::Space& room = where->variant.spaces[widest->space];
  const double spread = room.humidity_spread.value_or(household.humidity);
  if (spread <= logged) return;
  const double now = reach_of_humidity(*widest), then = now * logged / spread;
  const std::string words = fmt::format(
      "Whether '{}' holds hangs on the household: log the room's humidity, not the wall. A week of "
      "it in {} would narrow the margin from {:.2g} to about {:.2g} {}.",
      widest->criterion, room.name, now, then, widest->unit == "1" ? "of fRsi" : widest->unit);
  findings.next.insert(findings.next.begin(),
                       {"humidity of the room for a week", "margin", now, then, words});
  const std::size_t last = findings.words.empty() ? 0 : findings.words.size() - 1;
  findings.words.insert(findings.words.begin() + static_cast<std::ptrdiff_t>(last), words);
}

}  // namespace quoin::tools
