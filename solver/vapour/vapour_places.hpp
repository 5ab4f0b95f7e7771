// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

#include "geometry/two_sided.hpp"

namespace quoin::solver {

/// What meets at a node: two materials, a material and a space or a membrane, or twice the same
/// material where the node lies within it.
using Meeting = std::pair<geometry::Fill, geometry::Fill>;

/// Where the meeting of a node lies and how much of it the node stands for.
struct Site {
  Meeting meeting;
  /// Two may meet in several places that do not hang together (two layers of one plaster): which of
  /// them, from 0 on, by their lowest and then leftmost nodes.
  std::size_t part = 0;
  double length = 0.0;  ///< of the line where the two meet, m; 0 within a material
};

/// Something spread over nodes, summed by what meets there.
struct Gathered {
  Meeting meeting;
  std::size_t part = 0;  ///< see Site
  double length = 0.0;   ///< of the line over which it is spread, m; 0 within a material
  double amount = 0.0;   ///< the sum over the nodes
  geometry::Point most;  ///< where most of it is, by length of line or by area
};

/// What meets where on a mesh.
class Sites {
 public:
  explicit Sites(const geometry::Mesh& mesh);

  [[nodiscard]] const geometry::TwoSided& nodes() const { return nodes_; }

  /// The site of a node of nodes(). Where more than two meet, the two count whose common line is
  /// longest there.
  [[nodiscard]] Site site(std::size_t node) const;

  /// In how many places two meet.
  [[nodiscard]] std::size_t parts(const Meeting& meeting) const;

  /// Sums a value of each node by meeting and part, the largest sum first. Nodes with nothing do
  /// not count. What lies within a material beside a line where the same goes on counts to that
  /// line: which of both a grid gives it to is chance. Shape: nodes().
  [[nodiscard]] std::vector<Gathered> gathered(const std::vector<double>& amount) const;

 private:
  /// A line of a meeting at a node, half of what leaves it.
  struct Line {
    Meeting meeting;
    double length = 0.0;
    std::size_t set = 0;  ///< of lines that hang together
  };

  void add_lines(const geometry::Mesh& mesh, std::size_t i, std::size_t j);
  void add(std::size_t from, std::size_t to, const geometry::Fill& one, const geometry::Fill& other,
           double length);
  [[nodiscard]] std::size_t line(std::size_t node, const Meeting& meeting, double length);
  void join_insides();
  [[nodiscard]] std::vector<std::size_t> homes(const std::vector<double>& amount) const;
  void number_parts();
  [[nodiscard]] std::size_t root(std::size_t set);
  void join(std::size_t one, std::size_t other);

  geometry::TwoSided nodes_;
  std::vector<geometry::Point> places_;   ///< of the nodes
  std::vector<double> areas_;             ///< about them, m2
  std::vector<std::vector<Line>> lines_;  ///< by leader
  std::vector<geometry::Fill> within_;    ///< by leader
  std::vector<std::size_t> sets_;         ///< each set's parent
  std::vector<std::size_t> inside_;       ///< set of a leader without lines
  std::vector<std::size_t> part_;         ///< of each root
  std::map<Meeting, std::size_t> parts_;
};

}  // namespace quoin::solver
