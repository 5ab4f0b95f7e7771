// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/summary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/short_legs.hpp"

namespace quoin::tools {
namespace {

/// What happens at the spot in this air, beside the temperatures at which more would.
std::string consequence(const AirHumidity& air, double has, double band) {
  const int decimals = decimals_for({has, air.dew_point, air.lowest_temperature}, 1);
  const bool is_mould = std::abs(air.limit - 0.8) < 1e-6;
  const std::string limits = fmt::format(
      "Below {} °C it gets wet, below {} °C {}", fixed(air.dew_point, decimals),
      fixed(air.lowest_temperature, decimals),
      is_mould ? "mould can grow (80 % humidity there)"
               : fmt::format("the {:.3g} % of '{}' are passed", 100 * air.limit, air.limit_by));
  const double over_dew_point = air.margin_to_condensation;
  const double over_limit = has - air.lowest_temperature;
  const auto by = [](double kelvin) {
    return fixed(std::abs(kelvin), decimals_for({0, std::abs(kelvin)}, 1));
  };
  if (std::abs(over_dew_point) <= band) return limits + ": it is just at the dew point.";
  if (over_dew_point < 0)
    return fmt::format("{}: it gets wet, {} K too cold even for the dew point.", limits,
                       by(over_dew_point));
  if (over_limit < 0)
    return fmt::format("{}: it stays dry, but is {} K too cold for that limit.", limits,
                       by(over_limit));
  return fmt::format("{}: it is {} K above that.", limits, by(over_limit));
}

/// How often each limit of humidity is passed in this air.
std::string chances(const SolvedVariant& solved, const AirHumidity& air) {
  std::string text;
  for (const Verdict& verdict : solved.verdicts) {
    if (verdict.space != air.air || !verdict.grade) continue;
    text += fmt::format("{}{} {} ({})", text.empty() ? " Passed: " : "; ", verdict.criterion,
                        chance_words(verdict.grade->chance), words_for(verdict.grade->degree));
  }
  return text.empty() ? text : text + ".";
}

/// A threshold beside what the spot has and what the air of this household asks for.
std::string thresholds(const SolvedVariant& solved, const solver::AirSurface& surface) {
  std::string text;
  const AirHumidity* air = humidity_of(solved, surface.air);
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    const auto* test = std::get_if<cases::FactorThreshold>(&criterion.test);
    const solver::AirSurface& looked_at = surface_for(solved, surface, criterion);
    const double has = looked_at.coldest.factor.value;
    if (test == nullptr || !std::isfinite(has)) continue;
    const std::string own = test->resistance
                                ? fmt::format(" (stated for an Rsi of {:.3g}{})", *test->resistance,
                                              criterion.with_any_resistance
                                                  ? ", compared whatever this one was computed with"
                                                  : "")
                                : "";
    std::vector<double> beside{has, test->threshold};
    // What this air needs is a matter of surface temperature: it stands beside no other factor.
    const bool needed =
        air != nullptr && std::isfinite(air->factor_needed) && &looked_at == &surface;
    if (needed) beside.push_back(air->factor_needed);
    const int decimals = decimals_for(beside, 2);
    text += fmt::format(" '{}' asks for fRsi {}{}; the spot has {}: {}.", criterion.name,
                        fixed(test->threshold, decimals), own, fixed(has, decimals),
                        has < test->threshold ? "not met" : "met");
    if (needed) text += fmt::format(" This air needs {}.", fixed(air->factor_needed, decimals));
  }
  return text;
}

/// Up to which humidity of the room its limit is kept; empty where something else fails anyway.
std::string safe_up_to(const AirHumidity& air, const Outcome* outcome) {
  if (outcome == nullptr || outcome->kind == Outcome::Kind::fails ||
      outcome->kind == Outcome::Kind::dry_first) {
    return "";
  }
  const double most = air.highest_safe_humidity;
  if (most >= 1.0) return " No humidity of the room passes that limit there.";
  return fmt::format(" The limit is kept while the room stays at or below {:.0f} % humidity.",
                     std::floor(100 * most));
}

std::string sentence(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const solver::Estimate& temperature = surface.coldest.temperature;
  const AirHumidity* air = humidity_of(solved, surface.air);
  const int decimals =
      air == nullptr
          ? 1
          : decimals_for({temperature.value, air->dew_point, air->lowest_temperature}, 1);
  std::string text = fmt::format("{} at {} °C and {}: ", room.name, fixed(room.temperature, 1),
                                 air != nullptr ? fixed(100 * air->humidity, 0) + " % humidity"
                                                : "a humidity that is not given");
  text += fmt::format("the coldest spot, {}, is at {} °C (computed to within {} K).",
                      words_for(solved, surface.coldest), fixed(temperature.value, decimals),
                      fixed_band(temperature.band, 2));
  if (air != nullptr) {
    text += " " + consequence(*air, temperature.value, temperature.band) +
            safe_up_to(*air, outcome_of(solved, surface.air)) + chances(solved, *air);
  }
  return text + thresholds(solved, surface);
}

/// What is doubtful about a cut plane by its own field and by the distance rule; empty if nothing.
std::string doubt_about(const solver::CutPlane& plane) {
  // Of the difference of the spaces; common practice, no source.
  constexpr double undisturbed_frame = 0.03;
  constexpr double as_plane = 1e-3;  // 0.02 K between spaces of 20 and 0 degC: nothing to doubt
  const bool frame = !plane.fabric;
  if (frame ? plane.departure > undisturbed_frame : is_disturbed(plane)) {
    return fmt::format(
        "{} is not in undisturbed {}: the field there differs from a plane part's by {:.1g} of the "
        "difference of the spaces",
        words_for(plane), frame ? "frame" : "wall", plane.departure);
  }
  if (std::isnan(plane.departure)) return {};  // in the ground, or askew: no plane wall is cut
  const double thickness = std::hypot(plane.to.x - plane.from.x, plane.to.y - plane.from.y);
  const double wanted = geometry::cut_distance(thickness);
  // The rule keeps the cut away from the detail: it says nothing where the coldest spot is the
  // plain wall.
  const bool plain_wall = plane.distance < geometry::snap || plane.departure < as_plane;
  constexpr double grace = 0.05;  // the coldest spot lies a little beside the angle, m
  if (frame || plain_wall || plane.distance >= wanted - grace) return {};
  return fmt::format(
      "{} lies {:.0f} mm from the coldest spot, nearer than the {:.0f} mm of ISO 10211 (1 m or "
      "three "
      "thicknesses); the field there differs from a plane wall's by no more than {:.1g} of the "
      "difference of the spaces",
      words_for(plane), plane.distance * 1e3, wanted * 1e3, plane.departure);
}

}  // namespace

