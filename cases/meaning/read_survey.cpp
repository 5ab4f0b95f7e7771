// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/read_survey.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "cases/meaning/bands.hpp"
#include "cases/meaning/inside_surface.hpp"
#include "cases/meaning/read_explanations.hpp"
#include "cases/model/case.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/words.hpp"
#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

using geometry::Point;

template <class T>
std::vector<std::string> names_in(const std::vector<T>& list) {
  std::vector<std::string> names;
  for (const T& one : list) names.push_back(one.name);
  return names;
}

/// Where a key of a map of names stands; the name itself where the key is not there.
template <class T>
Mark mark_of(const Named<T>& named, std::string_view key) {
  const Entry* entry = named.node == nullptr ? nullptr : named.node->find(key);
  return entry == nullptr ? named.mark : entry->value.mark;
}

/// Where the zones stand, and then the stretches.
std::vector<Mark> places_of(const WrittenSurvey& written) {
  std::vector<Mark> places;
  for (const auto& one : written.zones) places.push_back(one.mark);
  for (const auto& one : written.stretches) places.push_back(one.mark);
  return places;
}

class SurveyReader {
 public:
  SurveyReader(const WrittenSurvey& written, const Node& node,
               const std::vector<ReadSection>& sections, const Files& files, FaultList& faults)
      : written_(written), node_(node), sections_(sections), files_(files), faults_(faults) {}

  Survey survey() {
    Survey survey;
    survey.line = node_.mark.line;
    survey.hour = written_.hour;
    survey.heating = written_.heating;
    survey.rain = written_.rain;
    survey.sun = written_.sun;
    survey.wet = written_.wet.value_or(false);
    for (const auto& one : written_.instruments) survey.instruments.push_back(instrument(one));
    for (const auto& one : written_.pads)
      survey.pads.push_back({one.name, one.value.resistance, one.value.plus_or_minus});
    for (const auto& one : written_.airs) add_air(one, survey);
    for (const auto& one : written_.zones) add_zone(one, survey);
    for (const auto& one : written_.stretches) add_stretch(one, survey);
    check_names(survey);
    if (written_.explanations != nullptr)
      survey.explanations = explanations_in(*written_.explanations,
                                            {names_in(survey.zones), names_in(survey.stretches),
                                             names_in(survey.instruments), outside_names(survey)},
                                            faults_);
    else
      check_number(places_of(written_), faults_);
    return survey;
  }

 private:
  Instrument instrument(const Named<WrittenInstrument>& named) {
    const WrittenInstrument& one = named.value;
    Instrument result;
    result.name = named.name;
    result.infrared = one.infrared.value_or(false);
    result.plus_or_minus = one.plus_or_minus;
    result.shared = one.shared;
    result.emissivity = one.emissivity.value_or(result.emissivity);
    result.emissivity_set = one.emissivity_set.value_or(result.emissivity_set);
    result.reflected = one.reflected;
    result.spot = one.spot.value_or(result.infrared ? 0.050 : result.spot);
    if (!result.infrared) {
      for (const std::string_view key : {"emissivity", "emissivity set", "reflected"}) {
        if (named.node->find(key) != nullptr)
          faults_.add(named.node->find(key)->mark,
                      {fmt::format("'{}' belongs to an infrared instrument", key), "",
                       "is: infrared", fmt::format("'{}' touches the surface", named.name)});
      }
    }
    return result;
  }

