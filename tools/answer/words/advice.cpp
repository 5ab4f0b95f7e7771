// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/advice.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "materials/moist_air.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/gate.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/lined.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/judge/safe_humidity.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/filled.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/answer/words/remedy.hpp"
#include "tools/answer/words/steps.hpp"

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

double coldest_in(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  return worst == nullptr ? std::nan("")
                          : surface_of(solved, worst->space).coldest.temperature.value;
}

/// "the coldest spot goes from 8.7 to 9.6 °C: wet".
std::string gain(const SolvedVariant& before, const SolvedVariant& after) {
  const double was = coldest_in(before), is = coldest_in(after);
  const Outcome* outcome = worst_outcome(after);
  if (outcome == nullptr || !std::isfinite(was)) return "";
  const int decimals = std::abs(is - was) < 0.05 ? 1 : decimals_for({was, is}, 1);
  const std::string moves =
      std::abs(is - was) < 0.05
          ? fmt::format("the coldest spot stays at {} °C", fixed(is, decimals))
          : fmt::format("the coldest spot goes from {} to {} °C", fixed(was, decimals),
                        fixed(is, decimals));
  return fmt::format("{}: {}", moves, badge(*outcome));
}

/// The remedy that only dries, or that airs, among others; null where the case shows none.
template <class Wanted>
const SolvedVariant* alone(const Results& results, Wanted wanted) {
  const SolvedVariant& first = results.variants.front();
  for (std::size_t v = 1; v < results.variants.size(); ++v) {
    const SolvedVariant& later = results.variants[v];
    if (is_remedy(first, later) && wanted(steps_of(first, later))) return &later;
  }
  return nullptr;
}

std::string with_gain(const std::string& step, const SolvedVariant& before,
                      const SolvedVariant* after) {
  const std::string gained = after == nullptr ? "" : gain(before, *after);
  return gained.empty() ? step + "." : fmt::format("{}: {}.", step, gained);
}

bool is_wet(const SolvedVariant& solved) {
  return std::any_of(solved.variant.regions.begin(), solved.variant.regions.end(),
                     [](const cases::Region& region) {
                       return region.part == materials::Part::fabric &&
                              materials::wetter_than_damp(region.material, region.moisture);
                     });
}

std::string capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

/// The humidity of the room up to which its limits are kept, where drier air is what is missing.
std::optional<double> drier(const SolvedVariant& solved) {
  const Outcome* worst = worst_outcome(solved);
  if (worst == nullptr || worst->kind == Kind::safe || worst->kind == Kind::not_judged ||
      worst->kind == Kind::fails || worst->kind == Kind::dry_first) {
    return std::nullopt;
  }
  return safe_humidity(solved, surface_of(solved, worst->space));
}

