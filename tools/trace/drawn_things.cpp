// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/drawn_things.hpp"

#include <algorithm>
#include <charconv>
#include <fstream>
#include <map>
#include <sstream>
#include <utility>

#include "cases/text/faults.hpp"
#include "tools/parts/parts.hpp"

namespace quoin::tools {
namespace {

std::string stripped(std::string text) {
  while (!text.empty() && (text.back() == '\r' || text.back() == ' ')) text.pop_back();
  return text.substr(std::min(text.find_first_not_of(' '), text.size()));
}

int whole(const std::string& text) {
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// What the library that reads drawings does not tell: the unit, and splines that it passes over.
struct Groups {
  int unit = 0;
  std::vector<DrawnThing> splines;  ///< by fit points alone
};

/// Reads the groups of a drawing, a code and a value on a line each.
Groups groups_in(const std::filesystem::path& file) {
  constexpr const char *layer = "8", *control_points = "73", *fit_points = "74", *begins = "0";
  Groups groups;
  std::ifstream stream(file);
  std::string code, value, before;
  std::map<std::string, std::string> spline;
  bool in_spline = false;
  while (std::getline(stream, code) && std::getline(stream, value)) {
    code = stripped(code);
    value = stripped(value);
    if (code == "70" && before == "$INSUNITS") groups.unit = whole(value);
    before = value;
    if (code == begins) {
      if (in_spline && whole(spline[control_points]) == 0 && whole(spline[fit_points]) > 0)
        groups.splines.push_back(
            {spline[layer], DrawnThing::Kind::broken, "a spline by fit points", {}});
      in_spline = value == "SPLINE";
      spline.clear();
    } else if (in_spline) {
      spline.emplace(code, value);
    }
  }
  return groups;
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
  Groups groups = groups_in(file);
  drawing.unit = groups.unit;
  for (DrawnThing& spline : groups.splines) drawing.things.push_back(std::move(spline));
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