  void add_air(const Named<WrittenSurveyedAir>& named, Survey& survey) {
    const Space* space = find_air(named.name);
    if (space == nullptr) {
      const std::vector<std::string> known = air_names();
      faults_.add(named.mark,
                  {fmt::format("there is no space '{}' with an air of its own", named.name),
                   named.name, list_words(known, "a space"), did_you_mean(named.name, known)});
      return;
    }
    const WrittenSurveyedAir& one = named.value;
    SurveyedAir air{named.name, one.plus_or_minus, {}, {}};
    const bool outside = space->is == SpaceKind::outside;
    const int ways =
        (one.history.empty() ? 0 : 1) + (one.mean ? 1 : 0) + (one.lowest || one.highest ? 1 : 0);
    if (ways > 1) {
      faults_.add(named.mark, {"what this air was before is given in more than one way", "",
                               "one of: history, mean of the day, lowest and highest", ""});
      return;
    }
    if (one.history.empty()) {
      for (const std::string_view key : {"column", "dates", "read at"}) {
        if (const Entry* entry = named.node->find(key))
          faults_.add(entry->mark,
                      {fmt::format("'{}' goes with a history", key), "", "history: airs.csv", ""});
      }
    }
    if (one.lowest.has_value() != one.highest.has_value()) {
      faults_.add(named.mark, {"'lowest' and 'highest' go together", "", "both, or neither", ""});
    } else if (one.lowest && *one.lowest > *one.highest) {
      faults_.add(mark_of(named, "lowest"),
                  {"'lowest' is above 'highest'", "", "the lower of the two", "swap them"});
    } else if (one.lowest) {
      air.day_mean = (*one.lowest + *one.highest) / 2;
    }
    if (one.mean) air.day_mean = one.mean;
    if (air.day_mean && !outside) {
      faults_.add(named.mark, {"the day before is asked of the air outside only", "",
                               "`heating steady for`, or a history of this space", ""});
    }
    if (!one.history.empty()) read_history(named, outside, air);
    survey.airs.push_back(std::move(air));
  }

  void read_history(const Named<WrittenSurveyedAir>& named, bool outside, SurveyedAir& air) {
    const WrittenSurveyedAir& one = named.value;
    const std::optional<std::string> text =
        table_of(one.history, mark_of(named, "history"), files_, faults_);
    if (!text) return;
    HistoryQuestion question;
    const std::string usual = outside ? "outside temperature" : "inside temperature";
    if (!one.column.empty()) {
      question.columns = {one.column};
    } else {
      question.columns = {named.name, usual, named.name + " temperature", "temperature"};
      std::rotate(question.columns.begin(), question.columns.begin() + 1,
                  question.columns.begin() + 2);
    }
    question.dates = one.dates;
    question.read_at = one.read_at;
    FaultList of_table(one.history, *text);
    AirHistory history{hourly_history(*text, question, of_table), one.history, sha256(*text)};
    faults_.take(of_table);
    if (!history.hourly.empty()) air.history = std::move(history);
  }

  void add_zone(const Named<WrittenZone>& named, Survey& survey) {
    const ReadSection* section = section_of(named, named.value.in);
    if (section == nullptr) return;
    Zone zone{named.name, section->name, named.value.of, box_of(named, named.value)};
    std::vector<geometry::RegionId> regions;
    std::vector<std::string> known;
    for (const geometry::RegionId id : geometry::ids(section->variant->regions)) {
      const std::string& name = section->variant->regions[id].name;
      if (name == zone.of) regions.push_back(id);
      if (std::find(known.begin(), known.end(), name) == known.end()) known.push_back(name);
    }
    if (regions.empty()) {
      faults_.add(mark_of(named, "of"),
                  {fmt::format("the section shows no '{}'", zone.of), zone.of,
                   list_words(known, "a material of the section"), did_you_mean(zone.of, known)});
      return;
    }
    const Box box{{zone.box.x_from, zone.box.x_to}, {zone.box.y_from, zone.box.y_to}};
    if (auto complaint = misplaced(section->variant->sheet, regions, box, zone.of)) {
      complaint->what = fmt::format("the zone '{}' is empty", named.name);
      faults_.add(named.mark, std::move(*complaint));
      return;
    }
    survey.zones.push_back(std::move(zone));
  }

