// SPDX-License-Identifier: Apache-2.0
// What starting cases tell in comments is read, and does something.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"
#include "tools/answer/run.hpp"
#include "tools/draw/canvas/svg.hpp"
#include "tools/draw/section/section.hpp"
#include "tools/output/json/findings.hpp"

namespace quoin::testing {
namespace {

std::optional<cases::Case> read(const std::string& text) {
  try {
    return cases::case_of(text, "new.yaml");
  } catch (const cases::InputError&) {
    return std::nullopt;
  }
}

/// What stands behind the mark of the probe: another way to write it.
std::string with_other_probe(std::string text) {
  static const std::regex probe(R"(# probes:[^\n]*\n#   A: \[[^\]]*\] *# (\{[^\n]*\})\n)");
  return std::regex_replace(text, probe, "probes:\n  A: $1\n");
}

/// Lines of a starting case that show something in a comment: one line, or one and what is indented
/// below it.
struct Hint {
  std::size_t first = 0, last = 0;  ///< lines, the last one included
  std::size_t indent = 0;
  std::string key;    ///< "leg" of "leg: 1000", or the material of a layer
  std::string value;  ///< what it says, up to a comment of its own
  bool layer = false;
};

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::vector<Hint> hints_of(const std::vector<std::string>& lines) {
  static const std::regex shape(
      R"(^( *)# (- \{(?:material|membrane|fill): ([^,}]*)|([a-z][A-Za-z -]*):(?= |$)).*$)");
  std::vector<Hint> hints;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    std::smatch found;
    if (!std::regex_match(lines[k], found, shape)) continue;
    Hint hint{k, k, found[1].str().size(), found[3].str() + found[4].str(), "", found[3].matched};
    const std::string below = found[1].str() + "#   ";
    while (hint.last + 1 < lines.size() && lines[hint.last + 1].starts_with(below)) ++hint.last;
    const std::string said = lines[k].substr(hint.indent + 2);
    hint.value = said.substr(0, said.find('#'));
    k = hint.last;
    hints.push_back(hint);
  }
  return hints;
}

using Chosen = std::set<std::size_t>;

/// The hints without which one means nothing: a name it uses, what it is a part of.
Chosen needed_by(const std::vector<Hint>& hints, std::size_t one) {
  Chosen needed;
  const auto& hint = hints[one];
  for (std::size_t k = 0; k < hints.size(); ++k) {
    const Hint& other = hints[k];
    if (k == one) continue;
    const bool named = !other.layer && other.indent == 2 &&
                       (hint.value.find(": " + other.key) != std::string::npos);
    // A damp course is drawn as a material or, instead, as a sheet.
    const bool part_of =
        !other.layer && other.key != "damp course" && hint.key.starts_with(other.key + " ");
    const bool asks = (hint.key == "readings" && other.key == "probes") ||
                      (hint.key == "polyethylene sheet" && other.key == "vapour") ||
                      (hint.key == "damp course sheet" &&
                       (other.key == "vapour" || other.key == "damp course height")) ||
                      (hint.key == "closer" && other.layer && other.key == "cavity");
    if (!named && !part_of && !asks) continue;
    needed.insert(k);
    const Chosen more = needed_by(hints, k);
    needed.insert(more.begin(), more.end());
  }
  return needed;
}

std::string uncommented(const std::vector<std::string>& lines, const std::vector<Hint>& hints,
                        const Chosen& chosen) {
  std::vector<std::string> changed = lines;
  for (const std::size_t k : chosen) {
    for (std::size_t l = hints[k].first; l <= hints[k].last; ++l)
      changed[l].erase(hints[k].indent, 2);
  }
  std::string text;
  for (const std::string& line : changed) text += line + "\n";
  return text;
}

/// What the program makes of a text, but for its digest: its findings and its drawing.
std::string made_of(const std::string& text) {
  const tools::Results results = tools::results_of(cases::case_of(text, "new.yaml"), "", {}, {});
  const tools::SolvedVariant& first = results.variants.front();
  static const std::regex digest(R"("input_sha256": "[0-9a-f]*")");
  return std::regex_replace(tools::findings_json(results), digest, "") +
         tools::svg_of(tools::drawn_section(first.variant, first.conductivity, results.title));
}

/// Hints of a text that are refused, or that change nothing, each with the reason.
std::string idle_hints(const std::string& text) {
  const std::vector<std::string> lines = lines_of(text);
  const std::vector<Hint> hints = hints_of(lines);
  std::map<Chosen, std::string> made;
  const auto with = [&](const Chosen& chosen) -> const std::string& {
    const auto [found, first] = made.try_emplace(chosen);
    if (first) {
      try {
        found->second = made_of(uncommented(lines, hints, chosen));
      } catch (const cases::InputError& error) {
        found->second = std::string("refused: ") + error.what();
      }
    }
    return found->second;
  };
  const auto is_refused = [&](const Chosen& chosen) { return with(chosen).starts_with("refused"); };
  const auto does_something = [&](const Chosen& before, std::size_t k) {
    Chosen after = before;
    after.insert(k);
    return !is_refused(after) && with(after) != with(before);
  };
  Chosen used;  // names that other hints use are tried with them
  for (std::size_t k = 0; k < hints.size(); ++k) used.merge(needed_by(hints, k));
  std::string idle;
  for (std::size_t k = 0; k < hints.size(); ++k) {
    const Chosen before = needed_by(hints, k);
    if (does_something(before, k) || used.count(k) != 0) continue;
    // It may be of use together with one more: a void with the floor over it.
    bool with_one_more = false;
    for (std::size_t other = 0; other < hints.size() && !with_one_more; ++other) {
      if (other == k || hints[other].layer) continue;
      Chosen more = needed_by(hints, other);
      more.insert(before.begin(), before.end());
      more.insert(other);
      with_one_more = more.count(k) == 0 && does_something(more, k);
    }
    if (with_one_more) continue;
    Chosen after = before;
    after.insert(k);
    idle += hints[k].key + (is_refused(after) ? " is " + with(after) : " does nothing") + "\n";
  }
  return idle;
}

/// A starting case with one variant beside the first, which is quicker.
std::string short_start(const std::string& recipe) {
  static const std::regex damp(R"(\n  damp: [^\n]*)");
  return std::regex_replace(*cases::starting_case(recipe), damp, "");
}

void try_hints(const std::vector<std::string>& recipes) {
  for (const std::string& recipe : recipes) {
    CAPTURE(recipe);
    CHECK(idle_hints(short_start(recipe)) == "");
  }
}

}  // namespace

