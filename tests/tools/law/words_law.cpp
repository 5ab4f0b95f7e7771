// SPDX-License-Identifier: Apache-2.0
#include "tests/tools/law/words_law.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "geometry/surface.hpp"
#include "solver/findings/other_temperatures.hpp"
#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/output/html/parts.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/output/report/report.hpp"
#include "tools/output/text/report.hpp"
#include "tools/output/text/table.hpp"

namespace quoin::testing {
namespace {

using Json = nlohmann::json;
using Faults = std::vector<std::string>;

constexpr tools::TextStyle wide{.width = 4000};

void add(Faults& all, Faults some) {
  all.insert(all.end(), std::make_move_iterator(some.begin()), std::make_move_iterator(some.end()));
}

/// What the numbers of a room ask to be told, worked out from findings.json alone.
std::string kind_by_numbers(const Json& variant, const std::string& space) {
  const Json& room = variant["surface"]["spaces"][space];
  const Json& coldest = room["coldest"];
  bool mould = false, fails = false;
  if (room.contains("dew_point_C")) {
    const double over = coldest["temperature_C"].get<double>() - room["dew_point_C"].get<double>();
    const double band = coldest["temperature_band_K"].get<double>();
    if (over < -band) return "wet";
    if (over <= band) return "at the dew point";
    mould = coldest["surface_humidity_percent"].get<double>() > 80.0 + 1e-9;
  }
  for (const Json& verdict : variant["verdicts"]) {
    if (verdict["space"] != space || verdict["holds"].get<bool>()) continue;
    const bool factor = verdict["unit"] == "1";
    const bool other = verdict["criterion"].get<std::string>().find("corrosion") == 0;
    (factor || other ? fails : mould) = true;
  }
  return mould ? "mould" : fails ? "fails" : "";
}

std::set<std::string> failing(const Json& variant, const std::string& space) {
  std::set<std::string> names;
  for (const Json& verdict : variant["verdicts"]) {
    if (verdict["space"] == space && !verdict["holds"].get<bool>())
      names.insert(verdict["criterion"].get<std::string>());
  }
  return names;
}

bool is_withheld(const Json& variant) {
  return std::any_of(variant["verdicts"].begin(), variant["verdicts"].end(),
                     [](const Json& verdict) { return verdict.contains("withheld_because"); });
}

Faults faults_of_outcome(const Json& variant, const Json& outcome) {
  Faults faults;
  const std::string space = outcome["space"], told = outcome["outcome"], tone = outcome["tone"];
  const auto fault = [&](const std::string& words) {
    faults.push_back(fmt::format("{}, {}: {}", variant["name"].get<std::string>(), space, words));
  };
  const std::string by_numbers = kind_by_numbers(variant, space);
  const bool bad = told == "wet" || told == "mould" || told == "fails";
  if (bad != (tone == "bad")) fault("'" + told + "' has the tone " + tone);
  if (!by_numbers.empty() && told != by_numbers)
    fault("told '" + told + "' where the numbers say '" + by_numbers + "'");
  if (by_numbers.empty() && (bad || told == "at the dew point"))
    fault("told '" + told + "' where nothing fails");
  if (told == "safe" && outcome.value("chance", 0.0) > tools::marginal_chance)
    fault("safe at a chance of more than a tenth");
  if ((told == "safe" || told == "marginal") && is_withheld(variant))
    fault("favourable beside a gate");
  std::set<std::string> broken;
  for (const Json& name : outcome.value("broken", Json::array()))
    broken.insert(name.get<std::string>());
  broken.erase("80 %");
  if (broken != failing(variant, space)) fault("does not name just what fails");
  if (told == "fails") {
    for (const std::string& name : broken) {
      if (outcome["decided_by"].get<std::string>().find(name) == std::string::npos)
        fault("'" + name + "' fails and did not decide");
    }
  }
  return faults;
}

/// The temperature of a field at a place, by its basis.
double temperature_at(const tools::SolvedVariant& solved, geometry::Point place) {
  const solver::Field& field = solved.surface.field;
  const auto weights = solver::weights_at(field, place);
  double sum = 0.0;
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    const cases::Space& space = solved.variant.spaces[field.airs[a]];
    sum += weights[a] * (space.temperature - space.cooling);
  }
  return sum;
}

bool drawn_alike(const tools::SolvedVariant& a, const tools::SolvedVariant& b) {
  const geometry::Section& one = a.surface.field.mesh.section;
  const geometry::Section& other = b.surface.field.mesh.section;
  return one.x == other.x && one.y == other.y && one.cells == other.cells;
}

/// The biggest drop at any node of the fabric's surface, K.
double biggest_drop(const tools::SolvedVariant& before, const tools::SolvedVariant& after,
                    geometry::SpaceId air) {
  const geometry::Mesh& mesh = after.surface.field.mesh;
  double most = 0.0;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    if (after.variant.spaces[face.space].air != air) continue;
    if (after.surface.physics.is_fabric[face.region] == 0) continue;
    for (const std::size_t node : {face.from, face.to}) {
      const geometry::Point place = mesh.place(node);
      most = std::max(most, temperature_at(before, place) - temperature_at(after, place));
    }
  }
  return most;
}

