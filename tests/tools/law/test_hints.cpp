// SPDX-License-Identifier: Apache-2.0
// What starting cases hold commented out works when the marks are taken away, and does something.
#include <doctest/doctest.h>

#include <optional>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "cases/meaning/starting_survey.hpp"
#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/json/findings.hpp"

namespace quoin::testing {
namespace {

using Lines = std::vector<std::string>;
using Hint = std::vector<std::size_t>;  ///< the lines of one hint

Lines lines_of(const std::string& text) {
  Lines lines(1);
  for (const char c : text) {
    if (c == '\n') {
      lines.emplace_back();
    } else {
      lines.back() += c;
    }
  }
  return lines;
}

struct Commented {
  std::string indent, words;
};

std::optional<Commented> commented(const std::string& line) {
  static const std::regex mark(R"(^( *)# ?(.*)$)");
  std::smatch found;
  if (!std::regex_match(line, found, mark)) return std::nullopt;
  return Commented{found[1], found[2]};
}

/// Keys and list items behind a mark, with the deeper lines that belong to them. Prose begins with
/// a capital or says nothing like `key:`.
std::vector<Hint> hints_of(const Lines& lines) {
  static const std::regex key(R"(^(- |[a-z][a-zA-Z0-9 -]*:( |$)).*)");
  std::vector<Hint> hints;
  std::string indent;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    const auto line = commented(lines[k]);
    const bool goes_on = line && !hints.empty() && hints.back().back() + 1 == k &&
                         line->indent == indent && line->words.rfind("  ", 0) == 0;
    if (goes_on) {
      hints.back().push_back(k);
    } else if (line && std::regex_match(line->words, key)) {
      hints.push_back({k});
      indent = line->indent;
    }
  }
  return hints;
}

std::string without_marks(Lines lines, const std::vector<Hint>& hints) {
  for (const Hint& hint : hints) {
    for (const std::size_t k : hint) {
      const auto line = commented(lines[k]);
      lines[k] = line->indent + line->words;
    }
  }
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

std::optional<cases::Case> read(const std::string& text) {
  try {
    return cases::case_of(text, "new.yaml");
  } catch (const cases::InputError&) {
    return std::nullopt;
  }
}

/// All that is found of a case but what only repeats its text.
std::string findings(const cases::Case& source) {
  tools::Results results = tools::results_of(source, "new.yaml", {}, {});
  results.sha256.clear();
  results.text.clear();
  return tools::findings_json(results);
}

/// The hints of a text, each tried alone and else beside all that can be read together.
class Trial {
 public:
  explicit Trial(const std::string& text) : lines_(lines_of(text)), hints_(hints_of(lines_)) {
    add_singles();
    for (std::size_t a = 0; a < hints_.size(); ++a) {
      for (std::size_t b = a + 1; b < hints_.size(); ++b) add({a, b});
    }
    add_singles();  // those that ask for the pairs
  }

  [[nodiscard]] std::size_t count() const { return hints_.size(); }

  /// The hints that do not work, a line each.
  [[nodiscard]] std::string failing() const {
    const std::string bare = findings(*read(text_with({})));
    std::string failing;
    for (std::size_t k = 0; k < hints_.size(); ++k) {
      const auto alone = read(text_with({k}));
      const bool works = (alone && findings(*alone) != bare) || works_beside_others(k);
      if (!works) failing += lines_[hints_[k].front()] + "\n";
    }
    return failing;
  }

 private:
  using Set = std::set<std::size_t>;

  [[nodiscard]] std::string text_with(const Set& hints) const {
    std::vector<Hint> chosen;
    for (const std::size_t k : hints) chosen.push_back(hints_[k]);
    return without_marks(lines_, chosen);
  }

  /// Adds hints that are not yet among those that go together, if they do.
  void add(const Set& more) {
    Set all = together_;
    for (const std::size_t k : more) {
      if (!all.insert(k).second) return;
    }
    if (read(text_with(all))) together_ = all;
  }

  void add_singles() {
    for (std::size_t k = 0; k < hints_.size(); ++k) add({k});
  }

  [[nodiscard]] bool works_beside_others(std::size_t k) const {
    Set others = together_;
    if (others.erase(k) == 0) return false;
    const auto without = read(text_with(others));
    return !without || findings(*without) != findings(*read(text_with(together_)));
  }

  Lines lines_;
  std::vector<Hint> hints_;
  Set together_;
};

void every_hint_works(std::size_t first) {
  const std::vector<cases::StartingPoint> points = cases::starting_points();
  for (std::size_t k = first; k < points.size(); k += 3) {
    CAPTURE(points[k].name);
    const Trial trial(*cases::starting_case(points[k].name));
    CHECK(trial.count() > 10);
    CHECK(trial.failing() == "");
  }
}

/// What stands behind the mark of the probe: another way to write it.
std::string with_other_probe(std::string text) {
  static const std::regex probe(R"(# probes:[^\n]*\n#   A: \[[^\]]*\] *# (\{[^\n]*\})\n)");
  return std::regex_replace(text, probe, "probes:\n  A: $1\n");
}

}  // namespace

TEST_CASE("every hint works in the first third of the starting cases") { every_hint_works(0); }
TEST_CASE("every hint works in the second third of the starting cases") { every_hint_works(1); }
TEST_CASE("every hint works in the last third of the starting cases") { every_hint_works(2); }

TEST_CASE("every hint of the starting survey works") {
  const Trial trial(std::string(cases::starting_survey()));
  CHECK(trial.count() > 4);
  CHECK(trial.failing() == "");
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

TEST_CASE("hints that are refused or do nothing are found") {
  const std::string refused = "# accuracy: {fRsi: 2}";
  const std::string idle = "# accuracy: {fRsi: 0.002, L2D: 0.1 %}";
  const std::string works = "# criteria: {mould: {surface humidity: 80}}";
  const Trial trial(
      "quoin: 1\ntitle: Twin\nspaces:\n"
      "  hall: {is: inside, temperature: 18, humidity: 62}\n"
      "  yard: {is: outside, temperature: 1}\n"
      "section: {wall: {layers: [[common brick, 330]]}}\n" +
      refused + "\n" + idle + "\n" + works + "\n# Prose: nothing to try\n");
  CHECK(trial.count() == 3);
  CHECK(trial.failing() == refused + "\n" + idle + "\n");
}

}  // namespace quoin::testing
