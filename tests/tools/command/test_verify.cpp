// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "tools/command/verified.hpp"

namespace quoin::tools {
namespace {

/// A validation case with parts of its text replaced.
std::vector<VerifyRow> verified_with(
    std::string_view name, const std::vector<std::pair<std::string, std::string>>& replacements) {
  const auto files = verification_files();
  const auto file = std::find_if(files.begin(), files.end(),
                                 [&](const EmbeddedFile& one) { return one.name == name; });
  REQUIRE(file != files.end());
  std::string text(file->text);
  for (const auto& [from, to] : replacements) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    text.replace(at, from.size(), to);
  }
  return verified({file->name, text}, {});
}

const VerifyRow& row(const std::vector<VerifyRow>& rows, const std::string& quantity) {
  const auto found = std::find_if(rows.begin(), rows.end(),
                                  [&](const VerifyRow& one) { return one.quantity == quantity; });
  REQUIRE(found != rows.end());
  return *found;
}

}  // namespace

TEST_CASE("every value of every validation case holds") {
  const std::vector<VerifyRow> rows = verify({});
  CHECK(rows.size() == 28 + 10 + 7 + 1 + 2 + 1);
  for (const VerifyRow& one : rows) {
    CAPTURE(one.title);
    CAPTURE(one.quantity);
    CAPTURE(one.computed);
    CHECK(one.holds);
    CHECK(one.band <= one.limit);  // or it would hold by chance
    CHECK_FALSE(one.source.empty());
    CHECK(one.limit > 0.0);
  }
}

TEST_CASE("every file of cases/verification is built into the program as it is") {
  std::size_t files = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(QUOIN_SOURCE_DIR "/cases/verification")) {
    const std::string name = entry.path().filename().string();
    const bool built_in = std::any_of(verification_files().begin(), verification_files().end(),
                                      [&](const EmbeddedFile& one) { return one.name == name; });
    CHECK_MESSAGE(built_in, name);
    ++files;
  }
  CHECK(files == verification_files().size());
}

TEST_CASE("case 2 with the sheet taken out of the 40 mm of insulation fails by its heat flow") {
  const auto rows = verified_with("iso10211_case2.yaml", {{"y: [0, 47.5]", "y: [0, 46]"},
                                                          {"y: [41.5, 47.5]", "y: [40, 46]"},
                                                          {"y: [36.5, 41.5]", "y: [35, 40]"},
                                                          {"y: [35, 36.5]", "y: [33.5, 35]"},
                                                          {"y: [0, 36.5]", "y: [0, 35]"},
                                                          {"y: [47.5, 100]", "y: [46, 100]"},
                                                          {"A: [0, 47.5]", "A: [0, 46]"},
                                                          {"B: [500, 47.5]", "B: [500, 46]"},
                                                          {"C: [0, 41.5]", "C: [0, 40]"},
                                                          {"D: [15, 41.5]", "D: [15, 40]"},
                                                          {"E: [500, 41.5]", "E: [500, 40]"},
                                                          {"F: [0, 36.5]", "F: [0, 35]"},
                                                          {"G: [15, 36.5]", "G: [15, 35]"}});
  CHECK_FALSE(row(rows, "heat flow").holds);
  CHECK(row(rows, "heat flow").computed > 9.66);  // 9.684 by two independent discretisations
}

TEST_CASE("a wrong conductivity, resistance or leg fails its case") {
  CHECK_FALSE(
      row(verified_with("t7_corner.yaml", {{"conductivity: 0.75", "conductivity: 0.76"}}), "L2D")
          .holds);
  CHECK_FALSE(
      row(verified_with("t7_corner.yaml", {{"resistance: 0.13", "resistance: 0.14"}}), "fRsi")
          .holds);
  CHECK_FALSE(
      row(verified_with("isothermal_corner.yaml", {{"leg: 900", "leg: 895"}}), "L2D").holds);
  CHECK_FALSE(row(verified_with("layered_wall.yaml", {{"thickness: 330", "thickness: 331"}}),
                  "at outside face")
                  .holds);
}

TEST_CASE("a file of which nothing is known is refused") {
  CHECK_THROWS_AS(verified({"unheard_of.yaml", ""}, {}), std::invalid_argument);
}

TEST_CASE("the table fits 80 columns and shows reference, limit and source of every case") {
  std::vector<VerifyRow> rows;
  for (const char* title : {"One case", "Another case"}) {
    rows.push_back({title, "at a rather long probe", "W/(m·K)", 12.34567, 0.001, 12.35, 0.05, true,
                    "a source that takes more than one line to be told in full, for "
                    "example because it names an edition and how sure it is"});
  }
  rows.back().holds = false;
  rows.back().computed = 13;
  const std::string text = text_of(rows, {});
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) CHECK(columns_of(line) <= 80);
  for (const char* word : {"One case", "Another case", "12.346", "12.350", "0.05", "how sure it is",
                           "holds", "FAILS", "1 values hold, 1 fail"}) {
    CHECK_MESSAGE(text.find(word) != std::string::npos, word);
  }
}

}  // namespace quoin::tools