std::string summary(const SolvedVariant& solved) {
  std::string text;
  for (const solver::AirSurface* surface : judged_surfaces(solved))
    text += (text.empty() ? "" : " ") + sentence(solved, *surface);
  const auto gated = std::find_if(solved.verdicts.begin(), solved.verdicts.end(),
                                  [](const Verdict& v) { return !v.gate.empty(); });
  if (gated != solved.verdicts.end()) text += " No favourable outcome: " + gated->gate + ".";
  return text;
}

std::vector<std::string> warnings(const SolvedVariant& solved, bool cuts_told) {
  std::vector<std::string> all;
  const cases::Variant& variant = solved.variant;
  for (const cases::Remark& remark : variant.remarks) {
    all.push_back(remark.line > 0 ? fmt::format("line {}: {}", remark.line, remark.text)
                                  : remark.text);
  }
  for (const RegionId id : geometry::ids(variant.regions)) {
    if (const auto& warning = solved.conductivity[id].warning) {
      all.push_back(fmt::format("{}: {}", variant.regions[id].name, *warning));
    }
  }
  for (const solver::CutPlane& plane : solved.cut_planes) {
    if (cuts_told && plane.fabric) continue;
    if (const std::string doubt = doubt_about(plane); !doubt.empty()) all.push_back(doubt);
  }
  if (variant.halves == 2) {
    all.emplace_back(
        "the section is one half of a detail that is its own mirror image: L2D and heat flows are "
        "those of the half, psi that of the whole");
  }
  if (const double off = solved.surface.field.mesh.section.deviation; off > 0.0) {
    all.push_back(
        fmt::format("the pictures, and what is said of vapour, show slopes in steps of up to "
                    "{:.1f} mm; temperatures and heat flows follow them exactly",
                    off * 1e3));
  }
  if (!solved.surface.accurate) {
    all.push_back(
        "the wanted accuracy of fRsi was not reached within the limit of nodes; the band says how "
        "far it got");
  }
  if (!solved.heat.accurate) {
    all.push_back(
        "the wanted accuracy of L2D was not reached within the limit of nodes; the bracket says "
        "how far it got");
  }
  for (const solver::Solution* solution : {&solved.surface, &solved.heat}) {
    for (const solver::Check& check : solution->checks) {
      if (check.holds) continue;
      all.push_back(
          fmt::format("'{}' does not hold: two methods differ by {:.2g} where {:.2g} is the most "
                      "that their bands allow, so one of them is wrong; do not rely on this result",
                      check.name, check.value, check.limit));
    }
  }
  if (solved.surface.field.fell_back || solved.heat.field.fell_back) {
    all.push_back(
        "the fast linear solver gave up on this section and the direct one answered: the result "
        "is as good, it took longer");
  }
  for (const solver::AirSurface* surface : judged_surfaces(solved)) {
    if (surface->coldest.temperature.value < 0.0 && humidity_of(solved, surface->air) != nullptr) {
      all.push_back(fmt::format(
          "the coldest spot of {} is below 0 °C: what condenses there freezes, and wets the wall "
          "when it thaws",
          variant.spaces[surface->air].name));
    }
  }
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (!surface.coldest.temperature.asymptotic) {
      all.push_back(fmt::format(
          "the grids do not yet converge steadily at the coldest spot of {}: its band is "
          "a guess",
          variant.spaces[surface.air].name));
    }
  }
  return all;
}

}  // namespace quoin::tools
