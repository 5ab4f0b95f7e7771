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

/// The side of the neighbour across a side of an element, as element and side; none at a border.
std::pair<std::uint32_t, int> across(const NodedTriangles& nodes, const Sides& sides,
                                     std::uint32_t element, int side) {
  const auto& both = sides[nodes.elements[element].node[at(side) + 3] - nodes.corners];
  return both[0].first == element ? both[1] : both[0];
}

/// A search outwards from an element until one ends it.
struct Search {
  struct Step {
    std::uint32_t from = none;  ///< the element before
    int in = 0;                 ///< the side entered by
  };
  std::vector<Step> steps;     ///< of each element reached
  std::uint32_t found = none;  ///< the element that ends it
};

/// Shape: ends has a flag for each element.
template <class Ends>
Search search_from(const NodedTriangles& nodes, const Sides& sides, std::uint32_t start,
                   const Ends& ends) {
  Search search{std::vector<Search::Step>(nodes.elements.size()), none};
  std::vector<char> seen(nodes.elements.size(), 0);
  std::vector<std::uint32_t> order = {start};
  seen[start] = 1;
  for (std::size_t n = 0; n < order.size(); ++n) {
    const std::uint32_t e = order[n];
    if (ends(e)) {
      search.found = e;
      return search;
    }
    for (int k = 0; k < 3; ++k) {
      const std::uint32_t other = across(nodes, sides, e, k).first;
      if (other == none || seen[other] != 0) continue;
      seen[other] = 1;
      search.steps[other] = {e, across(nodes, sides, e, k).second};
      order.push_back(other);
    }
  }
  return search;
}

/// Links from the element after the first of a search to the one found, which it leaves by a side;
/// `out` becomes the side by which the first is left.
std::vector<Chain::Link> links_after_first(const NodedTriangles& nodes, const Sides& sides,
                                           const Search& search, int& out) {
  std::vector<Chain::Link> links;
  for (std::uint32_t here = search.found; search.steps[here].from != none;
       here = search.steps[here].from) {
    links.push_back(link_through(here, search.steps[here].in, out));
    out = across(nodes, sides, here, search.steps[here].in).second;
  }
  return links;
}

/// The shortest chain from a border to any border of a rim that meets a space.
Chain chain_from(const NodedTriangles& nodes, const Sides& sides, const Border& start,
                 const std::vector<const Border*>& goals) {
  const Search search = search_from(nodes, sides, start.element,
                                    [&](std::uint32_t e) { return goals[e] != nullptr; });
  if (search.found == none) return {};
  int out = goals[search.found]->side;
  Chain chain{links_after_first(nodes, sides, search, out)};
  chain.links.push_back(link_through(start.element, start.side, out));
  return chain;
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

WayOut way_out_of(const NodedTriangles& nodes, std::uint32_t element) {
  std::vector<std::uint32_t> border(nodes.elements.size(), none);  // one that meets a space
  for (std::uint32_t b = 0; b < nodes.borders.size(); ++b) {
    if (nodes.borders[b].space) border[nodes.borders[b].element] = b;
  }
  const Sides sides = sides_of(nodes);
  const Search search =
      search_from(nodes, sides, element, [&](std::uint32_t e) { return border[e] != none; });
  WayOut way{0, {}, border[search.found]};
  way.side = nodes.borders[way.border].side;
  way.links = links_after_first(nodes, sides, search, way.side);
  return way;
}

}  // namespace quoin::solver
