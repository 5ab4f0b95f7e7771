// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "cases/meaning/drawn.hpp"
#include "cases/model/membranes.hpp"
#include "geometry/flaws.hpp"
#include "geometry/section.hpp"
#include "geometry/shape.hpp"

namespace quoin::cases {
namespace {

using geometry::Fill;
using geometry::Flaw;
using geometry::FlawKind;
using geometry::Point;
using geometry::Section;

/// Cells of a section beyond which the drawing is refused: what a person draws has hundreds.
constexpr std::size_t most_cells = 1'000'000;
/// Strips narrower than this, m, are remarked on.
constexpr double narrow = 5e-4;

std::string place_of(Point place) {
  return fmt::format("[{:.6g}, {:.6g}] mm", 1000 * place.x, 1000 * place.y);
}

/// The place of the last patch with a fill, which is the one to be seen.
Mark mark_of(const Drawn& drawn, const Fill& fill) {
  for (std::size_t i = drawn.marks.size(); i-- > 0;) {
    if (drawn.drawing.sheet[i].fill == fill) return drawn.marks[i];
  }
  return drawn.mark;
}

std::size_t different(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return static_cast<std::size_t>(std::unique(values.begin(), values.end()) - values.begin());
}

bool is_too_fine(const Drawn& drawn, FaultList& faults) {
  std::vector<double> x, y;
  for (const geometry::Patch& patch : drawn.drawing.sheet) {
    for (const Point corner : patch.outline) {
      x.push_back(corner.x);
      y.push_back(corner.y);
    }
  }
  const std::size_t columns = different(std::move(x)), rows = different(std::move(y));
  if (columns * rows <= most_cells) return false;
  faults.add(drawn.mark,
             {"the drawing is too fine", fmt::format("{} lines along x, {} along y", columns, rows),
              "", "leave out what is smaller than matters for heat"});
  return true;
}

class DrawingCheck {
 public:
  DrawingCheck(const Drawn& drawn, const Variant& variant, FaultList& faults,
               std::vector<Remark>& remarks)
      : drawn_(drawn), variant_(variant), faults_(faults), remarks_(remarks) {}

  void check(const Flaw& flaw) {
    switch (flaw.kind) {
      case FlawKind::no_material:
        faults_.add(drawn_.mark, {"the section shows no material", "",
                                  "at least one painted area "
                                  "of a material",
                                  "later areas cover earlier ones: is it covered?"});
        break;
      case FlawKind::no_space:
        faults_.add(drawn_.mark, {"no material touches a space, so no heat can flow", "",
                                  "spaces painted beside the material",
                                  "paint the air on each "
                                  "side: {fill: name of a space, ...}"});
        break;
      case FlawKind::idle_space:
        faults_.add(mark_of(drawn_, flaw.space),
                    {fmt::format("the space '{}' touches no material", name_of(flaw.space)),
                     "at " + place_of(flaw.where), "a face shared with a material",
                     "move it, or remove it from the sheet"});
        break;
      case FlawKind::island:
        faults_.add(mark_of(drawn_, flaw.region),
                    {fmt::format("'{}' is an island: no heat reaches it from any space",
                                 variant_.regions[flaw.region].name),
                     "at " + place_of(flaw.where), "material joined to the rest",
                     "close the gap around it, or remove it"});
        break;
      case FlawKind::parted:
        faults_.add(
            mark_of(drawn_, flaw.region),
            {fmt::format("a gap parts '{}' from the other material: it meets '{}' alone, and no "
                         "heat crosses the gap",
                         variant_.regions[flaw.region].name, name_of(flaw.space)),
             "nothing painted at " + place_of(flaw.where), "areas that meet",
             "let both areas end on the same line, or paint what lies between"});
        break;
      case FlawKind::overlapping_spaces:
        check_overlap(flaw);
        break;
      case FlawKind::enclosed_gap:
        remarks_.push_back({fmt::format("a gap at {} is enclosed by material: no heat crosses it; "
                                        "paint it if it is air",
                                        place_of(flaw.where)),
                            drawn_.mark.line});
        break;
      case FlawKind::sloping_membrane:
      case FlawKind::hidden_membrane:
      case FlawKind::bare_membrane:
        check_membrane(flaw);
        break;
    }
  }

  void check_probe(const Section& section, const Named<Point>& probe) {
    std::vector<Fill> fills = fills_at(section, probe.value);
    for (const Fill& fill : fills) {
      if (std::holds_alternative<RegionId>(fill)) return;
    }
    std::string found = place_of(probe.value);
    for (const Fill& fill : fills) {
      if (const auto* space = std::get_if<SpaceId>(&fill)) {
        found += fmt::format(", in '{}'", name_of(*space));
        break;
      }
    }
    faults_.add(probe.node->mark,
                {fmt::format("the probe '{}' is not in any material", probe.name), found,
                 fmt::format("a place in the material or on its surface; the section reaches from "
                             "{} to {}",
                             place_of({section.x.front(), section.y.front()}),
                             place_of({section.x.back(), section.y.back()})),
                 ""});
  }

