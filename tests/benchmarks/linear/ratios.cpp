// SPDX-License-Identifier: Apache-2.0
#include "tests/benchmarks/linear/ratios.hpp"

#include <fmt/format.h>
#include <fmt/ostream.h>

#include <algorithm>
#include <ostream>

namespace quoin::benchmarks {

namespace {

const char* const ours = "multigrid";
const char* const sweep = "one sweep";
const char* const others[] = {"Eigen LDLT", "CHOLMOD", "Eigen IC-CG", "BoomerAMG-CG"};

}  // namespace

void RatioReporter::ReportRuns(const std::vector<Run>& runs) {
  ConsoleReporter::ReportRuns(runs);
  for (const Run& run : runs) {
    if (run.error_occurred || run.run_type != Run::RT_Iteration) continue;
    const std::string& name = run.run_name.function_name;
    const std::size_t slash = name.find('/');
    const std::string sample = name.substr(slash + 1);
    if (runs_.count(sample) == 0) samples_.push_back(sample);
    Entry& entry = runs_[sample][name.substr(0, slash)];
    const double seconds = run.counters.at("setup_s") + run.counters.at("solve_s");
    if (entry.seconds > 0.0 && entry.seconds <= seconds) continue;  // the best of several
    entry.seconds = seconds;
    for (const auto& [key, counter] : run.counters) entry.counters[key] = counter.value;
  }
}

void RatioReporter::print(std::ostream& out) const {
  fmt::print(out, "\n{:<24}{:>9}{:>6}{:>9}{:>8}{:>8}", "seconds of the processor", ours, "iter.",
             "ns/node", "B/node", "sweeps");
  for (const char* other : others) fmt::print(out, "{:>14}", other);
  fmt::print(out, "\n");
  for (const std::string& sample : samples_) {
    const auto& solvers = runs_.at(sample);
    const auto found = solvers.find(ours);
    if (found == solvers.end()) continue;
    const Entry& mine = found->second;
    const double nodes = mine.counters.at("nodes");
    fmt::print(out, "{:<24}{:>9.4f}{:>6}{:>9.0f}{:>8.0f}", sample, mine.seconds,
               mine.counters.at("iterations"), 1e9 * mine.seconds / nodes,
               mine.counters.at("bytes") / nodes);
    const auto swept = solvers.find(sweep);
    fmt::print(
        out, "{:>8}",
        swept == solvers.end() ? "" : fmt::format("{:.0f}", mine.seconds / swept->second.seconds));
    for (const char* other : others) {
      const auto run = solvers.find(other);
      fmt::print(
          out, "{:>14}",
          run == solvers.end() ? "" : fmt::format("{:.1f}x", run->second.seconds / mine.seconds));
    }
    fmt::print(out, "\n");
  }
}

void RatioReporter::write_json(std::ostream& out) const {
  const char* next_sample = "";
  fmt::print(out, "[");
  for (const std::string& sample : samples_) {
    fmt::print(out, "{}\n  {{\"sample\": \"{}\", \"solvers\": {{", next_sample, sample);
    const auto& solvers = runs_.at(sample);
    const auto mine = solvers.find(ours);
    const char* next_solver = "";
    for (const auto& [name, entry] : solvers) {
      fmt::print(out, "{}\n    \"{}\": {{\"seconds\": {:.6g}", next_solver, name, entry.seconds);
      if (mine != solvers.end()) {
        fmt::print(out, ", \"times_multigrid\": {:.4g}", entry.seconds / mine->second.seconds);
      }
      for (const auto& [key, value] : entry.counters) {
        fmt::print(out, ", \"{}\": {:.6g}", key, value);
      }
      fmt::print(out, "}}");
      next_solver = ",";
    }
    fmt::print(out, "}}}}");
    next_sample = ",";
  }
  fmt::print(out, "\n]\n");
}

}  // namespace quoin::benchmarks
