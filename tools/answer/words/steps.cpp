// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/steps.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>
#include <vector>

#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/overlaid.hpp"

namespace quoin::tools {
namespace {

/// What a fill is called; empty where the section is cut off.
std::string_view name_of(const cases::Variant& variant, const geometry::Fill& fill) {
  if (const auto* region = std::get_if<RegionId>(&fill)) return variant.regions[*region].name;
  if (const auto* space = std::get_if<SpaceId>(&fill)) return variant.spaces[*space].name;
  return {};
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
  return everywhere(was, is, [&](const geometry::Cell& one, const geometry::Cell& other) {
    return shows_alike(first.variant, one, later.variant, other);
  });
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

void add_better_airs(Steps& steps, const cases::Variant& first, const cases::Variant& later) {
  const auto add = [&](const cases::Space& room, double is, double was, const char* unit) {
    const int decimals = decimals_for({is, was}, 0);
    steps.airs.push_back(fmt::format("{} at {} {} (now {})", room.name, fixed(is, decimals), unit,
                                     fixed(was, decimals)));
  };
  for (const cases::Space& is : later.spaces) {
    for (const cases::Space& was : first.spaces) {
      if (was.name != is.name || is.is != cases::SpaceKind::inside) continue;
      const bool warmer = is.temperature > was.temperature;
      steps.warmer = steps.warmer || warmer;
      if (warmer) add(is, is.temperature, was.temperature, "°C");
      if (is.humidity && was.humidity && *is.humidity < *was.humidity)
        add(is, 100.0 * *is.humidity, 100.0 * *was.humidity, "% humidity");
    }
  }
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
  add_better_airs(steps, first.variant, later.variant);
  return steps;
}

}  // namespace quoin::tools
