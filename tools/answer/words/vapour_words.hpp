// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What the check for condensation leaves out, why it gives no verdict, and what to ask for
/// instead.
inline constexpr std::string_view vapour_left_out =
    "Steady diffusion of vapour alone, as in ISO 13788. Left out: water that pores draw and store, "
    "rain, sun, salts, and air through joints, which carries far more vapour than diffusion. So it "
    "condemns vapour-open linings on masonry that draws water away, and flatters foil-faced ones "
    "that shut rain and ground water in. It neither passes nor fails a wall: it shows where and "
    "how "
    "much. Before a wall is lined ask for a transient assessment of heat and moisture (EN 15026).";

/// What the drying ledger leaves out.
inline constexpr std::string_view drying_left_out =
    "Diffusion of vapour alone, from a part that is kept saturated, through coats whose sd is "
    "known "
    "to a factor of two at best. Bare and limewashed masonry dries faster while water reaches its "
    "surface as liquid. Where water still comes in, all of these are infinite: stop it first.";

/// A place within the section: "between wood fibre board and lime plaster", "within wall brick",
/// "between wall brick and vapour barrier", "under the limewash towards outdoors". Where the same
/// two meet in several places, which of them, counted from the room.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const solver::Meeting& meeting,
                                    std::size_t part);

/// kg/s as g a day.
[[nodiscard]] constexpr double grams_a_day(double rate) { return rate * 8.64e7; }

/// How long water takes to dry, in the words of the trade: "40 days", "5.2 years", "never".
[[nodiscard]] std::string drying_time(double seconds);

/// Three significant digits, and no fewer than all before the point.
[[nodiscard]] std::string three_digits(double value);

/// The drying ledger of a variant that has one, as a table of words: a column for each coat, then
/// for each air, then the time.
struct LedgerTable {
  std::vector<std::string> coats;               ///< headings of the first columns
  std::vector<std::string> airs;                ///< names of the airs that water leaves to
  std::vector<std::vector<std::string>> cells;  ///< row by row; g/(m2 day), and the time in words
};
[[nodiscard]] LedgerTable ledger_table(const SolvedVariant& solved);

/// What the check of a variant that asks for it found.
[[nodiscard]] std::string vapour_words(const SolvedVariant& solved);

/// The same in one sentence for where the answer is read; empty where nothing condenses, or nobody
/// asked.
[[nodiscard]] std::string vapour_remark(const SolvedVariant& solved);

/// What a variant that asks for it has to lose.
[[nodiscard]] std::string drying_words(const SolvedVariant& solved);

}  // namespace quoin::tools
