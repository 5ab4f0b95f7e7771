// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/chance_words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <variant>

namespace quoin::tools {
namespace {

constexpr double decided = 0.01;  ///< a chance that is as good as none, or as certain

/// What happens where the criterion is broken.
std::string breaking(const materials::Test& test) {
  if (const auto* limit = std::get_if<materials::SurfaceHumidityLimit>(&test))
    return fmt::format("the coldest surface would exceed {:.0f} %", 100 * limit->limit);
  if (std::holds_alternative<materials::CriticalHumidity>(test))
    return "the coldest surface would be damp enough for mould";
  return fmt::format("fRsi would fall below {:.2f}",
                     std::get<materials::FactorThreshold>(test).threshold);
}

}  // namespace

std::string of_100(double chance) {
  if (chance < decided) return "in fewer than 1 of 100 cases";
  if (chance > 1.0 - decided) return "in more than 99 of 100 cases";
  return fmt::format("in {:.0f} of 100 cases", 100 * chance);
}

bool household_carries(const Chance& chance) {
  constexpr double nearly_all = 0.75;
  if (chance.broken < decided || chance.broken > 1.0 - decided) return false;
  double household = 0.0;
  for (const ChanceShare& one : chance.shares)
    household += one.of == InputOf::fabric ? 0.0 : one.share;
  return household > nearly_all;
}

std::string chance_words(const cases::Variant& variant, const Chance& chance,
                         const cases::Criterion& criterion, const ChanceAir& air) {
  const std::string& room = variant.spaces[chance.space].name;
  std::string words;
  if (materials::needs_humidity(criterion.test)) {
    words =
        fmt::format("With {} at {:.0f} % give or take {:.0f}: {} {}; with the air as stated {}.",
                    room, 100 * air.humidity, 100 * air.spread, of_100(chance.broken),
                    breaking(criterion.test), of_100(chance.fabric));
  } else {
    words = fmt::format("{} {} in {}.", of_100(chance.broken), breaking(criterion.test), room);
    words[0] = 'I';
  }
  if (air.by_months)
    words += fmt::format(" Over the months of the climate: {}.", of_100(*air.by_months));
  if (chance.highest_safe_humidity)
    words += fmt::format(" Safe up to {:.0f} % with 9 in 10 certainty.",
                         std::floor(100 * *chance.highest_safe_humidity + 1e-9));
  if (household_carries(chance))
    words += " The doubt is in the household: log the room's humidity, not the wall.";
  return words;
}

}  // namespace quoin::tools
