// SPDX-License-Identifier: Apache-2.0
#include "cases/house.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "cases/grammar/reader.hpp"
#include "cases/meaning/read_readings.hpp"
#include "cases/meaning/read_survey.hpp"
#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/text/named.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t most_sections = 12;

/// The keys at the top of a house file.
struct HouseDocument {
  double format = needed;
  std::string title, note;
  std::vector<Named<std::string>> house;
  std::optional<WrittenSurvey> survey;
};

template <class Visitor>
void describe(Visitor& visit, HouseDocument& document) {
  visit.version("quoin", document.format, 1);
  visit.text("title", document.title, "what is surveyed");
  visit.text("note", document.note, "anything the report should repeat");
  visit.named("house", document.house, "case files by what the house calls them");
  visit.group("survey", document.survey, "what all of them share of one visit");
}

/// The readings of a case file as they are written.
std::vector<Named<WrittenReading>> written_readings(const Node& tree) {
  FaultList said_already("", "");
  Document document;
  read(tree, "a case", said_already, document);
  return document.readings;
}

/// The case of one section; its faults go to `all`.
std::optional<Case> case_in_house(const Named<std::string>& named, const Files& files,
                                  FaultList& faults, std::vector<Fault>& all) {
  const Mark mark = named.node->mark;
  const std::optional<std::string> text = case_text_of(named.value, mark, files, faults);
  if (!text) return std::nullopt;
  const FileKind kind = kind_of(*text);
  if (kind == FileKind::house) {
    faults.add(mark, {fmt::format("'{}' is a house itself", named.value), "",
                      "a case file of one section", "list its sections here"});
    return std::nullopt;
  }
  if (kind != FileKind::section && kind != FileKind::unknown) {
    faults.add(mark, {fmt::format("'{}' is {}, not a case file", named.value, words_for(kind)), "",
                      "a case file of one section", std::string(use_of(kind))});
    return std::nullopt;
  }
  try {
    Case source = case_of_house(*text, named.value, files);
    return source;
  } catch (const InputError& error) {
    all.insert(all.end(), error.faults.begin(), error.faults.end());
  }
  return std::nullopt;
}

/// Spaces of one name are one thing in all sections.
void check_spaces(const House& house, const HouseDocument& document, FaultList& faults) {
  for (std::size_t p = 1; p < house.parts.size(); ++p) {
    for (const Space& space : house.parts[p].source.variants.front().spaces) {
      for (std::size_t q = 0; q < p; ++q) {
        for (const Space& other : house.parts[q].source.variants.front().spaces) {
          if (other.name != space.name || (other.is == space.is)) continue;
          faults.add(document.house[p].node->mark,
                     {fmt::format("'{}' is another kind of space here than in '{}'", space.name,
                                  house.parts[q].name),
                      "", "spaces of one name are one thing in a house", "rename one of the two"});
          return;
        }
      }
    }
  }
}

void read_parts(const HouseDocument& document, const Files& files, House& house, FaultList& faults,
                std::vector<Fault>& all) {
  if (document.house.size() > most_sections)
    faults.add(document.house[most_sections].mark,
               {"the house has too many sections", fmt::format("{}", document.house.size()),
                fmt::format("at most {}", most_sections), "make two houses of it"});
  for (const auto& named : document.house) {
    if (named.value.empty()) continue;  // said already
    const auto* twin = &*std::find_if(document.house.begin(), document.house.end(),
                                      [&](const auto& one) { return one.value == named.value; });
    if (twin != &named) {
      // Its readings would count twice.
      faults.add(named.node->mark,
                 {fmt::format("'{}' is the section '{}', too", named.value, twin->name), "",
                  "each file once", "remove one of the two"});
      continue;
    }
    if (auto source = case_in_house(named, files, faults, all)) {
      if (source->survey) {
        faults.add(named.node->mark,
                   {fmt::format("'{}' has a survey of its own", named.value), "",
                    "the survey of a house stands in the house file", "move it there"});
        continue;
      }
      house.parts.push_back({named.name, named.value, std::move(*source)});
    }
  }
}

}  // namespace

bool is_house(std::string_view text) {
  FaultList unsaid("", text);
  const std::optional<Node> tree = tree_of(text, unsaid);
  return tree && tree->kind == Node::Kind::map && tree->find("house") != nullptr;
}

House house_of(std::string_view text, const std::string& file, const Files& files) {
  FaultList faults(file, text);
  House house;
  house.sha256 = sha256(text);
  std::vector<Fault> of_parts;
  const std::optional<Node> tree = tree_of(text, faults);
  HouseDocument document;
  if (tree) read(*tree, "a house", faults, document);
  house.title = document.title;
  house.note = document.note;
  if (tree && document.house.empty() && faults.empty())
    faults.add(tree->find("house")->mark, {"the house has no sections", "",
                                           "house: {wall: wall.yaml, corner: corner.yaml}", ""});
  if (faults.empty()) read_parts(document, files, house, faults, of_parts);
  if (faults.empty() && of_parts.empty()) {
    check_spaces(house, document, faults);
    std::vector<ReadSection> sections;
    for (const HousePart& part : house.parts)
      sections.push_back({part.name, &part.source.variants.front()});
    const Entry* entry = tree->find("survey");
    if (document.survey && entry != nullptr) {
      house.survey = survey_of(*document.survey, entry->value, sections, files, faults);
      house.household = document.survey->household.value_or(Household{});
    }
    for (const HousePart& part : house.parts) {
      FaultList of_part(part.file, part.source.text);
      const std::optional<Node> part_tree = tree_of(part.source.text, of_part);
      if (part_tree) add_readings(part.name, written_readings(*part_tree), house.survey, of_part);
      const std::vector<Fault> some = of_part.sorted();
      of_parts.insert(of_parts.end(), some.begin(), some.end());
    }
  }
  std::vector<Fault> all = faults.sorted();
  all.insert(all.end(), of_parts.begin(), of_parts.end());
  if (!all.empty()) throw InputError(std::move(all));
  return house;
}

}  // namespace quoin::cases
