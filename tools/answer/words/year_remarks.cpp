// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/year_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/year_words.hpp"

namespace quoin::tools {
namespace {

std::string words_for_water(const cases::Space& space) {
  const bool claimed = std::holds_alternative<materials::EvaporationRate>(*space.evaporation);
  return fmt::format(
      "in every month of the climate the surfaces of '{}' are taken to lose as much water as {}, "
      "like air of {:.1f} K less: less leaves in cold and damp months",
      space.name, claimed ? "claimed" : "in the weather as stated", cooling_by_water(space));
}

/// Whether a limit holds in a room in the air as stated.
bool holds_as_stated(const SolvedVariant& solved, SpaceId room, const std::string& criterion) {
  const Outcome* outcome = outcome_of(solved, room);
  if (outcome == nullptr || outcome->kind <= Outcome::Kind::at_the_dew_point) return false;
  return std::none_of(outcome->broken.begin(), outcome->broken.end(),
                      [&](const BrokenLimit& each) { return each.criterion == criterion; });
}

/// A limit that is kept in the air as stated and passed in months of the climate.
std::string words_for_months(const SolvedVariant& solved, const Year& year,
                             const YearOfCriterion& judged) {
  const std::vector<std::size_t>& months = judged.months_at_risk.front();
  if (months.empty() || !holds_as_stated(solved, year.air, judged.criterion)) return "";
  return fmt::format(
      "'{}' is kept at {} of {} in the air as stated, which the outcome tells, but passed there in "
      "{} of 12 months of the climate: {}",
      judged.criterion, words_for(solved, year.spots.front().spot),
      solved.variant.spaces[year.air].name, months.size(), runs_of(months));
}

}  // namespace

std::vector<std::string> year_remarks(const SolvedVariant& solved) {
  std::vector<std::string> remarks;
  if (!solved.variant.climate) return remarks;
  for (const cases::Space& space : solved.variant.spaces) {
    if (space.evaporation && cooling_by_water(space) != 0.0)
      remarks.push_back(words_for_water(space));
    if (space.sky) {
      remarks.push_back(fmt::format(
          "the months of the climate leave the clear sky of '{}' out: a clear night is no mean of "
          "a month",
          space.name));
    }
  }
  for (const Year& year : solved.years) {
    for (const YearOfCriterion& judged : year.criteria) {
      if (year.spots.empty()) continue;
      if (std::string text = words_for_months(solved, year, judged); !text.empty())
        remarks.push_back(std::move(text));
    }
  }
  if (solved.years.empty() && !solved.vapour && !solved.drying) {
    remarks.emplace_back(
        "nothing is said of the year: no space inside has a humidity. State `humidity`, `humidity "
        "class` or another source of it there, or `inside humidity` in the climate");
  }
  return remarks;
}

}  // namespace quoin::tools
