// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/loops.hpp"

#include <utility>

#include "solver/triangles/sides.hpp"

namespace quoin::solver {
namespace {

using geometry::before;
using geometry::Border;
using geometry::next;
using geometry::NodedTriangles;

constexpr std::uint32_t none = geometry::Triangle::none;

/// The rim that each border belongs to, numbered in the order of their first borders.
std::vector<std::uint32_t> rims_of(const NodedTriangles& nodes) {
  std::vector<std::uint32_t> starting(nodes.corners, none);  // the border that starts at a corner
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    starting[nodes.borders[b].node[0]] = b;
  }
  std::vector<std::uint32_t> rim(nodes.borders.size(), none);
  std::uint32_t rims = 0;
  for (std::uint32_t first = 0; first < nodes.borders.size(); ++first) {
    if (rim[first] != none) continue;
    for (std::uint32_t b = first; rim[b] == none; b = starting[nodes.borders[b].node[2]]) {
      rim[b] = rims;
    }
    ++rims;
  }
  return rim;
}

/// The two sides that share each middle node, as element and side; none where there is but one.
using Sides = std::vector<std::array<std::pair<std::uint32_t, int>, 2>>;

Sides sides_of(const NodedTriangles& nodes) {
  Sides sides(nodes.nodes() - nodes.corners, {std::pair{none, 0}, std::pair{none, 0}});
  for (std::uint32_t e = 0; e < nodes.elements.size(); ++e) {
    for (int k = 0; k < 3; ++k) {
      auto& both = sides[nodes.elements[e].node[at(k) + 3] - nodes.corners];
      (both[0].first == none ? both[0] : both[1]) = {e, k};
    }
  }
  return sides;
}

/// The stream function of a flux of one that enters an element by one side and leaves by another.
Chain::Link link_through(std::uint32_t element, int in, int out) {
  Chain::Link link{element, {}};
  const int pivot = 3 - in - out;  // the corner that both sides share
  for (int k = 0; k < 3; ++k) {
    const bool first_of_out = pivot == next(out);
    link.stream[at(k)] = (k == pivot) == first_of_out ? 0.0 : 1.0;
  }
  for (int k = 0; k < 3; ++k) {
    link.stream[at(k) + 3] = (link.stream[at(next(k))] + link.stream[at(before(k))]) / 2;
  }
  return link;
}

/// The shortest chain from a border to any border of a rim that meets a space.
Chain chain_from(const NodedTriangles& nodes, const Sides& sides, const Border& start,
                 const std::vector<const Border*>& goals) {
  struct Step {
    std::uint32_t from = none;  ///< the element before
    int in = 0;                 ///< the side entered by
  };
  std::vector<Step> steps(nodes.elements.size());
  std::vector<char> seen(nodes.elements.size(), 0);
  std::vector<std::uint32_t> order = {start.element};
  seen[start.element] = 1;
  steps[start.element].in = start.side;
  for (std::size_t n = 0; n < order.size(); ++n) {
    const std::uint32_t e = order[n];
    if (const Border* goal = goals[e]) {
      Chain chain;
      int out = goal->side;
      for (std::uint32_t here = e; here != none; here = steps[here].from) {
        chain.links.push_back(link_through(here, steps[here].in, out));
        if (steps[here].from == none) break;
        const auto& both = sides[nodes.elements[here].node[at(steps[here].in) + 3] - nodes.corners];
        out = both[0].first == here ? both[1].second : both[0].second;
      }
      return chain;
    }
    for (int k = 0; k < 3; ++k) {
      const auto& both = sides[nodes.elements[e].node[at(k) + 3] - nodes.corners];
      const auto& [other, side] = both[0].first == e ? both[1] : both[0];
      if (other == none || seen[other] != 0) continue;
      seen[other] = 1;
      steps[other] = {e, side};
      order.push_back(other);
    }
  }
  return {};
}

}  // namespace

std::vector<Chain> chains_of(const NodedTriangles& nodes) {
  const std::vector<std::uint32_t> rim = rims_of(nodes);
  std::vector<std::uint32_t> first_rim(nodes.pieces, none);
  std::vector<char> known(nodes.borders.size(), 0);  // rims that have their chain or need none
  std::vector<Chain> chains;
  Sides sides;
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    const Border& border = nodes.borders[b];
    if (!border.space || known[rim[b]] != 0) continue;
    known[rim[b]] = 1;
    std::uint32_t& first = first_rim[nodes.elements[border.element].piece];
    if (first == none) {
      first = rim[b];
      continue;
    }
    if (sides.empty()) sides = sides_of(nodes);
    std::vector<const Border*> goals(nodes.elements.size(), nullptr);
    for (std::uint32_t g = 0; g < nodes.borders.size(); ++g) {
      if (rim[g] == first && nodes.borders[g].space) {
        goals[nodes.borders[g].element] = &nodes.borders[g];
      }
    }
    chains.push_back(chain_from(nodes, sides, border, goals));
  }
  return chains;
}

}  // namespace quoin::solver
