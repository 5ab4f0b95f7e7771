// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/columns.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

#include "solver/findings/plain.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/outcome_words.hpp"

namespace quoin::tools {
namespace {

/// A number with the twelve digits that findings have, in a unit `factor` times smaller.
Cell number(double value, double factor = 1.0) {
  if (!std::isfinite(value)) return {};
  const std::string digits = printed(value * factor);
  double rounded = 0.0;
  std::from_chars(digits.data(), digits.data() + digits.size(), rounded);
  return rounded;
}

Cell words(std::string_view text) { return std::string(text); }

/// The room that a row is told of; null where nothing is inside.
const solver::AirSurface* room_of(const SolvedVariant& solved) {
  const solver::AirSurface* lowest = nullptr;
  for (const solver::AirSurface* surface : judged_surfaces(solved)) {
    if (lowest == nullptr || surface->coldest.factor.value < lowest->coldest.factor.value)
      lowest = surface;
  }
  return lowest;
}

template <class Value>
Cell of_spot(const SolvedVariant& solved, Value value) {
  const solver::AirSurface* room = room_of(solved);
  return room == nullptr ? Cell{} : value(room->coldest);
}

template <class Value>
Cell of_humidity(const SolvedVariant& solved, Value value) {
  const solver::AirSurface* room = room_of(solved);
  const AirHumidity* humidity = room == nullptr ? nullptr : humidity_of(solved, room->air);
  return humidity == nullptr ? Cell{} : value(*humidity);
}

template <class Value>
Cell of_outcome(const SolvedVariant& solved, Value value) {
  const solver::AirSurface* room = room_of(solved);
  const Outcome* outcome = room == nullptr ? nullptr : outcome_of(solved, room->air);
  return outcome == nullptr ? Cell{} : value(*outcome);
}

/// The coupling between the room and outdoors.
template <class Value>
Cell of_coupling(const SolvedVariant& solved, Value value) {
  const solver::AirSurface* room = room_of(solved);
  if (room == nullptr) return {};
  const SpaceId outside = outside_of(solved.variant);
  for (const solver::Coupling& each : solved.heat.couplings) {
    if ((each.a == room->air && each.b == outside) || (each.b == room->air && each.a == outside))
      return value(each);
  }
  return {};
}

template <class Value>
Cell of_psi(const SolvedVariant& solved, geometry::Dimensions dimensions, Value value) {
  for (const solver::LinearTransmittance& psi : solved.psi) {
    if (psi.dimensions == dimensions) return value(psi.value);
  }
  return {};
}

using geometry::Dimensions;
using Solved = SolvedVariant;
using solver::Coupling;
using solver::Estimate;
using solver::Spot;

Cell value_of(const Estimate& estimate) { return number(estimate.value); }
Cell band_of(const Estimate& estimate) { return number(estimate.band); }

Cell plain_transmittance(const Solved& solved) {
  if (solved.variant.flanks.empty()) return {};
  return number(solver::plain_part(solved.variant.flanks.front(), solved.surface.physics,
                                   solved.heat.physics, temperatures_of(solved.variant))
                    .transmittance);
}

std::vector<SweepColumn> all_columns() {
  const auto spot = [](std::string name, std::string unit, Cell (*value)(const Solved&)) {
    return SweepColumn{std::move(name), std::move(unit), false, false, false, value};
  };
  const auto told = [](std::string name, Cell (*value)(const Solved&)) {
    return SweepColumn{std::move(name), "", true, false, false, value};
  };
  std::vector<SweepColumn> all{
      spot("coldest", "°C",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return value_of(at.temperature); });
           }),
      spot("coldest band", "K",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return band_of(at.temperature); });
           }),
      spot("fRsi", "",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return value_of(at.factor); });
           }),
      spot("fRsi band", "",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return band_of(at.factor); });
           }),
      spot("thermometer", "°C",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return number(at.thermometer); });
           }),
      spot("x", "mm",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return number(at.place.x, 1e3); });
           }),
      spot("y", "mm",
           [](const Solved& s) {
             return of_spot(s, [](const Spot& at) { return number(at.place.y, 1e3); });
           }),
      spot("surface humidity", "%",
           [](const Solved& s) {
             return of_humidity(
                 s, [](const AirHumidity& air) { return number(air.surface_humidity, 100.0); });
           }),
      spot("highest safe humidity", "%",
           [](const Solved& s) {
             return of_humidity(s, [](const AirHumidity& air) {
               return number(air.highest_safe_humidity, 100.0);
             });
           }),
      spot("dew point", "°C",
           [](const Solved& s) {
             return of_humidity(s, [](const AirHumidity& air) { return number(air.dew_point); });
           }),
      spot("L2D", "W/(m·K)",
           [](const Solved& s) {
             return of_coupling(s, [](const Coupling& each) { return number(each.value); });
           }),
      spot("L2D low", "W/(m·K)",
           [](const Solved& s) {
             return of_coupling(s, [](const Coupling& each) { return number(each.low); });
           }),
      spot("L2D high", "W/(m·K)",
           [](const Solved& s) {
             return of_coupling(s, [](const Coupling& each) { return number(each.high); });
           }),
      spot("psi", "W/(m·K)",
           [](const Solved& s) { return s.psi.empty() ? Cell{} : value_of(s.psi.front().value); }),
      spot("psi band", "W/(m·K)",
           [](const Solved& s) { return s.psi.empty() ? Cell{} : band_of(s.psi.front().value); }),
      spot("psi internal", "W/(m·K)",
           [](const Solved& s) { return of_psi(s, Dimensions::internal, value_of); }),
      spot("psi overall internal", "W/(m·K)",
           [](const Solved& s) { return of_psi(s, Dimensions::overall_internal, value_of); }),
      spot("psi external", "W/(m·K)",
           [](const Solved& s) { return of_psi(s, Dimensions::external, value_of); }),
      spot("U", "W/(m²·K)", plain_transmittance),
      told("outcome",
           [](const Solved& s) {
             return of_outcome(s, [](const Outcome& each) { return words(words_for(each.kind)); });
           }),
      told("decided by",
           [](const Solved& s) {
             return of_outcome(s, [](const Outcome& each) { return words(each.decided_by); });
           }),
      spot("chance", "",
           [](const Solved& s) {
             return of_outcome(s, [](const Outcome& each) {
               return each.chance ? number(*each.chance) : Cell{};
             });
           }),
      told("room",
           [](const Solved& s) {
             const solver::AirSurface* room = room_of(s);
             return room == nullptr ? Cell{} : words(s.variant.spaces[room->air].name);
           }),
      told("where",
           [](const Solved& s) {
             const solver::AirSurface* room = room_of(s);
             return room == nullptr ? Cell{} : words(words_for(s, room->coldest));
           }),
  };
  for (SweepColumn& column : all) {
    column.by_chance = column.name == "chance";
    column.by_outcome = column.by_chance || column.name == "outcome" || column.name == "decided by";
  }
  return all;
}

}  // namespace

const std::vector<SweepColumn>& sweep_columns() {
  static const std::vector<SweepColumn> all = all_columns();
  return all;
}

std::vector<std::string> sweep_column_names() {
  std::vector<std::string> names;
  for (const SweepColumn& column : sweep_columns()) names.push_back(column.name);
  return names;
}

const SweepColumn& sweep_column(const std::string& name) {
  const auto& all = sweep_columns();
  return *std::find_if(all.begin(), all.end(),
                       [&](const SweepColumn& column) { return column.name == name; });
}

std::string printed(double value) { return fmt::format("{:.12g}", value); }

}  // namespace quoin::tools
