// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <memory>
#include <optional>
#include <ostream>
#include <string>

#include "cases/grammar/recipe_words.hpp"
#include "cases/meaning/starting_survey.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "tools/command/command.hpp"

namespace quoin::tools {
namespace {

std::vector<std::string> known_recipes() {
  std::vector<std::string> known;
  for (const cases::StartingPoint& point : cases::starting_points()) known.emplace_back(point.name);
  known.insert(known.end(), {"survey", "house"});
  return known;
}

/// The text to start from; absent for unknown names.
std::optional<std::string> started(const std::string& name) {
  if (name == "survey") return std::string(cases::starting_survey());
  if (name == "house") return std::string(cases::starting_house());
  return cases::starting_case(name);
}

Exit start(const std::string& recipe, const Terminal& terminal) {
  const auto text = started(recipe);
  if (!text) {
    const std::vector<std::string> known = known_recipes();
    cases::Fault fault;
    fault.file = "quoin new";
    fault.what = "no recipe has this name";
    fault.found = harmless(recipe, {});
    fault.expected = cases::joined(known, ", ");
    if (const std::string_view drawn_by = cases::recipes_for(recipe); !drawn_by.empty()) {
      fault.remedy = fmt::format("a {} is drawn by: {}", recipe, drawn_by);
    } else {
      fault.remedy = cases::did_you_mean(recipe, known);
    }
    throw cases::InputError({fault});
  }
  terminal.out << spelt_lines(*text, terminal.style);
  return Exit::done;
}

}  // namespace

Command new_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand("new", "print a commented case file to start from");
  const auto recipe = std::make_shared<std::string>();
  words->add_option("RECIPE", *recipe, cases::joined(known_recipes(), ", "))
      ->required()
      ->type_name("");
  return {words, [recipe](const Terminal& terminal) { return start(*recipe, terminal); }};
}

}  // namespace quoin::tools
