// SPDX-License-Identifier: Apache-2.0
#include "cases/vary.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "cases/text/faults.hpp"
#include "cases/text/yaml_path.hpp"
#include "cases/text/yaml_text.hpp"

namespace {

using namespace quoin;

constexpr const char* case_text = R"(quoin: 1
title: Corner, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5}
materials:
  wall/brick: {like: common brick, moisture: damp}  # a name with a slash
section:
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: wall/brick, thickness: 327}
)";

const std::vector<std::string> known{"coldest", "fRsi", "psi"};

cases::Vary vary_of(const std::string& text, const std::string& of = case_text) {
  return cases::vary_of(
      text, "sweep.yaml",
      [&](const std::string& name) {
        return name == "corner.yaml" ? std::optional(of) : std::nullopt;
      },
      known);
}

std::vector<cases::Fault> faults_of(const std::string& text, const std::string& of = case_text) {
  try {
    static_cast<void>(vary_of(text, of));
  } catch (const cases::InputError& error) {
    return error.faults;
  }
  return {};
}

cases::Node tree_of(const std::string& text) {
  cases::FaultList faults("text", text);
  auto tree = cases::tree_of(text, faults);
  REQUIRE(tree);
  return *tree;
}

TEST_CASE("a sweep takes every combination once, the air innermost") {
  const cases::Vary vary = vary_of(R"(vary: 1
case: corner.yaml
over:
  spaces/yard/temperature: {from: -10, to: 10, step: 5}
  section/corner/layers/1/thickness: [215, 327]
  materials/wall~1brick/moisture: [dry, damp, saturated]
table: [coldest, psi]
)");
  REQUIRE(vary.rows() == 30);
  CHECK(vary.axes[0].texts == std::vector<std::string>{"-10", "-5", "0", "5", "10"});
  std::set<std::vector<std::size_t>> seen;
  for (std::uint64_t row = 0; row < vary.rows(); ++row) seen.insert(vary.choice(row));
  CHECK(seen.size() == 30);
  // Five rows in a run differ in the outside air alone.
  CHECK(vary.choice(0) == std::vector<std::size_t>{0, 0, 0});
  CHECK(vary.choice(4) == std::vector<std::size_t>{4, 0, 0});
  CHECK(vary.choice(5) == std::vector<std::size_t>{0, 0, 1});
  CHECK(vary.choice(29) == std::vector<std::size_t>{4, 1, 2});
}

TEST_CASE("a merged case says what the case says but for the values varied") {
  const cases::Vary vary = vary_of(R"(vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: [215]
  materials/wall~1brick: [{like: granite}]
table: [psi]
)");
  const std::string merged = cases::yaml_text(vary.merged(vary.choice(0)));
  CHECK(merged ==
        "quoin: 1\n"
        "title: \"Corner, invented\"\n"
        "spaces: {hall: {is: inside, temperature: 20, humidity: 50}, "
        "yard: {is: outside, temperature: -5}}\n"
        "materials: {\"wall/brick\": {like: granite}}\n"
        "section: {corner: {layers: [{material: lime plaster, thickness: 15}, "
        "{material: \"wall/brick\", thickness: 215}]}}\n");
}

TEST_CASE("the one spelling of a tree reads as that tree") {
  const std::string text = R"(a: "~"
b: ~
c: [1, -2.5, 010, "1e3", .5, 5., "x: y", 'it''s', "tab\tline\n", {}, []]
"null": {"12": deep, "a b": {c: [[~]]}}
d: "÷ ° # not a comment"
)";
  const std::string spelt = cases::yaml_text(tree_of(text));
  CHECK(cases::yaml_text(tree_of(spelt)) == spelt);
  const cases::Node read = tree_of(spelt);
  CHECK(read.find("a")->value.kind == cases::Node::Kind::scalar);
  CHECK(read.find("b")->value.kind == cases::Node::Kind::nothing);
  CHECK(read.find("c")->value.items[8].text == "tab\tline\n");
  CHECK(read.find("null")->value.entries.size() == 2);
  // A twin: another value is another text.
  CHECK(cases::yaml_text(tree_of("a: 1")) != cases::yaml_text(tree_of("a: 2")));
}

