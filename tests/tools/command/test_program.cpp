// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <utility>

#include "cases/starting_case.hpp"
#include "tests/tools/program.hpp"

namespace quoin::testing {
namespace fs = std::filesystem;

TEST_CASE(
    "each malformed file ends with exit 2 and one message at its line and leaves no file behind") {
  std::size_t files = 0;
  for (const auto& entry :
       fs::directory_iterator(fs::path(QUOIN_SOURCE_DIR) / "tests/cases/malformed")) {
    if (entry.path().extension() != ".yaml") continue;
    ++files;
    CAPTURE(entry.path().filename().string());
    const Scratch scratch;
    const Run result = run(
        fmt::format("solve '{}' -o '{}'", entry.path().string(), (scratch / "results").string()));
    CHECK(result.exit == 2);
    CHECK(result.out.empty());
    // "# expect 12:56 phrase" heads the file, or stands beside it where the file cannot hold it.
    fs::path beside = entry.path();
    beside.replace_extension(".expected");
    const std::string expectation = text_of(fs::exists(beside) ? beside : entry.path());
    const std::size_t start = expectation.find_first_of("0123456789");
    REQUIRE(start != std::string::npos);
    const std::string place = expectation.substr(start, expectation.find(' ', start) - start);
    const std::string line = place.substr(0, place.find(':'));
    const std::string head = entry.path().string() + (line == "0" ? ": " : ':' + place + ": ");
    CHECK(result.notes.find(head) == 0);
    CHECK(scratch.holds_only({}));
  }
  CHECK(files >= 40);
}

TEST_CASE("a file of another kind than the command takes is told once by what it is") {
  const Scratch scratch;
  const std::string folder = QUOIN_SOURCE_DIR "/cases/";
  const std::string drawing = (scratch / "drawing.dxf").string();
  std::ofstream(drawing) << "0\nSECTION\n2\nENTITIES\n0\nENDSEC\n0\nEOF\n";
  const std::string picture = (scratch / "picture.svg").string();
  std::ofstream(picture) << "<svg xmlns=\"http://www.w3.org/2000/svg\"></svg>\n";
  const std::string section = folder + "catalogue/corner.yaml";
  const std::string sweep = folder + "catalogue/corner.vary.yaml";
  const std::string house = folder + "examples/house/house.yaml";
  const std::string rows = " -o '" + (scratch / "rows").string() + "'";
  struct Wrong {
    std::string arguments, what, use;
  };
  const Wrong all[] = {
      {"solve '" + sweep + "'", "this is a vary file, not a case file", "`quoin vary"},
      {"check '" + picture + "'", "this is a picture, not a case file", "made from"},
      {"check '" + drawing + "'", "this is a drawing (DXF), not a case file", "`quoin trace"},
      {"vary '" + section + "'" + rows, "this is a case file, not a vary file", "`quoin solve`"},
      {"vary '" + house + "'" + rows, "this is a house file, not a vary file", "`quoin solve`"},
      {"gather '" + section + "'", "this is a case file, not a folder of rows", "`quoin solve`"},
      {"trace '" + section + "' --layers '" + section + "'",
       "this is a case file, not a drawing (DXF)", "`quoin solve`"},
      {"trace '" + drawing + "' --layers '" + sweep + "'", "this is a vary file, not a case file",
       "`quoin vary"},
  };
  for (const Wrong& each : all) {
    CAPTURE(each.arguments);
    const Run result = run(each.arguments);
    CHECK(result.exit == 2);
    CHECK(result.out.empty());
    CHECK(result.notes.find(each.what) != std::string::npos);
    CHECK(result.notes.find(each.use) != std::string::npos);
    CHECK(result.notes.find("faults") == std::string::npos);
  }
}

TEST_CASE("a folder that cannot be made ends with exit 4 and its path") {
  const Scratch scratch;
  std::ofstream(scratch / "a file") << "in the way";
  const std::string folder = (scratch / "a file" / "results").string();
  const Run result = run(fmt::format("solve {} -o '{}'", example("wall"), folder));
  CHECK(result.exit == 4);
  CHECK(result.notes.find(folder) != std::string::npos);
  CHECK(scratch.holds_only({"a file"}));
}

TEST_CASE("an output that cannot take what is printed ends with exit 4") {
  const int status = std::system(
      fmt::format("'{}' solve {} >/dev/full 2>/dev/null", QUOIN_PROGRAM, example("wall")).c_str());
  REQUIRE(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 4);
}

TEST_CASE(
    "a good case ends with exit 0 and its files, with exit 1 where a risk was to be failed on") {
  const Scratch scratch;
  const std::string folder = (scratch / "results").string();
  CHECK(run(fmt::format("solve {} -o '{}'", example("wall"), folder)).exit == 0);
  for (const char* name : {"findings.json", "surface.csv", "section.svg", "field-as-found.svg",
                           "field-as-found.vtr"}) {
    CAPTURE(name);
    CHECK(fs::file_size(fs::path(folder) / name) > 100);
  }
  CHECK(scratch.holds_only({"results"}));
  CHECK(run(fmt::format("solve --quiet --fail-on-risk {}", example("wall"))).exit == 1);
}

TEST_CASE("the same input gives the same bytes, whatever the number of threads") {
  const std::string first = run(fmt::format("solve --json {}", example("reveal"))).out;
  CHECK(first.size() > 1000);
  CHECK(run(fmt::format("solve --json {}", example("reveal"))).out == first);
  CHECK(run(fmt::format("solve --json --threads 2 {}", example("reveal"))).out == first);
  CHECK(run(fmt::format("solve --json {}", example("corner"))).out != first);
}

TEST_CASE("a file that is not there, an unknown option and an unknown name end with exit 2") {
  CHECK(run("solve no-such-file.yaml").exit == 2);
  CHECK(run("solve --no-such-option x.yaml").exit == 2);
  CHECK(run("materials 'comon brick'").notes.find("common brick") != std::string::npos);
  CHECK(run("materials 'polythene sheet'").notes.find("polyethylene sheet") != std::string::npos);
  CHECK(run("new cornr").exit == 2);
  // The words of the trade for what a recipe draws.
  CHECK(run("new jamb").notes.find("a jamb is drawn by: reveal") != std::string::npos);
  CHECK(run("new window").notes.find("reveal, head or sill") != std::string::npos);
  CHECK(run("new cornr").notes.find("drawn by") == std::string::npos);
}

TEST_CASE("each recipe's starting case is solved as it is printed") {
  for (const cases::StartingPoint& point : cases::starting_points()) {
    CAPTURE(point.name);
    const Scratch scratch;
    const Run start = run(fmt::format("new '{}'", point.name));
    REQUIRE(start.exit == 0);
    std::ofstream(scratch / "case.yaml") << start.out;
    CHECK(run(fmt::format("solve --quiet '{}'", (scratch / "case.yaml").string())).exit == 0);
  }
}

TEST_CASE("the sheets of several variants are documents that each read back") {
  const Run printed = run("check --sheet " + example("corner") + " " + example("wall"));
  REQUIRE(printed.exit == 0);
  const Scratch scratch;
  std::size_t count = 0;
  constexpr std::string_view between = "\n---\n";
  for (std::size_t at = 0; at != std::string::npos; ++count) {
    const std::size_t end = printed.out.find(between, at);
    std::ofstream(scratch / "sheet.yaml") << printed.out.substr(at, end - at) << '\n';
    const Run checked = run(fmt::format("check '{}'", (scratch / "sheet.yaml").string()));
    CAPTURE(checked.notes);
    CHECK(checked.exit == 0);
    at = end == std::string::npos ? end : end + between.size();
  }
  CHECK(count > 3);
}

TEST_CASE("a recipe gives the same numbers as the sheet it stands for") {
  for (const char* name : {"wall", "corner", "reveal", "sill", "foot", "head", "partition",
                           "joist_end", "porch_wall", "chimney", "bay"}) {
    CAPTURE(name);
    const Scratch scratch;
    const Run sheets = run(fmt::format("check --sheet {}", example(name)));
    REQUIRE(sheets.exit == 0);
    const std::string first = sheets.out.substr(0, sheets.out.find("\n---\n"));
    std::ofstream(scratch / "sheet.yaml") << first << '\n';
    const std::string of_recipe = run(fmt::format("solve --json {}", example(name))).out;
    const Run solved = run(fmt::format("solve --json '{}'", (scratch / "sheet.yaml").string()));
    CAPTURE(solved.notes);
    REQUIRE(solved.exit == 0);
    const std::string& of_sheet = solved.out;
    // Proofs on triangles hang on how areas are drawn; brackets of L2D are the grid's.
    const auto value = [](const std::string& json, const std::string& key) {
      const bool bracket = key == "low" || key == "high";
      const std::size_t at = json.find('"' + key + '"', bracket ? json.find("L2D_W_mK") : 0);
      REQUIRE(at != std::string::npos);
      return json.substr(at, json.find_first_of(",}\n", at) - at);
    };
    for (const char* key : {"temperature_C", "fRsi", "fRsi_band", "low", "high"}) {
      CHECK(value(of_sheet, key) == value(of_recipe, key));
    }
  }
}

TEST_CASE("verify holds") { CHECK(run("verify").exit == 0); }

TEST_CASE("coats and membranes are listed beside the materials, with their sd and source") {
  const std::string all = run("materials").out;
  for (const auto& [name, sd] : {std::pair("limewash", "0.05"), {"tight", "infinite"}}) {
    const std::size_t at = all.find(name);
    REQUIRE(at != std::string::npos);
    CHECK(all.substr(at, all.find('\n', at) - at).find(sd) != std::string::npos);
  }
  const Run sheet = run("materials 'polyethylene sheet'");
  CHECK(sheet.exit == 0);
  CHECK(sheet.out.find("50 (30 to 100)") != std::string::npos);
  CHECK(sheet.out.find("ISO 10456") != std::string::npos);
  CHECK(sheet.out.find("conductivity") == std::string::npos);
}

}  // namespace quoin::testing
