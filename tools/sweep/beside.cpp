// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/beside.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <optional>
#include <set>
#include <variant>
#include <vector>

#include "cases/meaning/catalogue.hpp"
#include "cases/read.hpp"
#include "cases/write_sheet.hpp"
#include "materials/moisture.hpp"
#include "tools/sweep/made_alike.hpp"

namespace quoin::tools {
namespace {

constexpr std::string_view masonry = "common brick";  // of the catalogue
constexpr double insulates = 0.1;                     // W/(m K), dry, up to which a layer does

double number(std::string_view text) {
  double value = 0.0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// The fields of a line of our own tables: some in quotes, none with quotes in them.
std::vector<std::string> fields_of(std::string_view line) {
  std::vector<std::string> fields(1);
  bool quoted = false;
  for (const char sign : line) {
    if (sign == '"') {
      quoted = !quoted;
    } else if (sign == ',' && !quoted) {
      fields.emplace_back();
    } else {
      fields.back() += sign;
    }
  }
  return fields;
}

/// A detail as the catalogue has it.
struct Row {
  std::string number;
  double thickness = 0.0;  ///< of the masonry, mm
  std::string moisture;
  std::string lining;
  double psi = 0.0;
  double factor = 0.0;
};

std::vector<Row> rows_of(std::string_view table) {
  std::vector<Row> rows;
  bool is_head = true;
  while (!table.empty()) {
    const std::size_t end = std::min(table.find('\n'), table.size());
    const std::vector<std::string> fields = fields_of(table.substr(0, end));
    table.remove_prefix(std::min(end + 1, table.size()));
    // row, thickness, moisture, lining, psi, psi external, psi band, fRsi, fRsi band, U, fault
    if (!is_head && fields.size() > 7)
      rows.push_back({fields[0], number(fields[1]), fields[2], fields[3], number(fields[4]),
                      number(fields[7])});
    is_head = false;
  }
  return rows;
}

/// What the files of a detail are called; empty where the catalogue has none of this recipe.
std::string detail_of(const geometry::Recipe& recipe) {
  static const std::map<std::string_view, std::string_view> details{
      {"corner", "corner"}, {"reveal", "jamb"},         {"sill", "sill"},
      {"head", "head"},     {"wall base", "wall_base"}, {"partition", "partition"}};
  const std::string_view name = std::visit([](const auto& kind) { return kind.name; }, recipe);
  const auto known = details.find(name);
  return known == details.end() ? "" : std::string(known->second);
}

/// Empty where there is no such file.
std::string_view text_of(const std::string& file) {
  for (const EmbeddedFile& each : catalogue_files()) {
    if (each.name == file) return each.text;
  }
  return {};
}

/// Whether a material is that of the catalogue, by whatever name: not one of the author's own.
bool is_catalogued(const materials::Material& material, std::string_view name) {
  static const cases::Catalogue all = cases::catalogue();
  const auto* known = all.find(name);
  return known != nullptr && cases::material_text(material) == cases::material_text(*known);
}

/// What the catalogue goes by.
struct Wall {
  double thickness = 0.0;  ///< of the masonry, mm
  double moisture = 0.0;   ///< m3/m3
  std::map<std::string, double> states;
  std::string lining;  ///< as the tables have it; empty: bare
  double rest = 0.0;   ///< resistance of all other layers, m2K/W
};

std::optional<Wall> wall_of(const cases::Variant& variant) {
  if (variant.flanks.empty()) return std::nullopt;
  Wall wall;
  for (const geometry::Layer& layer : variant.flanks.front().layers) {
    const cases::Region& region = variant.regions[layer.region];
    if (is_catalogued(region.material, masonry)) {
      if (wall.thickness > 0.0) return std::nullopt;  // a wall of two leaves
      wall.thickness = layer.thickness * 1e3;
      wall.moisture = region.moisture;
      for (const auto& [name, state] : materials::named_states) {
        const auto moisture = materials::moisture_of(region.material, state);
        if (const auto* known = std::get_if<double>(&moisture))
          wall.states[std::string(name)] = *known;
      }
    } else if (region.material.conductivity.value > insulates) {
      wall.rest += layer.thickness / region.material.conductivity.value;
    } else {
      const bool inside = wall.thickness == 0.0;
      if (!inside || !is_catalogued(region.material, region.material.name)) return std::nullopt;
      wall.lining += fmt::format("{{material: {}, thickness: {:g}}}", region.material.name,
                                 std::round(layer.thickness * 1e5) / 100.0);
    }
  }
  for (const cases::Region& region : variant.regions) {  // a band may be wetter than the rest
    if (is_catalogued(region.material, masonry) && region.moisture != wall.moisture)
      return std::nullopt;
  }
  if (wall.thickness == 0.0) return std::nullopt;
  return wall;
}

/// The values of a list on either side of one; none where it lies beyond the ends.
std::vector<double> around(const std::set<double>& values, double value) {
  constexpr double rounding = 1e-6;
  const auto above = values.lower_bound(value - rounding);
  if (above == values.end()) return {};
  if (*above <= value + rounding) return {*above};
  if (above == values.begin()) return {};
  return {*std::prev(above), *above};
}

bool holds(const std::vector<double>& values, double value) {
  return std::find(values.begin(), values.end(), value) != values.end();
}

std::string range(double low, double high, int digits) {
  const std::string from = fmt::format("{:.{}f}", low, digits);
  const std::string to = fmt::format("{:.{}f}", high, digits);
  return from == to ? from : from + " to " + to;
}

/// Whether all but what the tables go by is as they have it.
bool is_such_a_detail(const std::string& detail, const cases::Variant& variant, const Wall& wall) {
  constexpr double a_coat = 0.03;  // m2K/W, of plaster
  const std::string file = detail + ".yaml";
  const cases::Case drawn = cases::case_of(text_of(file), file);
  const std::optional<Wall> other = wall_of(drawn.variants.front());
  return other && std::abs(other->rest - wall.rest) <= a_coat &&
         made_alike(drawn.variants.front(), variant);
}

}  // namespace

std::string beside_catalogue(const SolvedVariant& solved) {
  if (!solved.variant.recipe) return "";
  const std::string detail = detail_of(*solved.variant.recipe);
  const std::optional<Wall> wall = wall_of(solved.variant);
  if (detail.empty() || !wall || !is_such_a_detail(detail, solved.variant, *wall)) return "";
  const std::string name = detail + ".csv";
  std::set<double> thicknesses, moistures;
  const std::vector<Row> rows = rows_of(text_of(name));
  for (const Row& row : rows) {
    thicknesses.insert(row.thickness);
    moistures.insert(wall->states.at(row.moisture));
  }
  const std::vector<double> thick = around(thicknesses, wall->thickness);
  const std::vector<double> wet = around(moistures, wall->moisture);
  std::string numbers;
  double psi[2] = {1e9, -1e9}, factor[2] = {1e9, -1e9};
  for (const Row& row : rows) {
    const bool bare = row.lining.find("lime plaster") != std::string::npos;
    if (!holds(thick, row.thickness) || !holds(wet, wall->states.at(row.moisture)) ||
        (wall->lining.empty() ? !bare : row.lining != wall->lining))
      continue;
    numbers += (numbers.empty() ? "" : ", ") + row.number;
    psi[0] = std::min(psi[0], row.psi);
    psi[1] = std::max(psi[1], row.psi);
    factor[0] = std::min(factor[0], row.factor);
    factor[1] = std::max(factor[1], row.factor);
  }
  if (numbers.empty()) return "";
  const bool one = numbers.find(',') == std::string::npos;
  return fmt::format(
      "The catalogue of details has such a wall, drawn its own way, in {} {} of {}: psi {}, fRsi "
      "{}.",
      one ? "row" : "rows", numbers, name, range(psi[0], psi[1], 2),
      range(factor[0], factor[1], 2));
}

}  // namespace quoin::tools
