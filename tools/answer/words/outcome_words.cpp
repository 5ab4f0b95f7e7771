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
std::string humidity_beside(const std::string& where, const Outcome& outcome) {
  const double has = 100.0 * outcome.has, limit = 100.0 * *outcome.limit;
  const int decimals = decimals_for({has, limit}, 0);
  return fmt::format("{} % humidity at {}, {} {} %", fixed(has, decimals), where,
                     has > limit ? "above" : "below", fixed(limit, decimals));
}

std::string factor_beside(const std::string& where, const Outcome& outcome) {
  const int decimals = decimals_for({outcome.has, *outcome.limit}, 2);
  return fmt::format("fRsi {} at {}, {} asked for", fixed(outcome.has, decimals), where,
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

std::string_view word_for(Tone tone) {
  switch (tone) {
    case Tone::good:
      return "good";
    case Tone::doubtful:
      return "doubtful";
    case Tone::bad:
      return "bad";
    default:
      return "plain";
  }
}

std::string deciders(const Outcome& outcome) {
  if (outcome.kind != Kind::fails) return outcome.decided_by;
  std::string names;
  for (const BrokenLimit& each : outcome.broken)
    names += (names.empty() ? "" : ", ") + each.criterion;
  return names;
}

std::string badge(const Outcome& outcome) {
  std::string words(words_for(outcome.kind));
  if (outcome.kind != Kind::fails) return words;
  for (std::size_t k = 0; k < outcome.broken.size(); ++k) {
    const BrokenLimit& each = outcome.broken[k];
    words += (k == 0 ? " " : ", ") + (each.unit == "1" ? fmt::format("fRsi {:.3g}", each.limit)
                                                       : cases::shortened(each.criterion, 24));
  }
  return words;
}

std::string words_for(const BrokenLimit& limit) {
  if (limit.unit == "1") {
    const int decimals = decimals_for({limit.has, limit.limit}, 2);
    return fmt::format("'{}' (fRsi {}, where {} is asked for)", limit.criterion,
                       fixed(limit.has, decimals), fixed(limit.limit, decimals));
  }
  const int decimals = decimals_for({100 * limit.has, 100 * limit.limit}, 0);
  return fmt::format("'{}' ({} % humidity there, where {} % is the most)", limit.criterion,
                     fixed(100 * limit.has, decimals), fixed(100 * limit.limit, decimals));
}

std::vector<BrokenLimit> also_broken(const Outcome& outcome) {
  // Who is wet, or has mould, need not be told that a limit against mould is passed, too.
  const bool told = outcome.kind == Kind::wet || outcome.kind == Kind::at_the_dew_point ||
                    outcome.kind == Kind::mould;
  std::vector<BrokenLimit> others;
  for (const BrokenLimit& each : outcome.broken) {
    if (each.criterion != outcome.decided_by && !(told && each.for_mould)) others.push_back(each);
  }
  return others;
}

std::string words_for(const SolvedVariant& solved, const solver::AirSurface& surface,
                      const Outcome& outcome) {
  const solver::Spot& spot = surface.coldest;
  const std::string where = words_for(solved, spot);
  const AirHumidity* air = humidity_of(solved, surface.air);
  const std::string name(words_for(outcome.kind));
  std::string besides;
  for (const BrokenLimit& each : also_broken(outcome)) besides += "; nor is met " + words_for(each);
  if (outcome.kind == Kind::not_judged) return name + ": " + what_is_missing(solved, surface);
  if (outcome.unit == "K") return name + ": " + wetness(spot, where, *air, outcome.kind) + besides;
  const std::string by =
      outcome.unit == "1" ? factor_beside(where, outcome) : humidity_beside(where, outcome);
  switch (outcome.kind) {
    case Kind::fails:
      return fmt::format("{}: '{}' is not met: {}{}", name, outcome.decided_by, by, besides);
    case Kind::dry_first:
      return fmt::format("{}: {}", name, gate(solved.variant));
    case Kind::marginal:
    case Kind::safe:
      return outcome.chance
                 ? fmt::format("{}: {}; passed {}", name, by, chance_words(*outcome.chance))
                 : fmt::format("{}: {}", name, by);
    default:
      return name + ": " + by + besides;
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
