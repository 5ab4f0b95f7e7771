// SPDX-License-Identifier: Apache-2.0
#include "tools/output/text/section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "geometry/close_up.hpp"
#include "geometry/section.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

/// How many characters each strip gets: its share of the whole, one at least.
std::vector<std::size_t> widths(const std::vector<double>& lines, std::size_t total) {
  std::vector<std::size_t> all;
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const double share = (lines[k + 1] - lines[k]) / (lines.back() - lines.front());
    all.push_back(std::max<std::size_t>(
        1, static_cast<std::size_t>(std::lround(share * static_cast<double>(total)))));
  }
  return all;
}

char letter(const geometry::Fill& fill) {
  constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
  constexpr std::string_view figures = "123456789";
  if (const auto* region = std::get_if<RegionId>(&fill))
    return letters[region->index % letters.size()];
  if (const auto* space = std::get_if<SpaceId>(&fill))
    return figures[space->index % figures.size()];
  return '.';
}

std::string region_line(const cases::Region& region, const materials::Conductivity& conductivity,
                        char sign) {
  return fmt::format("{}  {}{}, {:.3g} W/(m K)", sign, region.name,
                     region.state.empty() ? "" : ", " + region.state, conductivity.value);
}

std::string space_line(const cases::Space& space, char sign) {
  return fmt::format("{}  {}, {:.1f} °C{}", sign, space.name, space.temperature,
                     space.humidity ? fmt::format(", {:.0f} %", *space.humidity * 100) : "");
}

}  // namespace

std::string section_drawing(const cases::Variant& variant, const TextStyle& style) {
  geometry::Section section = geometry::section_of(variant.sheet);
  if (variant.close_up) section = geometry::close_up(section, *variant.close_up);
  const double wide = section.x.back() - section.x.front();
  const double high = section.y.back() - section.y.front();
  const std::size_t room = style.width - 4;
  // A character is about twice as high as wide.
  const auto lines =
      static_cast<std::size_t>(std::clamp(static_cast<double>(room) * high / wide / 2, 4.0, 30.0));
  const auto columns = std::min(
      room, static_cast<std::size_t>(std::max(8.0, 2 * static_cast<double>(lines) * wide / high)));
  const auto across = widths(section.x, columns);
  const auto down = widths(section.y, lines);
  std::string text;
  std::set<geometry::Fill> shown;
  for (std::size_t j = section.rows(); j-- > 0;) {
    std::string line = "  ";
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Fill& fill = section.cell(i, j).below;
      shown.insert(fill);
      line.append(across[i], letter(fill));
    }
    for (std::size_t k = 0; k < down[j]; ++k) text += line + "\n";
  }
  text += "\n";
  const auto conductivity = conductivities(variant);
  for (const geometry::Fill& fill : shown) {
    std::string line = ".  nothing: no heat crosses its edge";
    if (const auto* region = std::get_if<RegionId>(&fill)) {
      line = region_line(variant.regions[*region], conductivity[*region], letter(fill));
    } else if (const auto* space = std::get_if<SpaceId>(&fill)) {
      line = space_line(variant.spaces[*space], letter(fill));
    }
    text += "  " + harmless(line, style) + "\n";
  }
  return text + fmt::format("  {:.0f} by {:.0f} mm{}; thin layers are drawn wider than they are\n",
                            wide * 1e3, high * 1e3,
                            variant.close_up ? " of the section, which runs on" : "");
}

}  // namespace quoin::tools
