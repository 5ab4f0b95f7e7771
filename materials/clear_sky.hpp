// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string_view>

namespace quoin::materials {

/// A clear night sky, colder than the air, that outside surfaces radiate to. For comparing with
/// readings of such a night, never for a judgement.
struct ClearSky {
  static constexpr std::string_view alone = "colder by";

  double colder_by = std::numeric_limits<double>::quiet_NaN();  ///< K, than the air
  double view = 0.5;  ///< share of its surroundings that a surface sees as sky
};

template <class Visitor>
void describe(Visitor& visit, ClearSky& sky) {
  visit.difference("colder by", sky.colder_by, 0.5, 40.0,
                   "the sky than the air; 11 K on a clear night in temperate lands");
  visit.share("view", sky.view, 0.0, 1.0,
              "of the sky by the surface: half for a wall in the open, all for a flat roof");
}

/// How much colder air would have the same effect on a surface of this resistance, m2K/W, K.
/// Source: radiation of a surface of emissivity 0.9 at 0 degC, as in ISO 6946; a sky 11 K below the
/// air in temperate lands is the value of ISO 13790 (both memory).
[[nodiscard]] double cooling_by(const ClearSky& sky, double resistance);

}  // namespace quoin::materials
