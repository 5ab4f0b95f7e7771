// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>

#include "geometry/flaws.hpp"
#include "geometry/recipe.hpp"
#include "geometry/section.hpp"
#include "geometry/two_sided.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

using geometry::FlawKind;
using geometry::Layer;
using geometry::MembraneId;
using geometry::Seam;
using geometry::Section;
using geometry::Sheet;

const RegionId plaster(0u), board(1u), brick(2u), wet_brick(3u);
const SpaceId room(0u), yard(1u);
const MembraneId barrier(0u);

/// Plaster 15 mm, a membrane, board 60 mm, brick 330 mm.
const std::vector<Layer> layers = {
    {plaster, 0.015, false, barrier}, {board, 0.060}, {brick, 0.330}};

Sheet wall() {
  geometry::Wall recipe;
  recipe.layers = layers;
  recipe.inside = room;
  recipe.outside = yard;
  return drawing_of(recipe).sheet;
}

bool has(const Section& section, bool upright, double at, double from, double to) {
  return std::any_of(section.seams.begin(), section.seams.end(), [&](const Seam& seam) {
    return seam.upright == upright && seam.at == WithinAbs{at, 1e-9} &&
           seam.from == WithinAbs{from, 1e-9} && seam.to == WithinAbs{to, 1e-9};
  });
}

bool has(const Sheet& sheet, FlawKind kind) {
  const auto found = geometry::flaws(sheet, geometry::section_of(sheet));
  return std::any_of(found.begin(), found.end(), [&](const auto& flaw) {
    return flaw.kind == kind && flaw.membrane == barrier;
  });
}

}  // namespace

TEST_CASE("a membrane between layers lies where the two meet") {
  const Section section = geometry::section_of(wall());
  REQUIRE(section.seams.size() == 1);
  CHECK(has(section, true, 0.015, 0.0, 1.0));
  CHECK(geometry::flaws(wall(), section).empty());
}

TEST_CASE("a membrane follows the wall around a corner, whichever way it turns") {
  geometry::Corner corner;
  corner.layers = layers;
  corner.inside = room;
  corner.outside = yard;
  corner.leg = 1.0;
  const double thickness = 0.405, end = thickness + 1.0;
  const double from_inside = thickness - 0.015;
  const Section external = geometry::section_of(drawing_of(corner).sheet);
  REQUIRE(external.seams.size() == 2);
  CHECK(has(external, true, from_inside, from_inside, end));
  CHECK(has(external, false, from_inside, from_inside, end));
  corner.turn = geometry::Turn::internal;
  const Section internal = geometry::section_of(drawing_of(corner).sheet);
  REQUIRE(internal.seams.size() == 2);
  CHECK(has(internal, true, 0.015, 0.015, end));
  CHECK(has(internal, false, 0.015, 0.015, end));
  CHECK(geometry::flaws(drawing_of(corner).sheet, internal).empty());
}

TEST_CASE("a membrane under a floor meets the wall, one in a breast goes round it") {
  geometry::WallBase base;
  base.layers = base.foundation = {{brick, 0.330}};
  base.floor = {{board, 0.100, false, barrier}};
  base.ground = plaster;
  base.footing = brick;
  base.footing_width = 0.6;
  base.inside = room;
  base.outside = yard;
  const Section foot = geometry::section_of(drawing_of(base).sheet);
  REQUIRE(foot.seams.size() == 1);
  CHECK_FALSE(foot.seams.front().upright);
  CHECK(foot.seams.front().at == WithinAbs{-0.100, 1e-9});
  CHECK(foot.seams.front().to == WithinAbs{0.0, 1e-9});
  geometry::ChimneyBreast breast;
  breast.layers = {{brick, 0.225}};
  breast.lining = {{plaster, 0.015}, {board, 0.040, false, barrier}};
  breast.breast = brick;
  breast.inside = room;
  breast.outside = yard;
  const geometry::Drawing drawing = drawing_of(breast);
  const Section round = geometry::section_of(drawing.sheet);
  CHECK(round.seams.size() == 5);
  CHECK(geometry::flaws(drawing.sheet, round).empty());
}

