// SPDX-License-Identifier: Apache-2.0
#include "tests/benchmarks/linear/packed.hpp"

#include <malloc.h>
#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <fstream>

namespace quoin::benchmarks {

Packed::Packed(const Sample& sample) {
  const solver::FivePointOperator& network = sample.network;
  const std::size_t nx = network.nx;
  const std::size_t n = network.size();
  const auto east = [&](std::size_t k) { return network.east[k]; };
  const auto west = [&](std::size_t k) { return k % nx > 0 ? network.east[k - 1] : 0.0; };
  const auto north = [&](std::size_t k) { return network.north[k]; };
  const auto south = [&](std::size_t k) { return k >= nx ? network.north[k - nx] : 0.0; };
  std::vector<int> number(n, -1);
  std::vector<double> diagonal(n, 0.0);
  for (std::size_t k = 0; k < n; ++k) {
    diagonal[k] = network.ground[k] + east(k) + west(k) + north(k) + south(k);
    if (diagonal[k] == 0.0) continue;
    number[k] = static_cast<int>(node.size());
    node.push_back(k);
  }
  row_start.push_back(0);
  for (const std::size_t k : node) {
    const auto add = [&](std::size_t other, double entry) {
      if (entry == 0.0) return;
      column.push_back(number[other]);
      value.push_back(entry);
    };
    add(k - nx, -south(k));
    add(k - 1, -west(k));
    add(k, diagonal[k]);
    add(k + 1, -east(k));
    add(k + nx, -north(k));
    row_start.push_back(static_cast<int>(column.size()));
    rhs.push_back(sample.rhs[k]);
  }
}

double processor_time() {
  timespec time{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) + 1e-9 * static_cast<double>(time.tv_nsec);
}

Memory::Memory() {
  const auto info = mallinfo2();
  handed_out = static_cast<double>(info.uordblks + info.hblkhd);
  std::size_t mapped_pages = 0;
  std::size_t resident_pages = 0;
  std::ifstream("/proc/self/statm") >> mapped_pages >> resident_pages;
  resident = static_cast<double>(resident_pages) * static_cast<double>(sysconf(_SC_PAGESIZE));
}

double bytes_since(const Memory& before) {
  const Memory now;
  return std::max(now.handed_out - before.handed_out, now.resident - before.resident);
}

double relative_residual(const Packed& system, const std::vector<double>& solution) {
  double left = 0.0;
  double given = 0.0;
  for (std::size_t row = 0; row < system.rhs.size(); ++row) {
    double residual = system.rhs[row];
    for (int k = system.row_start[row]; k < system.row_start[row + 1]; ++k) {
      const auto entry = static_cast<std::size_t>(k);
      residual -= system.value[entry] * solution[static_cast<std::size_t>(system.column[entry])];
    }
    left += residual * residual;
    given += system.rhs[row] * system.rhs[row];
  }
  return std::sqrt(left / given);
}

}  // namespace quoin::benchmarks
