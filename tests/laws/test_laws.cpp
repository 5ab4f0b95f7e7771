// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "geometry/surface.hpp"
#include "solver/accuracy/bracket.hpp"
#include "solver/findings/stream.hpp"
#include "solver/scheme/field.hpp"
#include "tests/laws/case_files.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/ask/physics.hpp"

// Laws of physics, on every case file for both purposes, on one grid: they hold on each.

namespace quoin::testing {
namespace {

using geometry::Point;
using geometry::RegionId;
using geometry::SpaceId;

constexpr double density = 6.0;  // cells on a strip of one metre, about
constexpr double solve = 1e-8;   // relative, of solves to 1e-12 with conductances from 1e-2 to 1e5

/// Everything a law needs of a variant.
struct Setup {
  geometry::Sheet sheet;
  solver::Physics physics;
  solver::SpaceTemperatures temperatures;

  [[nodiscard]] solver::Field field() const {
    const geometry::Section section = geometry::section_of(sheet);
    return solver::field_of(geometry::mesh_of(section, geometry::subdivision_of(section, density)),
                            physics, solver::LinearOptions{});
  }
};

/// Runs a law on every case file for both purposes.
void on_every_case(const std::function<void(const Setup&)>& law) {
  REQUIRE(case_variants().size() >= 5);
  for (const NamedVariant& one : case_variants()) {
    for (const auto purpose :
         {materials::Purpose::surface_temperature, materials::Purpose::heat_flow}) {
      CAPTURE(one.name);
      law({one.variant.sheet, tools::physics_of(one.variant, purpose),
           tools::temperatures_of(one.variant)});
    }
  }
}

double span_of(const Setup& setup) {
  const auto [low, high] =
      std::minmax_element(setup.temperatures.begin(), setup.temperatures.end());
  return *high - *low;
}

/// Largest flow between two airs of a field; the scale of its flows.
double scale_of(const solver::Field& field) {
  return *std::max_element(field.coupling.begin(), field.coupling.end());
}

std::vector<double> solid_temperatures(const Setup& setup, const solver::Field& field) {
  std::vector<double> solid;
  const std::vector<double> all = solver::temperatures(field, setup.temperatures);
  for (std::size_t n = 0; n < all.size(); ++n) {
    if (field.solid[n] != 0) solid.push_back(all[n]);
  }
  return solid;
}

/// The largest flow of an air to all others that are at another temperature, per kelvin.
std::vector<double> outflows(const solver::Field& field) {
  std::vector<double> flows;
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    flows.push_back(field.coupling[a * field.airs.size() + a]);
  }
  return flows;
}

void map_sheet(geometry::Sheet& sheet, const std::function<Point(Point)>& map) {
  for (geometry::Patch& patch : sheet) {
    for (Point& corner : patch.outline) corner = map(corner);
  }
}

/// Whether the temperatures of two setups agree at places that `map` takes from one to the other.
void check_same_field(const Setup& one, const Setup& other,
                      const std::function<Point(Point)>& map) {
  const solver::Field field = one.field(), image = other.field();
  const std::vector<double> here = solver::temperatures(field, one.temperatures);
  const std::vector<double> there = solver::temperatures(image, other.temperatures);
  REQUIRE(field.solid.size() == image.solid.size());
  double largest = 0.0;
  for (std::size_t n = 0; n < here.size(); ++n) {
    if (field.solid[n] == 0) continue;
    largest = std::max(largest, std::abs(here[n] - solver::temperature_at(
                                                       image, there, map(field.mesh.place(n)))));
  }
  // Grids of images differ by the snapping of their graded lines to doubles alone.
  CHECK(largest <= 1e-7 * span_of(one));
}

/// Whether the surfaces of every space have one resistance whatever way they look.
bool is_blind_to_facing(const Setup& setup) {
  for (const auto& by_region : setup.physics.resistance) {
    for (const auto& by_facing : by_region) {
      if (by_facing[0] != by_facing[1] || by_facing[0] != by_facing[2]) return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE("heat flows of all spaces sum to zero") {
  on_every_case([](const Setup& setup) {
    const solver::Field field = setup.field();
    double sum = 0.0;
    for (const double flow : solver::flows(field, setup.temperatures)) sum += flow;
    CHECK(sum == WithinAbs{0, solve * scale_of(field) * span_of(setup)});
  });
}

TEST_CASE("temperatures lie between those of the coldest and the warmest space") {
  on_every_case([](const Setup& setup) {
    const auto [low, high] =
        std::minmax_element(setup.temperatures.begin(), setup.temperatures.end());
    const double slack = solve * span_of(setup);
    for (const double temperature : solid_temperatures(setup, setup.field())) {
      REQUIRE(temperature >= *low - slack);
      REQUIRE(temperature <= *high + slack);
    }
  });
}

TEST_CASE("ten kelvin more in every space are ten kelvin more everywhere") {
  on_every_case([](Setup setup) {
    const solver::Field field = setup.field();
    const std::vector<double> before = solid_temperatures(setup, field);
    for (double& temperature : setup.temperatures) temperature += 10;
    const std::vector<double> after = solid_temperatures(setup, field);
    for (std::size_t k = 0; k < before.size(); ++k) {
      REQUIRE(after[k] - before[k] == WithinAbs{10, 10 * solve});
    }
  });
}

TEST_CASE("twice the differences are twice the flows") {
  on_every_case([](Setup setup) {
    const solver::Field field = setup.field();
    const auto before = solver::flows(field, setup.temperatures);
    for (double& temperature : setup.temperatures) temperature = 7 + 2 * (temperature - 7);
    const auto after = solver::flows(field, setup.temperatures);
    for (const SpaceId space : geometry::ids(before)) {
      CHECK(after[space] ==
            WithinAbs{2 * before[space], solve * 10 * scale_of(field) * span_of(setup)});
    }
  });
}

TEST_CASE("a mirrored section gives the mirrored field") {
  on_every_case([](const Setup& setup) {
    Setup mirrored = setup;
    const auto mirror = [](Point place) { return Point{-place.x, place.y}; };
    map_sheet(mirrored.sheet, mirror);
    check_same_field(setup, mirrored, mirror);
  });
}

TEST_CASE("a turned section gives the turned field") {
  int turned_cases = 0;
  on_every_case([&](const Setup& setup) {
    if (!is_blind_to_facing(setup)) return;
    ++turned_cases;
    Setup turned = setup;
    const auto turn = [](Point place) { return Point{-place.y, place.x}; };
    map_sheet(turned.sheet, turn);
    check_same_field(setup, turned, turn);
  });
  CHECK(turned_cases >= 5);
}

TEST_CASE("a section and its resistances made larger together have the same coupling") {
  on_every_case([](const Setup& setup) {
    Setup larger = setup;
    // A whole factor, so that every line stays on the raster.
    map_sheet(larger.sheet, [](Point place) { return Point{3 * place.x, 3 * place.y}; });
    for (auto& by_region : larger.physics.resistance) {
      for (auto& by_facing : by_region) {
        for (double& resistance : by_facing) resistance *= 3;
      }
    }
    const geometry::Section small = geometry::section_of(setup.sheet),
                            large = geometry::section_of(larger.sheet);
    const geometry::Subdivision cuts = geometry::subdivision_of(small, density);
    const solver::Field one =
        solver::field_of(geometry::mesh_of(small, cuts), setup.physics, solver::LinearOptions{});
    const solver::Field other =
        solver::field_of(geometry::mesh_of(large, cuts), larger.physics, solver::LinearOptions{});
    REQUIRE(one.coupling.size() == other.coupling.size());
    for (std::size_t k = 0; k < one.coupling.size(); ++k) {
      CHECK(other.coupling[k] == WithinAbs{one.coupling[k], solve * scale_of(one)});
    }
  });
}

TEST_CASE("more resistance of a surface never means more flow") {
  on_every_case([](const Setup& setup) {
    const solver::Field field = setup.field();
    if (!field.touching.empty()) return;  // infinite to begin with, whatever a grid makes of it
    const std::vector<double> before = outflows(field);
    for (const SpaceId space : geometry::ids(setup.physics.resistance)) {
      Setup stiller = setup;
      for (auto& by_facing : stiller.physics.resistance[space]) {
        for (double& resistance : by_facing) resistance = 1.5 * resistance + 0.01;
      }
      const std::vector<double> after = outflows(stiller.field());
      for (std::size_t a = 0; a < before.size(); ++a) {
        CHECK(after[a] <= before[a] * (1 + solve));
      }
    }
  });
}

TEST_CASE("a better conductor never means less flow") {
  on_every_case([](const Setup& setup) {
    const std::vector<double> before = outflows(setup.field());
    for (const RegionId region : geometry::ids(setup.physics.conductivity)) {
      Setup wetter = setup;
      wetter.physics.conductivity[region] *= 1.7;
      const std::vector<double> after = outflows(wetter.field());
      for (std::size_t a = 0; a < before.size(); ++a) {
        CHECK(after[a] >= before[a] * (1 - solve));
      }
    }
  });
}

TEST_CASE("the coupling of two airs is the same both ways") {
  on_every_case([](const Setup& setup) {
    const solver::Field field = setup.field();
    const std::size_t airs = field.airs.size();
    for (std::size_t a = 0; a < airs; ++a) {
      for (std::size_t b = 0; b < a; ++b) {
        CHECK(field.coupling[a * airs + b] ==
              WithinAbs{field.coupling[b * airs + a], solve * scale_of(field)});
      }
    }
  });
}

TEST_CASE("shares of all airs add to one everywhere") {
  on_every_case([](const Setup& setup) {
    const solver::Field field = setup.field();
    for (std::size_t n = 0; n < field.solid.size(); ++n) {
      if (field.solid[n] == 0) continue;
      double sum = 0.0;
      for (const auto& share : field.basis) sum += share[n];
      REQUIRE(sum == WithinAbs{1, solve});
    }
  });
}

TEST_CASE("a region split in two of the same material changes nothing") {
  on_every_case([](const Setup& setup) {
    Setup split = setup;
    // Every material once more under a new name, painted over the right half of its patches.
    const std::size_t regions = setup.physics.conductivity.size();
    for (std::size_t r = 0; r < regions; ++r) {
      split.physics.conductivity.add(setup.physics.conductivity[RegionId(r)]);
      split.physics.is_fabric.add(setup.physics.is_fabric[RegionId(r)]);
      for (auto& by_region : split.physics.resistance) {
        const auto same = by_region[RegionId(r)];
        by_region.add(same);
      }
    }
    const geometry::Section whole = geometry::section_of(setup.sheet);
    const double middle = whole.x.front() + 0.6180 * (whole.x.back() - whole.x.front());
    for (std::size_t r = 0; r < regions; ++r) {
      split.sheet.push_back(
          {RegionId(regions + r),
           geometry::rectangle(middle, whole.x.back(), whole.y.front() - 1, whole.y.back() + 1),
           RegionId(r)});
    }
    // On the same grid, that of the split section, both must agree.
    const geometry::Section parts = geometry::section_of(split.sheet);
    const geometry::Mesh mesh = geometry::mesh_of(parts, geometry::subdivision_of(parts, density));
    geometry::Mesh undivided = mesh;
    for (auto* cells : {&undivided.section.cells, &undivided.cells}) {
      for (geometry::Cell& cell : *cells) {
        for (geometry::Fill* fill : {&cell.below, &cell.above}) {
          if (auto* region = std::get_if<RegionId>(fill); region && region->index >= regions) {
            *fill = RegionId(region->index - regions);
          }
        }
      }
    }
    const solver::Field one = solver::field_of(undivided, setup.physics, solver::LinearOptions{});
    const solver::Field two = solver::field_of(mesh, split.physics, solver::LinearOptions{});
    REQUIRE(parts.x.size() > whole.x.size());
    for (std::size_t k = 0; k < one.coupling.size(); ++k) {
      CHECK(two.coupling[k] == WithinAbs{one.coupling[k], solve * scale_of(one)});
    }
  });
}

TEST_CASE("brackets on three grids have a value in common and shrink") {
  on_every_case([](const Setup& setup) {
    const geometry::Section section = geometry::section_of(setup.sheet);
    const auto couplings_on = [&](const geometry::Subdivision& grid) {
      return solver::brackets_of(
                 solver::both_schemes(geometry::mesh_of(section, grid), setup.physics, {}),
                 setup.physics)
          .couplings;
    };
    geometry::Subdivision grid = geometry::subdivision_of(section, density / 2);
    std::vector<solver::Coupling> former = couplings_on(grid);
    const double rounding = solve * former.front().low;
    for (int halving = 0; halving < 2; ++halving) {
      grid = geometry::doubled(std::move(grid));
      const std::vector<solver::Coupling> now = couplings_on(grid);
      for (std::size_t k = 0; k < now.size(); ++k) {
        CHECK(now[k].low <= now[k].high + rounding);
        CHECK(now[k].low <= former[k].high + rounding);
        CHECK(former[k].low <= now[k].high + rounding);
        if (std::isfinite(now[k].high)) {
          CHECK(now[k].high - now[k].low <= 0.8 * (former[k].high - former[k].low) + rounding);
        }
      }
      former = now;
    }
  });
}

TEST_CASE("the outermost flow lines hold between them all the heat of two airs, and no more") {
  int compared = 0;
  on_every_case([&](const Setup& setup) {
    solver::BothSchemes both = solver::both_schemes(setup.field().mesh, setup.physics, {});
    const solver::Brackets brackets = solver::brackets_of(both, setup.physics);
    solver::Solution solution;
    solution.field = std::move(both.field);
    solution.cells = std::move(both.by_cells.g);
    solution.physics = setup.physics;
    const solver::Stream stream = solver::stream_of(solution, setup.temperatures);
    if (solution.field.airs.size() != 2 || !stream.is_cut.empty()) return;
    if (!solution.field.touching.empty()) return;  // their flow is infinite
    const solver::Coupling& pair = brackets.couplings.front();
    const double all = pair.low * std::abs(setup.temperatures[pair.a] - setup.temperatures[pair.b]);
    const double drawn = *std::max_element(stream.value.begin(), stream.value.end());
    CHECK(drawn <= all * (1 + solve) + solve);
    // Where each air has one surface all lines run from one to the other.
    if (geometry::surfaces(solution.field.mesh, setup.physics.air).size() != 2) return;
    CHECK(drawn == WithinAbs{all, 1e-6 * all});  // bound: sums over many sides of cells
    ++compared;
  });
  CHECK(compared > 10);
}

}  // namespace quoin::testing
