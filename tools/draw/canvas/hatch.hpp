// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <vector>

#include "cases/case.hpp"
#include "tools/draw/canvas/canvas.hpp"

namespace quoin::tools {

/// What a material is drawn as. Hatches follow the habits of ISO 128-50 (parallel lines turned from
/// part to part; own signs for insulation, timber, metal, glass); colours and spacing are ours.
enum class Kind { masonry, coat, stone, timber, insulation, board, metal, glass, ground, air };

[[nodiscard]] Kind kind_of(const materials::Material& material);

/// How one region is drawn.
struct Look {
  Colour ground;  ///< under the hatch
  std::shared_ptr<const Hatch> hatch;
  std::shared_ptr<const Hatch> wet;  ///< over the hatch; null: dry
};

/// A look for each region: regions of one material look alike but for their wetness, different
/// materials of one kind differ in tint and in the turn of their hatch.
class Looks {
 public:
  explicit Looks(const geometry::Per<geometry::RegionId, cases::Region>& regions);

  [[nodiscard]] const Look& operator[](geometry::RegionId region) const { return looks_[region]; }

  /// Fills outlines on a picture with the look of a region.
  void paint(Canvas& canvas, geometry::RegionId region, const std::vector<Line>& outlines) const;

 private:
  geometry::Per<geometry::RegionId, Look> looks_;
};

}  // namespace quoin::tools
