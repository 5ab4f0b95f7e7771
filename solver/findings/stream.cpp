// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/stream.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "solver/scheme/assembly.hpp"
#include "solver/scheme/basis.hpp"

namespace quoin::solver {
namespace {

using geometry::CellSide;

/// Heat that crosses the sides of cells, W/m: to the right through the side that runs up from a
/// node, upwards through the side that runs right from it. Shape: nodes.
struct SideFlows {
  std::vector<double> east, north;        ///< at the node where the side begins
  std::vector<char> has_east, has_north;  ///< whether material lies on either hand
};

SideFlows side_flows(const Solution& solution, const SpaceTemperatures& spaces) {
  const geometry::Mesh& mesh = solution.field.mesh;
  const Assembly assembly = cell_centred(mesh, solution.physics);
  const std::vector<double> temperature = superposed(solution.cells, solution.field.airs, spaces);
  const std::size_t nodes = mesh.nx() * mesh.ny(), columns = mesh.columns();
  SideFlows flows{std::vector<double>(nodes), std::vector<double>(nodes), std::vector<char>(nodes),
                  std::vector<char>(nodes)};
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < columns; ++i) {
      const std::size_t cell = j * columns + i, sw = mesh.node(i, j);
      const auto note = [&](CellSide side, char& has) {
        if (geometry::is_solid(mesh.cell(i, j).at(side))) has = 1;
      };
      note(CellSide::west, flows.has_east[sw]);
      note(CellSide::east, flows.has_east[sw + 1]);
      note(CellSide::south, flows.has_north[sw]);
      note(CellSide::north, flows.has_north[sw + mesh.nx()]);
      const FivePointOperator& network = assembly.network;
      if (i + 1 < columns) {
        flows.east[sw + 1] += network.east[cell] * (temperature[cell] - temperature[cell + 1]);
      }
      if (j + 1 < mesh.rows()) {
        flows.north[sw + mesh.nx()] +=
            network.north[cell] * (temperature[cell] - temperature[cell + columns]);
      }
    }
  }
  for (const AirLink& link : assembly.links) {
    if (!link.side) continue;  // through a diagonal: no side of a cell
    const double out =
        link.conductance * (temperature[link.unknown] - spaces[solution.physics.air[link.space]]);
    const std::size_t sw = mesh.node(link.unknown % columns, link.unknown / columns);
    switch (*link.side) {
      case CellSide::west:
        flows.east[sw] -= out;
        break;
      case CellSide::east:
        flows.east[sw + 1] += out;
        break;
      case CellSide::south:
        flows.north[sw] -= out;
        break;
      case CellSide::north:
        flows.north[sw + mesh.nx()] += out;
        break;
    }
  }
  return flows;
}

/// Nodes joined into pieces, with the value of each against the root of its piece.
class Pieces {
 public:
  explicit Pieces(std::size_t nodes) : parent_(nodes), above_(nodes, 0.0) {
    for (std::size_t n = 0; n < nodes; ++n) parent_[n] = n;
  }

  [[nodiscard]] std::size_t root(std::size_t node) {
    std::size_t top = node;
    double sum = 0.0;
    while (parent_[top] != top) {
      sum += above_[top];
      top = parent_[top];
    }
    while (parent_[node] != top && node != top) {  // shortens the way for the next
      const std::size_t next = parent_[node];
      const double rest = sum - above_[node];
      parent_[node] = top;
      above_[node] = sum;
      sum = rest;
      node = next;
    }
    return top;
  }

  /// Of a node, after root() was asked for it.
  [[nodiscard]] double above_root(std::size_t node) const {
    return parent_[node] == node ? 0.0 : above_[node];
  }

  /// Lets the value rise by `rise` from one node to another. Where both already belong together:
  /// how far their values miss that.
  double join(std::size_t from, std::size_t to, double rise) {
    const std::size_t a = root(from), b = root(to);
    const double miss = above_root(from) + rise - above_root(to);
    if (a == b) return miss;
    parent_[b] = a;
    above_[b] = miss;
    return 0.0;
  }

 private:
  std::vector<std::size_t> parent_;
  std::vector<double> above_;
};

}  // namespace

Stream stream_of(const Solution& solution, const SpaceTemperatures& spaces) {
  const geometry::Mesh& mesh = solution.field.mesh;
  const std::size_t nodes = mesh.nx() * mesh.ny(), nx = mesh.nx();
  if (solution.triangles) {
    return {superposed(solution.triangles->stream, solution.field.airs, spaces),
            solution.triangles->stream_leaps};
  }
  Stream stream{std::vector<double>(nodes, 0.0), {}};
  if (solution.cells.empty()) return stream;
  const SideFlows flows = side_flows(solution, spaces);
  double most = 0.0;
  for (std::size_t n = 0; n < nodes; ++n) {
    most = std::max({most, std::abs(flows.east[n]), std::abs(flows.north[n])});
  }
  // Whole rows first, then each row to the next: so a cut lies between two rows.
  Pieces pieces(nodes);
  std::vector<char> used(nodes, 0);
  for (std::size_t n = 0; n < nodes; ++n) {
    if (flows.has_north[n] == 0) continue;
    pieces.join(n, n + 1, -flows.north[n]);
    used[n] = used[n + 1] = 1;
  }
  const double rounding = 1e-6 * most * static_cast<double>(mesh.nx() + mesh.ny());
  for (std::size_t n = 0; n < nodes; ++n) {
    if (flows.has_east[n] == 0) continue;
    used[n] = used[n + nx] = 1;
    if (std::abs(pieces.join(n, n + nx, flows.east[n])) <= rounding) continue;
    if (stream.is_cut.empty()) stream.is_cut.assign(mesh.columns() * mesh.rows(), 0);
    const std::size_t i = n % nx, cell = (n / nx) * mesh.columns() + i;
    if (i > 0) stream.is_cut[cell - 1] = 1;
    if (i < mesh.columns()) stream.is_cut[cell] = 1;
  }
  std::map<std::size_t, double> lowest;  // by root
  for (std::size_t n = 0; n < nodes; ++n) {
    if (used[n] == 0) continue;
    const std::size_t root = pieces.root(n);
    const auto [found, is_new] = lowest.insert({root, pieces.above_root(n)});
    if (!is_new) found->second = std::min(found->second, pieces.above_root(n));
  }
  for (std::size_t n = 0; n < nodes; ++n) {
    if (used[n] == 0) continue;
    const std::size_t root = pieces.root(n);
    stream.value[n] = pieces.above_root(n) - lowest[root];
  }
  return stream;
}

}  // namespace quoin::solver
