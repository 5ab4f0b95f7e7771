// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/steps.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

#include "cases/meaning/wall_remarks.hpp"

namespace quoin::tools {
namespace {

/// What a fill is called; empty where the section is cut off.
std::string_view name_of(const cases::Variant& variant, const geometry::Fill& fill) {
  if (const auto* region = std::get_if<RegionId>(&fill)) return variant.regions[*region].name;
  if (const auto* space = std::get_if<SpaceId>(&fill)) return variant.spaces[*space].name;
  return {};
}

std::vector<double> all_lines(const std::vector<double>& one, const std::vector<double>& other) {
  std::vector<double> all;
  std::set_union(one.begin(), one.end(), other.begin(), other.end(), std::back_inserter(all));
  return all;
}

/// The cells of one axis that hold the cells between all lines.
std::vector<std::size_t> cells_of(const std::vector<double>& lines,
                                  const std::vector<double>& all) {
  std::vector<std::size_t> cells;
  for (std::size_t k = 0, cell = 0; k + 1 < all.size(); ++k) {
    while (cell + 2 < lines.size() && lines[cell + 1] <= all[k]) ++cell;
    cells.push_back(cell);
  }
  return cells;
}

/// Whether two cells show the same: of cells parted by a slope, both sides.
bool shows_alike(const cases::Variant& first, const geometry::Cell& one,
                 const cases::Variant& later, const geometry::Cell& other) {
  return one.split == other.split && name_of(first, one.below) == name_of(later, other.below) &&
         name_of(first, one.above) == name_of(later, other.above);
}

/// Whether both sections show the same materials and spaces at the same places. Lines that part
/// alike from alike, as bands and probes leave them, show nothing.
bool drawn_alike(const SolvedVariant& first, const SolvedVariant& later) {
  const geometry::Section& was = first.surface.field.mesh.section;
  const geometry::Section& is = later.surface.field.mesh.section;
  if (was.cells.empty() || is.cells.empty()) return was.cells.empty() == is.cells.empty();
  if (was.x.front() != is.x.front() || was.x.back() != is.x.back() ||
      was.y.front() != is.y.front() || was.y.back() != is.y.back())
    return false;
  const std::vector<double> x = all_lines(was.x, is.x), y = all_lines(was.y, is.y);
  const std::vector<std::size_t> was_x = cells_of(was.x, x), is_x = cells_of(is.x, x);
  const std::vector<std::size_t> was_y = cells_of(was.y, y), is_y = cells_of(is.y, y);
  for (std::size_t j = 0; j + 1 < y.size(); ++j) {
    for (std::size_t i = 0; i + 1 < x.size(); ++i) {
      if (!shows_alike(first.variant, was.cell(was_x[i], was_y[j]), later.variant,
                       is.cell(is_x[i], is_y[j])))
        return false;
    }
  }
  return true;
}

/// The least and the most moisture that a material has anywhere, by its name, the most first.
std::map<std::string, std::pair<double, double>> moistures(const cases::Variant& variant) {
  std::map<std::string, std::pair<double, double>> all;
  for (const cases::Region& region : variant.regions) {
    const auto [found, first] = all.try_emplace(region.name, region.moisture, region.moisture);
    if (first) continue;
    found->second.first = std::max(found->second.first, region.moisture);
    found->second.second = std::min(found->second.second, region.moisture);
  }
  return all;
}

}  // namespace

Steps steps_of(const SolvedVariant& first, const SolvedVariant& later) {
  Steps steps;
  steps.built = !drawn_alike(first, later);
  const auto before = moistures(first.variant);
  for (const auto& [name, moisture] : moistures(later.variant)) {
    const auto was = before.find(name);
    if (was != before.end() && moisture < was->second) steps.dried.push_back(name);
  }
  for (const cases::Space& space : later.variant.spaces) {
    for (const cases::Space& before : first.variant.spaces) {
      if (before.name != space.name || space.is != cases::SpaceKind::inside) continue;
      const bool drier = space.humidity && before.humidity && *space.humidity < *before.humidity;
      steps.aired = steps.aired || drier || space.temperature > before.temperature;
    }
  }
  return steps;
}

bool can_be_carried_out(const cases::Variant& first, const cases::Variant& later) {
  if (cases::is_less_vented(first, later) || cases::loses_masonry(first, later)) return false;
  return std::none_of(later.spaces.begin(), later.spaces.end(), [&](const cases::Space& space) {
    return std::any_of(first.spaces.begin(), first.spaces.end(), [&](const cases::Space& before) {
      return space.name == before.name && space.is == cases::SpaceKind::outside &&
             before.is == cases::SpaceKind::outside && space.temperature > before.temperature;
    });
  });
}

}  // namespace quoin::tools
