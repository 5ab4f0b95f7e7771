// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>
#include <string>
#include <vector>

#include "solver/survey/wall_response.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// A wall with what its inside face is known to do. Rsi 0.17, Rse 0.05 m2K/W.
/// Source: own derivation by transfer matrices (ISO 13786), exact; the weights by a fine series.
struct Known {
  std::string name;
  StoringWall wall;
  double lag;                   // h
  double share_day;             // of a swing of 24 h, of the steady response
  double lag_day;               // h
  double share_four;            // of 96 h
  std::vector<double> weights;  // of the steady response
};

const StoringLayer plaster{0.015, 0.8, 1'360'000.0};

StoringWall wall_of(StoringLayer masonry) { return {{plaster, masonry}, 0.17, 0.05}; }

const std::vector<Known> known{
    {"225 brick",
     wall_of({0.225, 0.8, 1'496'000.0}),
     10.769859274839746,
     0.4118315880585872,
     7.320918129681543,
     0.8903447074520342,
     {1.885598040276578e-05, 0.0043988545223594385, 0.030870082255546195, 0.06357995484467703,
      0.08118467441438706, 0.08551218985110154}},
    {"225 brick wet",
     wall_of({0.225, 1.3, 1'914'000.0}),
     10.766396255021345,
     0.39981082692292375,
     6.964959194968514,
     0.8805777560556163,
     {7.590183230299075e-05, 0.008403035886694221, 0.0422421063055138, 0.07202742106463321,
      0.08348336051723522, 0.08361108528899792}},
    {"327 brick",
     wall_of({0.327, 0.8, 1'496'000.0}),
     18.7992787966538,
     0.22005935410242447,
     10.526764445756069,
     0.7525627413803542,
     {4.7221137155221996e-09, 4.7469643210875596e-05, 0.0015506204305927788, 0.008383790179618569,
      0.019790849718401775, 0.03126228770760296}},
    {"500 stone",
     wall_of({0.5, 1.5, 1'785'000.0}),
     30.056435707830918,
     0.10628447629902692,
     13.260149564715068,
     0.5629605104034148,
     {1.831591263434677e-12, 6.120002542904243e-07, 7.118311198440458e-05, 0.0008229512794843947,
      0.00325252131410756, 0.007359214825122306}},
    {"600 cob",
     wall_of({0.6, 0.75, 1'700'000.0}),
     58.55871648950396,
     0.02261010088824572,
     21.067407976528585,
     0.31075244268627544,
     {2.462353043399066e-16, 5.7660156847640136e-15, 1.881649703095322e-10, 5.106046307935685e-08,
      1.6371462281221667e-06, 1.6435013503992813e-05}},
};

constexpr std::size_t hours = 1500;

/// Of a swing of some period, what reaches the face.
std::complex<double> response(const std::vector<double>& weights, double period) {
  std::complex<double> sum = 0.0;
  for (std::size_t k = 0; k < weights.size(); ++k)
    sum += weights[k] * std::polar(1.0, -2 * std::numbers::pi * static_cast<double>(k) / period);
  return sum;
}

/// What straight lines from hour to hour leave of a swing.
double straight(double period) {
  const double x = std::numbers::pi / period;
  return std::pow(std::sin(x) / x, 2);
}

}  // namespace

TEST_CASE("a wall lags behind the air outside by the mean lag of its transfer matrix") {
  for (const Known& one : known) {
    CAPTURE(one.name);
    const WallResponse outside(one.wall, WallFace::inside, WallFace::outside);
    // 0.2 %: slices of 6 mm.
    CHECK(outside.mean_lag() / 3600 == WithinRel{one.lag, 0.002});
    // Twin: a wall twice as heavy lags twice as long.
    StoringWall heavy = one.wall;
    for (StoringLayer& layer : heavy.layers) layer.heat_capacity *= 2;
    const WallResponse slower(heavy, WallFace::inside, WallFace::outside);
    CHECK(slower.mean_lag() == WithinRel{2 * outside.mean_lag(), 1e-9});
  }
}

TEST_CASE("hourly weights let a swing through as a wall does") {
  for (const Known& one : known) {
    CAPTURE(one.name);
    const WallResponse outside(one.wall, WallFace::inside, WallFace::outside);
    std::vector<double> weights = outside.hourly_weights(hours);
    for (double& weight : weights) weight /= outside.steady();
    // 0.5 % and a little of the steady response, as thick walls let next to nothing through.
    const auto day = response(weights, 24.0), four = response(weights, 96.0);
    CHECK(std::abs(day) == WithinAbs{one.share_day * straight(24.0), 0.005 * one.share_day + 2e-4});
    CHECK(std::abs(four) == WithinRel{one.share_four * straight(96.0), 0.005});
    const double lag = std::fmod(24.0 - std::arg(day) * 24.0 / (2 * std::numbers::pi), 24.0);
    CHECK(lag == WithinRel{std::fmod(one.lag_day, 24.0), 0.02});
    // 1 % and 1e-4: the first hours are the hardest for slices.
    for (std::size_t k = 0; k < one.weights.size(); ++k)
      CHECK(weights[k] == WithinAbs{one.weights[k], 0.01 * one.weights[k] + 1e-4});
  }
}

TEST_CASE("weights of both airs add to the whole") {
  for (const Known& one : known) {
    CAPTURE(one.name);
    double sum = 0.0;
    for (const WallFace air : {WallFace::inside, WallFace::outside}) {
      const WallResponse each(one.wall, WallFace::inside, air);
      const std::vector<double> weights = each.hourly_weights(hours);
      sum += std::accumulate(weights.begin(), weights.end(), 0.0);
    }
    CHECK(sum == WithinAbs{1.0, 1e-6});  // what lies further back than two months
  }
}

TEST_CASE("the steady share of a face is that of its resistances") {
  const StoringWall wall = wall_of({0.225, 0.8, 1'496'000.0});
  const double resistance = 0.17 + 0.015 / 0.8 + 0.225 / 0.8 + 0.05;
  const WallResponse room(wall, WallFace::inside, WallFace::inside);
  CHECK(room.steady() == WithinRel{1.0 - 0.17 / resistance, 1e-9});
  const WallResponse out(wall, WallFace::outside, WallFace::inside);
  CHECK(out.steady() == WithinRel{0.05 / resistance, 1e-9});
}

}  // namespace quoin::solver
