// SPDX-License-Identifier: Apache-2.0
#include "cases/starting_case.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <variant>

#include "cases/units.hpp"
#include "cases/utf8.hpp"
#include "cases/vocabulary.hpp"
#include "cases/words.hpp"
#include "cases/written.hpp"
#include "geometry/recipe.hpp"

namespace quoin::cases {
namespace {

constexpr std::size_t comment_column = 44;
constexpr std::string_view unheated_space = "porch";

/// A line with its comment, the comments of neighbouring lines under each other.
std::string commented(std::string_view line, std::string_view comment) {
  const std::size_t used = characters(line);
  const std::size_t gap = used + 2 < comment_column ? comment_column - used : 2;
  return fmt::format("{}{}# {}\n", line, std::string(gap, ' '), comment);
}

/// A visitor that writes the inputs of a recipe with their defaults, one in a line; inputs that
/// may be left out are commented out.
class Template : public Vocabulary<Template> {
 public:
  std::string text;
  bool needs_unheated = false;

  void quantity(std::string_view key, double value, Measure measure, Range /*plausible*/,
                std::string_view about) {
    add(fmt::format("{}: {}", key, bare_number(value, measure)), about);
  }
  void quantity(std::string_view key, const std::optional<double>& value, Measure measure,
                Range plausible, std::string_view about) {
    const double example =
        value.value_or(plausible.example.value_or(std::clamp(1.0, plausible.low, plausible.high)));
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
    add(fmt::format("{}: {}", key, example), about);
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
    needs_unheated = needs_unheated || kind == "unheated";
    add(fmt::format("{}: {}", key,
                    kind == "inside"    ? "room"
                    : kind == "outside" ? "outdoors"
                                        : unheated_space),
        about);
  }
  void optional_space(std::string_view key, SpaceId, std::string_view example,
                      std::string_view about) {
    add(fmt::format("# {}: {}", key, example), about);
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
# cut: vertical                             # y points up; a plan unless the recipe is upright

spaces:                                     # the air on each side
  room: {is: inside, temperature: 20, humidity: 50}
  outdoors: {is: outside, temperature: 0}
  # Humidity may follow: humidity class: 3; or moisture production: {rate: 300 g/h, volume: 180 m3,
  # air change: 0.5 1/h}; both need the humidity outside.
  # porch: {is: unheated, temperature: 8}                # or b: 0.5, or losses: {outdoors: 5}
  # underfloor: {is: unheated, air bricks: 1500}         # a void, vented by mm2 by metre of wall
  # behind the wardrobe: {like: room, resistance: 0.5}   # the same air, a poorer surface exchange
  # For vapour: coat: limewash, or plastic masonry paint, emulsion paint, 0.5 m (its sd), ...

materials:                                  # own ones; `quoin materials` lists all others
  wall brick: {like: common brick, moisture: sheltered}
  # Moisture: dry, sheltered, exposed, damp, saturated, 0.15 m3/m3, 8 mass-%, at 80 %
  # tested stone: {conductivity: 1.1, density: 1800}
  # cavity: {air layer: 50, openings: 1500}   # mm2 by metre; up to 500 still air, from 1500 outdoors

section:
)";

constexpr std::string_view sheet =
    R"(  sheet:                                    # painted areas, later ones cover earlier ones
    - {fill: outdoors, x: [-100, 0], y: [0, 1000]}
    - {fill: wall brick, x: [0, 330], y: [0, 1000]}
    - {fill: lime plaster, x: [330, 345], y: [0, 1000]}
    - {fill: room, x: [345, 445], y: [0, 1000]}
    # Where a material touches nothing, the section is cut off: no heat flows there.
    # {fill: nothing, ...} erases; outline: [[x, y], ...] gives other shapes than rectangles.
    # {membrane: polyethylene sheet, line: [[330, 0], [330, 1000]]} resists vapour alone.
)";

constexpr std::string_view tail =
    R"(  # bands:                                  # parts of a material that are wetter or drier
  #   - {of: wall brick, y: [-300, 300], moisture: damp}

# probes:                                   # places whose temperature is wanted
#   A: [345, 345]

# readings:                                 # temperatures measured there
#   A: {temperature: 12.4, plus or minus: 0.5}

criteria:                                   # what counts as a risk
  mould: {surface humidity: 80}             # at an inside surface
  fRsi: 0.75                                # the least temperature factor

  # guide: {published: DIN 4108-2}          # a threshold by the guide that states it

# climate:                                  # twelve months: the year is judged, too
#   outside temperature: [4, 4, 6, 8, 11, 14, 17, 16, 14, 10, 6, 4]
#   outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]
#   # or table: year.csv, with columns month,outside temperature,outside humidity; both may add
#   # inside temperature and inside humidity, for every room

# enough: {moisture: wall brick}            # how wet it may be; or thickness: {of: ..., up to: 100}

# vapour: {conditions: as stated, days: 60} # where it condenses within the section; no verdict
# drying: {wet: wall brick, coats: [limewash, plastic masonry paint]}

# accuracy: {fRsi: 0.002, L2D: 0.1 %}       # how exact the answer must be

variants:                                   # the case above with some keys replaced
  dry: {materials: {wall brick: {moisture: dry}}}
  damp: {materials: {wall brick: {moisture: damp}}}
)";

/// The text with every {name} and {about} replaced.
std::string headed(const StartingPoint& point) {
  std::string text(head);
  const auto fill_in = [&](std::string_view blank, std::string_view value) {
    const std::size_t at = text.find(blank);
    text.replace(at, blank.size(), value);
  };
  std::string about(point.about);
  about[0] =
      static_cast<char>(about[0] >= 'a' && about[0] <= 'z' ? about[0] - 'a' + 'A' : about[0]);
  fill_in("{about}", about);
  fill_in("{name}", point.name);
  return text;
}

template <class T>
void add_recipe(std::string_view name, std::optional<std::string>& text) {
  if (name != T::name) return;
  Template inputs;
  T recipe;
  describe(inputs, recipe);
  std::string beginning = headed({T::name, T::about});
  if (inputs.needs_unheated) {
    const std::string commented_out = fmt::format("# {}: {{is", unheated_space);
    beginning.erase(beginning.find(commented_out), 2);
  }
  text = beginning + fmt::format("  {}:\n", T::name) + inputs.text + std::string(tail);
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
  if (name == sheet_point.name) text = headed(sheet_point) + std::string(sheet) + std::string(tail);
  add_recipes(name, text, static_cast<const geometry::Recipe*>(nullptr));
  return text;
}

}  // namespace quoin::cases
