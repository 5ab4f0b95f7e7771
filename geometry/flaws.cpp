// SPDX-License-Identifier: Apache-2.0
#include "geometry/flaws.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>

#include "geometry/paint.hpp"

namespace quoin::geometry {
namespace {

constexpr std::size_t no_cell = static_cast<std::size_t>(-1);

Point middle(const Section& section, std::size_t index) {
  const std::size_t i = index % section.columns(), j = index / section.columns();
  return {(section.x[i] + section.x[i + 1]) / 2, (section.y[j] + section.y[j + 1]) / 2};
}

/// Neighbours of a cell across its four edges; no_cell beyond the section.
std::array<std::size_t, 4> neighbours(const Section& section, std::size_t index) {
  const std::size_t i = index % section.columns(), j = index / section.columns();
  return {i > 0 ? index - 1 : no_cell, i + 1 < section.columns() ? index + 1 : no_cell,
          j > 0 ? index - section.columns() : no_cell,
          j + 1 < section.rows() ? index + section.columns() : no_cell};
}

const RegionId* region_at(const Section& section, std::size_t index) {
  return std::get_if<RegionId>(&section.cells[index].below);
}
const SpaceId* space_at(const Section& section, std::size_t index) {
  return std::get_if<SpaceId>(&section.cells[index].below);
}
bool is_nothing(const Section& section, std::size_t index) {
  return std::holds_alternative<std::monostate>(section.cells[index].below);
}

/// Calls visit(all cells of one patch of like cells) for every connected patch that `wanted` picks.
template <class Wanted, class Visit>
void for_each_connected(const Section& section, Wanted wanted, Visit visit) {
  std::vector<char> seen(section.cells.size());
  for (std::size_t start = 0; start < section.cells.size(); ++start) {
    if (seen[start] != 0 || !wanted(start)) continue;
    std::vector<std::size_t> members = {start};
    seen[start] = 1;
    for (std::size_t k = 0; k < members.size(); ++k) {
      for (const std::size_t next : neighbours(section, members[k])) {
        if (next == no_cell || seen[next] != 0 || !wanted(next)) continue;
        seen[next] = 1;
        members.push_back(next);
      }
    }
    visit(members);
  }
}

bool touches_a_space(const Section& section, const std::vector<std::size_t>& cells) {
  return std::any_of(cells.begin(), cells.end(), [&](std::size_t cell) {
    const auto around = neighbours(section, cell);
    return std::any_of(around.begin(), around.end(), [&](std::size_t next) {
      return next != no_cell && space_at(section, next) != nullptr;
    });
  });
}

bool touches_material(const Section& section, std::size_t cell) {
  const auto around = neighbours(section, cell);
  return std::any_of(around.begin(), around.end(), [&](std::size_t next) {
    return next != no_cell && region_at(section, next) != nullptr;
  });
}

void add_idle_spaces(const Sheet& sheet, const Section& section, std::vector<Flaw>& found) {
  std::set<SpaceId> met;
  for (std::size_t cell = 0; cell < section.cells.size(); ++cell) {
    if (const SpaceId* space = space_at(section, cell); space && touches_material(section, cell)) {
      met.insert(*space);
    }
  }
  std::set<SpaceId> told;
  for (const Patch& patch : sheet) {
    const auto* space = std::get_if<SpaceId>(&patch.fill);
    if (space == nullptr || met.count(*space) != 0 || !told.insert(*space).second) continue;
    const Extent extent = extent_of(patch.outline);
    const Point where = {(extent.low.x + extent.high.x) / 2, (extent.low.y + extent.high.y) / 2};
    found.push_back({FlawKind::idle_space, where, *space, {}, {}});
  }
}

void add_islands(const Section& section, std::vector<Flaw>& found) {
  for_each_connected(
      section, [&](std::size_t cell) { return region_at(section, cell) != nullptr; },
      [&](const std::vector<std::size_t>& cells) {
        if (touches_a_space(section, cells)) return;
        found.push_back({FlawKind::island,
                         middle(section, cells.front()),
                         {},
                         {},
                         *region_at(section, cells.front())});
      });
}

void add_enclosed_gaps(const Section& section, std::vector<Flaw>& found) {
  for_each_connected(
      section, [&](std::size_t cell) { return is_nothing(section, cell); },
      [&](const std::vector<std::size_t>& cells) {
        const bool open = std::any_of(cells.begin(), cells.end(), [&](std::size_t cell) {
          const auto around = neighbours(section, cell);
          return std::find(around.begin(), around.end(), no_cell) != around.end();
        });
        if (open || touches_a_space(section, cells)) return;
        found.push_back({FlawKind::enclosed_gap, middle(section, cells.front()), {}, {}, {}});
      });
}

/// Spaces painted over other spaces that would otherwise have met material there.
void add_overlaps(const Sheet& sheet, const Section& section, std::vector<Flaw>& found) {
  std::vector<std::optional<SpaceId>> top(section.cells.size());
  std::vector<std::optional<SpaceId>> covered(section.cells.size());
  for (const Patch& patch : sheet) {
    const auto* space = std::get_if<SpaceId>(&patch.fill);
    for_each_cell_in(patch.outline, section.x, section.y, [&](std::size_t cell) {
      if (patch.only_over) return;
      if (space == nullptr) {
        top[cell] = covered[cell] = std::nullopt;
      } else if (top[cell] != *space) {
        covered[cell] = top[cell];
        top[cell] = *space;
      }
    });
  }
  std::set<std::pair<SpaceId, SpaceId>> told;
  for (std::size_t cell = 0; cell < section.cells.size(); ++cell) {
    if (!covered[cell] || !touches_material(section, cell)) continue;
    if (!told.insert({*top[cell], *covered[cell]}).second) continue;
    found.push_back(
        {FlawKind::overlapping_spaces, middle(section, cell), *top[cell], *covered[cell], {}});
  }
}

}  // namespace

std::vector<Flaw> flaws(const Sheet& sheet, const Section& section) {
  std::vector<Flaw> found;
  bool any_material = false;
  bool any_face = false;
  for (std::size_t cell = 0; cell < section.cells.size(); ++cell) {
    any_material = any_material || region_at(section, cell) != nullptr;
    any_face = any_face || (space_at(section, cell) != nullptr && touches_material(section, cell));
  }
  if (!any_material) return {{FlawKind::no_material, {}, {}, {}, {}}};
  if (!any_face) return {{FlawKind::no_space, {}, {}, {}, {}}};
  add_idle_spaces(sheet, section, found);
  add_islands(section, found);
  add_overlaps(sheet, section, found);
  add_enclosed_gaps(section, found);
  return found;
}

}  // namespace quoin::geometry
