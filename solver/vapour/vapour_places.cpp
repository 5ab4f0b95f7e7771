// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour/vapour_places.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace quoin::solver {
namespace {

using geometry::Cell;
using geometry::CellSide;
using geometry::Fill;
using geometry::MembraneId;
using geometry::Split;

/// The area about a node of a mesh, m2.
double area_about(const geometry::Mesh& mesh, std::size_t node) {
  const auto span = [](const std::vector<double>& lines, std::size_t at) {
    return (lines[std::min(at + 1, lines.size() - 1)] - lines[at == 0 ? 0 : at - 1]) / 2;
  };
  return span(mesh.x, node % mesh.nx()) * span(mesh.y, node / mesh.nx());
}

}  // namespace

Sites::Sites(const geometry::Mesh& mesh)
    : nodes_(mesh), lines_(nodes_.size()), within_(nodes_.size()) {
  for (std::size_t n = 0; n < nodes_.size(); ++n) {
    places_.push_back(mesh.place(nodes_.of_mesh(n)));
    areas_.push_back(area_about(mesh, mesh.on_grid(nodes_.of_mesh(n))));
  }
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) add_lines(mesh, i, j);
  }
  join_insides();
  number_parts();
}

void Sites::add_lines(const geometry::Mesh& mesh, std::size_t i, std::size_t j) {
  const Cell& cell = mesh.cell(i, j);
  const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
  const std::size_t sw = nodes_.corner(i, j, false, false), se = sw + 1;
  const std::size_t nw = nodes_.corner(i, j, false, true), ne = nw + 1;
  for (const auto& [node, side] :
       {std::pair(sw, CellSide::south), std::pair(se, CellSide::south),
        std::pair(nw, CellSide::north), std::pair(ne, CellSide::north)}) {
    if (geometry::is_solid(cell.at(side))) within_[nodes_.leader(node)] = cell.at(side);
  }
  if (i + 1 < mesh.columns()) {
    const Fill& here = cell.at(CellSide::east);
    const Fill& there = mesh.cell(i + 1, j).at(CellSide::west);
    const MembraneId membrane = nodes_.east_of(i, j);
    add(se, ne, here, membrane.valid() ? Fill(membrane) : there, dy);
    if (membrane.valid()) {
      add(nodes_.corner(i + 1, j, false, false), nodes_.corner(i + 1, j, false, true), there,
          membrane, dy);
    }
  }
  if (j + 1 < mesh.rows()) {
    const Fill& here = cell.at(CellSide::north);
    const Fill& there = mesh.cell(i, j + 1).at(CellSide::south);
    const MembraneId membrane = nodes_.north_of(i, j);
    add(nw, ne, here, membrane.valid() ? Fill(membrane) : there, dx);
    if (membrane.valid()) {
      add(nodes_.corner(i, j + 1, false, false), nodes_.corner(i, j + 1, true, false), there,
          membrane, dx);
    }
  }
  if (cell.split == Split::rising) add(sw, ne, cell.below, cell.above, std::hypot(dx, dy));
  if (cell.split == Split::falling) add(nw, se, cell.below, cell.above, std::hypot(dx, dy));
}

void Sites::add(std::size_t from, std::size_t to, const Fill& one, const Fill& other,
                double length) {
  const bool nothing =
      std::holds_alternative<std::monostate>(one) || std::holds_alternative<std::monostate>(other);
  if (one == other || nothing) return;
  const Meeting meeting = std::minmax(one, other);
  join(line(nodes_.leader(from), meeting, length / 2),
       line(nodes_.leader(to), meeting, length / 2));
}

std::size_t Sites::line(std::size_t node, const Meeting& meeting, double length) {
  for (Line& known : lines_[node]) {
    if (known.meeting != meeting) continue;
    known.length += length;
    return known.set;
  }
  sets_.push_back(sets_.size());
  lines_[node].push_back({meeting, length, sets_.back()});
  return sets_.back();
}

std::size_t Sites::root(std::size_t set) {
  while (sets_[set] != set) set = sets_[set] = sets_[sets_[set]];
  return set;
}

void Sites::join(std::size_t one, std::size_t other) {
  const std::size_t a = root(one), b = root(other);
  sets_[std::max(a, b)] = std::min(a, b);
}

