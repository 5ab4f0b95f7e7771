// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/view.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Fill;
using geometry::RegionId;
using geometry::Section;
using geometry::SpaceId;

bool is_material(const Fill& fill) { return std::holds_alternative<RegionId>(fill); }
bool is_something(const Fill& fill) { return !std::holds_alternative<std::monostate>(fill); }

std::vector<Edge> sorted_boundary(const Section& section, const Chosen& chosen) {
  std::vector<Edge> edges = boundary(
      section.columns(), section.rows(),
      [&](std::size_t i, std::size_t j) -> const Cell& { return section.cell(i, j); }, chosen);
  std::sort(edges.begin(), edges.end());
  return edges;
}

constexpr double space_margin = 30.0;  ///< units: holds a line of letters
constexpr double cut_margin = 8.0;

Margins margins_of(const Section& section, const Extent& material) {
  const auto margin = [](bool beyond) { return beyond ? space_margin : cut_margin; };
  return {margin(section.x.front() < material.low.x), margin(section.x.back() > material.high.x),
          margin(section.y.back() > material.high.y), margin(section.y.front() < material.low.y)};
}

/// The section with its outermost strips, where they hold no material, as wide as the margins.
Section framed(Section section, const Extent& material, const Margins& margins, double scale) {
  if (section.x.front() < material.low.x) section.x.front() = material.low.x - margins.left / scale;
  if (section.x.back() > material.high.x)
    section.x.back() = material.high.x + margins.right / scale;
  if (section.y.front() < material.low.y)
    section.y.front() = material.low.y - margins.below / scale;
  if (section.y.back() > material.high.y)
    section.y.back() = material.high.y + margins.above / scale;
  return section;
}

}  // namespace

Extent material_extent(const Section& section) {
  Extent extent{{section.x.back(), section.y.back()}, {section.x.front(), section.y.front()}};
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const Cell& cell = section.cell(i, j);
      if (!is_material(cell.below) && !is_material(cell.above)) continue;
      extent.low = {std::min(extent.low.x, section.x[i]), std::min(extent.low.y, section.y[j])};
      extent.high = {std::max(extent.high.x, section.x[i + 1]),
                     std::max(extent.high.y, section.y[j + 1])};
    }
  }
  return extent;
}

std::vector<Stretch> cuts(const Section& section) {
  const std::vector<Edge> solid = sorted_boundary(section, is_material);
  const std::vector<Edge> something = sorted_boundary(section, is_something);
  std::vector<Edge> cut;
  std::set_intersection(solid.begin(), solid.end(), something.begin(), something.end(),
                        std::back_inserter(cut));
  const std::size_t width = section.x.size();
  const auto place = [&](std::size_t p) {
    return Point{section.x[p % width], section.y[p / width]};
  };
  std::vector<Stretch> stretches;
  for (const Edge& edge : cut) {
    const Point from = place(edge.from), to = place(edge.to);
    const auto continues = [&](const Stretch& s) {
      const bool in_line =
          (s.from.x == s.to.x && from.x == to.x) || (s.from.y == s.to.y && from.y == to.y);
      return in_line && (s.to == from || s.from == to);
    };
    const auto found = std::find_if(stretches.begin(), stretches.end(), continues);
    if (found == stretches.end()) {
      stretches.push_back({from, to});
    } else if (found->to == from) {
      found->to = to;
    } else {
      found->from = from;
    }
  }
  return stretches;
}

View::View(Shown shown, Point corner, double width, double height, double largest)
    : section_(std::move(shown.section)),
      broken_(shown.broken),
      material_(material_extent(section_)),
      margins_(margins_of(section_, material_)) {
  const double wide = std::max(material_.width(), geometry::snap);
  const double high = std::max(material_.height(), geometry::snap);
  scale_ = std::min({largest, (width - margins_.left - margins_.right) / wide,
                     (height - margins_.above - margins_.below) / high});
  left_ = corner.x + margins_.left;
  top_ = corner.y + margins_.above;
  section_ = framed(std::move(section_), material_, margins_, scale_);
}

bool View::is_broken_off(const Stretch& stretch) const {
  const auto both = [&](double Point::*axis, double line) {
    return std::abs(stretch.from.*axis - line) < geometry::snap &&
           std::abs(stretch.to.*axis - line) < geometry::snap;
  };
  return (broken_.left && both(&Point::x, material_.low.x)) ||
         (broken_.right && both(&Point::x, material_.high.x)) ||
         (broken_.below && both(&Point::y, material_.low.y)) ||
         (broken_.above && both(&Point::y, material_.high.y));
}

bool View::shows(Point place) const {
  constexpr double clear = geometry::snap;
  return place.x > section_.x.front() - clear && place.x < section_.x.back() + clear &&
         place.y > section_.y.front() - clear && place.y < section_.y.back() + clear;
}

bool View::shows_only(const Chosen& chosen, const Box& box) const {
  const auto strip = [](const std::vector<double>& lines, double at) {
    return static_cast<std::size_t>(std::upper_bound(lines.begin(), lines.end(), at) -
                                    lines.begin());
  };
  const Point low = place_of({box.centre.x - box.width / 2, box.centre.y + box.height / 2});
  const Point high = place_of({box.centre.x + box.width / 2, box.centre.y - box.height / 2});
  const std::size_t west = strip(section_.x, low.x), east = strip(section_.x, high.x);
  const std::size_t south = strip(section_.y, low.y), north = strip(section_.y, high.y);
  if (west == 0 || south == 0 || east > section_.columns() || north > section_.rows()) return false;
  for (std::size_t j = south; j <= north; ++j) {
    for (std::size_t i = west; i <= east; ++i) {
      const Cell& cell = section_.cell(i - 1, j - 1);
      if (!chosen(cell.below) || !chosen(cell.above)) return false;
    }
  }
  return true;
}

Line View::operator()(const geometry::Outline& outline) const {
  Line line;
  line.reserve(outline.size());
  for (const Point place : outline) line.push_back((*this)(place));
  return line;
}

std::vector<Line> View::operator()(const std::vector<geometry::Outline>& all) const {
  std::vector<Line> lines;
  lines.reserve(all.size());
  for (const geometry::Outline& outline : all) lines.push_back((*this)(outline));
  return lines;
}

}  // namespace quoin::tools