const tools::SolvedVariant* variant_named(const tools::Results& results, const std::string& name) {
  for (const tools::SolvedVariant& solved : results.variants) {
    if (solved.variant.name == name) return &solved;
  }
  return nullptr;
}

/// The coldest of the cold spots of a room that have a name; NaN where none has it.
double coldest_named(const tools::SolvedVariant& solved, const std::string& room,
                     const std::string& name) {
  double lowest = std::nan("");
  for (const solver::AirSurface& surface : solved.surface.airs) {
    if (solved.variant.spaces[surface.air].name != room) continue;
    for (const solver::Spot& spot : surface.cold_spots) {
      if (tools::words_for(solved, spot) == name)
        lowest = std::fmin(lowest, spot.temperature.value);
    }
  }
  return lowest;
}

/// Names that are told to get colder and whose own coldest spot is warmer.
Faults faults_of_names(const tools::SolvedVariant& first, const tools::SolvedVariant& later,
                       const tools::Change& change) {
  Faults faults;
  const std::string room = first.variant.spaces[change.space].name;
  for (const tools::Colder& each : change.colder) {
    const double before = coldest_named(first, room, each.name);
    const double after = coldest_named(later, room, each.name);
    if (after > before && change.words.find("; " + each.name + " gets colder") != std::string::npos)
      faults.push_back(fmt::format("{}: {} gets colder, and is at {:.2f} instead of {:.2f} °C",
                                   change.variant, each.name, after, before));
  }
  return faults;
}

Faults faults_of_change(const tools::Results& results, const tools::Change& change) {
  Faults faults;
  const auto fault = [&](const std::string& words) {
    faults.push_back(change.variant + ": " + words);
  };
  const bool lowers = change.words.find("lowers") != std::string::npos;
  const bool says_colder = change.words.find("gets colder") != std::string::npos;
  if (lowers && !(change.after < change.before)) fault("lowers what is not lower");
  if (says_colder && change.colder.empty()) fault("a place gets colder that is not listed");
  if (!change.colder.empty() && !says_colder && !lowers) fault("what gets colder is not told");
  for (const tools::Colder& each : change.colder) {
    if (!(each.after < each.before - 0.05)) fault(each.name + " is listed and no colder");
  }
  const tools::SolvedVariant& first = results.variants.front();
  const tools::SolvedVariant* later = variant_named(results, change.variant);
  if (later != nullptr) add(faults, faults_of_names(first, *later, change));
  if (later == nullptr || !drawn_alike(first, *later)) return faults;
  // A place may lie between nodes of either grid, which differ there by their errors.
  constexpr double near = 0.1;  // K
  for (const tools::Colder& each : change.colder) {
    const double drop = temperature_at(first, each.place) - temperature_at(*later, each.place);
    if (std::abs(drop - (each.before - each.after)) > near)
      fault(fmt::format("{} is {:.2f} K colder, told {:.2f}", each.name, drop,
                        each.before - each.after));
  }
  const double drop = biggest_drop(first, *later, change.space);
  if (change.colder.empty() && drop > 0.5)
    fault(fmt::format("a place is {:.2f} K colder and none is told", drop));
  return faults;
}

}  // namespace

Faults faults_of_figures(const std::string& text) {
  static const std::array<std::pair<std::regex, const char*>, 7> laws{{
      {std::regex(R"(± ?0(\.0*)?(?![0-9.]))"), "a band of nothing"},
      {std::regex(R"(from (-?[0-9.]+) to \1 °C)"), "a change from a number to itself"},
      {std::regex(R"((^|[ (])(-|−)0(\.0*)?(?![0-9.]))"), "minus nothing"},
      {std::regex(R"([0-9]e\+[0-9])"), "a power of ten"},
      {std::regex(R"([0-9]e-[0-9])"), "a power of a tenth"},
      {std::regex(R"(m3/m3)"), "a unit as programs write it"},
      {std::regex(R"(\b(nan|inf)\b)"), "what is no number"},
  }};
  Faults faults;
  for (const auto& [law, words] : laws) {
    if (std::smatch found; std::regex_search(text, found, law))
      faults.push_back(fmt::format("{}: '{}'", words, found.str()));
  }
  return faults;
}

