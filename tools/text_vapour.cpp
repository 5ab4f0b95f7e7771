// SPDX-License-Identifier: Apache-2.0
#include "tools/text_vapour.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cases/utf8.hpp"
#include "tools/vapour_words.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

std::string heading(std::string_view words, const TextStyle& style) {
  return "\n" + toned(words, Tone::strong, style) + "\n";
}

std::string three_digits(double value) {
  return std::abs(value) >= 100.0 ? fmt::format("{:.0f}", value) : fmt::format("{:.3g}", value);
}

std::string at(geometry::Point place) {
  return fmt::format("{:.0f}, {:.0f}", 1000.0 * place.x + 0.0, 1000.0 * place.y + 0.0);
}

/// Where vapour condenses at the stated conditions, in words.
std::string stated_words(const SolvedVariant& solved) {
  const VapourCheck& check = *solved.vapour;
  std::string text;
  if (check.stated->places.empty()) {
    text = fmt::format("condenses nowhere; the most humid pores, at {}, have {:.0f} %.",
                       at(check.stated->dampest), 100.0 * check.stated->humidity);
  }
  for (const solver::CondensingPlace& place : check.stated->places) {
    const double rate = grams_a_day(place.rate.value), band = grams_a_day(place.rate.band);
    const bool line = place.length > 0.0;
    const double by = line ? place.length : 1.0;
    const std::string_view unit = line ? "m²" : "m";
    text +=
        fmt::format("{}{} {} ± {:.2g} g/({}·day), most at {}{}.", text.empty() ? "" : " ",
                    words_for(solved.variant, place.meeting), three_digits(rate / by), band / by,
                    unit, at(place.most),
                    check.days ? fmt::format("; {:.3g} kg/{} in {:.0f} days",
                                             rate / by * *check.days / 1000.0, unit, *check.days)
                               : "");
  }
  for (const std::string& remark : check.remarks) text += " " + remark + ".";
  return text;
}

std::string ledger_text(const SolvedVariant& solved, const TextStyle& style) {
  const DryingLedger& ledger = *solved.drying;
  if (ledger.rows.empty())
    return paragraph(solved.variant.name + ": nothing in it is too wet.", 2, style);
  std::string text = paragraph(
      fmt::format("{}: {:.1f} kg of water a metre of section to go from {}, down to {}{}.",
                  solved.variant.name, ledger.excess, fmt::join(ledger.wet, ", "), ledger.down_to,
                  ledger.by_month ? ", at the means of the year" : ", at the stated conditions"),
      2, style);
  std::string alignment = "l";
  std::vector<Cell> head{{"coat outside"}};
  const bool inner = !ledger.rows.front().inside_coat.empty();
  if (inner) {
    alignment += 'l';
    head.push_back({"inside"});
  }
  for (const SpaceId air : ledger.airs) {
    alignment += 'r';
    head.push_back({"to " + cases::shortened(solved.variant.spaces[air].name, 14)});
  }
  alignment += 'r';
  head.push_back({"time"});
  TextTable table(alignment);
  table.add(std::move(head));
  std::vector<Cell> units(inner ? 2 : 1);
  for (std::size_t a = 0; a < ledger.airs.size(); ++a) units.push_back({"g/(m²·day)"});
  table.add(std::move(units));
  double cooling = 0.0;
  for (const DryingRow& row : ledger.rows) {
    std::vector<Cell> cells{{row.outside_coat}};
    if (inner) cells.push_back({row.inside_coat});
    for (const double out : row.out) cells.push_back({three_digits(grams_a_day(out))});
    cells.push_back({drying_time(row.seconds)});
    table.add(std::move(cells));
    cooling = std::max(cooling, row.cooling);
  }
  text += table.text(style);
  if (cooling > 0.5) {
    text += paragraph(fmt::format("Drying that fast cools the surface, by up to {:.1f} K: left out "
                                  "here, it slows the fastest of these down.",
                                  cooling),
                      2, style);
  }
  return text;
}

}  // namespace

std::string vapour_text(const Results& results, const TextStyle& style) {
  std::string checked, dried;
  for (const SolvedVariant& solved : results.variants) {
    if (solved.vapour) {
      checked += paragraph(solved.variant.name + ": " +
                               (solved.vapour->year ? words_for(solved, *solved.vapour->year)
                                                    : stated_words(solved)),
                           2, style);
    }
    if (solved.drying) dried += ledger_text(solved, style);
  }
  std::string text;
  if (!checked.empty()) {
    text += heading("Vapour within the section: no verdict", style) + checked +
            paragraph(vapour_left_out, 2, style);
  }
  if (!dried.empty()) {
    text +=
        heading("Drying by diffusion alone", style) + dried + paragraph(drying_left_out, 2, style);
  }
  return text;
}

}  // namespace quoin::tools