/// Nodes within a material hang together where they are neighbours.
void Sites::join_insides() {
  inside_.assign(nodes_.size(), 0);
  const auto is_inside = [&](std::size_t n) {
    return nodes_.leader(n) == n && lines_[n].empty() && geometry::is_solid(within_[n]);
  };
  for (std::size_t n = 0; n < nodes_.size(); ++n) {
    if (!is_inside(n)) continue;
    inside_[n] = sets_.size();
    sets_.push_back(sets_.size());
  }
  const auto join_with = [&](std::size_t n, std::size_t other) {
    const std::size_t m = nodes_.leader(other);
    if (m != n && is_inside(m) && within_[m] == within_[n]) join(inside_[n], inside_[m]);
  };
  for (std::size_t node = 0; node < nodes_.size(); ++node) {
    const std::size_t n = nodes_.leader(node);
    if (!is_inside(n)) continue;
    if (node % nodes_.nx() + 1 < nodes_.nx()) join_with(n, node + 1);
    if (node + nodes_.nx() < nodes_.size()) join_with(n, node + nodes_.nx());
  }
}

void Sites::number_parts() {
  constexpr std::size_t none = static_cast<std::size_t>(-1);
  part_.assign(sets_.size(), none);
  const auto number = [&](const Meeting& meeting, std::size_t& set) {
    set = root(set);
    if (part_[set] == none) part_[set] = parts_[meeting]++;
  };
  for (std::size_t n = 0; n < nodes_.size(); ++n) {
    for (Line& line : lines_[n]) number(line.meeting, line.set);
    if (nodes_.leader(n) == n && lines_[n].empty() && geometry::is_solid(within_[n]))
      number({within_[n], within_[n]}, inside_[n]);
  }
}

Site Sites::site(std::size_t node) const {
  const std::size_t n = nodes_.leader(node);
  const Line* longest = nullptr;
  for (const Line& line : lines_[n]) {
    const bool longer = longest == nullptr || line.length > longest->length * (1.0 + 1e-9);
    const bool as_long =
        longest != nullptr && !longer && line.length * (1.0 + 1e-9) >= longest->length;
    if (longer || (as_long && line.meeting < longest->meeting)) longest = &line;
  }
  if (longest != nullptr) return {longest->meeting, part_[longest->set], longest->length};
  const Meeting inside{within_[n], within_[n]};
  return {inside, geometry::is_solid(within_[n]) ? part_[inside_[n]] : 0, 0.0};
}

std::size_t Sites::parts(const Meeting& meeting) const {
  const auto found = parts_.find(meeting);
  return found == parts_.end() ? 0 : found->second;
}

/// The node to whose site each node's value counts: the first node with a line that it hangs
/// together with, through nodes within a material that have a value, too; itself where there is
/// none.
std::vector<std::size_t> Sites::homes(const std::vector<double>& amount) const {
  constexpr std::size_t none = static_cast<std::size_t>(-1);
  std::vector<std::size_t> home(amount.size(), none);
  std::vector<std::size_t> reached;
  for (std::size_t n = 0; n < amount.size(); ++n) {
    if (amount[n] <= 0.0 || lines_[nodes_.leader(n)].empty()) continue;
    home[n] = n;
    reached.push_back(n);
  }
  const auto reach = [&](std::size_t from, std::size_t to) {
    if (amount[to] <= 0.0 || home[to] != none) return;
    home[to] = home[from];
    reached.push_back(to);
  };
  for (std::size_t k = 0; k < reached.size(); ++k) {
    const std::size_t n = reached[k], i = n % nodes_.nx();
    if (i > 0) reach(n, n - 1);
    if (i + 1 < nodes_.nx()) reach(n, n + 1);
    if (n >= nodes_.nx()) reach(n, n - nodes_.nx());
    if (n + nodes_.nx() < amount.size()) reach(n, n + nodes_.nx());
  }
  for (std::size_t n = 0; n < amount.size(); ++n) {
    if (home[n] == none) home[n] = n;
  }
  return home;
}

std::vector<Gathered> Sites::gathered(const std::vector<double>& amount) const {
  std::vector<Gathered> all;
  std::vector<double> densest;
  const std::vector<std::size_t> home = homes(amount);
  for (std::size_t n = 0; n < amount.size(); ++n) {
    if (amount[n] <= 0.0) continue;
    const Site site = this->site(home[n]);
    auto known = std::find_if(all.begin(), all.end(), [&](const Gathered& one) {
      return one.meeting == site.meeting && one.part == site.part;
    });
    if (known == all.end()) {
      known = all.insert(all.end(), {site.meeting, site.part, 0.0, 0.0, {}});
      densest.push_back(-1.0);
    }
    known->amount += amount[n];
    if (home[n] != n) continue;
    known->length += site.length;
    const double density = amount[n] / (site.length > 0.0 ? site.length : areas_[n]);
    double& most = densest[static_cast<std::size_t>(known - all.begin())];
    // Rounding must not choose the place.
    if (density > most * (1.0 + 1e-6)) {
      most = density;
      known->most = places_[n];
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const Gathered& one, const Gathered& other) {
    return one.amount > other.amount;
  });
  return all;
}

}  // namespace quoin::solver
