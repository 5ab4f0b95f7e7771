// SPDX-License-Identifier: Apache-2.0
// Times the linear solver beside general ones and prints one table of ratios.
//
// usage: quoin_benchmarks_linear [--quick] [--ratios=FILE.json] [--threads=N]
//                                [--registers=BYTES] [Google Benchmark's]
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <functional>
#include <iostream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "solver/linear/linear.hpp"
#include "tests/benchmarks/linear/packed.hpp"
#include "tests/benchmarks/linear/ratios.hpp"

namespace {

using namespace quoin::benchmarks;
using quoin::solver::LinearOptions;

using Shape = Sample (*)(std::size_t, const Grading&);

struct Problem {
  std::string_view name;
  Shape shape;
  double aspect;  // of spacings within one stretch; cells become some ten times as long
};

constexpr Problem graded_corner{"corner", corner, 100.0};
constexpr Problem graded_reveal{"reveal", reveal, 10.0};
constexpr Problem problems[] = {
    graded_corner,
    {"corner extreme", corner, 1000.0},
    {"corner uniform", corner, 1.0},
    graded_reveal,
    {"reveal uniform", reveal, 1.0},
    {"case 2", case_2, 10.0},
    {"case 2 extreme", case_2, 100.0},
};

Outcome multigrid(const Sample& sample, const Packed& system, const LinearOptions& options) {
  std::vector<double> temperatures(sample.rhs.size(), 0.0);
  const Memory before;
  Outcome outcome;
  const double start = processor_time();
  const auto solver = quoin::solver::linear_solver(sample.network, options);
  const double middle = processor_time();
  outcome.iterations = solver->solve(sample.rhs, temperatures).front().iterations;
  outcome.setup = middle - start;
  outcome.solve = processor_time() - middle;
  outcome.bytes = bytes_since(before);
  for (const std::size_t node : system.node) outcome.solution.push_back(temperatures[node]);
  return outcome;
}

/// The unit of account: the operator read once, a residual written.
Outcome one_sweep(const Sample& sample) {
  std::vector<double> temperatures(sample.rhs.size(), 1.0);
  std::vector<double> residual(sample.rhs.size(), 0.0);
  Outcome outcome;
  const double start = processor_time();
  quoin::solver::write_residual(sample.network, sample.rhs, temperatures, residual);
  outcome.solve = processor_time() - start;
  return outcome;
}

/// Made anew only when another one is asked for.
struct Stock {
  std::string name;
  Sample sample;
  Packed system{Sample{}};
};

using Solve = std::function<Outcome(const Sample&, const Packed&)>;

void add(const std::string& solver, const Problem& problem, std::size_t nodes, const Solve& solve) {
  static Stock stock;
  const std::string sample = fmt::format("{}/{}", problem.name, nodes);
  const auto run = [=](benchmark::State& state) {
    if (stock.name != sample) {
      stock.sample = problem.shape(nodes, {problem.aspect});
      stock.system = Packed(stock.sample);
      stock.name = sample;
    }
    Outcome outcome;
    double setup = 0.0;
    double solving = 0.0;
    for (auto step : state) {
      static_cast<void>(step);
      Outcome latest = solve(stock.sample, stock.system);
      state.SetIterationTime(latest.setup + latest.solve);
      setup += latest.setup;
      solving += latest.solve;
      outcome = std::move(latest);
    }
    const auto runs = static_cast<double>(state.iterations());
    state.counters["setup_s"] = setup / runs;
    state.counters["solve_s"] = solving / runs;
    state.counters["iterations"] = outcome.iterations;
    state.counters["bytes"] = outcome.bytes;
    state.counters["nodes"] = static_cast<double>(stock.sample.network.size());
    if (!outcome.solution.empty()) {
      state.counters["residual"] = relative_residual(stock.system, outcome.solution);
    }
  };
  auto* entry = benchmark::RegisterBenchmark((solver + "/" + sample).c_str(), run);
  entry->UseManualTime()->Unit(benchmark::kMillisecond);
  // Other work on the machine only ever slows a run: the best of several counts.
  if (nodes >= 1'000'000) {
    const bool iterative = solver != "Eigen LDLT" && solver != "CHOLMOD";
    entry->Iterations(1)->Repetitions(solver == "multigrid" ? 7 : iterative ? 3 : 1);
  }
}

void add_all(const Problem& problem, std::size_t nodes, const LinearOptions& options, bool quick) {
  // Beyond, factors take gigabytes and minutes: on two problems only.
  const bool is_main = problem.name == graded_corner.name || problem.name == graded_reveal.name;
  const bool general = nodes <= 1'000'000 || is_main;
  add("one sweep", problem, nodes,
      [](const Sample& sample, const Packed&) { return one_sweep(sample); });
  add("multigrid", problem, nodes, [options](const Sample& sample, const Packed& system) {
    return multigrid(sample, system, options);
  });
  if (general) {
    add("Eigen LDLT", problem, nodes,
        [](const Sample&, const Packed& system) { return eigen_ldlt(system); });
  }
  if (nodes <= (quick ? 10'000U : 1'000'000U)) {
    add("Eigen IC-CG", problem, nodes,
        [](const Sample&, const Packed& system) { return eigen_incomplete_cholesky(system); });
  }
#ifdef QUOIN_HAS_CHOLMOD
  if (general) {
    add("CHOLMOD", problem, nodes,
        [](const Sample&, const Packed& system) { return cholmod(system); });
  }
#endif
#ifdef QUOIN_HAS_HYPRE
  if (general) {
    add("BoomerAMG-CG", problem, nodes,
        [](const Sample&, const Packed& system) { return boomer_amg(system); });
  }
#endif
}

}  // namespace

int main(int argc, char** argv) {
  bool quick = false;
  LinearOptions options;
  options.tolerance = tolerance;
  std::string ratios;
  std::vector<char*> rest;
  for (int k = 0; k < argc; ++k) {
    const std::string_view argument = argv[k];
    if (argument == "--quick") {
      quick = true;
    } else if (argument.starts_with("--ratios=")) {
      ratios = argument.substr(9);
    } else if (argument.starts_with("--threads=")) {
      options.threads = std::max(1, std::atoi(argv[k] + 10));
    } else if (argument.starts_with("--registers=")) {
      options.register_bytes = static_cast<std::size_t>(std::max(16, std::atoi(argv[k] + 12)));
    } else {
      rest.push_back(argv[k]);
    }
  }
  for (const Problem& problem : problems) {
    const bool plain = problem.name.find(' ') == std::string_view::npos || problem.name == "case 2";
    if (quick && !plain) continue;
    for (const std::size_t nodes : {1'000U, 4'000U, 10'000U, 100'000U, 1'000'000U}) {
      add_all(problem, nodes, options, quick);
    }
    if (quick) continue;
    for (const std::size_t nodes : {4'000'000U, 10'000'000U})
      add_all(problem, nodes, options, quick);
  }
  int count = static_cast<int>(rest.size());
  benchmark::Initialize(&count, rest.data());
  if (benchmark::ReportUnrecognizedArguments(count, rest.data())) return 2;
  RatioReporter reporter;
  benchmark::RunSpecifiedBenchmarks(&reporter);
  reporter.print(std::cout);
  if (!ratios.empty()) {
    std::ofstream file(ratios);
    reporter.write_json(file);
    if (!file.flush()) {
      std::cerr << "cannot write " << ratios << "\n";
      return 4;
    }
  }
  return 0;
}