TEST_CASE("every hint of walls and sheets is read and does something") {
  try_hints({"wall", "sheet"});
}

TEST_CASE("every hint of corners and bays is read and does something") {
  try_hints({"corner", "bay corner"});
}

TEST_CASE("every hint of windows is read and does something") {
  try_hints({"reveal", "sill", "head"});
}

TEST_CASE("every hint of feet and floors is read and does something") {
  try_hints({"wall base", "floor"});
}

TEST_CASE("every hint of partitions and porches and chimneys is read and does something") {
  try_hints({"partition", "porch wall", "chimney breast"});
}

TEST_CASE("every starting case has a test of its hints") {
  CHECK(cases::starting_points().size() == 12);
}

TEST_CASE("hints that are refused or do nothing are found") {
  const std::string text = short_start("wall");
  const auto with = [&](const std::string& hint) {
    std::string other = text;
    other.insert(other.find("    height: 1000"), "    # " + hint + "\n");
    return idle_hints(other);
  };
  CHECK(with("turn: external").find("turn is refused") != std::string::npos);
  std::string same = text;
  same.replace(same.find("    height: 1000"), 16, "    # height: 1000");  // as long by itself
  CHECK(idle_hints(same).find("height does nothing") != std::string::npos);
}

TEST_CASE("the other way to place a probe works in every starting case that shows one") {
  std::size_t shown = 0;
  for (const cases::StartingPoint& point : cases::starting_points()) {
    CAPTURE(point.name);
    const std::string text = *cases::starting_case(point.name);
    const std::string other = with_other_probe(text);
    if (other == text) continue;
    ++shown;
    const auto placed = read(other);
    REQUIRE(placed.has_value());
    CHECK(placed->variants.front().probes.size() > 0);
  }
  CHECK(shown == cases::starting_points().size() - 1);  // a sheet has no named places
}

TEST_CASE("every state of moisture that a starting case lists is read") {
  const std::string text = *cases::starting_case("corner");
  const std::string stated = "moisture: sheltered";
  for (const char* state :
       {"dry", "exposed", "damp", "saturated", "0.15 m3/m3", "8 mass-%", "at 80 %"}) {
    CAPTURE(state);
    REQUIRE(text.find(state) != std::string::npos);
    std::string other = text;
    other.replace(other.find(stated), stated.size(), std::string("moisture: ") + state);
    CHECK(read(other).has_value());
  }
}

}  // namespace quoin::testing
