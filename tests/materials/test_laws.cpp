// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "materials/conductivity.hpp"
#include "tests/materials/samples.hpp"
#include "tests/support/csv.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::csv_of;
using quoin::testing::CsvRow;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

// --- six old brick masonries, measured dry and saturated ----------------------------------------

struct Masonry {
  std::string name;
  double density, saturation, dry, saturated;

  [[nodiscard]] Material under(Law law) const {
    return material(dry, density, saturation, std::move(law));
  }
};

std::vector<Masonry> masonries() {
  const auto table =
      csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/historic_brick_masonry_measured.csv");
  std::vector<Masonry> measured;
  for (const CsvRow& row : table.rows()) {
    measured.push_back({row.text("sample"), row.number("density"), row.number("absorption_m3m3"),
                        row.number("lam_dry_test"), row.number("lam_sat_test")});
  }
  return measured;
}

TEST_CASE("the line between dry and saturated passes both ends of each measured masonry") {
  CHECK(masonries().size() == 6);
  for (const Masonry& masonry : masonries()) {
    CAPTURE(masonry.name);
    const Material wall = masonry.under(BetweenDryAndSaturated{masonry.saturated});
    CHECK(conductivity_of(wall, 0.0).value == masonry.dry);
    const Conductivity wet = conductivity_of(wall, masonry.saturation);
    CHECK(wet.value == WithinRel{masonry.saturated, 1e-15});  // two roundings
    CHECK_FALSE(wet.warning.has_value());
    // Half full conducts half of the way.
    CHECK(conductivity_of(wall, masonry.saturation / 2).value ==
          WithinRel{(masonry.dry + masonry.saturated) / 2, 1e-15});
  }
}

TEST_CASE("the exponential law run to saturation overshoots the measured masonries and warns") {
  for (const Masonry& masonry : masonries()) {
    CAPTURE(masonry.name);
    const Material wall = masonry.under(Exponential{.per_volume = 10.0});
    const Conductivity wet = conductivity_of(wall, masonry.saturation);
    CHECK(wet.value > 3.4 * masonry.saturated);
    CHECK(wet.value < 6.0 * masonry.saturated);
    REQUIRE(wet.warning.has_value());
    CHECK(wet.warning->find("the law 'exponential' is trusted to 0.05 m3/m3") != std::string::npos);
    // Moisture taken up from the air is what the law is for.
    CHECK_FALSE(conductivity_of(wall, 0.012).warning.has_value());
    CHECK(conductivity_of(wall, 0.012).value == WithinRel{masonry.dry * std::exp(0.12), 1e-15});
  }
}

TEST_CASE("a line of 8.2 to 9.5 % for each mass-% passes through all measured masonries") {
  const auto increase_through = [](const Masonry& masonry) {
    const double mass_percent = 100.0 * masonry.saturation * 1000.0 / masonry.density;
    return 100.0 * (masonry.saturated / masonry.dry - 1.0) / mass_percent;
  };
  for (const Masonry& masonry : masonries()) {
    CAPTURE(masonry.name);
    const double increase = increase_through(masonry);
    CHECK(increase == WithinAbs{8.85, 0.70});  // 8.18 (printed 8.2) to 9.54 (printed 9.5)
    const Conductivity wet =
        conductivity_of(masonry.under(PerMassPercent{increase}), masonry.saturation);
    CHECK(wet.value == WithinRel{masonry.saturated, 1e-14});
    CHECK_FALSE(wet.warning.has_value());
    // Taken as % for each volume-% the same number would overshoot.
    CHECK(conductivity_of(masonry.under(PerMassPercent{increase * masonry.density / 1000.0}),
                          masonry.saturation)
              .value > 1.3 * masonry.saturated);
  }
}

TEST_CASE("the classic table lies 16 to 36 % above the measured masonries at saturation") {
  for (const Masonry& masonry : masonries()) {
    CAPTURE(masonry.name);
    const Material wall = masonry.under(PerVolumeTable{});
    const double ratio = conductivity_of(wall, masonry.saturation).value / masonry.saturated;
    CHECK(ratio > 1.155);
    CHECK(ratio < 1.365);
  }
}

// --- moist concrete
// -------------------------------------------------------------------------------

