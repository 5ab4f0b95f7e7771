// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <numbers>
#include <vector>

#include "solver/findings/spots.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using geometry::Surface;
using testing::Problem;
using testing::WithinAbs;

using Profile = std::function<double(double)>;

/// A made-up developed surface of one region: nodes 0 to n at equal distances.
struct Line {
  std::vector<Surface> surfaces;
  std::vector<double> temperature;
  geometry::Per<RegionId, char> is_fabric;
};

Line line(double length, std::size_t n, const Profile& profile, bool closed = false) {
  Line made;
  Surface surface{SpaceId(0), closed, {}, {0.0}};
  const double step = length / static_cast<double>(n);
  for (std::size_t k = 0; k < n; ++k) {
    const std::size_t to = closed && k + 1 == n ? 0 : k + 1;
    surface.faces.push_back({SpaceId(0), RegionId(0), k, to, step, Facing::sideways});
    surface.along.push_back(step * static_cast<double>(k + 1));
    made.temperature.push_back(profile(step * static_cast<double>(k)));
  }
  if (!closed) made.temperature.push_back(profile(length));
  made.surfaces.push_back(surface);
  made.is_fabric = geometry::Per<RegionId, char>(2, 1);
  return made;
}

std::vector<LocalMinimum> minima(const Line& made, double prominence = 0.05) {
  return local_minima(made.surfaces, made.temperature, made.is_fabric, prominence);
}

}  // namespace

TEST_CASE("a dip is found where it is") {
  const auto found = minima(line(1, 100, [](double s) { return 10 + std::abs(s - 0.3); }));
  REQUIRE(found.size() == 1);
  CHECK(found.front().position == 30);
}

TEST_CASE("on a straight surface of one material the lowest point may lie between nodes") {
  const Profile parabola = [](double s) { return 10 + 8 * std::pow(s - 0.312, 2); };
  Line made = line(1, 10, parabola);
  const auto found = minima(made);
  REQUIRE(found.size() == 1);
  CHECK(found.front().position == 3);
  CHECK(found.front().dip == WithinAbs{8 * 0.012 * 0.012, 1e-12});
  // A corner lies where it does.
  for (std::size_t k = 3; k < 10; ++k) made.surfaces.front().faces[k].facing = Facing::up;
  CHECK(minima(made).front().dip == 0.0);
}

TEST_CASE("every dip deeper than the prominence is found and no shallower one") {
  // Two deep dips and one of 0.03 K.
  const Profile profile = [](double s) {
    return 12 - std::exp(-std::pow((s - 0.2) / 0.02, 2)) -
           2 * std::exp(-std::pow((s - 0.8) / 0.02, 2)) -
           0.03 * std::exp(-std::pow((s - 0.5) / 0.02, 2));
  };
  const auto found = minima(line(1, 200, profile));
  REQUIRE(found.size() == 2);
  CHECK(found[0].position == 40);
  CHECK(found[1].position == 160);
  CHECK(minima(line(1, 200, profile), 0.01).size() == 3);
}

TEST_CASE("an end of an open surface may be its coldest place") {
  const auto found = minima(line(1, 50, [](double s) { return 10 + s; }));
  REQUIRE(found.size() == 1);
  CHECK(found.front().position == 0);
  CHECK(minima(line(1, 50, [](double s) { return 10 - s; })).front().position == 50);
}

TEST_CASE("a level surface has one coldest place") {
  CHECK(minima(line(1, 50, [](double) { return 10.0; }), 0.0).size() == 1);
  CHECK(minima(line(
                   1, 50, [](double) { return 10.0; }, true),
               0.0)
            .size() == 1);
}

