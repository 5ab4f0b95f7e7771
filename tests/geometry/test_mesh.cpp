// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "geometry/mesh.hpp"
#include "tests/geometry/drawn.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinRel;

/// A wall corner with a lining and a piece of something else across it: corners of every kind.
Section corner() {
  return section_of({patch(space(0), -0.1, 1.3, -0.1, 1.3), patch(material(0), 0, 1.3, 0, 1.3),
                     patch(material(1), 0.28, 1.3, 0.28, 1.3), patch(space(1), 0.3, 1.3, 0.3, 1.3),
                     patch(material(2), 0.1, 0.2, 0.5, 0.6)});
}

Section layered() {
  return section_of({patch(space(0), -0.1, 0, 0, 1), patch(material(0), 0, 0.1, 0, 1),
                     patch(material(1), 0.1, 0.4, 0, 1), patch(space(1), 0.4, 0.5, 0, 1)});
}

bool holds_all(const std::vector<double>& nodes, const std::vector<double>& lines) {
  return std::includes(nodes.begin(), nodes.end(), lines.begin(), lines.end());
}

bool ascending(const std::vector<double>& nodes) {
  return std::adjacent_find(nodes.begin(), nodes.end(), std::greater_equal<>()) == nodes.end();
}

std::vector<double> widths_between(const std::vector<double>& nodes, double from, double to) {
  std::vector<double> widths;
  for (std::size_t k = 1; k < nodes.size(); ++k) {
    if (nodes[k - 1] >= from && nodes[k] <= to) widths.push_back(nodes[k] - nodes[k - 1]);
  }
  return widths;
}

}  // namespace

TEST_CASE("every line of the section is a line of the mesh, to the last bit") {
  const Section section = corner();
  for (const double density : {0.5, 2.0, 7.3, 40.0}) {
    const Mesh mesh = mesh_of(section, subdivision_of(section, density));
    CHECK(holds_all(mesh.x, section.x));
    CHECK(holds_all(mesh.y, section.y));
    CHECK(ascending(mesh.x));
    CHECK(ascending(mesh.y));
  }
}

TEST_CASE("doubling keeps every old line to the last bit and puts one in each cell of material") {
  const Section section = corner();
  Subdivision subdivision = subdivision_of(section, 3);
  Mesh coarse = mesh_of(section, subdivision);
  for (int level = 0; level < 4; ++level) {
    subdivision = doubled(subdivision);
    const Mesh fine = mesh_of(section, subdivision);
    CHECK(holds_all(fine.x, coarse.x));
    CHECK(holds_all(fine.y, coarse.y));
    CHECK(widths_between(fine.x, 0, 1.3).size() == 2 * widths_between(coarse.x, 0, 1.3).size());
    CHECK(widths_between(fine.y, 0, 1.3).size() == 2 * widths_between(coarse.y, 0, 1.3).size());
    CHECK(nodes(subdivision) == fine.nx() * fine.ny());
    coarse = fine;
  }
}

TEST_CASE("halving undoes doubling to the last bit") {
  const Section section = corner();
  const Subdivision subdivision = subdivision_of(section, 5);
  const Mesh mesh = mesh_of(section, subdivision);
  const Mesh again = mesh_of(section, halved(doubled(subdivision)));
  CHECK(again.x == mesh.x);
  CHECK(again.y == mesh.y);
}

TEST_CASE("a cell of the mesh shows what the section shows there") {
  const Section section = corner();
  const Mesh mesh = mesh_of(section, subdivision_of(section, 5));
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const Point middle = {(mesh.x[i] + mesh.x[i + 1]) / 2, (mesh.y[j] + mesh.y[j + 1]) / 2};
      REQUIRE(mesh.cell(i, j).below == shown(section, middle));
    }
  }
}

TEST_CASE("nodes are numbered row by row and know their place") {
  const Section section = corner();
  const Mesh mesh = mesh_of(section, subdivision_of(section, 2));
  const std::size_t node = mesh.node(3, 2);
  CHECK(node == 2 * mesh.nx() + 3);
  CHECK(mesh.place(node) == Point{mesh.x[3], mesh.y[2]});
}

TEST_CASE("cells shrink towards a corner of the field") {
  const Section section = corner();
  const Mesh mesh = mesh_of(section, subdivision_of(section, 20));
  // Away from the inner corner at 0.3, along the leg up to the cut plane, where nothing happens.
  const std::vector<double> widths = widths_between(mesh.x, 0.3, 1.3);
  REQUIRE(widths.size() >= 8);
  CHECK(std::is_sorted(widths.begin(), widths.end()));
  CHECK(widths.front() < widths.back() / 20);
  // Between two corners they shrink both ways.
  const std::vector<double> between = widths_between(mesh.y, 0.3, 0.5);
  REQUIRE(between.size() >= 4);
  CHECK(between.front() < between[between.size() / 2]);
  CHECK(between.back() < between[between.size() / 2]);
}

TEST_CASE("a plain wall has no corner, so its cells are all alike within a layer") {
  const Section section = layered();
  const Mesh mesh = mesh_of(section, subdivision_of(section, 20));
  const std::vector<double> widths = widths_between(mesh.x, 0.1, 0.4);
  REQUIRE(widths.size() >= 4);
  // 1e-12: the lines of equal cells differ by their rounding only.
  for (const double width : widths) CHECK(width == WithinRel{widths.front(), 1e-12});
}

TEST_CASE("strips that a sloping edge crosses are cut alike or the mesh is refused") {
  // A triangle whose slope crosses cells of 0.2 m by 0.1 m.
  const Section section = section_of({patch(space(0), -0.1, 0, 0, 0.2),
                                      {material(0), {{0, 0}, {0.4, 0}, {0, 0.2}}, {}},
                                      patch(material(1), 0, 0.2, 0, 0.1)});
  const Subdivision subdivision = subdivision_of(section, 3);
  CHECK(mesh_of(section, subdivision).nx() > section.x.size());
  for (const auto strips : {&Subdivision::columns, &Subdivision::rows}) {
    Subdivision uneven = subdivision;
    const auto bound = std::find_if((uneven.*strips).begin(), (uneven.*strips).end(),
                                    [](const Strip& strip) { return strip.bond != 0; });
    REQUIRE(bound != (uneven.*strips).end());
    bound->cuts.pop_back();
    CHECK_THROWS_AS(mesh_of(section, uneven), std::invalid_argument);
  }
}

TEST_CASE("a strip of air alone is not cut") {
  const Section section = layered();
  const Subdivision subdivision = subdivision_of(section, 50);
  CHECK(subdivision.columns.front().cells() == 1);
  CHECK(subdivision.columns.back().cells() == 1);
}

TEST_CASE("a finer subdivision never has fewer cells in a strip") {
  const Section section = corner();
  const Subdivision coarse = subdivision_of(section, 3), fine = subdivision_of(section, 10);
  for (std::size_t k = 0; k < coarse.columns.size(); ++k) {
    CHECK(fine.columns[k].cells() >= coarse.columns[k].cells());
  }
}

}  // namespace quoin::geometry
