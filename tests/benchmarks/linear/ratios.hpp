// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <benchmark/benchmark.h>

#include <iosfwd>
#include <map>
#include <string>
#include <vector>

namespace quoin::benchmarks {

/// Shows runs as they come and keeps them, to set solvers against each other. A run is named
/// SOLVER/SAMPLE/NODES.
class RatioReporter : public benchmark::ConsoleReporter {
 public:
  void ReportRuns(const std::vector<Run>& runs) override;

  /// One row for each sample: the multigrid, and how many times longer each other solver takes.
  void print(std::ostream& out) const;
  /// The same, for programs.
  void write_json(std::ostream& out) const;

 private:
  struct Entry {
    double seconds = 0.0;
    std::map<std::string, double> counters;
  };
  std::vector<std::string> samples_;                          // in order of appearance
  std::map<std::string, std::map<std::string, Entry>> runs_;  // sample, solver
};

}  // namespace quoin::benchmarks
