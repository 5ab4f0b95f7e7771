// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::tools {

/// How words are to be taken, whatever shows them.
enum class Tone : std::uint8_t { plain, strong, good, doubtful, bad };

/// A limit that does not hold at the coldest spot of a room.
struct BrokenLimit {
  std::string criterion;  ///< its name, or "80 %"
  double limit = 0.0;     ///< humidity at the surface, 0 to 1; in the unit "1" an fRsi
  double has = 0.0;       ///< what the spot has, in the same terms
  std::string unit;       ///< "%RH" or "1"
  bool for_mould = false;
};

/// What becomes of the coldest spot of a room: the one answer from which every badge, sentence,
/// cell, mark and key is said.
struct Outcome {
  /// The worst first.
  enum class Kind : std::uint8_t {
    wet,               ///< below the dew point by more than the band
    at_the_dew_point,  ///< the dew point lies within the band
    mould,             ///< a limit of humidity is passed, at the latest 80 %
    fails,             ///< another criterion fails
    dry_first,         ///< all would hold, but wet masonry would be closed in
    marginal,          ///< all hold, but only just
    safe,              ///< all hold, and are likely to
    not_judged,        ///< nothing to judge by
  };
  geometry::SpaceId space;
  Kind kind = Kind::not_judged;
  std::string decided_by;  ///< name of a criterion, "dew point" or "80 %"; empty: not judged
  std::vector<BrokenLimit> broken;  ///< every limit that does not hold, be it decisive or not
  std::optional<double> limit;      ///< humidity at the surface, 0 to 1; in the unit "1" an fRsi
  double has = 0.0;                 ///< what the spot has, in the same terms
  double margin = 0.0;              ///< positive: on the safe side, in `unit`
  double band = 0.0;                ///< of the margin: of grid and solver
  std::string unit;                 ///< "K" beside the dew point, "%RH" or "1"
  std::optional<double> chance;     ///< that a limit of humidity is passed in this house, 0 to 1
  std::string words;                ///< in a clause, with its numbers
};

}  // namespace quoin::tools
