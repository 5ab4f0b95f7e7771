// SPDX-License-Identifier: Apache-2.0
// How often what is told of made-up surveys is right, as a table. Long.
//
// usage: quoin_coverage [SURVEYS OF EACH KIND] [FIRST NUMBER] [WORDS OF KINDS]
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "tests/coverage/coverage.hpp"
#include "tests/coverage/twins.hpp"

namespace {

using quoin::cases::ExplanationKind;
using quoin::testing::Coverage;
using quoin::testing::Detail;
using quoin::testing::Outcome;
using quoin::testing::Read;
using quoin::testing::Recipe;
using quoin::testing::share;
using quoin::testing::Slip;
using quoin::testing::Weather;
using quoin::testing::Wrong;

/// A worse way to work surveys out, where it shows.
struct Twin {
  std::string name;
  Slip slip = Slip::naive;
  Recipe recipe;
};

struct Kind {
  std::string name;
  Recipe recipe;
  bool calibrates = false;  ///< one of the kinds that are equally likely beforehand
};

constexpr auto better = ExplanationKind::conducts_better, less = ExplanationKind::conducts_less,
               drawn = ExplanationKind::as_drawn, covered = ExplanationKind::covered;

const std::vector<Kind> kinds{
    {"corner 225, better", {Detail::corner_225, better}, true},
    {"corner 225, less", {Detail::corner_225, less}, true},
    {"corner 225, as drawn", {Detail::corner_225, drawn}, true},
    {"corner 225, covered", {Detail::corner_225, covered}, true},
    {"corner 225, both", {Detail::corner_225, ExplanationKind::better_and_covered}, true},
    {"corner 225, thermometer", {Detail::corner_225, ExplanationKind::thermometer_off}, true},
    {"corner 225, colder", {Detail::corner_225, ExplanationKind::colder_outside}, true},
    {"corner 327, better", {Detail::corner_327, better}},
    {"corner 327, as drawn", {Detail::corner_327, drawn}},
    {"corner 500, better", {Detail::corner_500, better}},
    {"wall 225, better", {Detail::wall_225, better}},
    {"wall 225, less", {Detail::wall_225, less}},
    {"reveal 327, better", {Detail::reveal_327, better}},
    {"reveal 327, as drawn", {Detail::reveal_327, drawn}},
    {"foot 225, better", {Detail::foot_225, better}},
    {"foot 225, as drawn", {Detail::foot_225, drawn}},
    {"few readings",
     {Detail::corner_225, better, Wrong::nothing, Weather::steady, Read::contact, true}},
    {"infrared", {Detail::corner_225, better, Wrong::nothing, Weather::steady, Read::infrared}},
    {"pads", {Detail::corner_225, better, Wrong::nothing, Weather::steady, Read::pads}},
    {"weather, one value", {Detail::corner_225, better, Wrong::nothing, Weather::spot}},
    {"weather, lowest, highest", {Detail::corner_225, better, Wrong::nothing, Weather::lowest}},
    {"weather, two days", {Detail::corner_225, better, Wrong::nothing, Weather::history}},
    {"weather, 327, two days", {Detail::corner_327, better, Wrong::nothing, Weather::history}},
    {"! rough", {Detail::corner_225, better, Wrong::rough}},
    {"! wild", {Detail::corner_225, better, Wrong::wild}},
    {"! thermometer 1 K off", {Detail::corner_225, better, Wrong::thermometer}},
    {"! zone half as long", {Detail::corner_225, better, Wrong::extent}},
    {"! Rsi two sd off", {Detail::corner_225, better, Wrong::resistance}},
    {"! afternoon, 3 K", {Detail::corner_225, better, Wrong::afternoon}},
    {"! graded", {Detail::corner_225, better, Wrong::graded}},
    {"! as drawn, rough", {Detail::corner_225, drawn, Wrong::rough}},
    {"! as drawn, wild", {Detail::corner_225, drawn, Wrong::wild}},
    {"! as drawn, afternoon", {Detail::corner_225, drawn, Wrong::afternoon}},
    {"! as drawn, Rsi two sd", {Detail::corner_225, drawn, Wrong::resistance}},
    {"! as drawn, evaporating", {Detail::corner_225, drawn, Wrong::evaporation}},
};

const std::vector<Twin> twins{
    {"naive, corner 225", Slip::naive, {Detail::corner_225, better}},
    {"scale as said, rough", Slip::fixed_scale, {Detail::corner_225, better, Wrong::rough}},
    {"one extent, zone half as long",
     Slip::one_extent,
     {Detail::corner_225, better, Wrong::extent}},
    {"weighted, pads",
     Slip::weighted,
     {Detail::corner_225, better, Wrong::nothing, Weather::steady, Read::pads}},
};

std::string twin_row(const Twin& twin, std::size_t surveys, std::uint32_t first) {
  std::size_t told = 0, ratio = 0, conductivity = 0;
  for (std::size_t s = 0; s < surveys; ++s) {
    const auto made =
        quoin::testing::made_survey(twin.recipe, first + static_cast<std::uint32_t>(s));
    const auto held = quoin::testing::held_with(twin.slip, made);
    if (!held) continue;
    ++told;
    ratio += held->ratio ? 1 : 0;
    conductivity += held->conductivity ? 1 : 0;
  }
  return fmt::format("| {} | {} | {:.2f} | {:.2f} |\n", twin.name, told, share(ratio, told),
                     share(conductivity, told));
}

/// Chances as they were told, in classes, beside how often they came true.
struct Calibration {
  struct Class {
    std::size_t number = 0;
    std::size_t right = 0;
    double told = 0.0;
  };
  std::array<Class, 5> classes;  ///< below 0.2, 0.4 ...

