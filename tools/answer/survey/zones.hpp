// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "geometry/section.hpp"

namespace quoin::tools {

/// How far a zone reaches, as it is not known exactly: nested.
enum class ZoneExtent : std::uint8_t { smaller, as_drawn, larger };
inline constexpr std::array<double, 3> extent_factors{0.55, 1.0, 1.6};

/// A region of a variant, cut by the zones over it.
struct ZonedRegion {
  cases::RegionId region;           ///< of the variant
  std::vector<std::uint8_t> depth;  ///< in each zone: 0 outside of all extents, 3 in all

  [[nodiscard]] bool within(std::size_t zone, ZoneExtent extent) const {
    return depth[zone] + static_cast<std::uint8_t>(extent) >= 3;
  }
};

/// A section whose regions end where zones do, each at its three extents.
struct ZonedSection {
  geometry::Section section;
  std::vector<ZonedRegion> regions;  ///< by the ids of the section
  std::vector<bool> varies;          ///< whether each zone's extents differ in this section
};

/// The three boxes of a zone, the smallest first: it grows and shrinks along those inside surfaces
/// that run on beyond its ends, and its ends keep away from readings.
[[nodiscard]] std::array<cases::SurveyBox, 3> extents_of(
    const cases::Zone& zone, const cases::Variant& variant,
    const std::vector<geometry::Point>& read_at);

/// The section of a variant with its zones. `read_at`: where it was read; `lines_at`: places that
/// lines of the grid run through.
[[nodiscard]] ZonedSection zoned_section(const cases::Variant& variant,
                                         const std::vector<cases::Zone>& zones,
                                         const std::vector<geometry::Point>& read_at,
                                         const std::vector<geometry::Point>& lines_at);

}  // namespace quoin::tools