TEST_CASE("a membrane in a wall ends at its window, one behind the lining goes on to the frame") {
  geometry::Reveal reveal;
  reveal.layers = layers;
  reveal.lining = {{plaster, 0.010}, {board, 0.020, false, MembraneId(1u)}};
  reveal.wall = 1.5;
  reveal.frame = brick;
  reveal.inside = room;
  reveal.outside = yard;
  const geometry::Drawing drawing = drawing_of(reveal);
  const Section section = geometry::section_of(drawing.sheet);
  REQUIRE(section.seams.size() == 2);
  CHECK(has(section, false, -0.015, -1.5, 0.0));
  CHECK(has(section, true, 0.0, geometry::frame_of(reveal).inside * -1.0, 0.0));
  CHECK(geometry::flaws(drawing.sheet, section).empty());
  // Along a splay it is a flaw, told as such.
  reveal.splay = 0.1;
  const geometry::Sheet splayed = drawing_of(reveal).sheet;
  const auto flaws = geometry::flaws(splayed, geometry::section_of(splayed));
  CHECK(std::any_of(flaws.begin(), flaws.end(), [](const auto& flaw) {
    return flaw.kind == FlawKind::sloping_membrane && flaw.membrane == MembraneId(1u);
  }));
}

TEST_CASE("what is painted over both sides of a membrane covers it, a band does not") {
  Sheet sheet = wall();
  sheet.push_back({wet_brick, geometry::rectangle(0.0, 0.1, 0.0, 0.2), board});
  CHECK(has(geometry::section_of(sheet), true, 0.015, 0.0, 1.0));
  sheet.push_back({brick, geometry::rectangle(0.0, 0.1, 0.3, 0.4), {}});
  const Section section = geometry::section_of(sheet);
  REQUIRE(section.seams.size() == 2);
  CHECK(has(section, true, 0.015, 0.0, 0.3));
  CHECK(has(section, true, 0.015, 0.4, 1.0));
  sheet.push_back({brick, geometry::rectangle(-0.1, 0.1, 0.0, 1.0), {}});
  CHECK(has(sheet, FlawKind::hidden_membrane));
}

TEST_CASE("a membrane on a surface, in the air or along a slope is a flaw") {
  const auto with = [](geometry::Outline line) {
    Sheet sheet = wall();
    sheet.push_back({MembraneId(0u), std::move(line), {}});
    return sheet;
  };
  CHECK_FALSE(has(with({{0.1, 0.2}, {0.3, 0.2}}), FlawKind::bare_membrane));
  CHECK(has(with({{0.0, 0.0}, {0.0, 1.0}}), FlawKind::bare_membrane));
  CHECK(has(with({{-0.05, 0.5}, {0.1, 0.5}}), FlawKind::bare_membrane));
  CHECK(has(with({{0.1, 0.0}, {0.2, 0.5}}), FlawKind::sloping_membrane));
}

TEST_CASE("twins are one but where a membrane parts them") {
  Sheet sheet = wall();
  sheet.erase(std::remove_if(sheet.begin(), sheet.end(),
                             [](const auto& patch) { return membrane_of(patch) != nullptr; }),
              sheet.end());
  const geometry::Mesh plain = even_mesh(geometry::section_of(sheet), 0.1);
  CHECK(geometry::TwoSided(plain).size() == plain.nx() * plain.ny());
  sheet.push_back({barrier, {{0.2, 0.0}, {0.2, 0.5}}, {}});
  const geometry::Mesh mesh = even_mesh(geometry::section_of(sheet), 0.1);
  const geometry::TwoSided nodes(mesh);
  CHECK(nodes.nx() == mesh.nx() + 1);
  CHECK(nodes.ny() == mesh.ny());
  for (const geometry::Twins& twins : nodes.twins()) {
    CHECK(nodes.of_mesh(twins.one) == nodes.of_mesh(twins.other));
    const double y = mesh.place(nodes.of_mesh(twins.one)).y;
    CHECK(twins.joined == (y > 0.5 - 1e-9));  // its end is one
    CHECK((nodes.leader(twins.one) == nodes.leader(twins.other)) == twins.joined);
  }
}

}  // namespace quoin::testing
