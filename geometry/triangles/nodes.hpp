// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "geometry/facing.hpp"
#include "geometry/triangles/triangles.hpp"

namespace quoin::geometry {

/// A triangle of material with six nodes: its corners, then the middle of the side opposite each.
struct Element {
  std::array<std::uint32_t, 6> node{};
  RegionId region;
  std::uint32_t triangle = 0;  ///< of the net
  std::uint32_t piece = 0;     ///< of what hangs together
};

/// A side of an element that ends the material. Walking from its first node to its last the
/// material lies on the left.
struct Border {
  std::uint32_t element = 0;
  int side = 0;
  std::optional<SpaceId> space;         ///< beyond; absent: nothing, no heat crosses
  std::array<std::uint32_t, 3> node{};  ///< first, middle, last
  double length = 0.0;                  ///< m
  Facing facing = Facing::sideways;
};

/// The material of a drawing as triangles with six nodes. Where pieces of material touch in a point
/// only, each has a node of its own there: nothing flows through a point. Pieces that meet no space
/// are left out.
struct NodedTriangles {
  std::vector<Point> places;  ///< of the nodes; those at corners first
  std::uint32_t corners = 0;  ///< how many
  std::vector<Element> elements;
  std::vector<Border> borders;
  std::uint32_t pieces = 0;

  [[nodiscard]] std::size_t nodes() const { return places.size(); }
};

[[nodiscard]] NodedTriangles noded(const Triangles& triangles);

}  // namespace quoin::geometry
