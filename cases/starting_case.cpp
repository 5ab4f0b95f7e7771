// SPDX-License-Identifier: Apache-2.0
#include "cases/starting_case.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include "cases/grammar/units.hpp"
#include "cases/grammar/vocabulary.hpp"
#include "cases/grammar/written.hpp"
#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/sentences.hpp"
#include "cases/text/utf8.hpp"
#include "geometry/recipe.hpp"
#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t comment_column = 44;
constexpr std::string_view unheated_space = "porch";
constexpr std::string_view rubble = "limestone rubble";

/// A line with its comment, the comments of neighbouring lines under each other.
std::string commented(std::string_view line, std::string_view comment) {
  const std::size_t used = characters(line);
  const std::size_t gap = used + 2 < comment_column ? comment_column - used : 2;
  return fmt::format("{}{}# {}\n", line, std::string(gap, ' '), comment);
}

/// A space that a recipe may name, its line behind a mark.
std::string space_line(std::string_view mark, std::string_view name) {
  constexpr std::string_view unheated = "{is: unheated, temperature: 8, humidity: 75}";
  const std::string_view what = name == "kitchen" ? "{is: inside, temperature: 19, humidity: 55}"
                                : name == "underfloor"
                                    ? "{is: unheated, air bricks: 1500, humidity: 85}"
                                    : unheated;
  const std::string_view about = mark.empty() ? "or b: 0.5, or losses: {outdoors: 5}"
                                 : name == "underfloor"
                                     ? "a void, vented by mm2 per metre; see the line that names it"
                                     : "for the line below that names it";
  return commented(fmt::format("  {}{}: {}", mark, name, what), about);
}

/// A visitor that writes the inputs of a recipe with their defaults, one in a line; inputs that
/// may be left out are commented out.
class Template : public Vocabulary<Template> {
 public:
  std::string text;
  std::string spaces;     ///< that the inputs name, beside a room and outdoors
  std::string materials;  ///< that the inputs name, beside the brick of the wall

  void quantity(std::string_view key, double value, Measure measure, Range /*plausible*/,
                std::string_view about) {
    add(fmt::format("{}: {}", key, bare_number(value, measure)), about);
  }
  void quantity(std::string_view key, const std::optional<double>& value, Measure measure,
                Range plausible, std::string_view about) {
    // Another than what it is where the line stays out, which would do nothing.
    constexpr double another = 1.2;
    const double example = plausible.example.value_or(
        another * value.value_or(std::clamp(1.0, plausible.low, plausible.high / another)));
    add(fmt::format("# {}: {}", key, bare_number(example, measure)), about);
  }
  template <class T>
  void choice(std::string_view key, const T& value, const Words<Plain<T>>& words,
              std::string_view about) {
    for (const auto& [word, meaning] : words) {
      if (value == meaning) add(fmt::format("{}: {}", key, word), about);
    }
  }
  void layers(std::string_view key, const std::vector<geometry::Layer>&, std::string_view about,
              std::string_view example = {}) {
    if (!example.empty()) {
      add(fmt::format("{}: {}", key, example), about);
      return;
    }
    add(fmt::format("{}:", key), about);
    text += "      - {material: lime plaster, thickness: 15}\n";
    text += "      # - {membrane: polyethylene sheet}    # between two layers; or its sd: 100 m\n";
    text += "      # - {material: cavity, thickness: 50}    # a layer of air, from `materials`\n";
    text += "      # - {material: tested stone, thickness: 100}    # one of your own\n";
    text += "      - {material: wall brick, thickness: 330}\n";
  }
  void optional_layers(std::string_view key, const std::vector<geometry::Layer>&,
                       std::string_view about,
                       std::string_view example = "[{material: lime plaster, thickness: 15}]") {
    add(fmt::format("# {}: {}", key, example), about);
  }
  void frame(std::string_view key, RegionId, std::string_view about) {
    add(fmt::format("{}: softwood across the grain", key), about);
  }
  void material(std::string_view key, RegionId, std::string_view example, std::string_view about) {
    // Masonry whose moisture tells is stated with it.
    if (example != rubble) {
      add(fmt::format("{}: {}", key, example), about);
      return;
    }
    materials += fmt::format("  {0} stone: {{like: {1}, moisture: damp}}\n", key, rubble);
    add(fmt::format("{0}: {0} stone", key), about);
  }
  void ground(std::string_view key, RegionId region, std::string_view example,
              std::string_view about) {
    material(key, region, example, about);
  }
  void optional_material(std::string_view key, RegionId, std::string_view example,
                         std::string_view about) {
    add(fmt::format("# {}: {}", key, example), about);
  }
  void optional_membrane(std::string_view key, MembraneId, std::string_view example,
                         std::string_view about) {
    add(fmt::format("# {}: {}", key, example), about);
  }
  void space(std::string_view key, SpaceId, std::string_view kind, std::string_view about) {
    if (kind == "unheated") spaces += space_line("", unheated_space);
    add(fmt::format("{}: {}", key,
                    kind == "inside"    ? "room"
                    : kind == "outside" ? "outdoors"
                                        : unheated_space),
        about);
  }
  void optional_space(std::string_view key, SpaceId, std::string_view example,
                      std::string_view about) {
    add(fmt::format("# {}: {}", key, example), about);
    spaces += space_line("# ", example);
  }

