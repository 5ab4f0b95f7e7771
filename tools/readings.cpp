// SPDX-License-Identifier: Apache-2.0
#include "tools/readings.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::tools {
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
    const auto [low, high] = std::minmax(compared.with_surface, compared.with_heat);
    compared.explained =
        compared.read + compared.plus_minus >= low && compared.read - compared.plus_minus <= high;
    all.push_back(std::move(compared));
  }
  return all;
}

}  // namespace quoin::tools
