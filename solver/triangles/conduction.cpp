// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/conduction.hpp"

#include <algorithm>
#include <numeric>
#include <set>

#include "solver/triangles/sides.hpp"

namespace quoin::solver {
namespace {

using geometry::before;
using geometry::Border;
using geometry::Element;
using geometry::next;
using geometry::NodedTriangles;
using geometry::Point;

constexpr std::uint32_t none = geometry::Triangle::none;

// Integrals over a side of unit length with nodes first, middle, last: of products of two shapes,
// of one shape, of products of two slopes.
constexpr double mass[3][3] = {
    {4. / 30, 2. / 30, -1. / 30}, {2. / 30, 16. / 30, 2. / 30}, {-1. / 30, 2. / 30, 4. / 30}};
constexpr double load[3] = {1. / 6, 4. / 6, 1. / 6};
constexpr double slopes[3][3] = {
    {7. / 3, -8. / 3, 1. / 3}, {-8. / 3, 16. / 3, -8. / 3}, {1. / 3, -8. / 3, 7. / 3}};

}  // namespace

Conduction::Conduction(const NodedTriangles& nodes, const Physics& physics)
    : nodes_(nodes), fixed_borders_(nodes.nodes()), warmth_(0), stream_(0) {
  for (const Element& element : nodes.elements) {
    conductivity_.push_back(physics.conductivity[element.region]);
    const Point a = nodes.places[element.node[0]], b = nodes.places[element.node[1]],
                c = nodes.places[element.node[2]];
    const double twice = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
    const auto across = [twice](Point p, Point q) {
      return Point{(p.y - q.y) / twice, (q.x - p.x) / twice};
    };
    shapes_.push_back({{across(b, c), across(c, a), across(a, b)}, twice / 2});
  }
  note_borders(physics);
  weigh();
  number_warmth();
  assemble_warmth();
  number_stream();
  assemble_stream();
}

void Conduction::note_borders(const Physics& physics) {
  std::set<std::pair<SpaceId, SpaceId>> touching;
  std::vector<SpaceId> air(nodes_.nodes());
  for (std::uint32_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    resistance_.push_back(
        border.space ? physics.surface_resistance(
                           *border.space, nodes_.elements[border.element].region, border.facing)
                     : 0.0);
    if (!border.space || resistance_.back() > 0) continue;
    for (const std::uint32_t node : border.node) {
      fixed_borders_[node].push_back(b);
      const SpaceId own = physics.air[*border.space];
      if (!air[node].valid()) air[node] = own;
      if (air[node] != own) touching.insert(std::minmax(air[node], own));
    }
  }
  touching_.assign(touching.begin(), touching.end());
}

/// The integral of the product of the gradients of two shapes.
Conduction::Local Conduction::stiffness(std::size_t element) const {
  const Shape& shape = shapes_[element];
  double b[3][3];
  for (std::size_t i = 0; i < 3; ++i) {
    for (std::size_t j = 0; j < 3; ++j) {
      b[i][j] = shape.area * (shape.gradient[i].x * shape.gradient[j].x +
                              shape.gradient[i].y * shape.gradient[j].y);
    }
  }
  Local k{};
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t j = (i + 1) % 3, l = (i + 2) % 3;
    k[i][i] = b[i][i];
    k[i][j] = k[j][i] = -b[i][j] / 3;
    // The middle of side i lies between the corners j and l.
    k[i + 3][i + 3] = 8. / 3 * (b[j][j] + b[l][l] + b[j][l]);
    k[j][i + 3] = k[i + 3][j] = 4. / 3 * b[j][l];
    k[l][i + 3] = k[i + 3][l] = 4. / 3 * b[j][l];
    k[i + 3][j + 3] = k[j + 3][i + 3] = 8. / 3 * b[i][j];
  }
  return k;
}