TEST_CASE("the seam of a hollow is no end: its coldest place is found once, wherever it begins") {
  for (const double shift : {0.0, 0.13, 0.5, 0.97}) {
    CAPTURE(shift);
    const auto found = minima(line(
        1, 100, [&](double s) { return 10 - std::cos(2 * std::numbers::pi * (s - shift)); }, true));
    REQUIRE(found.size() == 1);
    CHECK(found.front().position == static_cast<std::size_t>(std::lround(100 * shift)));
    // Lowest mean of 10 mm about a minimum of 10 - cos(2 pi s): 10 - sin(pi w) / (pi w).
    // 4e-4: a straight line between nodes 10 mm apart lies (2 pi / 100)^2 / 12 above the cosine.
    const double w = std::numbers::pi * thermometer_width;
    CHECK(found.front().thermometer == WithinAbs{10 - std::sin(w) / w, 4e-4});
  }
}

TEST_CASE("a thermometer reads the mean over the coldest ten millimetres that hold the spot") {
  // A V-shaped dip of slopes 100 and 300 K/m: the coldest window has equal ends, so reaches
  // w 300/400 to the shallow side; its mean is low + (100 * 300 / 400) w / 2.
  const Profile dip = [](double s) { return s < 0.5 ? 100 * (0.5 - s) : 300 * (s - 0.5); };
  const auto found = minima(line(1, 1000, dip));
  REQUIRE(found.size() == 1);
  // 0.002: of 64 windows the best lies up to 10 mm / 128 beside the coldest one.
  CHECK(found.front().thermometer == WithinAbs{75 * 0.010 / 2, 0.002});
}

TEST_CASE("at the end of a surface the thermometer stays on it") {
  const auto found = minima(line(1, 100, [](double s) { return 10 + 100 * s; }));
  CHECK(found.front().thermometer == WithinAbs{10.5, 1e-9});
}

TEST_CASE("on a surface shorter than ten millimetres the thermometer reads its mean") {
  const auto found = minima(line(0.004, 8, [](double s) { return 10 + 1000 * s; }));
  CHECK(found.front().thermometer == WithinAbs{12, 1e-9});
}

TEST_CASE("where a metal frame goes on colder, the coldest place of the wall is its edge") {
  Line made = line(1, 100, [](double s) { return 15 - 5 * s; });  // falls steadily into the frame
  made.is_fabric[RegionId(1)] = 0;
  for (std::size_t k = 60; k < 100; ++k) made.surfaces.front().faces[k].region = RegionId(1);
  const auto found = minima(made);
  REQUIRE(found.size() == 2);
  CHECK(found[0].position == 60);
  CHECK(found[0].face == 59);
  CHECK(found[0].thermometer == WithinAbs{15 - 5 * 0.595, 1e-9});  // of the wall alone
  CHECK(found[1].position == 100);
  CHECK(found[1].face == 99);
}

TEST_CASE("where wall and frame are both warmer than their edge it is told once, as the wall's") {
  for (const bool frame_first : {false, true}) {
    Line made = line(1, 100, [](double s) { return 10 + std::abs(s - 0.6); });
    made.is_fabric[RegionId(1)] = 0;
    for (std::size_t k = 0; k < 100; ++k) {
      if ((k < 60) == frame_first) made.surfaces.front().faces[k].region = RegionId(1);
    }
    const auto found = minima(made);
    REQUIRE(found.size() == 1);
    CHECK(found.front().position == 60);
    CHECK(found.front().face == (frame_first ? 60 : 59));
  }
}

TEST_CASE("the coldest spot of a wall with a metal frame is on the wall, at the frame") {
  Problem problem;
  const SpaceId room = problem.space(20, 0.13), yard = problem.space(0, 0.04);
  const RegionId brick = problem.material(0.77), metal = problem.material(160, false);
  problem.paint(room, -1, 0.1, -0.2, 0.1);
  problem.paint(yard, -1, 0.1, -0.4, -0.2);
  problem.paint(brick, -1, 0, -0.3, 0);
  problem.paint(metal, 0, 0.1, -0.23, -0.16);
  const Solution solution = problem.solution({room}, yard, 0.002, {});
  REQUIRE(solution.airs.size() == 1);
  CHECK(solution.airs.front().coldest.region == brick);
  CHECK(solution.airs.front().coldest.place.x == WithinAbs{0, 1e-12});
  CHECK(solution.airs.front().coldest.place.y == WithinAbs{-0.16, 1e-12});
}

}  // namespace quoin::solver
