// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

constexpr double conductivity = 0.8;
constexpr double resistance = 0.13;
constexpr double width = 1.0, height = 0.6;

/// A harmonic function with its derivatives: an exact solution once the surroundings of each face
/// have u + conductivity x resistance x du/dn.
struct Harmonic {
  const char* name;
  std::function<double(double, double)> u, ux, uy;
};

const std::array harmonics = {
    Harmonic{"xy", [](double x, double y) { return x * y; }, [](double, double y) { return y; },
             [](double x, double) { return x; }},
    Harmonic{"x2 - y2", [](double x, double y) { return x * x - y * y; },
             [](double x, double) { return 2 * x; }, [](double, double y) { return -2 * y; }},
    Harmonic{"x3 - 3xy2", [](double x, double y) { return x * x * x - 3 * x * y * y; },
             [](double x, double y) { return 3 * x * x - 3 * y * y; },
             [](double x, double y) { return -6 * x * y; }},
};

/// Largest error at the nodes of a rectangle cut into cells of `width / n`. Every second boundary
/// node lies in the middle of surroundings of its own, those between on the border of two.
double largest_error(const Harmonic& exact, int n, double film = resistance) {
  Problem problem;
  const double h = width / n;
  const double reach = conductivity * resistance;
  problem.paint(problem.material(conductivity), 0, width, 0, height);
  const auto each = [h](double length, const auto& paint) {
    for (int k = 0; 2 * k * h <= length + h / 2; ++k) {
      const double at = 2 * k * h;
      paint(at, std::max(0.0, at - h), std::min(length, at + h));
    }
  };
  each(width, [&](double x, double from, double to) {
    problem.paint(problem.space(exact.u(x, 0) - reach * exact.uy(x, 0), film), from, to, -h, 0);
    problem.paint(problem.space(exact.u(x, height) + reach * exact.uy(x, height), film), from, to,
                  height, height + h);
  });
  each(height, [&](double y, double from, double to) {
    problem.paint(problem.space(exact.u(0, y) - reach * exact.ux(0, y), film), -h, 0, from, to);
    problem.paint(problem.space(exact.u(width, y) + reach * exact.ux(width, y), film), width,
                  width + h, from, to);
  });
  const geometry::Mesh mesh = even_mesh(problem.section(), h);
  const solver::Field field = solver::field_of(mesh, problem.physics(), solver::LinearOptions{});
  const std::vector<double> nodes = solver::temperatures(field, problem.temperatures());
  double largest = 0.0;
  for (std::size_t node = 0; node < nodes.size(); ++node) {
    if (field.solid[node] == 0) continue;
    const geometry::Point place = mesh.place(node);
    largest = std::max(largest, std::abs(nodes[node] - exact.u(place.x, place.y)));
  }
  return largest;
}

}  // namespace

TEST_CASE("a twisted field, xy, is met to rounding on any grid") {
  for (const int n : {10, 20}) CHECK(largest_error(harmonics[0], n) < 1e-10);
}

TEST_CASE("harmonic polynomials are met to second order through surface resistances") {
  for (const Harmonic& exact : {harmonics[1], harmonics[2]}) {
    CAPTURE(std::string(exact.name));
    const double coarse = largest_error(exact, 10), medium = largest_error(exact, 20),
                 fine = largest_error(exact, 40);
    CHECK(medium < coarse / 3.5);  // four in the limit
    CHECK(fine < medium / 3.5);
    CHECK(fine < 1e-3);
  }
}

TEST_CASE("with another surface resistance the polynomials are not met on any grid") {
  for (const Harmonic& exact : harmonics) CHECK(largest_error(exact, 40, 0.12) > 3e-3);
}

}  // namespace quoin::testing
