// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/left_out.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include "tools/answer/survey/placed_readings.hpp"

namespace quoin::tools {
namespace {

/// In the order of the file.
std::vector<const SurveyedReading*> in_order_of_file(const SurveyModel& model) {
  std::vector<const SurveyedReading*> all;
  for (const SurveyedReading& reading : model.readings) all.push_back(&reading);
  std::stable_sort(all.begin(), all.end(), [](const auto* a, const auto* b) {
    return std::tie(a->section, a->number) < std::tie(b->section, b->number);
  });
  return all;
}

/// Whether every temperature would lie between the airs of its section if it were in degrees
/// Fahrenheit.
bool are_fahrenheit(const SurveyModel& model) {
  constexpr double beside = 1.0;  // K
  bool any = false;
  for (const SurveyedReading& reading : model.readings) {
    if (reading.pad != nullptr) continue;
    double coldest = 1e9, warmest = -1e9;
    const SurveyedSection& section = model.sections[reading.section];
    for (const cases::SpaceId air : section.airs) {
      const cases::Space& space = section.variant->spaces[air];
      coldest = std::min(coldest, space.temperature - space.cooling);
      warmest = std::max(warmest, space.temperature);
    }
    const double celsius = (reading.read - 32.0) / 1.8;
    if (celsius < coldest - beside || celsius > warmest + beside) return false;
    any = true;
  }
  return any;
}

/// What to do where no reading is left.
const char* remedy(const SurveyModel& model) {
  if (are_fahrenheit(model))
    return " As degrees Fahrenheit they would lie between the airs: write them in °C.";
  if (std::any_of(model.readings.begin(), model.readings.end(), is_too_shiny))
    return " Read with a contact probe, or on tape or paint that is not shiny.";
  return " Look whether the temperatures of the airs are those of the hour of the readings, and "
         "whether readings were written to the wrong probes.";
}

}  // namespace

std::optional<QualityRule> left_out_rule(const SurveyModel& model) {
  std::size_t number = 0;
  std::string which;
  for (const SurveyedReading* reading : in_order_of_file(model)) {
    if (reading->left_out.empty()) continue;
    ++number;
    which += fmt::format("{}{} ({})", which.empty() ? "" : ", ", reading->probe, reading->left_out);
  }
  if (number == 0) return std::nullopt;
  const bool all = number == model.readings.size();
  return QualityRule{"readings left out",
                     static_cast<double>(number),
                     "",
                     std::nullopt,
                     std::nullopt,
                     all ? Fit::refused : Fit::good,
                     fmt::format("Left out: {}.{}", which, all ? remedy(model) : ""),
                     true};
}

}  // namespace quoin::tools
