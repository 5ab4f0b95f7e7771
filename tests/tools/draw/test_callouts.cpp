// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "tests/tools/by_hand.hpp"
#include "tools/draw/section/callouts.hpp"
#include "tools/draw/section/rooms.hpp"

using namespace quoin;
using namespace quoin::tools;

namespace {

/// The boxes of callouts on a picture.
std::vector<Box> boxes_on(const Canvas& canvas) {
  std::vector<Box> boxes;
  for (const Item& item : canvas.items()) {
    if (const auto* box = std::get_if<Rectangle>(&item)) {
      boxes.push_back({{box->corner.x + box->width / 2, box->corner.y + box->height / 2},
                       box->width,
                       box->height,
                       0.0});
    }
  }
  return boxes;
}

struct Scene {
  cases::Variant variant = testing::corner_variant("as found", 0.0, false);
  View view{geometry::section_of(variant.sheet), {20, 60}, 500, 500};
  TakenRoom taken;
  Callouts callouts{view, variant, taken};
  Canvas canvas;
};

TEST_CASE("callouts for one place stand side by side in the air of the room") {
  Scene scene;
  const Point spot = scene.view({0.345, 0.345});
  for (int k = 0; k < 6; ++k) scene.callouts.add(spot, {1, -1}, "coldest 9.1 °C");
  scene.callouts.draw(scene.canvas);
  const std::vector<Box> boxes = boxes_on(scene.canvas);
  REQUIRE(boxes.size() == 6);
  const Point corner = scene.view({0.345, 0.345});
  for (std::size_t a = 0; a < boxes.size(); ++a) {
    CHECK(boxes[a].centre.x - boxes[a].width / 2 >= corner.x);   // right of the wall
    CHECK(boxes[a].centre.y + boxes[a].height / 2 <= corner.y);  // above it
    for (std::size_t b = 0; b < a; ++b) CHECK_FALSE(overlap(boxes[a], boxes[b]));
  }
}

TEST_CASE("a callout for which there is no room is left out") {
  Scene scene;
  scene.taken.take(Box{{300, 300}, 2000, 2000, 0});
  scene.callouts.add(scene.view({0.345, 0.345}), {1, -1}, "coldest 9.1 °C");
  scene.callouts.draw(scene.canvas);
  CHECK(boxes_on(scene.canvas).empty());
}

TEST_CASE("a callout goes to the material before it is lost") {
  Scene scene;
  const Box hall = *room_of(scene.view, geometry::SpaceId(0u));
  scene.taken.take(hall);
  scene.callouts.add(scene.view({0.1, 1.0}), {1, 0}, "A");
  scene.callouts.draw(scene.canvas);
  CHECK(boxes_on(scene.canvas).size() == 1);
}

}  // namespace