TEST_CASE("all faults of a vary file are told at once with their places") {
  const std::vector<cases::Fault> faults = faults_of(R"(vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thicknes: [215, 327]
  spaces/yard/temperature: {from: 0, to: 10, step: 3}
  spaces/hall/temperature: 20
  spaces/hall: [{is: inside, temperature: 20}]
  spaces/hall/humidity: [50, 50]
table: [coldest, frsi, coldest]
colour: red
)");
  const auto place = [&](std::size_t k) { return std::pair{faults[k].line, faults[k].column}; };
  REQUIRE(faults.size() == 8);
  CHECK(place(0) == std::pair<std::size_t, std::size_t>{4, 3});
  CHECK(faults[0].remedy == "did you mean 'section/corner/layers/1/thickness'?");
  CHECK(place(1) == std::pair<std::size_t, std::size_t>{5, 28});
  CHECK(faults[1].what == "these steps do not lead from the first value to the last");
  CHECK(place(2) == std::pair<std::size_t, std::size_t>{6, 28});
  CHECK(faults[2].what == "'spaces/hall/temperature' has no list of values");
  CHECK(place(3) == std::pair<std::size_t, std::size_t>{7, 3});
  CHECK(faults[3].what.find("change the same thing") != std::string::npos);
  CHECK(faults[4].what.find("stands twice") != std::string::npos);
  CHECK(place(5) == std::pair<std::size_t, std::size_t>{9, 18});
  CHECK(faults[5].remedy == "did you mean 'fRsi'?");
  CHECK(faults[6].what == "this column stands twice in the table");
  CHECK(faults[7].what == "unknown key 'colour' in a vary file");
}

TEST_CASE("a vary file without its case, or with a broken one, is refused") {
  constexpr const char* sweep = R"(vary: 1
case: corner.yaml
over: {spaces/yard/temperature: [0]}
table: [psi]
)";
  CHECK(faults_of(sweep).empty());
  CHECK(faults_of(sweep, "quoin: 1\nquoin: 1\n").at(0).file == "corner.yaml");
  CHECK(faults_of(sweep, "house: {a: b.yaml}\n").at(0).what ==
        "this is a house file, not a case file");
  const std::string other = "vary: 1\ncase: ../corner.yaml\nover: {a: [1]}\ntable: [psi]\n";
  CHECK(faults_of(other).at(0).what ==
        "the case '../corner.yaml' lies outside the folder of this file");
  const std::vector<cases::Fault> all = faults_of("vary: 2\n");
  CHECK(std::any_of(all.begin(), all.end(), [](const cases::Fault& fault) {
    return fault.what == "this program does not know format 2";
  }));
  CHECK(faults_of("").size() == 1);
}

TEST_CASE("a sweep of more rows than anybody can solve is refused") {
  std::string many = "vary: 1\ncase: corner.yaml\nover:\n";
  many += "  spaces/yard/temperature: {from: 0, to: 50000, step: 1}\n";
  many += "  spaces/hall/temperature: {from: 0, to: 50000, step: 1}\ntable: [psi]\n";
  REQUIRE(faults_of(many).size() == 1);
  CHECK(faults_of(many)[0].what == "these are too many combinations");
}

TEST_CASE("a path leads to what it names and nowhere else") {
  cases::Node tree = tree_of(case_text);
  CHECK(cases::value_at(tree, cases::steps_of("materials/wall~1brick/moisture"))->text == "damp");
  CHECK(cases::value_at(tree, cases::steps_of("section/corner/layers/1/thickness"))->text == "327");
  for (const char* wrong : {"section/corner/layers/2", "section/corner/layers/-1",
                            "section/corner/layers/1x", "quoin/0", "", "materials/wall"}) {
    CAPTURE(wrong);
    CHECK(cases::value_at(tree, cases::steps_of(wrong)) == nullptr);
  }
  for (const std::string& path : cases::paths_of(tree)) {
    CAPTURE(path);
    CHECK(cases::value_at(tree, cases::steps_of(path)) != nullptr);
  }
}

}  // namespace
