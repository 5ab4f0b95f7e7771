// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/odds.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "tools/answer/survey/survey_words.hpp"
#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr Colour bar_colour{0x5b7bd5}, best_colour{0x14213d};

/// Bars of how many times worse each explanation fits than the best, with the region in which
/// readings cannot tell. Returns where it ends.
double draw_odds(Canvas& canvas, const SurveyFindings& findings, double top) {
  const std::vector<Explained>& all = findings.explanations;
  constexpr double names = 250.0, most = 1000.0, pitch = 24.0;
  constexpr double from = page_edge + names, to = page_width - page_edge - 12.0;
  const auto across = [&](double odds) {
    return from + std::log10(std::clamp(odds, 1.0, most)) / std::log10(most) * (to - from);
  };
  const double begin = top + 36.0, end = begin + pitch * static_cast<double>(all.size());
  canvas.text({page_edge, top}, "How many times worse each explanation fits than the best",
              {12.5, Anchor::start, 0.0, true, black, {}});
  canvas.rectangle({from, begin}, across(cannot_tell) - from, end - begin,
                   {Colour{0x484848}, {}, 0.18});
  canvas.rectangle({across(cannot_tell), begin}, across(far_better) - across(cannot_tell),
                   end - begin, {Colour{0x484848}, {}, 0.07});
  canvas.text({(from + across(cannot_tell)) / 2, begin - 5.0}, "cannot tell",
              {11.0, Anchor::middle, 0.0, false, grey, {}});
  canvas.text({across(std::sqrt(cannot_tell * far_better)), begin - 5.0}, "fits worse",
              {11.0, Anchor::middle, 0.0, false, grey, {}});
  canvas.text({across(100.0), begin - 5.0}, "fits far worse",
              {11.0, Anchor::middle, 0.0, false, grey, {}});
  for (const double odds : {1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0}) {
    canvas.line({across(odds), begin}, {across(odds), end}, {{0xa4a4a4}, 0.6});
    canvas.text({across(odds), end + 15.0},
                odds < most ? fmt::format("{:.0f}", odds) : std::string("more"),
                {11.0, Anchor::middle, 0.0, false, black, {}});
  }
  double y = begin;
  for (const Explained& one : all) {
    const double odds = std::exp(-one.log_odds);
    canvas.text({from - 10.0, y + 16.0}, fitted(name_of(findings, one.what), 11.5, names - 14.0),
                {11.5, Anchor::end, 0.0, &one == all.data(), black, {}});
    if (&one == all.data()) {
      canvas.circle({from, y + pitch / 2}, 5.5, {best_colour, {}});
    } else {
      canvas.rectangle({from, y + 6.0}, std::max(2.0, across(odds) - from), pitch - 12.0,
                       {bar_colour, {}});
    }
    y += pitch;
  }
  return end + 22.0;
}

/// Words over as many lines as they need. Returns where they end.
double draw_words(Canvas& canvas, const std::string& words, double y) {
  constexpr std::size_t most_lines = 6;
  for (const std::string& line : wrapped(words, 12.0, page_width - 2 * page_edge, most_lines)) {
    canvas.text({page_edge, y}, line, {12.0, Anchor::start, 0.0, false, black, {}});
    y += 16.0;
  }
  return y;
}

}  // namespace

Picture drawn_odds(const Results& results) {
  if (!results.survey || results.survey->explanations.empty()) return {};
  const SurveyFindings& findings = *results.survey;
  Canvas canvas;
  double bottom = draw_heading(canvas, results.title, "What explains the readings");
  bottom = draw_odds(canvas, findings, bottom + 24.0);
  if (!findings.next.empty())
    bottom = draw_words(canvas, findings.next.front().words, bottom + 18.0);
  bottom = draw_words(canvas, std::string(within_no_standard), bottom + 18.0);
  std::string description = "How many times worse each explanation fits than the best.";
  for (const Explained& one : findings.explanations)
    description += fmt::format(" {}: {}.", name_of(findings, one.what), odds_words(one.log_odds));
  return {std::move(canvas), bottom, fmt::format("{}: what explains the readings", results.title),
          description};
}

}  // namespace quoin::tools
