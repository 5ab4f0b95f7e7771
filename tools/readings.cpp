// SPDX-License-Identifier: Apache-2.0
#include "tools/readings.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::tools {
namespace {

std::size_t explained(const std::vector<ComparedReading>& readings) {
  return static_cast<std::size_t>(std::count_if(
      readings.begin(), readings.end(), [](const ComparedReading& r) { return r.explained; }));
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
    const auto [low, high] = std::minmax(compared.with_surface, compared.with_heat);
    compared.explained =
        compared.read + compared.plus_minus >= low && compared.read - compared.plus_minus <= high;
    all.push_back(std::move(compared));
  }
  return all;
}

std::string readings_text(const Results& results, const TextStyle& style) {
  if (results.variants.empty()) return "";
  const auto first = compared_readings(results.variants.front());
  if (first.empty()) return "";
  TextTable table("lrrrl");
  table.add({{"probe"}, {"read °C"}, {"computed from"}, {"to °C"}, {""}});
  for (const ComparedReading& reading : first) {
    const auto [low, high] = std::minmax(reading.with_surface, reading.with_heat);
    table.add({{reading.probe},
               {fmt::format("{:.1f}±{:.1f}", reading.read, reading.plus_minus)},
               {fmt::format("{:.1f}", low)},
               {fmt::format("{:.1f}", high)},
               reading.explained ? TextTable::Cell{"explained", Tone::good}
                                 : TextTable::Cell{"not explained", Tone::doubtful}});
  }
  std::string text =
      "\n" + toned("Readings against the model", Tone::strong, style) + "\n" + table.text(style);
  for (const SolvedVariant& solved : results.variants) {
    const auto readings = compared_readings(solved);
    text += paragraph(fmt::format("{}: explains {} of {} readings", solved.variant.name,
                                  explained(readings), readings.size()),
                      2, style);
  }
  return text +
         paragraph(
             "Computed with the surface resistances for surface temperature and for heat flow: "
             "that of "
             "the day lies between, as a rule. A model that explains the readings is not proved by "
             "them; no standard covers this comparison.",
             2, style);
}

}  // namespace quoin::tools
