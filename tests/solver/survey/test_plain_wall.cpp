// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <vector>

#include "solver/survey/posterior.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

// Lime plaster 15 mm 0.8, brick 225 mm 0.9 x ratio, Rsi 0.15, Rse 0.06, 18.5 and 2 degC. Source of
// all values below: own quadrature, exact to all digits.
constexpr double inside = 18.5, difference = 16.5;

double resistance(double ratio) { return 0.15 + 0.015 / 0.8 + 0.225 / (0.9 * ratio) + 0.06; }

/// The ratio known by its logarithm, and one reading.
Inference one_unknown(double median, double sd, double read, double u,
                      const std::function<double(double ratio)>& model) {
  Inference inference;
  inference.unknowns = 1;
  inference.read = {read};
  inference.scale = {u};
  inference.degrees = std::numeric_limits<double>::infinity();
  inference.scale_spread = 0.0;
  inference.model = [=](std::span<const double> z, std::span<double> predicted, Table* slopes) {
    const auto at = [&](double unknown) { return model(median * std::exp(sd * unknown)); };
    predicted[0] = at(z[0]);
    constexpr double step = 1e-5;
    if (slopes != nullptr) (*slopes)(0, 0) = (at(z[0] + step) - at(z[0] - step)) / (2 * step);
  };
  return inference;
}

struct Told {
  double evidence = 0.0;
  double low = 0.0, median = 0.0, high = 0.0;
};

Told told(const Inference& inference, double median, double sd) {
  const StandardDraws standard(4096, 1, 5.0);
  const Sample sample = sample_of(inference, mode_of(inference, {0.0}), standard);
  std::vector<double> ratios;
  for (std::size_t k = 0; k < sample.draws.rows; ++k)
    ratios.push_back(median * std::exp(sd * sample.draws(k, 0)));
  const std::array<double, 3> at{0.05, 0.5, 0.95};
  const std::vector<double> ends = weighted_quantiles(ratios, sample.weights, at);
  return {std::exp(sample.log_evidence), ends[0], ends[1], ends[2]};
}

double surface(double ratio) { return inside - difference * 0.15 / resistance(ratio); }

double across_pad(double ratio) { return 0.10 * difference / (resistance(ratio) + 0.10); }

}  // namespace

TEST_CASE("one reading of a plain wall tells between two explanations as by quadrature") {
  const Told better = told(one_unknown(1.6, 0.25, 12.0, 0.3, surface), 1.6, 0.25);
  const Told drawn = told(one_unknown(1.0, 0.10, 12.0, 0.3, surface), 1.0, 0.10);
  const double sd = (1.9544525883640118 - 1.382221483866315) / 3.29;  // 2 % of it by sampling
  CHECK(better.evidence == WithinRel{0.5560537985382197, 0.01});
  CHECK(better.low == WithinAbs{1.382221483866315, 0.02 * sd});
  CHECK(better.median == WithinAbs{1.6395660351200516, 0.02 * sd});
  CHECK(better.high == WithinAbs{1.9544525883640118, 0.02 * sd});
  CHECK(drawn.evidence == WithinRel{0.004329708762068239, 0.01});
  CHECK(drawn.median == WithinAbs{1.2462857987675426, 0.02 * sd});
  CHECK(better.evidence / drawn.evidence == WithinRel{128.42752921621474, 0.02});
}

TEST_CASE("the difference across a pad tells the ratio as by quadrature") {
  const Told found = told(one_unknown(1.6, 0.25, 3.30, 0.1, across_pad), 1.6, 0.25);
  const double sd = (1.701797058011277 - 1.2904785072611464) / 3.29;
  CHECK(found.evidence == WithinRel{1.2617138087286732, 0.01});
  CHECK(found.low == WithinAbs{1.2904785072611464, 0.02 * sd});
  CHECK(found.median == WithinAbs{1.4778676339902193, 0.02 * sd});
  CHECK(found.high == WithinAbs{1.701797058011277, 0.02 * sd});
}

}  // namespace quoin::solver
