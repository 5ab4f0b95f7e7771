// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "materials/moist_air.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/year_words.hpp"

namespace quoin::tools {
namespace {

using Months = std::vector<std::size_t>;

/// "In June to August", "All year".
std::string when(const Months& months) {
  return months.size() == 12 ? "All year" : "In " + runs_of(months);
}

template <class Condition>
Months months_where(Condition holds) {
  Months months;
  for (std::size_t month = 0; month < 12; ++month) {
    if (holds(month)) months.push_back(month);
  }
  return months;
}

/// The month out of reach for a fabric, as warm as the air itself, and what helps there; empty
/// where there is none.
std::string beyond_fabric(const cases::Space& room, const YearOfCriterion& judged) {
  const auto& needed = judged.monthly_factor_needed;  // NaN is never more than 1
  const Months beyond = months_where([&](std::size_t month) { return needed[month] > 1.0; });
  if (beyond.empty()) return {};
  std::string text = fmt::format(
      " {} it needs more than fRsi 1, which no fabric has: the air is too humid even for a surface "
      "as warm as the room. Only drier air helps, by more air change or less moisture given off",
      when(beyond));
  const auto* production =
      room.moisture ? std::get_if<materials::MoistureProduction>(&*room.moisture) : nullptr;
  if (production != nullptr && !production->summer_air_change)
    text += "; where windows stand open in summer, state `summer air change`";
  text += ".";
  std::size_t worst = 12;
  for (std::size_t month = 0; month < 12; ++month) {
    if (needed[month] <= 1.0 && (worst == 12 || needed[month] > needed[worst])) worst = month;
  }
  if (worst != 12)
    text += fmt::format(" Of the other months {} needs most, fRsi {:.2f}.", month_name(worst),
                        needed[worst]);
  return text;
}

/// The months at risk in which it is no warmer inside than outside; empty where there is none.
std::string humid_summer(const Year& year, const Months& at_risk) {
  Months humid;
  for (const std::size_t month : at_risk) {
    const MonthAir& air = year.months[month];
    if (air.inside_temperature <= air.outside_temperature) humid.push_back(month);
  }
  if (humid.empty()) return "";
  return fmt::format(
      " {} it is no warmer inside than outside: there the air is humid, no surface is cold.",
      when(humid));
}

std::string criterion_words(const SolvedVariant& solved, const Year& year,
                            const YearOfCriterion& judged) {
  const SpotYear& coldest = year.spots.front();
  const std::string beyond = beyond_fabric(solved.variant.spaces[year.air], judged);
  std::string text = fmt::format("{}: ", judged.criterion);
  if (std::isnan(judged.factor_needed)) return text + "it is never warmer inside than outside.";
  const double has = coldest.spot.factor.value;
  const int decimals = decimals_for({judged.factor_needed, has}, 2);
  text += fmt::format("{} needs most, fRsi {}; {} has {}", month_name(judged.critical_month),
                      fixed(judged.factor_needed, decimals), words_for(solved, coldest.spot),
                      fixed(has, decimals));
  const Months& months = judged.months_at_risk.front();
  if (months.empty()) return text + " and is safe all year." + beyond;
  text += months.size() == 12 ? " and is at risk all year"
                              : fmt::format(" and is at risk in {} of 12 months, {}", months.size(),
                                            runs_of(months));
  for (std::size_t s = 1; s < year.spots.size(); ++s) {
    if (judged.months_at_risk[s].empty()) continue;
    text += fmt::format("; {} in {}", words_for(solved, year.spots[s].spot),
                        judged.months_at_risk[s].size());
  }
  return text + "." + humid_summer(year, months) + beyond;
}

/// A threshold of fRsi, the same all year, beside what the months need.
std::string threshold_words(const cases::Criterion& criterion, double threshold,
                            const YearOfCriterion& judged) {
  if (std::isnan(judged.factor_needed))
    return fmt::format("{}: fRsi {:.3g} all year.", criterion.name, threshold);
  const int decimals = decimals_for({threshold, judged.factor_needed}, 2);
  return fmt::format(
      "{}: fRsi {} all year, {} than the {} that {} needs by {}.", criterion.name,
      fixed(threshold, decimals), threshold < judged.factor_needed ? "less" : "no less",
      fixed(judged.factor_needed, decimals), month_name(judged.critical_month), judged.criterion);
}

/// The months in which the household gives off more than the air can hold.
std::string cut_short(const SolvedVariant& solved, const Year& year) {
  const cases::Space& room = solved.variant.spaces[year.air];
  if (!room.moisture || solved.variant.climate->inside_humidity) return {};
  const Months months = months_where([&](std::size_t month) {
    const MonthAir& air = year.months[month];
    return materials::inside_humidity(*room.moisture, air.inside_temperature,
                                      air.outside_temperature, air.outside_humidity) > 1.0;
  });
  if (months.empty()) return {};
  const Months from_outside = months_where([&](std::size_t month) {
    const MonthAir& air = year.months[month];
    return air.outside_pressure >= materials::saturation_pressure(air.inside_temperature);
  });
  std::string text;
  if (!from_outside.empty()) {
    text += fmt::format(
        " {} the air outside alone holds more vapour than air as cool as the room can: 100 % is "
        "taken.",
        when(from_outside));
  }
  Months by_household;
  std::set_difference(months.begin(), months.end(), from_outside.begin(), from_outside.end(),
                      std::back_inserter(by_household));
  if (by_household.empty()) return text;
  return text + fmt::format(
                    " {} the household gives off more than the air can hold: 100 % is taken, and "
                    "the windows and walls run wet.",
                    when(by_household));
}

}  // namespace

std::string runs_of(const Months& months) {
  if (months.size() == 12) return "all year";
  const auto has = [&](std::size_t month) {
    return std::find(months.begin(), months.end(), month % 12) != months.end();
  };
  std::string text;
  for (const std::size_t first : months) {
    if (has(first + 11)) continue;  // not the first of its run
    std::size_t last = first;
    while (has(last + 1)) ++last;
    text += (text.empty() ? "" : ", ") + std::string(month_name(first));
    if (last != first) text += fmt::format(" to {}", month_name(last % 12));
  }
  return text;
}

std::string words_for(const SolvedVariant& solved, const Year& year) {
  std::string text;
  for (const YearOfCriterion& judged : year.criteria)
    text += (text.empty() ? "" : " ") + criterion_words(solved, year, judged);
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    if (const auto* test = std::get_if<cases::FactorThreshold>(&criterion.test))
      text += " " + threshold_words(criterion, test->threshold, year.criteria.front());
  }
  return text + cut_short(solved, year);
}

}  // namespace quoin::tools
