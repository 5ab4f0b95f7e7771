// SPDX-License-Identifier: Apache-2.0
#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

#include "cases/read.hpp"
#include "geometry/section.hpp"
#include "tools/answer/run.hpp"

namespace {

/// A wall of 200 painted rectangles, 20 by 10, all of them different stones in turn.
std::string patchwork() {
  std::string text = R"(quoin: 1
title: Patchwork of 200 rectangles
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: 0}
materials:
  stone 0: {conductivity: 0.9, density: 1800}
  stone 1: {conductivity: 1.7, density: 2200}
section:
  sheet:
    - {fill: yard, x: [0, 2000], y: [-100, 0]}
    - {fill: room, x: [0, 2000], y: [400, 500]}
)";
  for (int i = 0; i < 20; ++i) {
    for (int j = 0; j < 10; ++j) {
      text += fmt::format("    - {{fill: stone {}, x: [{}, {}], y: [{}, {}]}}\n", (i + j) % 2,
                          100 * i, 100 * i + 100, 40 * j, 40 * j + 40);
    }
  }
  return text;
}

void reads_200_rectangles(benchmark::State& state) {
  const std::string text = patchwork();
  for (auto _ : state) {
    const auto read = quoin::cases::case_of(text, "patchwork.yaml");
    benchmark::DoNotOptimize(quoin::geometry::section_of(read.variants.front().sheet));
  }
}
BENCHMARK(reads_200_rectangles)->Unit(benchmark::kMillisecond);

void solves(benchmark::State& state, const std::filesystem::path& file) {
  std::ifstream in(file);
  const std::string text{std::istreambuf_iterator<char>(in), {}};
  for (auto _ : state) {
    const auto read = quoin::cases::case_of(text, file.string());
    benchmark::DoNotOptimize(quoin::tools::results_of(read, file.string(), {}));
  }
}

}  // namespace

int main(int count, char** arguments) {
  const std::filesystem::path examples = QUOIN_SOURCE_DIR "/cases/examples";
  for (const auto& entry : std::filesystem::directory_iterator(examples)) {
    if (entry.path().extension() != ".yaml") continue;
    benchmark::RegisterBenchmark(("solves " + entry.path().stem().string()).c_str(), solves,
                                 entry.path())
        ->Unit(benchmark::kMillisecond);
  }
  benchmark::Initialize(&count, arguments);
  if (benchmark::ReportUnrecognizedArguments(count, arguments)) return 1;
  benchmark::RunSpecifiedBenchmarks();
}
