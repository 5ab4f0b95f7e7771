// SPDX-License-Identifier: Apache-2.0
#include "geometry/flaws.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "geometry/paint.hpp"

namespace quoin::geometry {
namespace {

/// Pieces of the section: two a cell, the lower and the upper; of an undivided cell only the lower
/// counts.
constexpr std::size_t nowhere = static_cast<std::size_t>(-1);

std::size_t pieces(const Section& section) { return 2 * section.cells.size(); }

const Fill& fill_of(const Section& section, std::size_t piece) {
  const Cell& cell = section.cells[piece / 2];
  return piece % 2 == 0 ? cell.below : cell.above;
}

bool exists(const Section& section, std::size_t piece) {
  return piece % 2 == 0 || section.cells[piece / 2].split != Split::none;
}

Point middle(const Section& section, std::size_t piece) {
  const std::size_t i = piece / 2 % section.columns(), j = piece / 2 / section.columns();
  const Split split = section.cells[piece / 2].split;
  const double u = split == Split::none                           ? 0.5
                   : (split == Split::rising) == (piece % 2 == 0) ? 2.0 / 3
                                                                  : 1.0 / 3;
  const double v = split == Split::none ? 0.5 : piece % 2 == 0 ? 1.0 / 3 : 2.0 / 3;
  return {section.x[i] + u * (section.x[i + 1] - section.x[i]),
          section.y[j] + v * (section.y[j + 1] - section.y[j])};
}

/// The piece of a cell that touches a side.
std::size_t piece_at(const Section& section, std::size_t cell, CellSide side) {
  const Split split = section.cells[cell].split;
  if (split == Split::none) return 2 * cell;
  const bool above = side == CellSide::north ||
                     (side == CellSide::west && split == Split::rising) ||
                     (side == CellSide::east && split == Split::falling);
  return 2 * cell + (above ? 1 : 0);
}

/// The pieces beside a piece; nowhere for a side of the section.
std::vector<std::size_t> neighbours(const Section& section, std::size_t piece) {
  const std::size_t cell = piece / 2;
  const std::size_t i = cell % section.columns(), j = cell / section.columns();
  std::vector<std::size_t> beside;
  const auto look = [&](CellSide side, bool inside, std::size_t other, CellSide opposite) {
    if (piece_at(section, cell, side) != piece) return;
    beside.push_back(inside ? piece_at(section, other, opposite) : nowhere);
  };
  look(CellSide::west, i > 0, cell - 1, CellSide::east);
  look(CellSide::east, i + 1 < section.columns(), cell + 1, CellSide::west);
  look(CellSide::south, j > 0, cell - section.columns(), CellSide::north);
  look(CellSide::north, j + 1 < section.rows(), cell + section.columns(), CellSide::south);
  if (section.cells[cell].split != Split::none) beside.push_back(piece ^ 1u);
  return beside;
}

const RegionId* region_at(const Section& section, std::size_t piece) {
  return std::get_if<RegionId>(&fill_of(section, piece));
}
const SpaceId* space_at(const Section& section, std::size_t piece) {
  return std::get_if<SpaceId>(&fill_of(section, piece));
}
bool is_nothing(const Section& section, std::size_t piece) {
  return std::holds_alternative<std::monostate>(fill_of(section, piece));
}

/// Calls visit(all pieces of one patch of like ones) for every connected patch that `wanted` picks.
template <class Wanted, class Visit>
void for_each_connected(const Section& section, Wanted wanted, Visit visit) {
  std::vector<char> seen(pieces(section));
  for (std::size_t start = 0; start < pieces(section); ++start) {
    if (!exists(section, start) || seen[start] != 0 || !wanted(start)) continue;
    std::vector<std::size_t> members = {start};
    seen[start] = 1;
    for (std::size_t k = 0; k < members.size(); ++k) {
      for (const std::size_t next : neighbours(section, members[k])) {
        if (next == nowhere || seen[next] != 0 || !wanted(next)) continue;
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
      return next != nowhere && space_at(section, next) != nullptr;
    });
  });
}

bool touches_material(const Section& section, std::size_t cell) {
  const auto around = neighbours(section, cell);
  return std::any_of(around.begin(), around.end(), [&](std::size_t next) {
    return next != nowhere && region_at(section, next) != nullptr;
  });
}

void add_idle_spaces(const Sheet& sheet, const Section& section, std::vector<Flaw>& found) {
  std::set<SpaceId> met;
  for (std::size_t cell = 0; cell < pieces(section); ++cell) {
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

/// A gap of nothing beside a piece of material, beyond which other material lies; nothing where
/// there is none.
std::optional<Point> gap_beside(const Section& section, const std::vector<std::size_t>& piece) {
  std::vector<char> own(pieces(section));
  for (const std::size_t member : piece) own[member] = 1;
  std::optional<Point> found;
  for_each_connected(
      section, [&](std::size_t cell) { return is_nothing(section, cell); },
      [&](const std::vector<std::size_t>& gap) {
        bool beside = false, beyond = false;
        for (const std::size_t cell : gap) {
          for (const std::size_t next : neighbours(section, cell)) {
            if (next == nowhere || region_at(section, next) == nullptr) continue;
            (own[next] != 0 ? beside : beyond) = true;
          }
        }
        if (beside && beyond && !found) found = middle(section, gap[gap.size() / 2]);
      });
  return found;
}

/// Pieces of material that would carry heat but for a gap: they meet one space alone. Each gap is
/// told once.
void add_parted(const Section& section, std::vector<Flaw>& found) {
  std::set<Point> told;
  for_each_connected(
      section, [&](std::size_t cell) { return region_at(section, cell) != nullptr; },
      [&](const std::vector<std::size_t>& piece) {
        std::set<SpaceId> met;
        for (const std::size_t cell : piece) {
          for (const std::size_t next : neighbours(section, cell)) {
            if (next == nowhere) continue;
            if (const SpaceId* space = space_at(section, next)) met.insert(*space);
          }
        }
        if (met.size() != 1) return;
        if (const auto gap = gap_beside(section, piece); gap && told.insert(*gap).second) {
          found.push_back(
              {FlawKind::parted, *gap, *met.begin(), {}, *region_at(section, piece.front())});
        }
      });
}

void add_enclosed_gaps(const Section& section, std::vector<Flaw>& found) {
  for_each_connected(
      section, [&](std::size_t cell) { return is_nothing(section, cell); },
      [&](const std::vector<std::size_t>& cells) {
        const bool open = std::any_of(cells.begin(), cells.end(), [&](std::size_t cell) {
          const auto around = neighbours(section, cell);
          return std::find(around.begin(), around.end(), nowhere) != around.end();
        });
        if (open || touches_a_space(section, cells)) return;
        found.push_back({FlawKind::enclosed_gap, middle(section, cells.front()), {}, {}, {}});
      });
}

/// Spaces painted over other spaces that would otherwise have met material there.
void add_overlaps(const Sheet& sheet, std::vector<Flaw>& found) {
  const Section section = painted(sheet);
  std::vector<std::optional<SpaceId>> top(pieces(section));
  std::vector<std::optional<SpaceId>> covered(pieces(section));
  for (const Patch& patch : sheet) {
    if (patch.only_over || membrane_of(patch) != nullptr) continue;
    const auto* space = std::get_if<SpaceId>(&patch.fill);
    const auto cover = [&](std::size_t piece) {
      if (space == nullptr) {
        top[piece] = covered[piece] = std::nullopt;
      } else if (top[piece] != *space) {
        covered[piece] = top[piece];
        top[piece] = *space;
      }
    };
    Stencil(patch.outline, {section.x, section.y}).paint([&](std::size_t cell, Stencil::Half half) {
      if (half.split == Split::none || half.below) cover(2 * cell);
      if (half.split == Split::none || !half.below) cover(2 * cell + 1);
    });
  }
  std::set<std::pair<SpaceId, SpaceId>> told;
  for (std::size_t piece = 0; piece < pieces(section); ++piece) {
    if (!exists(section, piece) || !covered[piece] || !touches_material(section, piece)) continue;
    if (!told.insert({*top[piece], *covered[piece]}).second) continue;
    found.push_back(
        {FlawKind::overlapping_spaces, middle(section, piece), *top[piece], *covered[piece], {}});
  }
}

/// Where a seam does not lie between two materials; nothing where it does all along.
std::optional<Point> bare_place(const Section& section, const Seam& seam) {
  const std::vector<double>& across = seam.upright ? section.x : section.y;
  const std::vector<double>& along = seam.upright ? section.y : section.x;
  const auto point = [&](double s) { return seam.upright ? Point{seam.at, s} : Point{s, seam.at}; };
  const auto line = std::find(across.begin(), across.end(), seam.at);
  if (line == across.end() || line == across.begin() || line + 1 == across.end())
    return point(seam.from);
  const auto k = static_cast<std::size_t>(line - across.begin());
  if (seam.from < along.front() || seam.to > along.back()) return point(seam.from);
  for (std::size_t s = 0; s + 1 < along.size(); ++s) {
    if (along[s] < seam.from || along[s + 1] > seam.to) continue;
    const bool between = seam.upright ? is_solid(section.cell(k - 1, s).at(CellSide::east)) &&
                                            is_solid(section.cell(k, s).at(CellSide::west))
                                      : is_solid(section.cell(s, k - 1).at(CellSide::north)) &&
                                            is_solid(section.cell(s, k).at(CellSide::south));
    if (!between) return point((along[s] + along[s + 1]) / 2);
  }
  return std::nullopt;
}

void add_membranes(const Sheet& sheet, const Section& section, std::vector<Flaw>& found) {
  const auto add = [&](FlawKind kind, Point where, MembraneId membrane) {
    found.push_back({kind, where, {}, {}, {}, membrane});
  };
  std::set<MembraneId> told;
  for (const Patch& patch : sheet) {
    const MembraneId* membrane = membrane_of(patch);
    if (membrane == nullptr) continue;
    for (std::size_t k = 0; k + 1 < patch.outline.size(); ++k) {
      const Point a = patch.outline[k], b = patch.outline[k + 1];
      if (std::abs(a.x - b.x) < snap || std::abs(a.y - b.y) < snap) continue;
      if (told.insert(*membrane).second) add(FlawKind::sloping_membrane, a, *membrane);
    }
    const bool seen = std::any_of(section.seams.begin(), section.seams.end(),
                                  [&](const Seam& seam) { return seam.membrane == *membrane; });
    if (!seen && told.insert(*membrane).second)
      add(FlawKind::hidden_membrane, patch.outline.front(), *membrane);
  }
  for (const Seam& seam : section.seams) {
    if (told.count(seam.membrane) != 0) continue;
    if (const auto where = bare_place(section, seam)) {
      told.insert(seam.membrane);
      add(FlawKind::bare_membrane, *where, seam.membrane);
    }
  }
}

}  // namespace

std::vector<Flaw> flaws(const Sheet& sheet, const Section& section) {
  std::vector<Flaw> found;
  bool any_material = false;
  bool any_face = false;
  for (std::size_t cell = 0; cell < pieces(section); ++cell) {
    any_material = any_material || region_at(section, cell) != nullptr;
    any_face = any_face || (space_at(section, cell) != nullptr && touches_material(section, cell));
  }
  if (!any_material) return {{FlawKind::no_material, {}, {}, {}, {}}};
  if (!any_face) return {{FlawKind::no_space, {}, {}, {}, {}}};
  add_idle_spaces(sheet, section, found);
  add_islands(section, found);
  add_parted(section, found);
  add_overlaps(sheet, found);
  add_enclosed_gaps(section, found);
  add_membranes(sheet, section, found);
  return found;
}

}  // namespace quoin::geometry
