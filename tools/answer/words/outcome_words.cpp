// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/outcome_words.hpp"

#include <fmt/format.h>

#include "cases/text/utf8.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

using Kind = Outcome::Kind;

std::string wetness(const solver::Spot& spot, const std::string& where, const AirHumidity& air,
                    Kind kind) {
  const double has = spot.temperature.value;
  const int decimals = decimals_for({has, air.dew_point}, 1);
  if (kind == Kind::wet) {
    return fmt::format("{} °C at {}, {} K below the dew point of {} °C", fixed(has, decimals),
                       where, fixed(air.dew_point - has, decimals), fixed(air.dew_point, decimals));
  }
  return fmt::format("{} °C at {} and a dew point of {} °C are too near to tell apart: ± {} K",
                     fixed(has, decimals), where, fixed(air.dew_point, decimals),
                     fixed_band(spot.temperature.band, 2));
}

/// "82 % humidity at the angle, above 80 %".
std::string humidity_beside(const std::string& where, const Outcome& outcome,
                            const AirHumidity& air) {
  const double has = 100.0 * air.surface_humidity, limit = 100.0 * *outcome.limit;
  const int decimals = decimals_for({has, limit}, 0);
  return fmt::format("{} % humidity at {}, {} {} %", fixed(has, decimals), where,
                     has > limit ? "above" : "below", fixed(limit, decimals));
}

std::string factor_beside(const solver::Spot& spot, const std::string& where,
                          const Outcome& outcome) {
  const int decimals = decimals_for({spot.factor.value, *outcome.limit}, 2);
  return fmt::format("fRsi {} at {}, {} asked for", fixed(spot.factor.value, decimals), where,
                     fixed(*outcome.limit, decimals));
}

std::string what_is_missing(const SolvedVariant& solved, const solver::AirSurface& surface) {
  return fmt::format("the humidity of {} is not given{}", solved.variant.spaces[surface.air].name,
                     solved.variant.criteria.empty() ? ", and no fRsi is asked for" : "");
}

}  // namespace

std::string_view words_for(Kind kind) {
  switch (kind) {
    case Kind::wet:
      return "wet";
    case Kind::at_the_dew_point:
      return "at the dew point";
    case Kind::mould:
      return "mould";
    case Kind::fails:
      return "fails";
    case Kind::dry_first:
      return "dry first";
    case Kind::marginal:
      return "marginal";
    case Kind::safe:
      return "safe";
    case Kind::not_judged:
      return "not judged";
  }
  return "";
}

std::string limit_words(const Outcome& outcome) {
  if (!outcome.limit) return "";
  if (outcome.unit == "1") return fmt::format("fRsi {:.3g}", *outcome.limit);
  return fmt::format("{:.3g} %", 100.0 * *outcome.limit);
}

std::string badge(const Outcome& outcome) {
  const std::string words(words_for(outcome.kind));
  if (outcome.kind != Kind::fails) return words;
  return words + " " +
         (outcome.unit == "1" ? limit_words(outcome) : cases::shortened(outcome.decided_by, 24));
}

std::string words_for(const SolvedVariant& solved, const solver::AirSurface& surface,
                      const Outcome& outcome) {
  const solver::Spot& spot = surface.coldest;
  const std::string where = words_for(solved, spot);
  const AirHumidity* air = humidity_of(solved, surface.air);
  const std::string name(words_for(outcome.kind));
  if (outcome.kind == Kind::not_judged) return name + ": " + what_is_missing(solved, surface);
  if (outcome.unit == "K") return name + ": " + wetness(spot, where, *air, outcome.kind);
  const std::string by = outcome.unit == "1" ? factor_beside(spot, where, outcome)
                                             : humidity_beside(where, outcome, *air);
  switch (outcome.kind) {
    case Kind::fails:
      return fmt::format("{}: '{}' is not met: {}", name, outcome.decided_by, by);
    case Kind::dry_first:
      return fmt::format("{}: {}", name, gate(solved.variant));
    case Kind::marginal:
    case Kind::safe:
      return outcome.chance
                 ? fmt::format("{}: {}; passed {}", name, by, chance_words(*outcome.chance))
                 : fmt::format("{}: {}", name, by);
    default:
      return name + ": " + by;
  }
}

void put_into_words(SolvedVariant& solved) {
  for (Outcome& outcome : solved.outcomes) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      if (surface.air == outcome.space) outcome.words = words_for(solved, surface, outcome);
    }
  }
}

}  // namespace quoin::tools
