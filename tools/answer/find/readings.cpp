// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/find/readings.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace quoin::tools {
namespace {

/// `share`: 0 with the resistances for surface temperature, 1 with those for heat flow.
double computed_at(const ComparedReading& reading, double share) {
  return reading.with_surface + share * (reading.with_heat - reading.with_surface);
}

bool is_explained(const ComparedReading& reading, double share) {
  constexpr double rounding = 1e-9;  // K
  return std::abs(reading.read - computed_at(reading, share)) <= reading.plus_minus + rounding;
}

/// How many readings a share explains, and what it leaves of all: the more and the less the better.
std::pair<std::size_t, double> worth(const std::vector<ComparedReading>& all, double share) {
  std::size_t explained = 0;
  double left = 0.0;
  for (const ComparedReading& each : all) {
    explained += is_explained(each, share) ? 1 : 0;
    left += std::pow((each.read - computed_at(each, share)) / each.plus_minus, 2);
  }
  return {explained, -left};
}

/// The shares at which a reading begins or ceases to be explained, or is met, with both ends.
std::vector<double> shares_to_try(const std::vector<ComparedReading>& all) {
  std::vector<double> shares{0.0, 1.0};
  for (const ComparedReading& each : all) {
    const double span = each.with_heat - each.with_surface;
    if (span == 0.0) continue;
    for (const double off : {-each.plus_minus, 0.0, each.plus_minus})
      shares.push_back(std::clamp((each.read + off - each.with_surface) / span, 0.0, 1.0));
  }
  return shares;
}

}  // namespace

std::vector<ComparedReading> compared_readings(const SolvedVariant& solved) {
  std::vector<ComparedReading> all;
  const auto& probes = solved.variant.probes;
  for (const cases::Reading& reading : solved.variant.readings) {
    const auto probe = std::find_if(probes.begin(), probes.end(),
                                    [&](const cases::Probe& p) { return p.name == reading.probe; });
    if (probe == probes.end()) continue;
    const auto number = static_cast<std::size_t>(probe - probes.begin());
    ComparedReading compared;
    compared.probe = reading.probe;
    compared.read = reading.temperature;
    compared.plus_minus = reading.plus_or_minus;
    compared.with_surface = solved.surface.probes[number].temperature.value;
    compared.with_heat = solved.heat.probes[number].temperature.value;
    all.push_back(std::move(compared));
  }
  const std::vector<double> shares = shares_to_try(all);
  const double share = *std::max_element(shares.begin(), shares.end(), [&](double a, double b) {
    return worth(all, a) < worth(all, b);
  });
  for (ComparedReading& each : all) {
    each.computed = computed_at(each, share);
    each.explained = is_explained(each, share);
  }
  return all;
}

bool may_have_been_read(const SolvedVariant& first, const SolvedVariant& later) {
  const geometry::Section& was = first.surface.field.mesh.section;
  const geometry::Section& is = later.surface.field.mesh.section;
  const auto& before = first.variant.spaces;
  const auto& after = later.variant.spaces;
  const auto same_air = [](const cases::Space& a, const cases::Space& b) {
    return a.name == b.name && a.temperature == b.temperature && a.humidity == b.humidity &&
           a.cooling == b.cooling;
  };
  return was.x == is.x && was.y == is.y && was.cells == is.cells &&
         std::equal(before.begin(), before.end(), after.begin(), after.end(), same_air);
}

}  // namespace quoin::tools
