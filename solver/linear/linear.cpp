// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/linear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <stdexcept>
#include <utility>
#include <vector>

#include "solver/linear/direct.hpp"
#include "solver/linear/errors.hpp"
#include "solver/linear/multigrid_solver.hpp"

namespace quoin::solver {

namespace {

/// Whether all are sure to be neither negative nor infinite nor no number; false says nothing.
/// Looks at bits alone, which vectorises: the sign is the highest, and adding one to the exponent
/// carries into it where that was the largest.
bool are_plain(const std::vector<double>& values) {
  constexpr std::uint64_t exponent_step = std::uint64_t{1} << 52;
  std::uint64_t found = 0;
  for (const double value : values) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &value, sizeof bits);
    found |= bits | (bits + exponent_step);
  }
  return (found >> 63) == 0;
}

void check_values(const std::vector<double>& values) {
  if (are_plain(values)) return;
  for (const double value : values) {
    if (value >= 0.0 && value <= std::numeric_limits<double>::max()) continue;
    throw std::invalid_argument("a conductance is negative or not finite");
  }
}

void check_shape(const FivePointOperator& network) {
  const std::size_t n = network.size();
  if (n == 0 || network.east.size() != n || network.north.size() != n ||
      network.ground.size() != n) {
    throw std::invalid_argument("a network needs nx * ny values of east, north and ground");
  }
  bool leaks = false;
  for (std::size_t node = network.nx - 1; node < n; node += network.nx) {
    leaks = leaks || network.east[node] != 0.0;
  }
  for (std::size_t node = n - network.nx; node < n; ++node) {
    leaks = leaks || network.north[node] != 0.0;
  }
  if (leaks) throw std::invalid_argument("a conductance leads out of the grid");
}

/// The connected parts of a network, found row by row: a run is a stretch of a row.
class Parts {
 public:
  explicit Parts(const FivePointOperator& network) {
    const std::size_t nx = network.nx;
    std::vector<std::uint32_t> below(nx);
    std::vector<std::uint32_t> here(nx);
    for (std::size_t start = 0; start < network.size(); start += nx) {
      const double* east = network.east.data() + start;
      const double* north = network.north.data() + start;
      const double* ground = network.ground.data() + start;
      const auto leads_down = [&](std::size_t i) { return start > 0 && *(north + i - nx) > 0.0; };
      for (std::size_t i = 0; i < nx;) {
        const std::size_t first = i;
        while (i + 1 < nx && east[i] > 0.0) ++i;
        const std::size_t end = ++i;
        const bool is_alone = end == first + 1;
        if (is_alone && !leads_down(first) && !(north[first] > 0.0) && !(ground[first] > 0.0)) {
          continue;  // a void
        }
        const auto run = static_cast<std::uint32_t>(runs_.size());
        const double most = *std::max_element(ground + first, ground + end);
        runs_.push_back({start + first, run, most > 0.0});
        std::fill(here.begin() + static_cast<std::ptrdiff_t>(first),
                  here.begin() + static_cast<std::ptrdiff_t>(end), run);
        join_down(below, first, end, run, leads_down);
      }
      std::swap(below, here);
    }
  }

  /// A node of a part without any way to ground; the number of nodes where there is none.
  [[nodiscard]] std::size_t ungrounded_node(std::size_t none) {
    for (std::uint32_t run = 0; run < runs_.size(); ++run) {
      if (runs_[run].grounded) runs_[root(run)].grounded = true;
    }
    for (std::uint32_t run = 0; run < runs_.size(); ++run) {
      if (!runs_[root(run)].grounded) return runs_[run].first_node;
    }
    return none;
  }

 private:
  struct Run {
    std::size_t first_node;
    std::uint32_t parent;
    bool grounded;
  };

  /// Joins a run with those of the row below that it hangs together with.
  template <typename LeadsDown>
  void join_down(const std::vector<std::uint32_t>& below, std::size_t first, std::size_t end,
                 std::uint32_t run, const LeadsDown& leads_down) {
    constexpr std::uint32_t none = std::numeric_limits<std::uint32_t>::max();
    std::uint32_t joined = none;
    for (std::size_t i = first; i < end; ++i) {
      if (below[i] == joined || !leads_down(i)) continue;
      joined = below[i];
      join(joined, run);
    }
  }

  std::uint32_t root(std::uint32_t run) {
    while (runs_[run].parent != run) run = runs_[run].parent = runs_[runs_[run].parent].parent;
    return run;
  }
  void join(std::uint32_t a, std::uint32_t b) {
    a = root(a);
    b = root(b);
    runs_[std::max(a, b)].parent = std::min(a, b);
  }

  std::vector<Run> runs_;
};

void check_grounded(const FivePointOperator& network) {
  const std::size_t node = Parts(network).ungrounded_node(network.size());
  if (node == network.size()) return;
  throw SolveError(fmt::format("the part of the network at node ({}, {}) has no way to ground",
                               node % network.nx, node / network.nx));
}

}  // namespace

std::unique_ptr<LinearSolver> linear_solver(const FivePointOperator& network,
                                            const LinearOptions& options) {
  check_shape(network);
  check_values(network.east);
  check_values(network.north);
  check_values(network.ground);
  check_grounded(network);
  switch (options.method) {
    case LinearMethod::multigrid:
      return multigrid_solver(network, options);
    case LinearMethod::direct:
      return direct_solver(network, options);
  }
  throw std::invalid_argument("no such linear method");
}

}  // namespace quoin::solver
