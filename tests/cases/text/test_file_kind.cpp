// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/house.hpp"
#include "cases/read.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/vary.hpp"

namespace quoin::cases {
namespace {

const std::string section = "quoin: 1\nspaces: {room: {is: inside}}\nsection: {}\n";
const std::string vary = "vary: 1\ncase: corner.yaml\nover: {a: [1, 2]}\ntable: [fRsi]\n";
const std::string house = "quoin: 1\nhouse: {wall: wall.yaml}\n";
const std::string findings = "{\"quoin\":\"1.0\",\"format\":1,\"title\":\"invented\"}";
const std::string table = "month,outside temperature\n1,3.5\n2,4\n";

/// All that is said of a text read as a case.
std::vector<Fault> faults_of(const std::string& text) {
  try {
    (void)case_of(text, "case.yaml");
  } catch (const InputError& error) {
    return error.faults;
  }
  return {};
}

}  // namespace

TEST_CASE("a file is known for what it is by its keys or by how it begins") {
  CHECK(kind_of(section) == FileKind::section);
  CHECK(kind_of("\xEF\xBB\xBF" + section) == FileKind::section);
  CHECK(kind_of(vary) == FileKind::vary);
  CHECK(kind_of(house) == FileKind::house);
  CHECK(kind_of(findings) == FileKind::findings);
  CHECK(kind_of("{\"$schema\": \"https://json-schema.org\"}") == FileKind::schema);
  CHECK(kind_of(table) == FileKind::table);
  CHECK(kind_of("# logged\nday;inside\n1;2\n") == FileKind::table);
  CHECK(kind_of("<?xml version=\"1.0\"?>\n<svg width=\"1\"/>") == FileKind::picture);
  CHECK(kind_of("<!DOCTYPE html><html></html>") == FileKind::page);
  CHECK(kind_of("%PDF-1.7\n") == FileKind::document);
  CHECK(kind_of("  0\r\nSECTION\r\n  2\r\nENTITIES\r\n") == FileKind::drawing);
  CHECK(kind_of("999\na remark\n0\nSECTION\n") == FileKind::drawing);
  CHECK(kind_of(std::string("SQLite format 3\0....", 20)) == FileKind::rows);
  CHECK(kind_of("PK\x03\x04...") == FileKind::archive);
  CHECK(kind_of(std::string("\x7F"
                            "ELF\0\0\0",
                            7)) == FileKind::binary);
}

TEST_CASE("what may be a case written wrong is not taken for something else") {
  for (const char* text : {"", "a word", "- a\n- b\n", "quoin: 1\n", "spaces: {room: {is: inside",
                           "one, two\nthree\n", "a: &a [1, 2\nb: [*a, *a\n", "0\nsection\n"})
    CHECK_MESSAGE(kind_of(text) == FileKind::unknown, text);
}

TEST_CASE("a file of another kind has one fault which names what it is and what takes it") {
  const auto one = [](const std::string& text, const std::string& what, const std::string& use) {
    const std::vector<Fault> faults = faults_of(text);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].what == what);
    CHECK(faults[0].expected == "a case file");
    CHECK(faults[0].remedy.find(use) != std::string::npos);
  };
  one(vary, "this is a vary file, not a case file", "`quoin vary");
  one(house, "this is a house file, not a case file", "`quoin solve`");
  one(findings, "this is the findings of a solved case, not a case file", "that was solved");
  one(table, "this is a table (CSV), not a case file", "`climate: {table: airs.csv}`");
  try {
    (void)vary_of(section, "case.yaml", {}, {"fRsi"});
    FAIL("it is refused");
  } catch (const InputError& error) {
    REQUIRE(error.faults.size() == 1);
    CHECK(error.faults[0].what == "this is a case file, not a vary file");
  }
  // The twin: a case with faults is told them.
  CHECK(faults_of(section).size() > 1);
}

TEST_CASE("a section of a house that is missing or no case is told as what it should be") {
  const auto fault = [](const std::string& text) {
    const Files files = [&](const std::string&) {
      return text.empty() ? std::nullopt : std::optional(text);
    };
    try {
      (void)house_of(house, "house.yaml", files);
    } catch (const InputError& error) {
      return error.faults.at(0);
    }
    return Fault{};
  };
  const Fault missing = fault("");
  CHECK(missing.what == "the case 'wall.yaml' cannot be read");
  CHECK(missing.expected == "a case file in the folder of this file, or below it");
  CHECK(missing.line == 2);
  const Fault other = fault(vary);
  CHECK(other.what == "'wall.yaml' is a vary file, not a case file");
  CHECK(other.file == "house.yaml");
  CHECK(other.line == 2);
}

}  // namespace quoin::cases
