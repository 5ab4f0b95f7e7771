// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/advice.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "cases/text/sentences.hpp"
#include "materials/moist_air.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/advised_steps.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/answer/words/remedy.hpp"

namespace quoin::tools {
namespace {

using Kind = Outcome::Kind;

/// Better outcomes are more; what is not judged recommends nothing.
int worth(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  if (worst == nullptr || worst->kind == Kind::not_judged) return -1;
  return static_cast<int>(worst->kind);
}

double chance_in(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  return worst == nullptr ? 0.0 : worst->chance.value_or(0.0);
}

std::size_t best_of(const std::vector<SolvedVariant>& variants) {
  std::size_t best = 0;
  for (std::size_t v = 1; v < variants.size(); ++v) {
    if (!is_remedy(variants.front(), variants[v])) continue;
    const int by = worth(variants[v]) - worth(variants[best]);
    constexpr double noticeable = 0.01;  // of the chance
    if (by > 0 || (by == 0 && worth(variants[v]) >= 0 &&
                   chance_in(variants[v]) < chance_in(variants[best]) - noticeable)) {
      best = v;
    }
  }
  return best;
}

/// "gets wet: 8.7 °C, where 11.1 °C is needed to stay dry and 14.5 °C against mould".
std::string beside_its_limits(const SolvedVariant& solved, const solver::AirSurface& surface,
                              const AirHumidity& air, const Outcome& outcome) {
  const cases::Space& room = solved.variant.spaces[outcome.space];
  const double has = surface.coldest.temperature.value;
  // Mould is told by its own limit, even where another asks for more.
  const bool mould = outcome.kind == Kind::mould;
  const double limit = mould ? *outcome.limit : air.limit;
  const std::string by = mould ? outcome.decided_by : air.limit_by;
  const double needed = by == air.limit_by ? air.lowest_temperature
                                           : materials::lowest_safe_surface_temperature(
                                                 room.temperature, air.humidity, limit);
  const bool against_mould = std::abs(limit - 0.8) < 1e-6;
  const std::string what = outcome.kind == Kind::wet                ? "gets wet"
                           : outcome.kind == Kind::at_the_dew_point ? "is at the dew point"
                           : mould && has < 0.0 ? "freezes, and is too humid for its limit"
                           : mould && needed >= room.temperature
                               ? "is in air too humid for a surface as warm as the room"
                           : mould                          ? "is cold enough for mould"
                           : outcome.kind != Kind::marginal ? "is safe"
                           : against_mould                  ? "only just stays free of mould"
                                                            : "only just keeps its limits";
  const std::string against =
      against_mould ? "against mould" : fmt::format("for the {:.3g} % of '{}'", 100 * limit, by);
  const int decimals = decimals_for({has, air.dew_point, needed}, 1);
  return fmt::format("{}: {} °C, where {} °C is needed to stay dry and {} °C {}", what,
                     fixed(has, decimals), fixed(air.dew_point, decimals), fixed(needed, decimals),
                     against);
}

/// What is said of mould where another limit is broken; empty where a limit of humidity is.
std::string limit_kept(const solver::AirSurface& surface, const AirHumidity& air,
                       const Outcome& outcome) {
  const double has = surface.coldest.temperature.value;
  if (has < air.lowest_temperature) return "";
  const bool against_mould = std::abs(air.limit - 0.8) < 1e-6;
  const int decimals = decimals_for({has, air.lowest_temperature}, 1);
  std::string text = fmt::format(
      " In the air as stated it {}: {} °C, where {} °C is needed",
      against_mould ? "stays free of mould"
                    : fmt::format("keeps the {:.3g} % of '{}'", 100 * air.limit, air.limit_by),
      fixed(has, decimals), fixed(air.lowest_temperature, decimals));
  if (outcome.chance && *outcome.chance > marginal_chance)
    text += fmt::format("; but {} it is too humid there", chance_words(*outcome.chance));
  return text + ".";
}

/// What a met or missed fRsi leaves open where the humidity of the room is not known.
std::string not_looked_at(const std::string& room, const AirHumidity* air) {
  return air != nullptr ? ""
                        : fmt::format(
                              " Whether it gets wet or mouldy is not judged: the humidity of {} is "
                              "not given.",
                              room);
}

std::string what_happens(const SolvedVariant& first, const Outcome& outcome) {
  const solver::AirSurface& surface = surface_of(first, outcome.space);
  const AirHumidity* air = humidity_of(first, outcome.space);
  const std::string where = cases::capital(words_for(first, surface.coldest));
  const std::string room = first.outcomes.size() > 1
                               ? fmt::format(" of {}", first.variant.spaces[outcome.space].name)
                               : "";
  if (outcome.kind == Kind::not_judged || (air == nullptr && outcome.unit != "1"))
    return cases::capital(outcome.words) + ".";
  if (outcome.kind == Kind::dry_first) return cases::capital(outcome.words) + ".";
  const std::string silent = not_looked_at(first.variant.spaces[outcome.space].name, air);
  if (outcome.kind == Kind::fails) {
    std::vector<std::string> all;
    for (const BrokenLimit& each : outcome.broken) all.push_back(words_for(each));
    return fmt::format("{}{} does not meet {}.{}", where, room, fmt::join(all, " nor "),
                       air == nullptr ? silent : limit_kept(surface, *air, outcome));
  }
  std::vector<std::string> others;
  for (const BrokenLimit& each : also_broken(outcome)) others.push_back(words_for(each));
  const std::string besides =
      others.empty()       ? ""
      : others.size() == 1 ? fmt::format(" It does not meet {} either.", others.front())
                           : fmt::format(" It meets neither {}.", fmt::join(others, " nor "));
  if (outcome.unit == "1") {
    const int decimals = decimals_for({outcome.has, *outcome.limit}, 2);
    return fmt::format("{}{} {}meets '{}': fRsi {}, where {} is asked for.{}{}", where, room,
                       outcome.kind == Kind::marginal ? "only just " : "", outcome.decided_by,
                       fixed(outcome.has, decimals), fixed(*outcome.limit, decimals), besides,
                       silent);
  }
  return fmt::format("{}{} {}.{}", where, room, beside_its_limits(first, surface, *air, outcome),
                     besides);
}

std::string what_mends(const Results& results, std::size_t chosen, const Outcome& now) {
  if (now.kind == Kind::safe && chosen == 0) return "";
  if (results.variants.size() == 1)
    return now.kind == Kind::not_judged ? "" : " The case shows no variant that would mend it.";
  if (chosen == 0) return " No variant of this case mends it.";
  const SolvedVariant& best = results.variants[chosen];
  const Outcome& then = *worst_outcome(best);
  std::string text = fmt::format(" With \"{}\" the coldest spot is at {} °C: {}", best.variant.name,
                                 fixed(coldest_in(best), 1), badge(then));
  if (then.chance && (then.kind == Kind::marginal || then.kind == Kind::safe))
    text += fmt::format(", its limit passed {}", chance_words(*then.chance));
  if (tone_of(then.kind) == Tone::bad) text += ", which does not mend it";
  if (const auto humidity = drier_air(best); humidity && safe_when_drier(best))
    text += fmt::format("; with {} never above {:.0f} % it would be safe",
                        best.variant.spaces[then.space].name, 100 * *humidity);
  return text + ".";
}

}  // namespace

Advice advice_on(const Results& results) {
  Advice advice;
  const SolvedVariant& first = results.variants.front();
  const Outcome* now = worst_outcome(first);
  if (now == nullptr) {
    advice.sentence = "No surface of a room is in this section: nothing is judged.";
    return advice;
  }
  advice.chosen = best_of(results.variants);
  advice.tone = tone_of(now->kind);
  advice.sentence = what_happens(first, *now) + what_mends(results, advice.chosen, *now);
  advice.steps = advised_steps(results, advice.chosen);
  return advice;
}

}  // namespace quoin::tools