  /// A cavity is one hollow: what cuts it in two changes the shape that tells its conductivity.
  void check_cavities(const Section& section) {
    for (const RegionId id : geometry::ids(variant_.regions)) {
      const Region& region = variant_.regions[id];
      if (!region.material.cavity) continue;
      const std::size_t pieces = geometry::shape_of(section, id).pieces;
      if (pieces < 2) continue;
      faults_.add(mark_of(drawn_, id),
                  {fmt::format("the air cavity '{}' is cut in {} pieces", region.name, pieces), "",
                   "one piece", "paint each piece as an area of its own"});
    }
  }

  void check_strips(const std::vector<double>& lines, char axis) {
    for (std::size_t i = 1; i < lines.size(); ++i) {
      if (lines[i] - lines[i - 1] >= narrow) continue;
      remarks_.push_back({fmt::format("edges at {0} = {1:.6g} and {0} = {2:.6g} mm nearly meet: "
                                      "are they meant to be the same?",
                                      axis, 1000 * lines[i - 1], 1000 * lines[i]),
                          drawn_.mark.line});
      return;
    }
  }

 private:
  void check_membrane(const Flaw& flaw) {
    const Mark mark = mark_of(drawn_, flaw.membrane);
    const std::string name = display_name(variant_.membranes[flaw.membrane]);
    const std::string found = "at " + place_of(flaw.where);
    if (flaw.kind == FlawKind::sloping_membrane) {
      faults_.add(mark,
                  {fmt::format("the {} lies along a slope", name), found, "a line along x and y",
                   "give it as a layer 1 mm thick, the vapour resistance its sd by 0.001 m"});
    } else if (flaw.kind == FlawKind::hidden_membrane) {
      faults_.add(mark, {fmt::format("the {} is painted over", name), found, "",
                         "draw it after the areas it lies between"});
    } else {
      faults_.add(mark, {fmt::format("the {} does not lie between two materials", name), found, "",
                         "on a surface it is a coat: write `coat` at the space"});
    }
  }

  [[nodiscard]] const std::string& name_of(SpaceId space) const {
    return variant_.spaces[space].name;
  }

  void check_overlap(const Flaw& flaw) {
    const Space& upper = variant_.spaces[flaw.space];
    const Space& lower = variant_.spaces[flaw.other];
    if (upper.air == lower.air && upper.resistance == lower.resistance) return;
    faults_.add(mark_of(drawn_, flaw.space),
                {fmt::format("'{}' covers '{}' along a face of material, and their surfaces differ",
                             upper.name, lower.name),
                 "at " + place_of(flaw.where), "one space on each piece of a face",
                 "let the two areas meet without overlapping"});
  }

  /// What the cells around a place show: one cell inside, up to four on lines.
  [[nodiscard]] static std::vector<Fill> fills_at(const Section& section, Point place) {
    std::vector<Fill> fills;
    for (std::size_t j = 0; j < section.rows(); ++j) {
      if (place.y < section.y[j] - geometry::snap || place.y > section.y[j + 1] + geometry::snap)
        continue;
      for (std::size_t i = 0; i < section.columns(); ++i) {
        if (place.x < section.x[i] - geometry::snap || place.x > section.x[i + 1] + geometry::snap)
          continue;
        fills.push_back(section.cell(i, j).below);
        fills.push_back(section.cell(i, j).above);
      }
    }
    return fills;
  }

  const Drawn& drawn_;
  const Variant& variant_;
  FaultList& faults_;
  std::vector<Remark>& remarks_;
};

}  // namespace

void check_drawing(const Drawn& drawn, const Variant& variant,
                   const std::vector<Named<Point>>& probes, FaultList& faults,
                   std::vector<Remark>& remarks) {
  if (is_too_fine(drawn, faults)) return;
  const Section section = geometry::section_of(drawn.drawing.sheet);
  DrawingCheck check(drawn, variant, faults, remarks);
  for (const Flaw& flaw : geometry::flaws(drawn.drawing.sheet, section)) check.check(flaw);
  if (section.cells.empty()) return;
  check.check_cavities(section);
  for (const auto& probe : probes) check.check_probe(section, probe);
  if (!drawn.recipe) {
    check.check_strips(section.x, 'x');
    check.check_strips(section.y, 'y');
  }
}

}  // namespace quoin::cases
