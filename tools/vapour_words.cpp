// SPDX-License-Identifier: Apache-2.0
#include "tools/vapour_words.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tools/year.hpp"

namespace quoin::tools {
namespace {

std::string name_of(const cases::Variant& variant, const geometry::Fill& fill) {
  if (const auto* region = std::get_if<RegionId>(&fill)) return variant.regions[*region].name;
  return variant.spaces[std::get<SpaceId>(fill)].name;
}

/// Months after which a section that held water holds none; nothing where it keeps some.
std::optional<std::size_t> dry_after(const WaterYear& place) {
  std::size_t last = 0;
  for (std::size_t k = 0; k < place.water.size(); ++k) {
    if (place.water[k] > 0.0) last = k;
  }
  if (last + 1 == place.water.size()) return std::nullopt;
  return last + 1;
}

std::string amount(double water, double length) {
  return length > 0.0 ? fmt::format("{:.3g} kg/m²", water / length)
                      : fmt::format("{:.3g} kg/m", water);
}

std::string place_words(const SolvedVariant& solved, const VapourYear& year,
                        const WaterYear& place) {
  const auto month = [&](std::size_t k) { return month_name((*year.first + k) % 12); };
  std::string text = fmt::format(
      "{}: at most {} (±{:.1g}), at the end of {}, most at {:.0f}, {:.0f}",
      words_for(solved.variant, place.meeting), amount(place.water[place.most], place.length),
      place.length > 0.0 ? place.band / place.length : place.band, month(place.most),
      1000 * place.place.x + 0.0, 1000 * place.place.y + 0.0);
  if (const auto dry = dry_after(place))
    return text + fmt::format("; it has dried by the end of {}.", month(*dry));
  return text + fmt::format("; {} are left after a year: it gathers from year to year.",
                            amount(place.water.back(), place.length));
}

}  // namespace

std::string words_for(const cases::Variant& variant, const solver::Meeting& meeting) {
  const auto& [one, other] = meeting;
  const std::string first = name_of(variant, one), second = name_of(variant, other);
  if (const auto* space = std::get_if<SpaceId>(&other)) {
    const auto& coat = variant.spaces[*space].coat;
    return fmt::format("under the {} towards {}", coat ? "coat, " + coat->name + "," : "surface",
                       second);
  }
  return first == second ? "within " + first : fmt::format("between {} and {}", first, second);
}

std::string drying_time(double seconds) {
  if (!std::isfinite(seconds)) return "never";
  const double days = seconds / 86400.0;
  if (days < 1.0) return "1 day";
  if (days < 100.0) return fmt::format("{:.0f} days", days);
  if (days < 300.0) return fmt::format("{:.0f} months", days / 30.4);
  return days < 3652.0 ? fmt::format("{:.1f} years", days / 365.25)
                       : fmt::format("{:.0f} years", days / 365.25);
}

std::string words_for(const SolvedVariant& solved, const VapourYear& year) {
  if (!year.first) return "no water gathers within the section in any month.";
  std::string text =
      fmt::format("water gathers from {} on. ", std::string(month_name(*year.first)));
  for (const WaterYear& place : year.places) {
    std::string words = place_words(solved, year, place);
    words.front() = static_cast<char>(words.front() - 'a' + 'A');
    text += words + " ";
  }
  text.pop_back();
  return text;
}

}  // namespace quoin::tools
