// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/sweep.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>

#include "cases/read.hpp"
#include "cases/text/yaml_text.hpp"
#include "tests/tools/program.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/sweep/gathered.hpp"
#include "tools/sweep/map.hpp"
#include "tools/sweep/row.hpp"

namespace {

using namespace quoin;
using quoin::testing::Scratch;
using quoin::testing::text_of;

constexpr const char* corner = R"(quoin: 1
title: Corner, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: -5}
materials:
  wall brick: {like: common brick, moisture: damp}
section:
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: wall brick, thickness: 327}
criteria: {mould: {surface humidity: 80}}
)";

constexpr const char* corner_sweep = R"(vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: [215, 440]
  materials/wall brick/moisture: [dry, damp]
  spaces/yard/temperature: [-10, 5, 12]
  spaces/hall/humidity: [30, 60]
table: [coldest, fRsi, L2D, psi, highest safe humidity, outcome]
)";

cases::Vary sweep_of(const std::string& sweep, const std::string& text) {
  return cases::vary_of(
      sweep, "sweep.yaml", [&](const std::string&) { return std::optional(text); },
      tools::sweep_column_names());
}

/// A number as findings print it, with no more than twelve digits.
std::string twelve(const nlohmann::json& value) {
  return value.is_null() ? "" : tools::printed(value.get<double>());
}

std::string shown(const tools::Cell& cell) {
  if (const auto* number = std::get_if<double>(&cell)) return tools::printed(*number);
  const auto* words = std::get_if<std::string>(&cell);
  return words == nullptr ? "" : *words;
}

/// The columns of `corner_sweep`, read from the findings of the merged case on its own.
std::vector<std::string> found_alone(const std::string& text, const std::string& room,
                                     const std::string& outside) {
  const cases::Case alone = cases::case_of(text, "row.yaml");
  const auto all = nlohmann::json::parse(tools::findings_json(tools::results_of(alone, "row", {})));
  const auto& found = all["variants"][0];
  const auto& air = found["surface"]["spaces"][room];
  std::vector<std::string> row{twelve(air["coldest"]["temperature_C"]),
                               twelve(air["coldest"]["fRsi"])};
  std::string coupling;
  for (const auto& each : found["heat"]["L2D_W_mK"]) {
    const std::string a = each["between"][0], b = each["between"][1];
    if ((a == room && b == outside) || (a == outside && b == room))
      coupling = twelve(each["value"]);
  }
  row.push_back(coupling);
  row.push_back(found["psi_W_mK"].empty() ? "" : twelve(found["psi_W_mK"][0]["value"]));
  row.push_back(air.contains("highest_safe_humidity_percent")
                    ? twelve(air["highest_safe_humidity_percent"])
                    : "");
  row.push_back(found["outcomes"][0]["outcome"]);
  return row;
}

/// Solves all rows in turn and compares each with its case on its own. How many there were.
std::size_t compare_all(const std::string& sweep, const std::string& text, const std::string& room,
                        const std::string& outside) {
  const cases::Vary vary = sweep_of(sweep, text);
  std::vector<tools::SweepColumn> columns;
  for (const std::string& name : vary.columns) columns.push_back(tools::sweep_column(name));
  tools::SweepSolver solver(vary, columns, {}, {});
  for (std::uint64_t row = 0; row < vary.rows(); ++row) {
    const tools::SweepCase read = solver.read(row);
    const tools::SweepAnswer answer = solver.answer(read);
    REQUIRE(answer.fault == "");
    std::vector<std::string> cells;
    for (const tools::Cell& cell : answer.cells) cells.push_back(shown(cell));
    CAPTURE(read.text);
    CHECK(cells == found_alone(read.text, room, outside));
  }
  return static_cast<std::size_t>(vary.rows());
}

TEST_CASE("rows of a sweep are what each case gives on its own in every printed digit") {
  CHECK(compare_all(corner_sweep, corner, "hall", "yard") == 24);
}

TEST_CASE("so are rows of a sheet with probes and an unheated space and of a turning corner") {
  constexpr const char* sheet = R"(quoin: 1
title: Wall between a room and a porch, invented
spaces:
  hall: {is: inside, temperature: 20, humidity: 50}
  porch: {is: unheated, temperature: 9}
  yard: {is: outside, temperature: -5}
materials:
  stone: {conductivity: 1.4, density: 2000}
section:
  sheet:
    - {fill: stone, x: [0, 1800], y: [0, 400]}
    - {fill: hall, x: [0, 1800], y: [400, 500]}
    - {fill: porch, x: [0, 700], y: [-100, 0]}
    - {fill: yard, x: [700, 1800], y: [-100, 0]}
probes: {A: [700, 200]}
)";
  constexpr const char* sheet_sweep = R"(vary: 1
case: sheet.yaml
over:
  materials/stone/conductivity: [1.4, 2.0]
  spaces/yard/temperature: [-5, 1]
  spaces/porch/temperature: [9, 4]
table: [coldest, fRsi, L2D, psi, highest safe humidity, outcome]
)";
  CHECK(compare_all(sheet_sweep, sheet, "hall", "yard") == 8);
  const std::string bay = text_of(std::filesystem::path(QUOIN_SOURCE_DIR) /
                                  "cases/examples/lock_keepers_house_bay.yaml");
  const cases::Vary any =
      sweep_of("vary: 1\ncase: a.yaml\nover: {quoin: [1]}\ntable: [psi]\n", bay);
  CHECK(any.rows() == 1);
}

