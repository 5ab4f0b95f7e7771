// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour_places.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace quoin::solver {
namespace {

using geometry::Cell;
using geometry::CellSide;
using geometry::Fill;
using geometry::Split;

/// Gathers the lines along which fills meet, half to each end.
class Lines {
 public:
  explicit Lines(const geometry::Mesh& mesh) : mesh_(mesh), lines_(mesh.nx() * mesh.ny()) {
    for (std::size_t j = 0; j < mesh.rows(); ++j) {
      for (std::size_t i = 0; i < mesh.columns(); ++i) add_cell(i, j);
    }
  }

  /// The longest line at a node; within the only fill there where none.
  [[nodiscard]] Site site(std::size_t node) const {
    Site longest{{within_[node], within_[node]}, 0.0};
    for (const auto& [meeting, length] : lines_[node]) {
      if (length > longest.length * (1.0 + 1e-9)) longest = {meeting, length};
    }
    return longest;
  }

 private:
  void add_cell(std::size_t i, std::size_t j) {
    const Cell& cell = mesh_.cell(i, j);
    const double dx = mesh_.x[i + 1] - mesh_.x[i], dy = mesh_.y[j + 1] - mesh_.y[j];
    const std::size_t sw = mesh_.node(i, j), se = sw + 1, nw = mesh_.node(i, j + 1), ne = nw + 1;
    for (const auto& [node, side] :
         {std::pair(sw, CellSide::south), std::pair(se, CellSide::south),
          std::pair(nw, CellSide::north), std::pair(ne, CellSide::north)}) {
      if (geometry::is_solid(cell.at(side))) within_[node] = cell.at(side);
    }
    if (i + 1 < mesh_.columns())
      add(se, ne, cell.at(CellSide::east), mesh_.cell(i + 1, j).at(CellSide::west), dy);
    if (j + 1 < mesh_.rows())
      add(nw, ne, cell.at(CellSide::north), mesh_.cell(i, j + 1).at(CellSide::south), dx);
    if (cell.split == Split::rising) add(sw, ne, cell.below, cell.above, std::hypot(dx, dy));
    if (cell.split == Split::falling) add(nw, se, cell.below, cell.above, std::hypot(dx, dy));
  }

  void add(std::size_t from, std::size_t to, const Fill& one, const Fill& other, double length) {
    const bool nothing = std::holds_alternative<std::monostate>(one) ||
                         std::holds_alternative<std::monostate>(other);
    if (one == other || nothing) return;
    const Meeting meeting = std::minmax(one, other);
    lines_[from][meeting] += length / 2;
    lines_[to][meeting] += length / 2;
  }

  const geometry::Mesh& mesh_;
  std::vector<std::map<Meeting, double>> lines_;
  std::vector<Fill> within_ = std::vector<Fill>(mesh_.nx() * mesh_.ny());
};

/// The area about a node, m2.
double area_about(const geometry::Mesh& mesh, std::size_t node) {
  const auto span = [](const std::vector<double>& lines, std::size_t at) {
    return (lines[std::min(at + 1, lines.size() - 1)] - lines[at == 0 ? 0 : at - 1]) / 2;
  };
  return span(mesh.x, node % mesh.nx()) * span(mesh.y, node / mesh.nx());
}

}  // namespace

std::vector<Site> sites_of(const geometry::Mesh& mesh) {
  const Lines lines(mesh);
  std::vector<Site> sites;
  for (std::size_t n = 0; n < mesh.nx() * mesh.ny(); ++n) sites.push_back(lines.site(n));
  return sites;
}

std::vector<Gathered> gathered(const geometry::Mesh& mesh, const std::vector<double>& amount) {
  std::vector<Gathered> all;
  std::vector<double> densest;
  const bool any = std::any_of(amount.begin(), amount.end(), [](double a) { return a > 0.0; });
  if (!any) return all;
  const Lines lines(mesh);
  for (std::size_t n = 0; n < amount.size(); ++n) {
    if (amount[n] <= 0.0) continue;
    const Site site = lines.site(n);
    auto known = std::find_if(all.begin(), all.end(),
                              [&](const Gathered& one) { return one.meeting == site.meeting; });
    if (known == all.end()) {
      known = all.insert(all.end(), {site.meeting, 0.0, 0.0, {}});
      densest.push_back(-1.0);
    }
    known->length += site.length;
    known->amount += amount[n];
    const double density = amount[n] / (site.length > 0.0 ? site.length : area_about(mesh, n));
    double& most = densest[static_cast<std::size_t>(known - all.begin())];
    // Rounding must not choose the place.
    if (density > most * (1.0 + 1e-6)) {
      most = density;
      known->most = mesh.place(n);
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const Gathered& one, const Gathered& other) {
    return one.amount > other.amount;
  });
  return all;
}

}  // namespace quoin::solver