Faults faults_of_outcomes(const std::string& findings) {
  Faults faults;
  const Json json = Json::parse(findings);
  for (const Json& variant : json["variants"]) {
    for (const Json& outcome : variant["outcomes"])
      add(faults, faults_of_outcome(variant, outcome));
  }
  return faults;
}

Faults faults_of_sentence(const std::string& sentence, const tools::Results& results) {
  Faults faults;
  const tools::Outcome* now = tools::worst_outcome(results.variants.front());
  if (now == nullptr) return faults;
  for (const tools::BrokenLimit& limit : now->broken) {
    const bool told_by_its_kind = limit.for_mould && now->kind != tools::Outcome::Kind::fails;
    if (!told_by_its_kind && sentence.find("'" + limit.criterion + "'") == std::string::npos)
      faults.push_back("'" + limit.criterion + "' fails and the sentence does not name it");
  }
  static const std::regex figures(
      R"((-?[0-9.]+) °C, where (-?[0-9.]+) °C is needed to stay dry and (-?[0-9.]+) °C against)");
  if (std::smatch found; std::regex_search(sentence, found, figures)) {
    const double has = std::stod(found[1]), dry = std::stod(found[2]), mould = std::stod(found[3]);
    using Kind = tools::Outcome::Kind;
    const bool true_figures = now->kind == Kind::wet                ? has < dry
                              : now->kind == Kind::at_the_dew_point ? has < mould
                              : now->kind == Kind::mould            ? dry < has && has < mould
                                                                    : mould <= has;
    if (!true_figures) faults.push_back("the figures say otherwise: " + found.str());
  }
  static const std::regex kept(
      R"(as stated it (stays free of mould|keeps the .* %.*): (-?[0-9.]+) °C, where (-?[0-9.]+) °C is needed)");
  if (std::smatch found; std::regex_search(sentence, found, kept)) {
    if (now->kind != tools::Outcome::Kind::fails || std::stod(found[2]) < std::stod(found[3]))
      faults.push_back("what is kept is not: " + found.str());
  }
  const bool favourable = sentence.find(" is safe:") != std::string::npos;
  if (favourable && (now->kind != tools::Outcome::Kind::safe || !now->broken.empty()))
    faults.emplace_back("the sentence says safe");
  return faults;
}

Faults faults_of_changes(const tools::Results& results) {
  Faults faults;
  for (const tools::Change& change : results.changes)
    add(faults, faults_of_change(results, change));
  return faults;
}

Faults faults_of_tables(const tools::Results& results, const std::string& text) {
  Faults faults;
  const tools::report::Document document = tools::report::document_of(results);
  std::vector<tools::report::Table> tables{document.first.variants};
  for (const auto& section : document.sections) {
    for (const auto& block : section.blocks) {
      if (const auto* table = std::get_if<tools::report::Table>(&block)) tables.push_back(*table);
    }
  }
  for (const tools::report::Table& table : tables) {
    if (text.find(tools::table_text(table, wide)) == std::string::npos)
      faults.push_back("the terminal has not this table: " + table.caption);
    for (const auto& row : table.rows) {
      for (const auto& cell : row) add(faults, faults_of_figures(tools::report::text_of(cell)));
    }
  }
  std::size_t r = 0;
  const auto& rows = document.first.variants.rows;
  for (const tools::SolvedVariant& solved : results.variants) {
    for (const tools::Outcome& outcome : solved.outcomes) {
      if (r >= rows.size() || rows[r][0].words != solved.variant.name ||
          rows[r][1].words != tools::badge(outcome))
        faults.push_back("the first table tells another outcome of " + solved.variant.name);
      ++r;
    }
  }
  return faults;
}

Faults faults_of(const tools::Results& results) {
  const std::string text = tools::text_report(results, wide, tools::Told::all);
  Faults faults = faults_of_figures(text);
  add(faults, faults_of_outcomes(tools::findings_json(results)));
  add(faults, faults_of_sentence(tools::advice_on(results).sentence, results));
  add(faults, faults_of_changes(results));
  add(faults, faults_of_tables(results, text));
  return faults;
}

}  // namespace quoin::testing
