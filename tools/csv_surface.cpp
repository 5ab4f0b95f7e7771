// SPDX-License-Identifier: Apache-2.0
#include "tools/csv_surface.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>
#include <limits>

#include "cases/utf8.hpp"
#include "materials/moist_air.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {
namespace {

std::string cell(double value, int decimals) {
  if (!std::isfinite(value)) return "";
  const std::string digits = fmt::format("{:.{}f}", value, decimals);
  return digits.find_first_not_of("-0.") == std::string::npos ? digits.substr(digits[0] == '-')
                                                              : digits;
}

/// fRsi of any surface temperature in the air of a coldest spot whose fRsi is known: both are
/// linear between the outside (0) and the air (1).
double factor_at(double temperature, double air, const solver::Spot& coldest) {
  return 1.0 -
         (1.0 - coldest.factor.value) * (air - temperature) / (air - coldest.temperature.value);
}

/// Writes the rows of one variant.
void add_rows(const SolvedVariant& solved, std::string& text) {
  const solver::Solution& solution = solved.surface;
  const cases::Variant& variant = solved.variant;
  const std::string name = csv_cell(variant.name);
  const auto coldest_of = [&](SpaceId air) -> const solver::Spot* {
    for (const solver::AirSurface& each : solution.airs) {
      if (each.air == air) return &each.coldest;
    }
    return nullptr;
  };
  for (const geometry::Surface& surface :
       geometry::surfaces(solution.field.mesh, solution.physics.air)) {
    const cases::Space& air = variant.spaces[surface.air];
    const solver::Spot* coldest = coldest_of(surface.air);
    if (air.is != cases::SpaceKind::inside || coldest == nullptr) continue;
    for (std::size_t k = 0; k < surface.along.size(); ++k) {
      const geometry::Face& face = surface.faces[k < surface.faces.size() ? k : k - 1];
      const std::size_t node = surface.node(k);
      const geometry::Point place = solution.field.mesh.place(node);
      const double temperature = solution.temperature[node];
      const double humidity =
          air.humidity
              ? 100.0 * materials::surface_humidity(air.temperature, *air.humidity, temperature)
              : std::numeric_limits<double>::quiet_NaN();
      fmt::format_to(std::back_inserter(text), "{},{},{},{},{},{},{},{},{}\r\n", name,
                     csv_cell(variant.spaces[face.space].name),
                     csv_cell(variant.regions[face.region].name), cell(1000.0 * place.x, 3),
                     cell(1000.0 * place.y, 3), cell(1000.0 * surface.along[k], 3),
                     cell(temperature, 4),
                     cell(factor_at(temperature, air.temperature, *coldest), 5), cell(humidity, 2));
    }
  }
}

/// What programs skip before they look whether a cell is a formula.
bool is_blank(char32_t code) {
  constexpr std::u32string_view blanks = U"\t\n\v\f\r \u0085\u00A0\u00AD\u1680\u180E\u3000\uFEFF";
  return blanks.find(code) != std::u32string_view::npos || (code >= 0x2000 && code <= 0x200F) ||
         (code >= 0x2028 && code <= 0x202F) || (code >= 0x205F && code <= 0x206F) || code < 0x20;
}

/// Whether a program that opens the table may take the text for a formula or a command. Signs that
/// become = + - @ | when they are made plain (wide, small, raised, lowered) count as these.
bool may_run(std::string_view text) {
  constexpr std::u32string_view signs =
      U"=+-@|\uFF1D\uFF0B\uFF0D\uFF20\uFF5C\uFE66\uFE62\uFE63\uFE6B"
      U"\u207C\u207A\u207B\u208C\u208A\u208B\u2212\uFB29\u2010\u2011";
  if (!text.empty() && is_blank(static_cast<unsigned char>(text.front())) && text.front() != ' ') {
    return true;  // a tab or a line end may itself start one
  }
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    if (next.bytes == 0) return false;
    if (!is_blank(next.code)) return signs.find(next.code) != std::u32string_view::npos;
    text.remove_prefix(next.bytes);
  }
  return false;
}

}  // namespace

std::string csv_cell(std::string_view text) {
  std::string safe = harmless(text, {});
  if (may_run(text) || may_run(safe)) safe.insert(safe.begin(), '\'');
  if (safe.find_first_of(",;\"") == std::string::npos) return safe;
  std::string quoted = "\"";
  for (const char letter : safe) {
    if (letter == '"') quoted += '"';
    quoted += letter;
  }
  return quoted + '"';
}

std::string surface_csv(const Results& results) {
  std::string text =
      "variant,space,material,x_mm,y_mm,along_mm,temperature_C,fRsi,surface_humidity_percent\r\n";
  for (const SolvedVariant& solved : results.variants) add_rows(solved, text);
  return text;
}

}  // namespace quoin::tools
