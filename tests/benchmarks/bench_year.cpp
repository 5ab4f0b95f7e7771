// SPDX-License-Identifier: Apache-2.0
#include <benchmark/benchmark.h>

#include <string>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"

namespace {

/// An invented brick corner judged by three criteria; over a year where `climate` says so.
quoin::cases::Variant corner(const std::string& climate) {
  return quoin::cases::case_of(
             "quoin: 1\n"
             "spaces:\n"
             "  kitchen: {is: inside, temperature: 18.5, humidity class: 3}\n"
             "  outdoors: {is: outside, temperature: 2, humidity: 90}\n"
             "section: {corner: {layers: [[lime plaster, 15], [common brick, 225]]}}\n"
             "criteria:\n"
             "  mould: {surface humidity: 80}\n"
             "  wets: {surface humidity: 100}\n"
             "  growth: {critical humidity: by temperature}\n" +
                 climate,
             "corner.yaml")
      .variants.front();
}

void solves_one_month(benchmark::State& state) {
  const auto variant = corner("");
  for (auto _ : state) benchmark::DoNotOptimize(quoin::tools::solved(variant, {}));
}
BENCHMARK(solves_one_month)->Unit(benchmark::kMillisecond);

/// Must cost less than 5 % more than one month.
void solves_a_year(benchmark::State& state) {
  const auto variant = corner(
      "climate:\n"
      "  outside temperature: [3.9, 4, 5.8, 8, 11.2, 14.2, 16.3, 15.9, 13.6, 10.3, 6.6, 4.3]\n"
      "  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]\n");
  for (auto _ : state) benchmark::DoNotOptimize(quoin::tools::solved(variant, {}));
}
BENCHMARK(solves_a_year)->Unit(benchmark::kMillisecond);

}  // namespace
