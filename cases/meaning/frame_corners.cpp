// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/frame_corners.hpp"

#include <fmt/format.h>

#include <string>

#include "cases/meaning/spaces.hpp"
#include "geometry/corner_strips.hpp"
#include "materials/surface_resistance.hpp"

namespace quoin::cases {
namespace {

using materials::frame_corner_resistance;

std::string name_of_strips(const std::string& space) { return space + ", frame corners"; }

Space strips_beside(const Space& space, SpaceId id) {
  Space strips = space;
  strips.name = name_of_strips(space.name);
  strips.resistance = frame_corner_resistance;
  strips.frame_corners.reset();
  strips.strips_of = id;
  return strips;
}

}  // namespace

void check_frame_corners(const std::vector<Named<WrittenSpace>>& written,
                         const Per<SpaceId, Space>& spaces, FaultList& faults) {
  for (const SpaceId id : geometry::ids(spaces)) {
    const Space& space = spaces[id];
    if (!space.frame_corners || !space.air.valid()) continue;
    const Mark mark = written[id.index].node->find("frame corners")->value.mark;
    if (space.is != SpaceKind::inside) {
      faults.add(mark, {"'frame corners' is for surfaces inside", "", "a space that is inside",
                        "remove `frame corners`"});
    } else if (space.resistance && *space.resistance > frame_corner_resistance) {
      faults.add(
          mark,
          {fmt::format("the surface of '{}' exchanges less heat than frame corners do", space.name),
           fmt::format("{:.3g} m2K/W", *space.resistance),
           fmt::format("at most {} m2K/W", frame_corner_resistance), "remove `frame corners`"});
    }
    if (find_space(spaces, name_of_strips(space.name)).valid()) {
      faults.add(mark, {fmt::format("the strips in the frame corners are called '{}'",
                                    name_of_strips(space.name)),
                        "", "no other space of this name", "rename the other space"});
    }
  }
}

void paint_frame_corners(Variant& variant) {
  Per<RegionId, char> is_frame;
  for (const Region& region : variant.regions)
    is_frame.add(materials::is_fabric(region.part) ? 0 : 1);
  const geometry::Section section = geometry::section_of(variant.sheet);
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    if (!variant.spaces[id].frame_corners) continue;
    for (geometry::Outline& strip : geometry::corner_strips(section, id, is_frame)) {
      SpaceId strips = strips_of(variant.spaces, id);
      if (!strips.valid()) strips = variant.spaces.add(strips_beside(variant.spaces[id], id));
      variant.sheet.push_back({strips, std::move(strip), std::nullopt});
    }
  }
}

SpaceId strips_of(const Per<SpaceId, Space>& spaces, SpaceId space) {
  for (const SpaceId id : geometry::ids(spaces)) {
    if (spaces[id].strips_of == space) return id;
  }
  return {};
}

}  // namespace quoin::cases