TEST_CASE("a table of the measured moist concrete gives back every measured value") {
  const auto measured =
      csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/concrete_moist_measured.csv");
  CHECK(measured.rows().size() == 7);
  PerVolumeTable law;
  law.factors.clear();
  for (const CsvRow& row : measured.rows()) {
    law.factors.emplace_back(100.0 * row.number("psi_m3m3"), row.number("factor"));
  }
  const Material concrete = material(1.16, 2200, 0.15, law);
  const Material by_exponential = material(1.16, 2200, 0.15, Exponential{.per_volume = 4.0});
  for (const CsvRow& row : measured.rows()) {
    const double moisture = row.number("u_kgkg") * 2200.0 / 1000.0;
    CAPTURE(moisture);
    const Conductivity moist = conductivity_of(concrete, moisture);
    // Factors are printed to 1e-4, conductivities to 0.01.
    CHECK(moist.value == WithinAbs{row.number("lam"), 1e-3});
    CHECK_FALSE(moist.warning.has_value());
    if (moisture > 0.0) {  // the tabulated exponential of concrete, 4, is far too low for this one
      CHECK_FALSE(conductivity_of(by_exponential, moisture).value ==
                  WithinRel{row.number("lam"), 0.25});
    }
  }
}

TEST_CASE("a table is straight between its rows, keeps its last factor and says so") {
  const Material wall = material(0.6, 1700, 0.30, PerVolumeTable{});
  CHECK(conductivity_of(wall, 0.0).value == 0.6);
  CHECK(conductivity_of(wall, 0.005).value == WithinRel{0.6 * 1.15, 1e-15});
  CHECK(conductivity_of(wall, 0.075).value == WithinRel{0.6 * 1.925, 1e-15});
  CHECK(conductivity_of(wall, 0.25).value == WithinRel{0.6 * 2.75, 1e-15});
  CHECK_FALSE(conductivity_of(wall, 0.25).warning.has_value());
  CHECK(conductivity_of(wall, 0.30).value == WithinRel{0.6 * 2.75, 1e-15});
  CHECK(conductivity_of(wall, 0.30).warning.has_value());
}

// --- all laws
// ---------------------------------------------------------------------------------------

const std::vector<Law> one_of_each = {Constant{}, BetweenDryAndSaturated{1.5},
                                      Exponential{.per_volume = 4.0, .per_mass = 2.0},
                                      PerMassPercent{8.5}, PerVolumeTable{}};

TEST_CASE("every law gives the dry value when dry and never falls as moisture grows") {
  CHECK(one_of_each.size() == std::variant_size_v<Law>);
  for (const Law& law : one_of_each) {
    CAPTURE(name_of(law));
    const Material wall = material(0.6, 1700, 0.25, law);
    CHECK(flaws(wall).empty());
    CHECK(conductivity_of(wall, 0.0).value == 0.6);
    CHECK_FALSE(conductivity_of(wall, 0.0).warning.has_value());
    CHECK(conductivity_of(wall, 0.0).law == name_of(law));
    double former = 0.0;
    for (double moisture = 0.0; moisture <= 0.25; moisture += 0.01) {
      CHECK(conductivity_of(wall, moisture).value >= former);
      former = conductivity_of(wall, moisture).value;
    }
  }
}

/// Notes what a law asks for.
struct Notes {
  std::vector<std::string> keys;
  std::vector<std::string> required;

  void conductivity(std::string_view key, double& member, double low, double high,
                    std::string_view help) {
    note(key, member, low, high, help);
  }
  void number(std::string_view key, double& member, double low, double high,
              std::string_view help) {
    note(key, member, low, high, help);
  }
  void volume_fraction(std::string_view key, double& member, double low, double high,
                       std::string_view help) {
    note(key, member, low, high, help);
  }
  void table(std::string_view key, std::vector<std::pair<double, double>>& rows,
             std::string_view first, std::string_view second, std::string_view help) {
    keys.emplace_back(key);
    CHECK_FALSE(rows.empty());
    CHECK_FALSE(first.empty());
    CHECK_FALSE(second.empty());
    CHECK_FALSE(help.empty());
  }
  void note(std::string_view key, double& member, double low, double high, std::string_view help) {
    keys.emplace_back(key);
    if (std::isnan(member)) {
      required.emplace_back(key);
    } else {
      CHECK(member >= low);
      CHECK(member <= high);
    }
    CHECK_FALSE(help.empty());
  }
};

template <typename One>
Notes notes() {
  Notes made;
  One law;
  describe(made, law);
  return made;
}

TEST_CASE("laws tell their inputs, and which have no default") {
  CHECK(notes<Constant>().keys.empty());
  CHECK(notes<BetweenDryAndSaturated>().required ==
        std::vector<std::string>{"saturated conductivity"});
  CHECK(notes<Exponential>().keys ==
        std::vector<std::string>{"per volume", "per mass", "trusted to"});
  CHECK(notes<Exponential>().required.empty());
  CHECK(notes<PerMassPercent>().required == std::vector<std::string>{"increase"});
  CHECK(notes<PerVolumeTable>().keys == std::vector<std::string>{"factors"});
}

TEST_CASE("no two laws have one name") {
  std::set<std::string_view> names;
  for (const Law& law : one_of_each) names.insert(name_of(law));
  CHECK(names.size() == one_of_each.size());
}

}  // namespace
