// SPDX-License-Identifier: Apache-2.0
#include "tools/summary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/judge.hpp"
#include "tools/places.hpp"
#include "tools/text_words.hpp"

namespace quoin::tools {
namespace {

std::string plus_minus(double band) {
  return band < 0.05 ? "less than 0.05 K either way" : fmt::format("{:.2f} K either way", band);
}

/// What happens at the spot in this air.
std::string consequence(const AirHumidity& air) {
  const std::string limits =
      fmt::format("Below {:.1f} °C it gets wet, below {:.1f} °C mould can grow", air.dew_point,
                  air.mould_temperature);
  if (air.margin_to_condensation < 0) {
    return fmt::format("{}: it gets wet, {:.1f} K too cold even for the dew point.", limits,
                       -air.margin_to_condensation);
  }
  if (air.margin_to_mould < 0) {
    return fmt::format("{}: it stays dry, but is {:.1f} K too cold for mould to stay away.", limits,
                       -air.margin_to_mould);
  }
  return fmt::format("{}: it is {:.1f} K on the safe side.", limits, air.margin_to_mould);
}

/// How likely each criterion is broken in this air: " At 62 % humidity: mould near-certain, ...".
std::string grades(const SolvedVariant& solved, const AirHumidity& air) {
  std::string text;
  for (const Verdict& verdict : solved.verdicts) {
    if (verdict.space != air.air || !verdict.grade) continue;
    const std::string separator =
        text.empty() ? fmt::format(" Risk at {:.0f} % humidity: ", air.humidity * 100) : "; ";
    const Degree degree = verdict.grade->degree;
    text += fmt::format(
        "{}{} {}", separator, verdict.criterion,
        degree == Degree::warm_enough ? "unlikely, it is warm enough" : words_for(degree));
  }
  return text.empty() ? text : text + ".";
}

/// A threshold beside the factor that the air of this household asks for.
std::string thresholds(const SolvedVariant& solved, const AirHumidity& air, double has) {
  std::string text;
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    const auto* test = std::get_if<cases::FactorThreshold>(&criterion.test);
    if (test == nullptr || !std::isfinite(air.factor_needed)) continue;
    const std::string own = test->resistance
                                ? fmt::format(" (stated for an Rsi of {:.3g}{})", *test->resistance,
                                              criterion.with_any_resistance
                                                  ? ", compared whatever this one was computed with"
                                                  : "")
                                : "";
    text += fmt::format(
        " '{}' asks for fRsi {:.2f}{}; against mould this air needs {:.2f}; the "
        "spot has {:.2f}.",
        criterion.name, test->threshold, own, air.factor_needed, has);
  }
  return text;
}

std::string sentence(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const solver::Estimate& temperature = surface.coldest.temperature;
  const AirHumidity* air = humidity_of(solved, surface.air);
  std::string text =
      air != nullptr
          ? fmt::format("{} at {:.1f} °C and {:.0f} % humidity: ", room.name, room.temperature,
                        air->humidity * 100)
          : fmt::format("{} at {:.1f} °C, humidity not given: ", room.name, room.temperature);
  text += fmt::format("the coldest spot, {}, has {:.1f} °C (sure to {}).",
                      words_for(solved, surface.coldest), temperature.value,
                      plus_minus(temperature.band));
  if (air == nullptr) return text;
  text += " " + consequence(*air);
  text += air->highest_safe_humidity >= 1.0
              ? " It is safe at any humidity of the room."
              : fmt::format(" It is safe while the room stays at or below {:.0f} % humidity.",
                            std::floor(air->highest_safe_humidity * 100));
  text += grades(solved, *air) + thresholds(solved, *air, surface.coldest.factor.value);
  return text;
}

/// What is doubtful about a cut plane by its own field and by the distance rule; empty if nothing.
std::string doubt_about(const solver::CutPlane& plane) {
  constexpr double undisturbed =
      0.005;  // of the difference of the spaces; common practice, no source
  constexpr double undisturbed_frame = 0.03;
  const bool frame = !plane.fabric;
  const std::string which =
      fmt::format("the cut plane from {:.0f}, {:.0f} to {:.0f}, {:.0f}", plane.from.x * 1e3,
                  plane.from.y * 1e3, plane.to.x * 1e3, plane.to.y * 1e3);
  if (plane.departure > (frame ? undisturbed_frame : undisturbed)) {
    return fmt::format(
        "{} is not in undisturbed {}: the field there differs from a plane part's by {:.1g} of the "
        "difference of the spaces",
        which, frame ? "frame" : "wall", plane.departure);
  }
  if (std::isnan(plane.departure)) return {};  // in the ground, or askew: no plane wall is cut
  const double thickness = std::hypot(plane.to.x - plane.from.x, plane.to.y - plane.from.y);
  const double wanted = geometry::cut_distance(thickness);
  // The rule keeps the cut away from the detail: it says nothing where the coldest spot is the
  // plain wall.
  const bool plain_wall = plane.distance < geometry::snap || plane.departure < 1e-9;
  constexpr double grace = 0.05;  // the coldest spot lies a little beside the angle, m
  if (frame || plain_wall || plane.distance >= wanted - grace) return {};
  return fmt::format(
      "{} lies {:.0f} mm from the coldest spot, nearer than the {:.0f} mm of ISO 10211 (1 m or "
      "three "
      "thicknesses); the field there differs from a plane wall's by {:.1g} of the difference only",
      which, plane.distance * 1e3, wanted * 1e3, plane.departure);
}

}  // namespace

std::string summary(const SolvedVariant& solved) {
  std::string text;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (solved.variant.spaces[surface.air].is != cases::SpaceKind::inside) continue;
    text += (text.empty() ? "" : " ") + sentence(solved, surface);
  }
  const bool close =
      std::any_of(solved.verdicts.begin(), solved.verdicts.end(),
                  [](const Verdict& v) { return v.certainty == Certainty::too_close; });
  if (close) text += " A criterion is too close to call: its limit lies within the band.";
  const auto gated = std::find_if(solved.verdicts.begin(), solved.verdicts.end(),
                                  [](const Verdict& v) { return !v.gate.empty(); });
  if (gated != solved.verdicts.end()) text += " No favourable verdict: " + gated->gate + ".";
  return text;
}

std::vector<std::string> warnings(const SolvedVariant& solved) {
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
  if (solved.surface.field.fell_back || solved.heat.field.fell_back) {
    all.push_back(
        "the fast linear solver gave up on this section and the direct one answered: the result "
        "is as good, it took longer");
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
