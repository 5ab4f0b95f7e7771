// SPDX-License-Identifier: Apache-2.0
// What a starting case shows in comments works when it is uncommented.
#include <doctest/doctest.h>

#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"

namespace quoin::cases {
namespace {

using Lines = std::vector<std::string>;

Lines lines_of(const std::string& text) {
  std::istringstream stream(text);
  Lines lines;
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// A line that is a key or an item behind its sign of comment. Remarks begin with a capital.
const std::regex hint(R"(^( *)# ([a-z"-][^#]*:? .*|[a-z][a-z ]*:)$)");

/// The name that a hint gives to something: "porch" of "# porch: {...}".
std::string name_of(const std::smatch& found) {
  const std::string words = found[2];
  return words.substr(0, words.find(':'));
}

/// Whether a line is a hint that uses this name as a value, or that is the name's own.
bool names(const std::string& line, const std::string& name) {
  std::smatch found;
  return std::regex_match(line, found, hint) &&
         found.str(2).find(": " + name + " ") != std::string::npos;
}

/// The file with the hint in a line uncommented, and with it the lines that belong to it: those
/// whose comments begin deeper and, where `companions`, those that name what it adds.
std::string uncommented(const Lines& lines, std::size_t at, const std::smatch& found,
                        bool companions) {
  const std::string indent = found[1];
  const std::string deeper = indent + "#   ";
  std::string text;
  bool within = false;
  for (std::size_t k = 0; k < lines.size(); ++k) {
    within = k == at || (within && lines[k].rfind(deeper, 0) == 0);
    const bool remark = lines[k].rfind(deeper + "# ", 0) == 0;
    std::string line = lines[k];
    if (within && !remark) line.erase(indent.size(), 2);
    if (!within && companions && names(line, name_of(found))) line.erase(line.find("# "), 2);
    text += line + "\n";
  }
  return text;
}

/// Why a case cannot be read; empty where it can.
std::string fault_of(const std::string& text) {
  try {
    (void)case_of(text, "new.yaml");
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

}  // namespace

TEST_CASE("every hint of every starting case reads when it is uncommented") {
  std::size_t tried = 0;
  for (const StartingPoint& point : starting_points()) {
    CAPTURE(point.name);
    const Lines lines = lines_of(*starting_case(point.name));
    for (std::size_t k = 0; k < lines.size(); ++k) {
      std::smatch found;
      if (!std::regex_match(lines[k], found, hint) || lines[k].find(':') == std::string::npos)
        continue;
      CAPTURE(lines[k]);
      std::string fault = fault_of(uncommented(lines, k, found, false));
      if (!fault.empty()) fault = fault_of(uncommented(lines, k, found, true));
      CHECK(fault == "");
      ++tried;
    }
  }
  CHECK(tried > 150);
}

TEST_CASE("a hint that says nonsense would be found") {
  const std::string text = "# porch: {is: unheated}\n" + *starting_case("wall");
  const Lines lines = lines_of(text);
  std::smatch found;
  REQUIRE(std::regex_match(lines[0], found, hint));
  CHECK_FALSE(fault_of(uncommented(lines, 0, found, true)).empty());
}

}  // namespace quoin::cases
