// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/plain_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

using geometry::Fill;
using geometry::Point;
using geometry::Section;
using Written = Named<WrittenPlainPart>;

/// What a line along x or y crosses: each fill once, with how far it goes in it, m.
std::vector<std::pair<Fill, double>> crossed(const Section& section, Point from, Point to) {
  const bool along_x = from.y == to.y;
  const std::vector<double>& lines = along_x ? section.x : section.y;
  const std::vector<double>& other = along_x ? section.y : section.x;
  const double at = along_x ? from.y : from.x;
  const double begin = along_x ? from.x : from.y, end = along_x ? to.x : to.y;
  const auto strip = std::upper_bound(other.begin(), other.end(), at) - other.begin() - 1;
  std::vector<std::pair<Fill, double>> fills;
  if (strip < 0 || strip + 1 >= static_cast<std::ptrdiff_t>(other.size())) return fills;
  const auto across = static_cast<std::size_t>(strip);
  for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
    const double length =
        std::min(lines[k + 1], std::max(begin, end)) - std::max(lines[k], std::min(begin, end));
    if (length <= geometry::snap) continue;
    const geometry::Cell& cell = along_x ? section.cell(k, across) : section.cell(across, k);
    if (!fills.empty() && fills.back().first == cell.below) {
      fills.back().second += length;
    } else {
      fills.emplace_back(cell.below, length);
    }
  }
  if (begin > end) std::reverse(fills.begin(), fills.end());
  return fills;
}

/// The plain part from the inside out; absent where the line does not show one.
std::optional<geometry::Flank> flank_of(const Written& part, Point from, Point to,
                                        const Section& section, const Variant& variant) {
  std::vector<std::pair<Fill, double>> fills = crossed(section, from, to);
  if (fills.size() < 3) return std::nullopt;
  const auto* first = std::get_if<SpaceId>(&fills.front().first);
  const auto* last = std::get_if<SpaceId>(&fills.back().first);
  if (first == nullptr || last == nullptr) return std::nullopt;
  geometry::Flank flank;
  flank.name = part.name;
  flank.inside = *first;
  flank.outside = *last;
  if (variant.spaces[flank.inside].is != SpaceKind::inside &&
      variant.spaces[flank.outside].is == SpaceKind::inside) {
    std::swap(flank.inside, flank.outside);
    std::swap(from, to);
    std::reverse(fills.begin(), fills.end());
  }
  for (std::size_t k = 1; k + 1 < fills.size(); ++k) {
    const auto* region = std::get_if<RegionId>(&fills[k].first);
    if (region == nullptr) return std::nullopt;
    flank.layers.push_back({*region, fills[k].second});
  }
  flank.internal = flank.overall_internal = flank.external = part.value.length;
  if (variant.cut == Cut::vertical && from.x == to.x)
    flank.looks = from.y > to.y ? geometry::Facing::up : geometry::Facing::down;
  return flank;
}

}  // namespace

void add_plain_parts(const std::vector<Written>& written, Variant& variant, FaultList& faults) {
  if (written.empty()) return;
  if (variant.recipe) {
    faults.add(written.front().mark, {"a recipe knows its plain parts", written.front().name,
                                      "plain parts of a sheet only", "remove `plain parts`"});
    return;
  }
  const Section section = geometry::section_of(variant.sheet);
  for (const Written& part : written) {
    if (!part.value.across) continue;  // said already
    const geometry::Outline& line = *part.value.across;
    const Point from = line.front(), to = line.back();
    const bool straight = line.size() == 2 && (from.x == to.x) != (from.y == to.y);
    const auto flank =
        straight ? flank_of(part, from, to, section, variant) : std::optional<geometry::Flank>();
    if (!flank) {
      faults.add(part.mark,
                 {fmt::format("the line of '{}' crosses no plain part", part.name), "",
                  "[[x, y], [x, y]] along x or y, from one air through material to another",
                  "begin and end it a little within the spaces on either side"});
      continue;
    }
    variant.plain_lines.push_back({part.name, from, to, part.value.length});
    variant.flanks.push_back(*flank);
  }
}

}  // namespace quoin::cases