void Conduction::number_warmth() {
  warmth_unknown_.assign(nodes_.nodes(), none);
  std::uint32_t count = 0;
  for (std::size_t n = 0; n < nodes_.nodes(); ++n) {
    if (fixed_borders_[n].empty()) warmth_unknown_[n] = count++;
  }
  warmth_ = SymmetricSystem(count);
}

void Conduction::assemble_warmth() {
  std::vector<Local> locals(nodes_.elements.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    locals[e] = stiffness(e);
    for (auto& row : locals[e]) {
      for (double& value : row) value *= conductivity_[e];
    }
  }
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    if (!border.space || resistance_[b] == 0) continue;
    const auto local = on_side(border.side);
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) {
        locals[border.element][local[i]][local[j]] += mass[i][j] * border.length / resistance_[b];
      }
    }
  }
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    const auto& node = nodes_.elements[e].node;
    for (std::size_t i = 0; i < 6; ++i) {
      const std::uint32_t row = warmth_unknown_[node[i]];
      if (row == none) continue;
      for (std::size_t j = 0; j < 6; ++j) {
        const std::uint32_t column = warmth_unknown_[node[j]];
        if (column == none) {
          fixed_links_.push_back({row, node[j], locals[e][i][j]});
        } else if (column <= row) {
          warmth_.add(row, column, locals[e][i][j]);
        }
      }
    }
  }
  warmth_.factorise();
}

/// Nodes on borders to nothing share the value of their neighbours there; one node of each piece
/// has the value 0.
void Conduction::number_stream() {
  std::vector<std::uint32_t> leader(nodes_.nodes());
  std::iota(leader.begin(), leader.end(), std::uint32_t{0});
  const auto lead = [&leader](std::uint32_t n) {
    while (leader[n] != n) n = leader[n] = leader[leader[n]];
    return n;
  };
  for (const Border& border : nodes_.borders) {
    if (border.space) continue;
    for (const std::uint32_t node : border.node) {
      const std::uint32_t a = lead(border.node[0]), b = lead(node);
      leader[std::max(a, b)] = std::min(a, b);
    }
  }
  constexpr std::uint32_t unseen = none - 1;
  std::vector<std::uint32_t> number(nodes_.nodes(), unseen);
  std::vector<char> has_zero(nodes_.pieces, 0);
  for (const Element& element : nodes_.elements) {
    if (has_zero[element.piece] != 0) continue;
    has_zero[element.piece] = 1;
    number[lead(element.node[0])] = none;
  }
  std::uint32_t count = 0;
  for (std::uint32_t n = 0; n < nodes_.nodes(); ++n) {
    std::uint32_t& own = number[lead(n)];
    if (own == unseen) own = count++;
    stream_unknown_.push_back(own);
  }
  chains_ = chains_of(nodes_);
  if (!chains_.empty()) links_.resize(nodes_.elements.size());
  for (const Chain& chain : chains_) {
    for (const Chain::Link& link : chain.links) links_[link.element].push_back({count, &link});
    ++count;
  }
  stream_ = SymmetricSystem(count);
}

void Conduction::assemble_stream() {
  std::vector<Local> locals(nodes_.elements.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    locals[e] = stiffness(e);
    for (auto& row : locals[e]) {
      for (double& value : row) value /= conductivity_[e];
    }
  }
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    if (!border.space) continue;
    const auto local = on_side(border.side);
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) {
        locals[border.element][local[i]][local[j]] += slopes[i][j] * resistance_[b] / border.length;
      }
    }
  }
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    std::array<std::uint32_t, 6> unknown{};
    for (std::size_t i = 0; i < 6; ++i) unknown[i] = stream_unknown_[nodes_.elements[e].node[i]];
    for (std::size_t i = 0; i < 6; ++i) {
      for (std::size_t j = 0; j < 6; ++j) {
        // Tied nodes of one element share an unknown: both of i, j and j, i count on its diagonal.
        if (unknown[i] != none && unknown[j] != none && unknown[j] <= unknown[i]) {
          stream_.add(unknown[i], unknown[j], locals[e][i][j]);
        }
      }
    }
    if (links_.empty()) continue;
    for (const auto& [own, link] : links_[e]) {
      std::array<double, 6> pull{};
      for (std::size_t i = 0; i < 6; ++i) {
        for (std::size_t j = 0; j < 6; ++j) pull[i] += locals[e][i][j] * link->stream[j];
        if (unknown[i] != none) stream_.add(own, unknown[i], pull[i]);
      }
      for (const auto& [other, second] : links_[e]) {
        double both = 0.0;
        for (std::size_t i = 0; i < 6; ++i) both += pull[i] * second->stream[i];
        if (other <= own) stream_.add(own, other, both);
      }
    }
  }
  stream_.factorise();
}

