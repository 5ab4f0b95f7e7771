// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "cases/text/faults.hpp"

namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(QUOIN_SOURCE_DIR) / "tests" / "cases" / "malformed";

std::string text_of(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  return text.str();
}

/// The malformed files, by name.
std::vector<fs::path> malformed_files() {
  std::vector<fs::path> paths;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

struct Expected {
  std::size_t line = 0;
  std::size_t column = 0;
  std::string phrase;
};

/// What a file says of itself: "# expect 7:21 phrase" in its first line or, where the first line
/// is part of the slip, "7:21 phrase" in a file beside it.
Expected expected_of(const fs::path& path) {
  fs::path beside = path;
  beside.replace_extension(".expected");
  std::string line;
  if (fs::exists(beside)) {
    line = text_of(beside);
  } else {
    const std::string text = text_of(path);
    const std::string mark = "# expect ";
    REQUIRE(text.substr(0, mark.size()) == mark);
    line = text.substr(mark.size(), text.find('\n') - mark.size());
  }
  while (!line.empty() && line.back() == '\n') line.pop_back();
  Expected expected;
  char colon = 0;
  std::istringstream stream(line);
  stream >> expected.line >> colon >> expected.column;
  REQUIRE(colon == ':');
  stream.ignore(1);
  std::getline(stream, expected.phrase);
  REQUIRE(!expected.phrase.empty());
  return expected;
}

}  // namespace

TEST_CASE("every malformed file is refused at the right place with the right words") {
  const std::vector<fs::path> paths = malformed_files();
  CHECK(paths.size() >= 45);
  for (const fs::path& path : paths) {
    CAPTURE(path.filename().string());
    const Expected expected = expected_of(path);
    bool refused = false;
    try {
      (void)quoin::cases::case_of(text_of(path), "case.yaml");
    } catch (const quoin::cases::InputError& error) {
      refused = true;
      REQUIRE(!error.faults.empty());
      CAPTURE(std::string(error.what()));
      const quoin::cases::Fault& fault = error.faults.front();
      CHECK(fault.line == expected.line);
      CHECK(fault.column == expected.column);
      CHECK(fault.what.find(expected.phrase) != std::string::npos);
      CHECK(error.faults.size() == 1);  // one slip, one message
      CHECK(fault.file == "case.yaml");
    }
    CHECK(refused);
  }
}

TEST_CASE("what is just too thin is told with digits enough to differ from what is expected") {
  try {
    (void)quoin::cases::case_of(text_of(folder / "area-just-too-thin.yaml"), "case.yaml");
    FAIL("it is refused");
  } catch (const quoin::cases::InputError& error) {
    CHECK(error.faults.front().found == "0.0996 mm");
    CHECK(error.faults.front().expected == "at least 0.1 mm");
  }
}
