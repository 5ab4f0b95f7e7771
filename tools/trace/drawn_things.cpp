// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/drawn_things.hpp"

#include <algorithm>
#include <charconv>
#include <fstream>
#include <map>
#include <set>
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

/// What the library that reads drawings does not tell: the unit, how letters are written, splines
/// that it passes over, and what of the lines it draws is a dimension.
struct Groups {
  int unit = 0;
  bool is_utf8 = false;
  std::set<std::string> dimensions;  ///< their handles
  std::vector<DrawnThing> splines;   ///< by fit points alone
};

/// Reads the groups of a drawing, a code and a value on a line each.
Groups groups_in(const std::filesystem::path& file) {
  constexpr const char *layer = "8", *control_points = "73", *fit_points = "74", *begins = "0",
                       *handle = "5";
  constexpr const char* first_in_utf8 = "AC1021";
  Groups groups;
  std::ifstream stream(file);
  std::string code, value, before;
  std::map<std::string, std::string> spline;
  bool in_spline = false, in_dimension = false;
  while (std::getline(stream, code) && std::getline(stream, value)) {
    code = stripped(code);
    value = stripped(value);
    if (code == "70" && before == "$INSUNITS") groups.unit = whole(value);
    if (code == "1" && before == "$ACADVER") groups.is_utf8 = value >= first_in_utf8;
    before = value;
    if (code == begins) {
      if (in_spline && whole(spline[control_points]) == 0 && whole(spline[fit_points]) > 0)
        groups.splines.push_back(
            {spline[layer], DrawnThing::Kind::broken, "a spline by fit points", {}});
      in_spline = value == "SPLINE";
      in_dimension = value == "DIMENSION";
      spline.clear();
    } else if (in_spline) {
      spline.emplace(code, value);
    } else if (in_dimension && code == handle) {
      groups.dimensions.insert(value);
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

/// A thing, and its handle.
std::pair<DrawnThing, std::string> thing_of(const std::string& line) {
  std::istringstream fields(line);
  DrawnThing thing;
  std::string handle;
  std::string kind, outlines, outline;
  std::getline(fields, thing.layer, '\t');
  std::getline(fields, kind, '\t');
  std::getline(fields, thing.what, '\t');
  std::getline(fields, handle, '\t');
  std::getline(fields, outlines);
  thing.kind = static_cast<DrawnThing::Kind>(kind.at(0) - '0');
  std::istringstream each(outlines);
  while (std::getline(each, outline, ';')) thing.outlines.push_back(outline_of(outline));
  return {std::move(thing), std::move(handle)};
}

}  // namespace

ReadDrawing drawing_in(const std::filesystem::path& file) {
  std::string text;
  const auto read = reinterpret_cast<decltype(&quoin_read_drawing)>(
      function_of("trace", "quoin_read_drawing", text));
  if (read == nullptr)
    throw PartError("this program was built without the part that reads drawings: " + text);
  Groups groups = groups_in(file);
  if (!read(file.string(), groups.is_utf8, text)) {
    cases::Fault fault;
    fault.file = file.string();
    fault.what = "this drawing cannot be read";
    fault.found = text;
    fault.expected = "a DXF drawing in text form";
    fault.remedy = "save it as DXF, not binary";
    throw cases::InputError({fault});
  }
  ReadDrawing drawing;
  std::set<std::string> left_out;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    auto [thing, handle] = thing_of(line);
    // A dimension comes as its lines, arrows and text: one thing that is left out.
    if (groups.dimensions.count(handle) > 0) {
      if (!left_out.insert(handle).second) continue;
      thing.kind = DrawnThing::Kind::skipped;
    }
    drawing.things.push_back(std::move(thing));
  }
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
