// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/chances.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/survey/chances.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/chart/axes.hpp"
#include "tools/draw/field/isotherms.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double names = 232.0;  ///< left of bars, units
constexpr double from = page_edge + names, to = page_width - page_edge - 56.0;
constexpr double pitch = 24.0;
constexpr std::size_t most_inputs = 6;
constexpr Colour safe{0x1f6b3a}, doubtful{0xc05a00}, bad{0x9c0048}, lower{0x5b7bd5},
    upper{0xc05a00};
const Lettering axis{11.0, Anchor::middle, 0.0, false, black, {}};
const Lettering heading{12.5, Anchor::start, 0.0, true, black, {}};

/// One chance with the variant it is of.
struct Told {
  const SolvedVariant* solved = nullptr;
  const Chance* chance = nullptr;
};

std::vector<Told> told_of(const Results& results) {
  std::vector<Told> all;
  for (const SolvedVariant& solved : results.variants) {
    for (const Chance& chance : solved.chances) all.push_back({&solved, &chance});
  }
  return all;
}

/// As few words as tell the chances of a case apart.
std::string name_of(const Told& one, const std::vector<Told>& all) {
  const auto differs = [&](auto part) {
    return std::any_of(all.begin(), all.end(),
                       [&](const Told& other) { return part(other) != part(all.front()); });
  };
  std::string name = one.solved->variant.name;
  const auto room = [](const Told& told) {
    return told.solved->variant.spaces[told.chance->space].name;
  };
  if (differs([](const Told& told) { return told.chance->criterion; }))
    name += ", " + one.chance->criterion;
  if (differs(room)) name += ", " + room(one);
  return name;
}

Colour colour_of(double chance) {
  const Degree degree = degree_of(chance);
  return degree == Degree::unlikely ? safe : degree == Degree::marginal ? doubtful : bad;
}

/// Bars from 0 to 100 of 100 cases. Returns where they end.
double draw_bars(Canvas& canvas, const std::vector<Told>& all, double top) {
  const auto across = [&](double share) { return from + share * (to - from); };
  const double begin = top + 20.0, end = begin + pitch * static_cast<double>(all.size());
  canvas.rectangle({from, begin}, across(marginal_chance) - from, end - begin, {safe, {}, 0.12});
  canvas.text({from, begin - 5.0}, "safe", {11.0, Anchor::start, 0.0, false, grey, {}});
  for (const double share : {0.0, 0.1, 0.25, 0.5, 0.75, 1.0}) {
    canvas.line({across(share), begin}, {across(share), end}, {{0xa4a4a4}, 0.6});
    canvas.text({across(share), end + 15.0}, fmt::format("{:.0f}", 100 * share), axis);
  }
  double y = begin;
  for (const Told& one : all) {
    const double broken = std::clamp(one.chance->broken, 0.0, 1.0);
    canvas.text({from - 10.0, y + 16.0}, fitted(name_of(one, all), 11.5, names - 14.0),
                {11.5, Anchor::end, 0.0, false, black, {}});
    canvas.rectangle({from, y + 6.0}, std::max(2.0, across(broken) - from), pitch - 12.0,
                     {colour_of(broken), {}});
    canvas.text({to + 8.0, y + 16.0}, cases_of_100(broken),
                {12.0, Anchor::start, 0.0, true, colour_of(broken), {}});
    y += pitch;
  }
  canvas.text({from, end + 31.0}, "of 100 cases like this the limit is passed",
              {11.0, Anchor::start, 0.0, false, grey, {}});
  return end + 36.0;
}