  void add_stretch(const Named<WrittenStretch>& named, Survey& survey) {
    const ReadSection* section = section_of(named, named.value.in);
    if (section == nullptr) return;
    Stretch stretch{named.name, section->name, box_of(named, named.value), named.value.behind};
    if (!meets_inside_surface(*section->variant, stretch.box)) {
      faults_.add(named.mark, {fmt::format("the stretch '{}' meets no inside surface", named.name),
                               "", "a box that holds part of the surface of a room",
                               "let it reach a millimetre to either side of the surface"});
      return;
    }
    survey.stretches.push_back(std::move(stretch));
  }

  template <class T>
  static SurveyBox box_of(const Named<T>& /*named*/, const T& written) {
    constexpr double everywhere = 1e3;  // m
    SurveyBox box{-everywhere, everywhere, -everywhere, everywhere};
    if (written.x) box = {written.x->from, written.x->to, box.y_from, box.y_to};
    if (written.y) box = {box.x_from, box.x_to, written.y->from, written.y->to};
    return box;
  }

  /// The section that `in` names; with one section it need not be named.
  template <class T>
  const ReadSection* section_of(const Named<T>& named, const std::string& in) {
    std::vector<std::string> known = names_in(sections_);
    if (in.empty() && sections_.size() == 1) return &sections_.front();
    const bool single = sections_.size() == 1 && sections_.front().name.empty();
    for (const ReadSection& section : sections_) {
      if (section.name == in && !in.empty()) return &section;
    }
    if (single) {
      faults_.add(mark_of(named, "in"),
                  {"'in' belongs to a house of several sections", in, "no 'in'", "remove it"});
    } else if (in.empty()) {
      faults_.add(named.mark, {fmt::format("in which section '{}' lies is not said", named.name),
                               "", "in: " + joined(known, ", or "), ""});
    } else {
      faults_.add(mark_of(named, "in"), {fmt::format("the house has no section '{}'", in), in,
                                         list_words(known, ""), did_you_mean(in, known)});
    }
    return nullptr;
  }

  /// Zones, stretches, instruments and pads are named in one list of explanations.
  void check_names(const Survey& survey) {
    for (const auto& stretch : written_.stretches) {
      const auto names = names_in(survey.zones);
      if (std::find(names.begin(), names.end(), stretch.name) != names.end())
        faults_.add(stretch.mark, {fmt::format("'{}' is the name of a zone, too", stretch.name), "",
                                   "another name", "rename one of the two"});
    }
  }

  [[nodiscard]] std::vector<std::string> outside_names(const Survey& survey) const {
    std::vector<std::string> names;
    for (const std::string& name : air_names()) {
      const Space* space = find_air(name);
      const bool history = std::any_of(
          survey.airs.begin(), survey.airs.end(),
          [&](const SurveyedAir& air) { return air.space == name && air.history.has_value(); });
      if (space->is == SpaceKind::outside && !history) names.push_back(name);
    }
    return names;
  }

  [[nodiscard]] const Space* find_air(const std::string& name) const {
    for (const ReadSection& section : sections_) {
      for (const SpaceId id : geometry::ids(section.variant->spaces)) {
        const Space& space = section.variant->spaces[id];
        if (space.name == name && space.air == id) return &space;
      }
    }
    return nullptr;
  }

  [[nodiscard]] std::vector<std::string> air_names() const {
    std::vector<std::string> names;
    for (const ReadSection& section : sections_) {
      for (const SpaceId id : geometry::ids(section.variant->spaces)) {
        const Space& space = section.variant->spaces[id];
        if (space.air == id && std::find(names.begin(), names.end(), space.name) == names.end())
          names.push_back(space.name);
      }
    }
    return names;
  }

  const WrittenSurvey& written_;
  const Node& node_;
  const std::vector<ReadSection>& sections_;
  const Files& files_;
  FaultList& faults_;
};

}  // namespace

Survey survey_of(const WrittenSurvey& written, const Node& node,
                 const std::vector<ReadSection>& sections, const Files& files, FaultList& faults) {
  return SurveyReader(written, node, sections, files, faults).survey();
}

}  // namespace quoin::cases
