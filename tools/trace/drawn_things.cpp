// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/drawn_things.hpp"

#include <charconv>
#include <fstream>
#include <sstream>

#include "cases/text/faults.hpp"
#include "tools/parts/parts.hpp"

namespace quoin::tools {
namespace {

/// The unit that the head of a drawing tells: behind `$INSUNITS` a group 70 with its code.
int unit_of(const std::filesystem::path& file) {
  std::ifstream stream(file);
  std::string line;
  const auto stripped = [](std::string text) {
    while (!text.empty() && (text.back() == '\r' || text.back() == ' ')) text.pop_back();
    return text.substr(std::min(text.find_first_not_of(' '), text.size()));
  };
  while (std::getline(stream, line)) {
    if (stripped(line) == "ENTITIES") return 0;
    if (stripped(line) != "$INSUNITS") continue;
    std::string code, value;
    if (!std::getline(stream, code) || !std::getline(stream, value)) return 0;
    const std::string number = stripped(value);
    int unit = 0;
    std::from_chars(number.data(), number.data() + number.size(), unit);
    return stripped(code) == "70" ? unit : 0;
  }
  return 0;
}

geometry::Outline outline_of(const std::string& text) {
  geometry::Outline outline;
  const char* at = text.data();
  const char* end = at + text.size();
  const auto number = [&] {
    double value = 0.0;
    while (at != end && *at == ' ') ++at;
    at = std::from_chars(at, end, value).ptr;
    return value;
  };
  while (at != end) {
    const double x = number(), y = number();
    outline.push_back({x, y});
  }
  return outline;
}

DrawnThing thing_of(const std::string& line) {
  std::istringstream fields(line);
  DrawnThing thing;
  std::string kind, outlines, outline;
  std::getline(fields, thing.layer, '\t');
  std::getline(fields, kind, '\t');
  std::getline(fields, thing.what, '\t');
  std::getline(fields, outlines);
  thing.kind = static_cast<DrawnThing::Kind>(kind.at(0) - '0');
  std::istringstream each(outlines);
  while (std::getline(each, outline, ';')) thing.outlines.push_back(outline_of(outline));
  return thing;
}

}  // namespace

ReadDrawing drawing_in(const std::filesystem::path& file) {
  std::string text;
  const auto read = reinterpret_cast<decltype(&quoin_read_drawing)>(
      function_of("trace", "quoin_read_drawing", text));
  if (read == nullptr)
    throw PartError("this program was built without the part that reads drawings: " + text);
  if (!read(file.string(), text)) {
    cases::Fault fault;
    fault.file = file.string();
    fault.what = "this drawing cannot be read";
    fault.found = text;
    fault.expected = "a DXF drawing in text form";
    fault.remedy = "save it as DXF, not binary";
    throw cases::InputError({fault});
  }
  ReadDrawing drawing;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) drawing.things.push_back(thing_of(line));
  drawing.unit = unit_of(file);
  return drawing;
}

double millimetres_of(int unit) {
  switch (unit) {  // codes of $INSUNITS
    case 1:
      return 25.4;
    case 2:
      return 304.8;
    case 4:
      return 1.0;
    case 5:
      return 10.0;
    case 6:
      return 1000.0;
    case 14:
      return 100.0;
    default:
      return 0.0;
  }
}

}  // namespace quoin::tools