 private:
  void add(std::string_view line, std::string_view about) {
    text += commented(fmt::format("    {}", line), about);
  }
};

constexpr std::string_view head =
    R"(# {about}. Every value below is invented: put your own in its place.
# Numbers without a unit: lengths mm, temperatures °C, humidity %, conductivity W/(m·K),
# resistance m²K/W, density kg/m³, wind m/s. Other units may be written: 0.33 m, 8 vol-%.
quoin: 1
title: A {name} to start from
{cut}
spaces:                                     # the air on each side
  room: {is: inside, temperature: 20, humidity: 50}
  outdoors: {is: outside, temperature: 0, humidity: 85}
{spaces}  # A space may be unheated: {is: unheated, temperature: 8}, or b: 0.5, or losses: {outdoors: 5}.
  # Its surfaces may have a coat, for vapour: limewash, plastic masonry paint, 0.5 m (its sd), ...

materials:                                  # own ones; `quoin materials` lists all others
  wall brick: {like: common brick, moisture: sheltered}
{materials}  # Moisture: dry, sheltered, exposed, damp, saturated, 0.15 m3/m3, 8 mass-%, at 80 %
  # tested stone: {conductivity: 1.1, density: 1800}
  # cavity: {air layer: 50}                 # openings: 1500 (mm2 per metre) open it to outdoors

section:
)";

constexpr std::string_view sheet =
    R"(  sheet:                                    # painted areas, later ones cover earlier ones
    - {fill: outdoors, x: [-100, 0], y: [0, 1000]}
    - {fill: wall brick, x: [0, 330], y: [0, 1000]}
    - {fill: lime plaster, x: [330, 345], y: [0, 1000]}
    - {fill: room, x: [345, 445], y: [0, 1000]}
    # - {fill: tested stone, x: [200, 330], y: [400, 600]}    # from `materials`
    # - {fill: cavity, x: [100, 150], y: [0, 1000]}    # a layer of air, from `materials`
    # Where a material touches nothing, the section is cut off: no heat flows there.
    # Erase with {fill: nothing, ...}; outline: [[x, y], ...] gives other shapes than rectangles.
    # - {membrane: polyethylene sheet, line: [[330, 0], [330, 1000]]}    # resists vapour alone
)";

constexpr std::string_view tail =
    R"(  # bands:                                  # parts of a material that are wetter or drier
  #   - {of: wall brick, y: [-300, 300], moisture: damp}

# probes:                                   # places whose temperature is wanted{or}
#   {probe}
# readings:                                 # temperatures measured there
#   A: {temperature: 12.4, plus or minus: 0.5}

criteria:                                   # what counts as a risk
  mould: {surface humidity: 80}             # at an inside surface
  fRsi: 0.75                                # the least temperature factor

  # guide: {published: DIN 4108-2}          # a threshold by the guide that states it

# climate:                                  # twelve months: the year is judged, too
#   outside temperature: [4, 4, 6, 8, 11, 14, 17, 16, 14, 10, 6, 4]
#   outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]
#   # Or table: year.csv, with columns month,outside temperature,outside humidity; both may
#   # Have inside temperature and inside humidity, for every room.

# enough: {moisture: wall brick}            # how wet it may be; or thickness: {of: ..., up to: 100}

# vapour: {conditions: as stated, days: 60} # where it condenses within the section; no verdict
# drying: {wet: wall brick, coats: [limewash, plastic masonry paint]}

# accuracy: {fRsi: 0.001, L2D: 0.05 %}      # how exact the answer must be: else 0.002 and 0.1 %

variants:                                   # the case above with some keys replaced
  dry: {materials: {wall brick: {moisture: dry}}}
  damp: {materials: {wall brick: {moisture: damp}}}
  # wardrobe: {spaces: {room: {behind: furniture}}}         # the same air, a poorer exchange
  # household: {spaces: {room: {humidity: ~, humidity class: 3}}}
  # bath: {spaces: {room: {humidity: ~, moisture production: {rate: 300 g/h, volume: 180 m3, air change: 0.5 1/h}}}}
)";

/// Puts a value in the place of a blank.
void fill_in(std::string& text, std::string_view blank, std::string_view value) {
  text.replace(text.find(blank), blank.size(), value);
}

