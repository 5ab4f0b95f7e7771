// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/nodes.hpp"

#include <cmath>
#include <numbers>
#include <numeric>
#include <utility>

namespace quoin::geometry {
namespace {

constexpr std::uint32_t none = Triangle::none;

/// Things that are joined two by two and asked for the group they are in.
class Groups {
 public:
  explicit Groups(std::size_t size) : leader_(size) {
    std::iota(leader_.begin(), leader_.end(), std::uint32_t{0});
  }
  std::uint32_t leader(std::uint32_t one) {
    while (leader_[one] != one) one = leader_[one] = leader_[leader_[one]];
    return one;
  }
  /// The smaller number leads, so that the order of joining does not show.
  void join(std::uint32_t one, std::uint32_t other) {
    const std::uint32_t a = leader(one), b = leader(other);
    leader_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<std::uint32_t> leader_;
};

/// Whether a slope is nearer than 30 degrees to the upright, so that heat crosses it sideways.
/// Source: ISO 6946 (memory).
Facing facing_of(Point from, Point to) {
  if (std::abs(to.x - from.x) < std::abs(to.y - from.y) * std::numbers::inv_sqrt3) {
    return Facing::sideways;
  }
  return to.x > from.x ? Facing::down : Facing::up;  // the material lies on the left
}

class Noding {
 public:
  explicit Noding(const Triangles& triangles)
      : triangles_(triangles),
        net_(triangles.net),
        corner_groups_(3 * net_.triangles().size()),
        pieces_(net_.triangles().size()) {}

  NodedTriangles run() {
    join();
    choose_pieces();
    number_corners();
    number_sides();
    return std::move(result_);
  }

 private:
  [[nodiscard]] const Triangle& triangle(std::uint32_t t) const { return net_.triangles()[t]; }
  [[nodiscard]] bool is_solid(std::uint32_t t) const { return t != none && triangles_.is_solid(t); }

  /// Corners and triangles of material that share a side.
  void join() {
    for (std::uint32_t t = 0; t < net_.triangles().size(); ++t) {
      if (!is_solid(t)) continue;
      for (int k = 0; k < 3; ++k) {
        const std::uint32_t u = triangle(t).beyond[static_cast<std::size_t>(k)];
        if (u < t || !is_solid(u)) continue;
        pieces_.join(t, u);
        for (const int own : {next(k), before(k)}) {
          for (std::uint32_t other = 0; other < 3; ++other) {
            if (triangle(u).corner[other] == triangle(t).corner[static_cast<std::size_t>(own)]) {
              corner_groups_.join(3 * t + static_cast<std::uint32_t>(own), 3 * u + other);
            }
          }
        }
      }
    }
  }

  /// Pieces that meet a space, numbered.
  void choose_pieces() {
    std::vector<char> meets(net_.triangles().size(), 0);
    for (std::uint32_t t = 0; t < net_.triangles().size(); ++t) {
      if (!is_solid(t)) continue;
      for (const std::uint32_t beyond : triangle(t).beyond) {
        if (beyond != none && std::holds_alternative<SpaceId>(triangles_.fill(beyond))) {
          meets[pieces_.leader(t)] = 1;
        }
      }
    }
    piece_.assign(net_.triangles().size(), none);
    std::vector<std::uint32_t> number(net_.triangles().size(), none);
    for (std::uint32_t t = 0; t < net_.triangles().size(); ++t) {
      if (!is_solid(t) || meets[pieces_.leader(t)] == 0) continue;
      std::uint32_t& piece = number[pieces_.leader(t)];
      if (piece == none) piece = result_.pieces++;
      piece_[t] = piece;
    }
  }

  void number_corners() {
    std::vector<std::uint32_t> number(3 * net_.triangles().size(), none);
    for (std::uint32_t t = 0; t < net_.triangles().size(); ++t) {
      if (piece_[t] == none) continue;
      Element element{{}, std::get<RegionId>(triangles_.fill(t)), t, piece_[t]};
      for (std::uint32_t k = 0; k < 3; ++k) {
        std::uint32_t& node = number[corner_groups_.leader(3 * t + k)];
        if (node == none) {
          node = static_cast<std::uint32_t>(result_.places.size());
          result_.places.push_back(net_.corner(t, static_cast<int>(k)));
        }
        element.node[k] = node;
      }
      element_.resize(t + 1, none);
      element_[t] = static_cast<std::uint32_t>(result_.elements.size());
      result_.elements.push_back(element);
    }
    element_.resize(net_.triangles().size(), none);
    result_.corners = static_cast<std::uint32_t>(result_.places.size());
  }

  void number_sides() {
    for (std::uint32_t e = 0; e < result_.elements.size(); ++e) {
      const std::uint32_t t = result_.elements[e].triangle;
      for (int k = 0; k < 3; ++k) {
        const auto side = static_cast<std::size_t>(k);
        const std::uint32_t u = triangle(t).beyond[side];
        const std::uint32_t other = u == none ? none : element_[u];
        std::uint32_t& node = result_.elements[e].node[side + 3];
        if (other != none && other < e) {
          node = result_.elements[other].node[3 + twin_side(u, t)];
          continue;
        }
        const Point a = net_.corner(t, next(k)), b = net_.corner(t, before(k));
        node = static_cast<std::uint32_t>(result_.places.size());
        result_.places.push_back({(a.x + b.x) / 2, (a.y + b.y) / 2});
        if (other == none) result_.borders.push_back(border(e, k, u));
      }
    }
  }

  [[nodiscard]] std::size_t twin_side(std::uint32_t u, std::uint32_t t) const {
    return triangle(u).beyond[0] == t ? 0 : triangle(u).beyond[1] == t ? 1 : 2;
  }

  [[nodiscard]] Border border(std::uint32_t e, int k, std::uint32_t beyond) const {
    const Element& element = result_.elements[e];
    Border border{e, k, std::nullopt, {}, net_.length({element.triangle, k}), {}};
    border.node = {element.node[static_cast<std::size_t>(next(k))],
                   element.node[static_cast<std::size_t>(k) + 3],
                   element.node[static_cast<std::size_t>(before(k))]};
    border.facing =
        facing_of(net_.corner(element.triangle, next(k)), net_.corner(element.triangle, before(k)));
    if (beyond != none) {
      if (const auto* space = std::get_if<SpaceId>(&triangles_.fill(beyond))) border.space = *space;
    }
    return border;
  }

  const Triangles& triangles_;
  const Triangulation& net_;
  Groups corner_groups_;  ///< corner k of triangle t at 3 t + k
  Groups pieces_;
  std::vector<std::uint32_t> piece_;    ///< of each triangle; none: left out
  std::vector<std::uint32_t> element_;  ///< of each triangle; none: left out
  NodedTriangles result_;
};

}  // namespace

NodedTriangles noded(const Triangles& triangles) { return Noding(triangles).run(); }

}  // namespace quoin::geometry