/// Two rows of one section are not two rows of another: what is kept must not be taken for it.
TEST_CASE("a changed resistance or conductivity is solved anew") {
  constexpr const char* sweep = R"(vary: 1
case: corner.yaml
over:
  spaces/hall: [{is: inside, temperature: 20, humidity: 50}, {is: inside, temperature: 20, humidity: 50, resistance: 0.5}]
table: [coldest, fRsi, L2D, psi, highest safe humidity, outcome]
)";
  CHECK(compare_all(sweep, corner, "hall", "yard") == 2);
  const cases::Vary vary = sweep_of(sweep, corner);
  tools::SweepSolver solver(vary, {tools::sweep_column("fRsi")}, {}, {});
  const tools::Cell one = solver.answer(solver.read(0)).cells.at(0);
  const tools::Cell other = solver.answer(solver.read(1)).cells.at(0);
  CHECK(std::get<double>(one) - std::get<double>(other) > 0.05);
}

tools::SweepProgress run(const std::filesystem::path& folder, const std::string& sweep,
                         tools::SweepPart part = {}, std::size_t workers = 1,
                         const std::string& text = corner) {
  const cases::Vary vary = sweep_of(sweep, text);
  return tools::run_sweep(
      {vary, sweep, {}, folder, part, workers, {}}, [](const auto&) {}, [] { return false; });
}

std::string csv_of(const std::filesystem::path& folder, tools::GatheredCount* count = nullptr) {
  std::string all;
  tools::Gathered gathered(folder);
  const tools::GatheredCount counted =
      tools::write_csv(gathered, [&](const std::string& line) { all += line; });
  if (count != nullptr) *count = counted;
  return all;
}

TEST_CASE("parts of a sweep join to what one run gives and a second run solves nothing") {
  const Scratch scratch;
  const auto whole = run(scratch / "whole", corner_sweep, {}, 2);
  CHECK(whole.done == 24);
  CHECK(whole.were_there == 0);
  CHECK(run(scratch / "whole", corner_sweep).were_there == 24);
  // 24 rows are one block: the first of three parts has all of them.
  CHECK(run(scratch / "parts", corner_sweep, {1, 3}).rows == 24);
  CHECK(run(scratch / "parts", corner_sweep, {2, 3}).rows == 0);
  CHECK(csv_of(scratch / "parts") == csv_of(scratch / "whole"));
  // What another part has is not solved again.
  CHECK(run(scratch / "parts", corner_sweep).were_there == 24);
}

TEST_CASE("a changed sweep takes over the rows it shares with the one before") {
  const Scratch scratch;
  run(scratch / "rows", corner_sweep);
  const std::string wider = R"(vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: [440, 215, 327]
  materials/wall brick/moisture: [damp]
  spaces/yard/temperature: [12, 5]
  spaces/hall/humidity: [30]
table: [psi, coldest]
)";
  const auto changed = run(scratch / "rows", wider);
  CHECK(changed.rows == 6);
  CHECK(changed.were_there == 4);
  run(scratch / "anew", wider);
  CHECK(csv_of(scratch / "rows") == csv_of(scratch / "anew"));
  // A column that was never asked for is lacking in all of them.
  const std::string more = wider.substr(0, wider.find("table")) + "table: [psi, U]\n";
  CHECK(run(scratch / "rows", more).were_there == 0);
  run(scratch / "fresh", more);
  CHECK(csv_of(scratch / "rows") == csv_of(scratch / "fresh"));
}

TEST_CASE("a row that is no case is kept with its fault and the others are solved") {
  const Scratch scratch;
  const std::string sweep = R"(vary: 1
case: corner.yaml
over:
  section/corner/layers/1/thickness: [215, -5, 440]
table: [fRsi]
)";
  const auto progress = run(scratch / "rows", sweep);
  CHECK(progress.done == 3);
  CHECK(progress.wrong == 1);
  CHECK(progress.solved_now == 2);
  tools::GatheredCount count;
  const std::string csv = csv_of(scratch / "rows", &count);
  CHECK(count.solved == 2);
  CHECK(count.wrong == 1);
  CHECK(count.remarks.at(0).find("row 1: line 5:") == 0);
  CHECK(csv.find("\n1,-5,,") != std::string::npos);
  CHECK(run(scratch / "rows", sweep).were_there == 3);
}

TEST_CASE("what is missing is told with its numbers") {
  const Scratch scratch;
  const std::string sweep = R"(vary: 1
case: corner.yaml
over:
  spaces/hall/temperature: {from: 10, to: 24, step: 0.1}
table: [coldest]
)";
  CHECK(run(scratch / "rows", sweep, {2, 2}).rows == 64);
  tools::GatheredCount count;
  csv_of(scratch / "rows", &count);
  CHECK(count.missing == 77);
  CHECK(count.remarks ==
        std::vector<std::string>{"rows 0 to 63 are missing", "rows 128 to 140 are missing"});
}

TEST_CASE("a map shows a cell for each combination and says what stays the same") {
  const Scratch scratch;
  run(scratch / "rows", corner_sweep);
  tools::Gathered gathered(scratch / "rows");
  const std::string svg =
      tools::map_of(gathered, {{"thickness", "temperature", "moisture"}, "fRsi"}).svg();
  std::size_t cells = 0;
  for (std::size_t at = svg.find("<rect"); at != std::string::npos; at = svg.find("<rect", at + 1))
    ++cells;
  CHECK(cells >= 12);
  CHECK(svg.find("spaces/hall/humidity = 30") != std::string::npos);
  CHECK_THROWS_AS(tools::map_of(gathered, {{"thickness", "moistur"}, ""}), cases::InputError);
  CHECK_THROWS_AS(tools::map_of(gathered, {{"thickness", "moisture"}, "outcome"}),
                  cases::InputError);
}

}  // namespace
