// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/read_readings.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cases/grammar/written.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

template <class T>
void look_up(const Named<WrittenReading>& reading, std::string_view key, const std::string& name,
             const std::vector<T>& list, std::string_view what, FaultList& faults) {
  std::vector<std::string> known;
  for (const T& one : list) known.push_back(one.name);
  if (name.empty() || std::find(known.begin(), known.end(), name) != known.end()) return;
  faults.add(reading.node->find(key)->value.mark,
             {fmt::format("the survey has no {} '{}'", what, name), name,
              known.empty() ? fmt::format("a name of `{}s` of the survey", what)
                            : "one of: " + joined(known, ", "),
              did_you_mean(name, known)});
}

void check(const Named<WrittenReading>& reading, bool with_survey, FaultList& faults) {
  const WrittenReading& value = reading.value;
  if (value.temperature && value.difference) {
    faults.add(reading.node->find("difference")->mark,
               {"a reading is a temperature or a difference", "", "one of the two",
                "put the other at a probe of its own"});
  } else if (!value.temperature && !value.difference) {
    faults.add(reading.node->mark, {fmt::format("'temperature' is missing in '{}'", reading.name),
                                    "", "temperature: as measured", ""});
  } else if (value.difference && value.across.empty()) {
    faults.add(reading.node->find("difference")->mark,
               {"a difference is read across a pad", "", "across: a pad of the survey",
                "say which: `across: pad`, and its resistance in `survey: pads:`"});
  } else if (!value.difference && !value.across.empty()) {
    faults.add(reading.node->find("across")->mark,
               {"across a pad a difference is read", "", "difference: in K", ""});
  } else if (value.difference && !value.with.empty()) {
    faults.add(reading.node->find("with")->mark,
               {"a difference comes from a matched pair, not from an instrument", value.with,
                "no 'with'", "remove it"});
  } else if (!with_survey) {
    for (const std::string_view key : {"with", "across"}) {
      if (const Entry* entry = reading.node->find(key)) {
        faults.add(entry->mark, {fmt::format("'{}' refers to a survey, and the case has none", key),
                                 "", "survey: {instruments: ...}", ""});
        return;
      }
    }
  }
}

}  // namespace

void check_readings(const std::vector<Named<WrittenReading>>& readings, bool with_survey,
                    FaultList& faults) {
  for (const auto& reading : readings) {
    if (reading.node->kind == Node::Kind::map) check(reading, with_survey, faults);
  }
}

void refuse_impossible(const std::vector<Named<WrittenReading>>& readings,
                       const Per<SpaceId, Space>& spaces, FaultList& faults) {
  constexpr double usual = 0.5;  // K, give or take
  if (spaces.size() == 0) return;
  double coldest = infinite, warmest = -infinite;
  for (const Space& space : spaces) {
    coldest = std::min(coldest, space.temperature - space.cooling);
    warmest = std::max(warmest, space.temperature);
  }
  for (const auto& reading : readings) {
    if (!reading.value.temperature || !reading.value.with.empty()) continue;
    const double read = *reading.value.temperature;
    const double known = reading.value.plus_or_minus.value_or(usual);
    const bool cold = read + known < coldest;
    if (!cold && read - known <= warmest) continue;
    faults.add(reading.mark,
               {fmt::format("the reading at '{}' is {} air of this case", reading.name,
                            cold ? "colder than any" : "warmer than any"),
                fmt::format("{:.3g} °C, give or take {:.2g} K", read, known),
                fmt::format("{:.3g} to {:.3g} °C", coldest, warmest),
                "state the air of the day of the reading; a clear sky or a past night that was "
                "colder belong to `clear sky` or to a survey"});
  }
}

void add_readings(const std::string& section, const std::vector<Named<WrittenReading>>& readings,
                  Survey& survey, FaultList& faults) {
  for (const auto& reading : readings) {
    const WrittenReading& value = reading.value;
    look_up(reading, "with", value.with, survey.instruments, "instrument", faults);
    look_up(reading, "across", value.across, survey.pads, "pad", faults);
    SurveyReading read;
    read.section = section;
    read.probe = reading.name;
    read.temperature = value.temperature.value_or(0.0);
    read.difference = value.difference;
    read.across = value.across;
    read.with = value.with;
    read.plus_or_minus = value.plus_or_minus;
    survey.readings.push_back(std::move(read));
  }
}

}  // namespace quoin::cases