/// How far each input moves the margin, the longest on top. Returns where it ends.
double draw_tornado(Canvas& canvas, const Told& one, const std::string& name, double top) {
  const std::vector<TornadoBar>& all = one.chance->tornado;
  const std::size_t number = std::min(all.size(), most_inputs);
  Axes axes;
  axes.left = from;
  axes.right = to;
  axes.x.include(0.0);
  for (std::size_t k = 0; k < number; ++k) {
    axes.x.include(std::min(all[k].low, all[k].high));
    axes.x.include(std::max(all[k].low, all[k].high));
  }
  const double air = 0.05 * (axes.x.high - axes.x.low);
  axes.x = {axes.x.low - air, axes.x.high + air};
  canvas.text({page_edge, top}, fitted(name, heading.size, page_width - 2 * page_edge), heading);
  const double begin = top + 24.0, end = begin + pitch * static_cast<double>(number);
  const double limit = axes.across(0.0);
  canvas.rectangle({from, begin}, limit - from, end - begin, {bad, {}, 0.10});
  canvas.text({limit - 6.0, begin - 5.0}, "limit passed", {11.0, Anchor::end, 0.0, false, bad, {}});
  canvas.text({limit + 6.0, begin - 5.0}, "holds", {11.0, Anchor::start, 0.0, false, grey, {}});
  for (const double level : round_levels(axes.x.low, axes.x.high, 7)) {
    const double x = axes.across(level);
    canvas.line({x, begin}, {x, end}, {{0xc4c4c4}, 0.6});
    canvas.text({x, end + 15.0}, fmt::format("{:g}", std::round(level * 1e3) / 1e3 + 0.0), axis);
  }
  double y = begin;
  for (std::size_t k = 0; k < number; ++k, y += pitch) {
    const double low = axes.across(all[k].low), high = axes.across(all[k].high);
    const double middle = (low + high) / 2;
    canvas.text({from - 10.0, y + 16.0}, fitted(all[k].input, 11.5, names - 14.0),
                {11.5, Anchor::end, 0.0, false, black, {}});
    const auto bar = [&](double a, double b, Colour colour) {
      canvas.rectangle({std::min(a, b), y + 6.0}, std::abs(b - a), pitch - 12.0, {colour, {}});
    };
    bar(low, middle, lower);
    bar(middle, high, upper);
  }
  canvas.line({limit, begin}, {limit, end}, {bad, 1.6});
  return end + 20.0;
}

}  // namespace

Picture drawn_chances(const Results& results, std::size_t chosen) {
  const std::vector<Told> all = told_of(results);
  if (all.empty()) return {};
  Canvas canvas;
  double bottom = draw_heading(canvas, results.title, "How often a limit would be passed");
  bottom = draw_bars(canvas, all, bottom + 22.0);
  bool explained = false;
  const SolvedVariant* last = nullptr;
  for (const Told& one : all) {
    // One a variant: criteria of one room hang on the same inputs.
    const bool shown =
        one.solved == &results.variants.front() || one.solved == &results.variants[chosen];
    if (one.chance->tornado.empty() || one.solved == last || !shown) continue;
    if (!explained) {
      canvas.text({page_edge, bottom + 26.0},
                  "What moves it: the margin to the limit with one input at its lower (blue) and",
                  {11.5, Anchor::start, 0.0, false, grey, {}});
      canvas.text({page_edge, bottom + 41.0},
                  "upper end (orange), 9 in 10 between them, and all others in their middle",
                  {11.5, Anchor::start, 0.0, false, grey, {}});
      bottom += 46.0;
    }
    const std::string unit = one.chance->unit == "1" ? "fRsi" : "points of humidity at the surface";
    bottom = draw_tornado(
        canvas, one,
        fmt::format("{}: {}, {}", one.solved->variant.name, one.chance->criterion, unit),
        bottom + 26.0);
    last = one.solved;
    explained = true;
  }
  std::string description = "In how many of 100 cases a limit would be passed.";
  for (const Told& one : all)
    description += fmt::format(" {}: {}.", name_of(one, all), cases_of_100(one.chance->broken));
  return {std::move(canvas), bottom + 6.0,
          fmt::format("{}: how often a limit would be passed", results.title), description};
}

}  // namespace quoin::tools
