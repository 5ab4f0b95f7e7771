// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/grammar/history_table.hpp"
#include "cases/grammar/interval.hpp"
#include "cases/grammar/units.hpp"
#include "cases/grammar/vocabulary.hpp"
#include "cases/model/survey.hpp"
#include "cases/text/named.hpp"
#include "cases/text/yaml_tree.hpp"
#include "materials/behind.hpp"

/// The part `survey` of a case file as it is written.
namespace quoin::cases {

struct WrittenInstrument {
  std::optional<bool> infrared;
  double plus_or_minus = 0.4, shared = 0.6;
  std::optional<double> emissivity, emissivity_set, reflected, spot;
};

template <class Visitor>
void describe(Visitor& visit, WrittenInstrument& one) {
  visit.choice("is", one.infrared, {{"contact", false}, {"infrared", true}},
               "touches the surface (default), or looks at it");
  visit.difference("plus or minus", one.plus_or_minus, 0.01, 10.0,
                   "of one of its readings beside another, 95 %");
  visit.difference("shared", one.shared, 0.0, 10.0, "of all its readings alike, 95 %");
  visit.number("emissivity", one.emissivity, 0.02, 1.0, "infrared: of the surface");
  visit.number("emissivity set", one.emissivity_set, 0.1, 1.0, "infrared: at the instrument");
  visit.temperature("reflected", one.reflected, -60.0, 80.0,
                    "infrared: of what the surface reflects; as a rule that of the room");
  visit.length("spot", one.spot, 0.001, 0.5, "width of what it reads the mean of");
}

struct WrittenPad {
  double resistance = needed;
  double plus_or_minus = 0.05;
};

template <class Visitor>
void describe(Visitor& visit, WrittenPad& pad) {
  visit.resistance("resistance", pad.resistance, 0.001, 2.0, "of the pad");
  visit.share("plus or minus", pad.plus_or_minus, 0.001, 0.5, "of its resistance, 95 %");
}

struct WrittenSurveyedAir {
  double plus_or_minus = 0.6;
  std::string history, column;
  std::optional<DateOrder> dates;
  std::string read_at;
  std::optional<double> mean, lowest, highest;
};

template <class Visitor>
void describe(Visitor& visit, WrittenSurveyedAir& air) {
  visit.difference("plus or minus", air.plus_or_minus, 0.01, 10.0, "of its thermometer, 95 %");
  visit.text(
      "history", air.history,
      "a CSV table of the hours before: hours before,outside temperature,inside temperature");
  visit.text("column", air.column, "of the table, where it has another name");
  visit.choice("dates", air.dates,
               {{"year first", DateOrder::year_first},
                {"day first", DateOrder::day_first},
                {"month first", DateOrder::month_first}},
               "how the table writes its times, where it has no `hours before`");
  visit.text("read at", air.read_at,
             "when the wall was read, as the table writes its times; by default its last row");
  visit.temperature("mean of the day", air.mean, -60.0, 60.0,
                    "of the 24 hours before, in place of a history");
  visit.temperature("lowest", air.lowest, -60.0, 60.0, "of the 24 hours before, with `highest`");
  visit.temperature("highest", air.highest, -60.0, 60.0, "of the 24 hours before, with `lowest`");
}

struct WrittenZone {
  std::string in, of;
  std::optional<Interval> x, y;
};

template <class Visitor>
void describe(Visitor& visit, WrittenZone& zone) {
  visit.text("in", zone.in, "the section of a house file");
  visit.word("of", zone.of, "the material");
  visit.interval("x", zone.x, "from left to right; everywhere if not given");
  visit.interval("y", zone.y, "from below to above; everywhere if not given");
}

struct WrittenStretch {
  std::string in;
  std::optional<Interval> x, y;
  std::optional<materials::Behind> behind;
};

template <class Visitor>
void describe(Visitor& visit, WrittenStretch& stretch) {
  visit.text("in", stretch.in, "the section of a house file");
  visit.interval("x", stretch.x, "from left to right; everywhere if not given");
  visit.interval("y", stretch.y, "from below to above; everywhere if not given");
  materials::choose_behind(visit, stretch.behind);
}

template <class Visitor>
void describe(Visitor& visit, Household& household) {
  visit.humidity("humidity", household.humidity, 0.0, 0.3, "plus or minus, 95 %");
  visit.difference("inside", household.inside, 0.0, 10.0, "plus or minus, 95 %");
  visit.difference("outside", household.outside, 0.0, 10.0, "plus or minus, 95 %");
}

struct WrittenSurvey {
  std::optional<double> hour, heating, rain, sun;
  std::optional<bool> wet;
  std::vector<Named<WrittenInstrument>> instruments;
  std::vector<Named<WrittenPad>> pads;
  std::vector<Named<WrittenSurveyedAir>> airs;
  std::vector<Named<WrittenZone>> zones;
  std::vector<Named<WrittenStretch>> stretches;
  const Node* explanations = nullptr;
  std::optional<Household> household;
};

template <class Visitor>
void describe(Visitor& visit, WrittenSurvey& survey) {
  visit.number("hour", survey.hour, 0.0, 24.0, "of the day, when the wall was read");
  visit.duration("heating steady for", survey.heating, 0.0, 10000.0, "in hours");
  visit.duration("rain on the wall", survey.rain, 0.0, 10000.0, "how long ago, in hours");
  visit.duration("sun on the wall", survey.sun, 0.0, 10000.0, "how long ago, in hours");
  visit.choice("surface", survey.wet, {{"dry", false}, {"wet", true}}, "to the eye");
  visit.named("instruments", survey.instruments, "thermometers, by the names readings use");
  visit.named("pads", survey.pads, "pads of known resistance, by the names readings use");
  visit.named("air", survey.airs, "what is known of each space on the day");
  visit.named("zones", survey.zones, "masonry that may conduct otherwise than drawn");
  visit.named("stretches", survey.stretches, "inside surface that something may cover");
  visit.explanations("explanations", survey.explanations,
                     "what may be the case: as drawn, conducts better: ZONE, conducts less: ZONE, "
                     "covered: STRETCH, both: [ZONE, STRETCH], thermometer off: INSTRUMENT, "
                     "colder outside: SPACE; by default all that apply");
  visit.group("household", survey.household, "how far its air may leave what is stated");
}

}  // namespace quoin::cases