TwoFields Conduction::solve(const Surroundings& surroundings) const {
  TwoFields fields;
  fields.warmth = warmth_of(surroundings);
  fields.stream = stream_of(surroundings);
  fields.above = flux_above(fields.warmth, surroundings);
  fields.below = flux_below(fields.stream);
  return fields;
}

std::vector<double> Conduction::warmth_of(const Surroundings& surroundings) const {
  std::vector<double> warmth(nodes_.nodes(), 0.0), rhs(warmth_.unknowns(), 0.0);
  for (std::size_t n = 0; n < nodes_.nodes(); ++n) {
    for (const std::uint32_t b : fixed_borders_[n]) {
      warmth[n] += surroundings[b] / static_cast<double>(fixed_borders_[n].size());
    }
  }
  for (const FixedLink& link : fixed_links_) rhs[link.unknown] -= link.value * warmth[link.node];
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    if (!border.space || resistance_[b] == 0 || surroundings[b] == 0) continue;
    for (std::size_t i = 0; i < 3; ++i) {
      const std::uint32_t unknown = warmth_unknown_[border.node[i]];
      if (unknown != none)
        rhs[unknown] += load[i] * border.length * surroundings[b] / resistance_[b];
    }
  }
  const std::vector<double> solution = warmth_.solve(rhs);
  for (std::size_t n = 0; n < nodes_.nodes(); ++n) {
    if (warmth_unknown_[n] != none) warmth[n] = solution[warmth_unknown_[n]];
  }
  return warmth;
}

std::vector<std::array<double, 6>> Conduction::stream_of(const Surroundings& surroundings) const {
  std::vector<double> rhs(stream_.unknowns(), 0.0);
  for (std::size_t b = 0; b < nodes_.borders.size(); ++b) {
    const Border& border = nodes_.borders[b];
    if (!border.space || surroundings[b] == 0) continue;
    const std::uint32_t first = stream_unknown_[border.node[0]],
                        last = stream_unknown_[border.node[2]];
    if (first != none) rhs[first] += surroundings[b];
    if (last != none) rhs[last] -= surroundings[b];
    if (links_.empty()) continue;
    const auto local = on_side(border.side);
    for (const auto& [own, link] : links_[border.element]) {
      rhs[own] += surroundings[b] * (link->stream[local[0]] - link->stream[local[2]]);
    }
  }
  return stream_from(rhs);
}

std::vector<std::array<double, 6>> Conduction::stream_from(const std::vector<double>& rhs) const {
  const std::vector<double> solution = stream_.solve(rhs);
  std::vector<std::array<double, 6>> stream(nodes_.elements.size());
  for (std::size_t e = 0; e < nodes_.elements.size(); ++e) {
    for (std::size_t i = 0; i < 6; ++i) {
      const std::uint32_t unknown = stream_unknown_[nodes_.elements[e].node[i]];
      stream[e][i] = unknown == none ? 0.0 : solution[unknown];
      if (links_.empty()) continue;
      for (const auto& [own, link] : links_[e]) stream[e][i] += solution[own] * link->stream[i];
    }
  }
  return stream;
}

}  // namespace quoin::solver