/// Whether drier air alone would make a variant safe, at the humidity that `drier` gives.
bool safe_when_drier(const SolvedVariant& solved) {
  const auto& broken = worst_outcome(solved)->broken;
  const bool other = std::any_of(broken.begin(), broken.end(),
                                 [](const BrokenLimit& limit) { return limit.unit == "1"; });
  return !other && solved.outcomes.size() == 1 && gate(solved.variant).empty();
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

std::string what_happens(const SolvedVariant& first, const Outcome& outcome) {
  const solver::AirSurface& surface = surface_of(first, outcome.space);
  const AirHumidity* air = humidity_of(first, outcome.space);
  const std::string where = capital(words_for(first, surface.coldest));
  const std::string room = first.outcomes.size() > 1
                               ? fmt::format(" of {}", first.variant.spaces[outcome.space].name)
                               : "";
  if (outcome.kind == Kind::not_judged || (air == nullptr && outcome.unit != "1"))
    return capital(outcome.words) + ".";
  if (outcome.kind == Kind::dry_first) return capital(outcome.words) + ".";
  if (outcome.kind == Kind::fails) {
    std::vector<std::string> all;
    for (const BrokenLimit& each : outcome.broken) all.push_back(words_for(each));
    return fmt::format("{}{} does not meet {}.{}", where, room, fmt::join(all, " nor "),
                       air == nullptr ? "" : limit_kept(surface, *air, outcome));
  }
  std::vector<std::string> others;
  for (const BrokenLimit& each : also_broken(outcome)) others.push_back(words_for(each));
  const std::string besides =
      others.empty()       ? ""
      : others.size() == 1 ? fmt::format(" It does not meet {} either.", others.front())
                           : fmt::format(" It meets neither {}.", fmt::join(others, " nor "));
  if (outcome.unit == "1") {
    const int decimals = decimals_for({outcome.has, *outcome.limit}, 2);
    return fmt::format("{}{} {}meets '{}': fRsi {}, where {} is asked for.{}", where, room,
                       outcome.kind == Kind::marginal ? "only just " : "", outcome.decided_by,
                       fixed(outcome.has, decimals), fixed(*outcome.limit, decimals), besides);
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
  if (const auto humidity = drier(best); humidity && safe_when_drier(best))
    text += fmt::format("; with {} at or below {:.0f} % it would be safe",
                        best.variant.spaces[then.space].name, 100 * *humidity);
  return text + ".";
}

std::vector<std::string> all_steps(const Results& results, std::size_t chosen) {
  const SolvedVariant& first = results.variants.front();
  const SolvedVariant& best = results.variants[chosen];
  const Steps steps = steps_of(first, best);
  std::vector<std::string> all;
  const auto only_dries = [](const Steps& each) {
    return !each.dried.empty() && !each.built && !each.aired;
  };
  const SolvedVariant* dries = only_dries(steps) ? &best : alone(results, only_dries);
  const bool shown_dry = !steps.dried.empty() || (is_wet(first) && dries != nullptr);
  if (shown_dry) {
    const std::vector<std::string> dried =
        steps.dried.empty() ? steps_of(first, *dries).dried : steps.dried;
    all.push_back(with_gain(fmt::format("Keep water out and let {} dry", fmt::join(dried, ", ")),
                            first, dries));
  } else if (is_wet(first)) {
    all.emplace_back(
        "Keep water out and let the masonry dry: no variant of this case shows it dry.");
  }
  // What a step gains is told from where the one before it ends, if the case shows that.
  const SolvedVariant& from = shown_dry && dries != nullptr && dries != &best ? *dries : first;
  const bool by_air = steps.aired && !steps.built;
  if (chosen != 0 && !by_air && &best != dries) {
    all.push_back(with_gain(
        fmt::format("{} \"{}\"", all.empty() ? "Carry out" : "Then carry out", best.variant.name),
        from, &best));
    if (lined_inside(best.variant))
      all.back() += " Condensation behind the lining is not counted in that.";
    if (fills_cavity(first, best))
      all.back() += " Rain and damp that cross the filled cavity are not counted in that.";
  }
  if (by_air)
    all.push_back(with_gain(fmt::format("Drier or warmer air, as in \"{}\"", best.variant.name),
                            from, &best));
  const SolvedVariant* aired = alone(results, [](const Steps& each) { return each.aired; });
  const auto humidity = drier(best);
  const Outcome* worst = worst_outcome(best);
  if (humidity && worst != nullptr && (aired != nullptr || steps.aired)) {
    const cases::Space& room = best.variant.spaces[worst->space];
    all.push_back(fmt::format(
        "Keep {} at or below {:.0f} % humidity (now {:.0f} %): its limit is then passed in at most "
        "10 of 100 cases, instead of {}.{}",
        room.name, 100 * *humidity, 100 * room.humidity.value_or(0.0),
        cases_of_100(worst->chance.value_or(0.0)),
        safe_when_drier(best) ? "" : " That alone does not make it safe."));
  }
  return all;
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
  advice.steps = all_steps(results, advice.chosen);
  return advice;
}

}  // namespace quoin::tools