/// A place of the fabric on the inside: the middle of the longest straight face there, as the case
/// file writes it.
std::string place_inside(const Variant& variant) {
  const geometry::Section section = geometry::section_of(variant.sheet);
  const auto is_inside = [&](const geometry::Cell& cell) {
    const auto* space = std::get_if<SpaceId>(&cell.below);
    return cell.below == cell.above && space != nullptr &&
           variant.spaces[*space].is == SpaceKind::inside;
  };
  const auto is_fabric = [&](const geometry::Cell& cell) {
    const auto* region = std::get_if<RegionId>(&cell.below);
    return cell.below == cell.above && region != nullptr &&
           materials::is_fabric(variant.regions[*region].part);
  };
  double longest = 0.0;
  geometry::Point middle;
  const auto consider = [&](const geometry::Cell& one, const geometry::Cell& other, double length,
                            geometry::Point at) {
    const bool meet = (is_inside(one) && is_fabric(other)) || (is_fabric(one) && is_inside(other));
    if (!meet || length <= longest) return;
    longest = length;
    middle = at;
  };
  const auto& x = section.x;
  const auto& y = section.y;
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Cell& cell = section.cell(i, j);
      const geometry::Point centre{(x[i] + x[i + 1]) / 2, (y[j] + y[j + 1]) / 2};
      if (i + 1 < section.columns())
        consider(cell, section.cell(i + 1, j), y[j + 1] - y[j], {x[i + 1], centre.y});
      if (j + 1 < section.rows())
        consider(cell, section.cell(i, j + 1), x[i + 1] - x[i], {centre.x, y[j + 1]});
    }
  }
  return fmt::format("[{:.6g}, {:.6g}]", 1e3 * middle.x + 0.0, 1e3 * middle.y + 0.0);  // no -0
}

/// A probe on the surface of the room of a case, by a place that its recipe names; empty where it
/// names none.
std::string probe_on_surface(const std::string& text, const Variant& variant) {
  for (const geometry::NamedPlace& place : variant.places) {
    for (const char* rest :
         {"at: 250}", "at: 250, leg: left}", "at: 20}", "at: 20, leg: left}", "at: 0}"}) {
      const std::string probe = fmt::format("{{on: inside, from: {}, {}", place.name, rest);
      try {
        (void)case_of(fmt::format("{}probes:\n  A: {}\n", text, probe), "");
        return probe;
      } catch (const InputError&) {
        continue;  // it lies beyond that place, or may lie on either leg
      }
    }
  }
  return "";
}

/// The text of a case with its title, its spaces and its inputs. `upright`: its recipe is drawn in
/// a vertical cut, whatever is said.
std::string completed(const StartingPoint& point, bool upright, std::string_view spaces,
                      std::string_view materials, std::string_view section) {
  std::string text(head);
  fill_in(text, "{cut}", upright ? "" : commented("# cut: vertical", "y points up; else a plan"));
  fill_in(text, "{about}", capital(std::string(point.about)));
  fill_in(text, "{name}", point.name);
  fill_in(text, "{spaces}", spaces);
  fill_in(text, "{materials}", materials);
  text += section;
  text += tail;
  const Variant variant = case_of(text, "").variants.front();
  const std::string on_surface = probe_on_surface(text, variant);
  const std::string place = "#   A: " + place_inside(variant);
  fill_in(text, "#   {probe}\n", on_surface.empty() ? place + "\n" : commented(place, on_surface));
  fill_in(text, "{or}", on_surface.empty() ? "" : "; or on a surface:");
  return text;
}

template <class T>
void add_recipe(std::string_view name, std::optional<std::string>& text) {
  if (name != T::name) return;
  Template inputs;
  T recipe;
  describe(inputs, recipe);
  text = completed({T::name, T::about}, geometry::is_vertical(geometry::Recipe(recipe)),
                   inputs.spaces, inputs.materials, fmt::format("  {}:\n", T::name) + inputs.text);
}

template <class... T>
void add_recipes(std::string_view name, std::optional<std::string>& text,
                 const std::variant<T...>*) {
  (add_recipe<T>(name, text), ...);
}

template <class... T>
std::vector<StartingPoint> points(const std::variant<T...>*) {
  return {{T::name, T::about}...};
}

constexpr StartingPoint sheet_point{"sheet", "a section painted by hand"};

}  // namespace

std::vector<StartingPoint> starting_points() {
  std::vector<StartingPoint> all = points(static_cast<const geometry::Recipe*>(nullptr));
  all.push_back(sheet_point);
  return all;
}

std::optional<std::string> starting_case(std::string_view name) {
  std::optional<std::string> text;
  if (name == sheet_point.name) text = completed(sheet_point, false, "", "", sheet);
  add_recipes(name, text, static_cast<const geometry::Recipe*>(nullptr));
  return text;
}

}  // namespace quoin::cases
