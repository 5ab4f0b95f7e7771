// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <map>
#include <vector>

#include "geometry/mesh.hpp"

namespace quoin::geometry {

/// Two nodes at one place, on either side of a line that holds a membrane somewhere.
struct Twins {
  /// Half of a side of a cell along which a membrane parts them, m.
  struct Parted {
    MembraneId membrane;
    double length = 0.0;
  };
  std::size_t one = 0;
  std::size_t other = 0;
  bool joined = false;         ///< material without a membrane joins them: they are one
  std::vector<Parted> parted;  ///< where none does
};

/// The nodes of a mesh, those on lines that hold a membrane doubled, so that each side of it has
/// nodes of its own and they still make a tensor grid; so are lines through points in which fans of
/// material touch, where each fan has one or more of the nodes. Without either they are the nodes
/// of the mesh. Shape: nx() by ny() nodes, (i, j) at index j * nx() + i.
class TwoSided {
 public:
  explicit TwoSided(const Mesh& mesh);

  [[nodiscard]] std::size_t nx() const { return column_.size(); }
  [[nodiscard]] std::size_t ny() const { return row_.size(); }
  [[nodiscard]] std::size_t size() const { return nx() * ny(); }

  /// The node at a corner of cell (i, j) of the mesh, on the cell's side of any membrane.
  [[nodiscard]] std::size_t corner(std::size_t i, std::size_t j, bool east, bool north) const {
    const std::size_t column = east ? before_x_[i + 1] : after_x_[i];
    const std::size_t row = north ? before_y_[j + 1] : after_y_[j];
    return row * nx() + column;
  }
  /// The node of the mesh at the same place, of the same fan of material.
  [[nodiscard]] std::size_t of_mesh(std::size_t node) const {
    if (const auto found = of_fan_.find(node); found != of_fan_.end()) return found->second;
    return row_[node / nx()] * mesh_nx_ + column_[node % nx()];
  }
  /// One of the nodes at a place that are joined, the same for all of them.
  [[nodiscard]] std::size_t leader(std::size_t node) const { return leader_[node]; }
  [[nodiscard]] const std::vector<Twins>& twins() const { return twins_; }

  /// The membrane on the east side of cell (i, j) of the mesh, or on its north side; not valid
  /// where there is none.
  [[nodiscard]] MembraneId east_of(std::size_t i, std::size_t j) const {
    return at(upright_, i + 1, j);
  }
  [[nodiscard]] MembraneId north_of(std::size_t i, std::size_t j) const {
    return at(level_, j + 1, i);
  }

 private:
  /// Membranes along one line of the mesh by the cells beside it; empty where it holds none.
  using OnLine = std::vector<MembraneId>;
  [[nodiscard]] static MembraneId at(const std::vector<OnLine>& lines, std::size_t line,
                                     std::size_t cell) {
    return lines[line].empty() ? MembraneId() : lines[line][cell];
  }
  void add_twins(const Mesh& mesh);
  void join();
  void find_fans(const Mesh& mesh);

  std::size_t mesh_nx_ = 0;
  std::vector<OnLine> upright_, level_;
  std::vector<std::size_t> before_x_, after_x_;  ///< of each line of the mesh its columns here
  std::vector<std::size_t> before_y_, after_y_;
  std::vector<std::size_t> column_, row_;  ///< of each column and row here the line of the mesh
  std::vector<Twins> twins_;
  std::vector<std::size_t> leader_;
  std::map<std::size_t, std::size_t> of_fan_;  ///< nodes where fans touch: that of the mesh
};

}  // namespace quoin::geometry