  void add(const std::vector<std::pair<double, bool>>& chances) {
    for (const auto& [told, right] : chances) {
      Class& one = classes[std::min<std::size_t>(4, static_cast<std::size_t>(5 * told))];
      ++one.number;
      one.told += told;
      one.right += right ? 1 : 0;
    }
  }
};

std::string row(const std::string& name, const Coverage& found, double rank) {
  return fmt::format(
      "| {} | {} | {:.2f} | {:.2f} | {:.2f} | {:.2f} | {:.2f} | {:.2f} | {:.2f} | {:.2f} |\n", name,
      found.told, share(found.ratio, found.told),
      share(found.conductivity, found.conductivity_told), share(found.factor, found.factor_told),
      rank, share(found.best_right, found.surveys), share(found.put_aside, found.surveys),
      share(found.named, found.surveys), share(found.named_right, found.named));
}

void print(const std::string& of, const Calibration& calibration) {
  std::cout << "\n| chance told of " << of << " | number | mean told | true |\n|---|---|---|---|\n";
  for (const auto& one : calibration.classes) {
    if (one.number == 0) continue;
    const auto number = &one - calibration.classes.data();
    std::cout << fmt::format(
        "| {:.1f} to {:.1f} | {} | {:.2f} | {:.2f} |\n", 0.2 * static_cast<double>(number),
        0.2 * static_cast<double>(number + 1), one.number,
        one.told / static_cast<double>(one.number), share(one.right, one.number));
  }
}

}  // namespace

int main(int count, char** words) {
  const auto number = [&](int k, unsigned long otherwise) {
    return count > k ? std::strtoul(words[k], nullptr, 10) : otherwise;
  };
  const std::size_t surveys = number(1, 300);
  const auto first = static_cast<std::uint32_t>(number(2, 0));
  const std::string wanted = count > 3 ? words[3] : "";
  std::cout << "| truth | told | ratio | conductivity | fRsi | mean rank | best | put aside | "
               "named | right |\n"
               "|---|---|---|---|---|---|---|---|---|---|\n";
  Calibration explanations, broken;
  for (const Kind& kind : kinds) {
    if (kind.name.find(wanted) == std::string::npos) continue;
    Coverage found;
    double ranks = 0.0;
    for (std::size_t s = 0; s < surveys; ++s) {
      const Outcome outcome =
          quoin::testing::outcome_of(kind.recipe, first + static_cast<std::uint32_t>(s));
      found.add(outcome);
      ranks += outcome.ratio ? outcome.ratio->rank : 0.0;
      if (kind.calibrates) explanations.add(outcome.chances);
      if (kind.recipe.wrong == Wrong::nothing) broken.add(outcome.broken);
    }
    std::cout << row(kind.name, found,
                     found.told == 0 ? 0.0 : ranks / static_cast<double>(found.told))
              << std::flush;
  }
  std::cout << "\n| worse way | told | ratio | conductivity |\n|---|---|---|---|\n";
  for (const Twin& twin : twins) {
    if (twin.name.find(wanted) != std::string::npos)
      std::cout << twin_row(twin, surveys, first) << std::flush;
  }
  print("an explanation", explanations);
  print("mould, of surveys without !", broken);
}
