// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>

/// Everything the program can do with a case, text in and text out, for whatever is no command
/// line: without disk, clock, terminal or process, and without the libraries behind PDF, PNG and
/// fields for a viewer. JSON texts end with a line feed.
namespace quoin::door {

/// Why nothing came of a call: the input, or the numerics.
struct Refusal : std::runtime_error {
  enum class Kind { input, numerics };
  Refusal(Kind of_kind, const std::string& words, std::string json)
      : std::runtime_error(words), kind(of_kind), faults(std::move(json)) {}
  Kind kind;
  /// JSON: a list of {line, column, found, expected, remedy, what, source, file}; line 0: the text
  /// as a whole.
  std::string faults;
};

/// Tables, and of a house the case files, by the names that the text has for them.
using Beside = std::map<std::string, std::string>;

struct Wanted {
  std::string variant = {};  ///< its name; empty: all
  bool pictures = false;     ///< too
  Beside beside = {};
  int threads = 1;
  bool of_house = false;  ///< a section of a house, alone: what its survey knows is not asked for
};

// Every function throws Refusal where it cannot do what it says.

/// The findings, the same text as `quoin solve --json` prints; of a house one line a section. With
/// pictures the object has one member more, `pictures`: {file name: SVG text}.
[[nodiscard]] std::string solve(std::string_view text, const Wanted& wanted = {});

/// The report page; `of_house` as in Wanted.
[[nodiscard]] std::string report(std::string_view text, const Beside& beside = {},
                                 bool of_house = false);

/// The table of temperatures along the inside surfaces, CSV.
[[nodiscard]] std::string surface_table(std::string_view text, const Beside& beside = {},
                                        bool of_house = false);

/// A commented case to start from, and JSON of what there is: [{name, about}].
[[nodiscard]] std::string start(std::string_view recipe);
[[nodiscard]] std::string starts();

/// The JSON schema of the case file.
[[nodiscard]] std::string schema();

/// The materials and coats a case may name, JSON: {materials: [{name, about, moistures: [{state,
/// m3_per_m3, W_per_mK}], ...}], coats: [{name, sd_m}]}.
[[nodiscard]] std::string catalogue();

/// Every single value of a case, in the order of the text, JSON: [{path, text, line, column}]; with
/// `at` where it is written elsewhere (an alias). `text` is null for nothing (~).
/// A path is keys and positions of lists joined by '/'; '~' and '/' in a key are ~0 and ~1.
[[nodiscard]] std::string values(std::string_view text);

// Changes of the text itself, all but what is asked stays as it is (see edit.hpp).
[[nodiscard]] std::string edited(std::string_view text, std::string_view path,
                                 std::string_view value);
[[nodiscard]] std::string placed(std::string_view text, std::string_view path,
                                 std::string_view yaml);
[[nodiscard]] std::string inserted(std::string_view text, std::string_view path,
                                   std::string_view yaml);
[[nodiscard]] std::string removed(std::string_view text, std::string_view path);

/// What can be dragged in the picture that glance() draws of a variant, JSON: {view: {width,
/// height, units_per_mm, left, top}, handles: [{path, text, unit, value, low, high, axis, grows,
/// from, to, list, layer, material}]}. A handle is the edge of a layer on its room's side, or of an
/// area of a sheet, from one place of the picture to another; `axis` is that of the section along
/// which it moves, `grows` by how many mm the value grows for each mm that way: 1 or -1, of a slope
/// less. Picture units; x = left + units_per_mm * x_mm, y = top - units_per_mm * y_mm. Values in
/// mm.
[[nodiscard]] std::string handles(std::string_view text, std::string_view variant,
                                  const Beside& beside = {});

/// How glance() draws.
struct Look {
  std::string variant = {};  ///< empty: the case as written
  double letters = 0.0;      ///< size of the figures on isotherms, units; 0: none
  bool field = false;        ///< tells the temperatures and surfaces, too
  Beside beside = {};
  bool of_house = false;  ///< as in Wanted
};

/// One variant for the surface-temperature purpose only, quick enough to follow a finger, JSON:
/// {variant, rooms: [{space, coldest_C, x_mm, y_mm, where, temperature_C, dew_point_C, mould_C}],
/// picture, view, handles, colours, field: {x_mm, y_mm, temperature_C}, surfaces, places}. The
/// numbers are those of solve(); it judges nothing.
[[nodiscard]] std::string glance(std::string_view text, const Look& look = {});

}  // namespace quoin::door
