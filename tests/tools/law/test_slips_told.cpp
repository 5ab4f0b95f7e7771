// SPDX-License-Identifier: Apache-2.0
// Slips of people who begin: each is answered with the remedy that fits it.
#include <doctest/doctest.h>

#include <string>

#include "cases/grammar/recipe_words.hpp"
#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/faults.hpp"

namespace quoin::testing {
namespace {

struct Slip {
  const char* recipe;
  const char* right;   ///< as the starting case has it
  const char* slip;    ///< in its place
  const char* remedy;  ///< what one of the remedies must say; empty: it is read
};

constexpr Slip slips[] = {
    {"corner", "like: common brick", "like: brick", "'common brick'"},
    {"corner", "like: common brick", "like: lime stone", "'soft limestone'"},
    {"corner", "like: common brick", "like: sand stone", "'porous sandstone'"},
    {"corner", "like: common brick", "like: stone", "'hard limestone'"},
    {"corner", "like: common brick", "like: masonry", "'common brick'"},
    {"corner", "like: common brick", "like: granit", "'granite'"},
    {"corner", "material: lime plaster", "material: plaster", "'lime plaster'"},
    {"corner", "material: lime plaster", "material: lime", "'lime plaster'"},
    {"corner", "material: lime plaster", "material: plasterboard", "'gypsum board'"},
    {"corner", "material: lime plaster", "material: Drywall", "'gypsum board'"},
    {"corner", "material: lime plaster", "material: wood fiber", "'wood fibre board'"},
    {"corner", "material: lime plaster", "material: woodfibre", "'wood fibre board'"},
    {"corner", "material: lime plaster", "material: wood_fibre_board", "'wood fibre board'"},
    {"corner", "material: lime plaster", "material: timber", "'softwood across the grain'"},
    {"corner", "material: lime plaster", "material: rockwool", "'mineral wool'"},
    {"corner", "material: lime plaster", "material: glass wool", "'mineral wool'"},
    {"corner", "material: lime plaster", "material: polystyrene", "'EPS' or 'XPS'"},
    {"corner", "material: lime plaster", "material: insulation", "'wood fibre board'"},
    {"corner", "material: lime plaster", "material: air", "{air layer: 50}"},
    {"corner", "material: lime plaster", "material: air gap", "{air layer: 50}"},
    {"corner", "material: lime plaster", "material: wall bricks", "'wall brick'"},
    {"reveal", "frame: softwood across the grain", "frame: upvc", "'PVC'"},
    {"reveal", "frame: softwood across the grain", "frame: aluminum", "'aluminium'"},
    {"corner", "thickness: 330", "thickness: 330mm", ""},
    {"corner", "thickness: 330", "thickness: 330 Mm", "330 mm"},
    {"corner", "thickness: 330", "thickness: 33,0", "33.0"},
    {"corner", "thickness: 330", "thickness: 0.33", "0.33 m"},
    {"corner", "thickness: 330", "thickness: -330", "330 mm"},
    {"corner", "thickness: 330", "thickness: 13 in", "330.2 mm"},
    {"corner", "thickness: 330", "width: 330", "'thickness'"},
    {"corner", "{material: wall brick, thickness: 330}", "{wall brick, 330}",
     "{material: wall brick, thickness: 330}"},
    {"corner", "{material: wall brick, thickness: 330}", "wall brick: 330",
     "{material: wall brick, thickness: 330}"},
    {"corner", "{material: wall brick, thickness: 330}", "[330, wall brick]",
     "{material: wall brick, thickness: 330}"},
    {"corner", "{material: wall brick, thickness: 330}", "[wall brick, 330]", ""},
    {"corner", "- {material: wall brick", "-{material: wall brick", "a space after the dash"},
    {"corner", "humidity: 50", "humidity: 60%", ""},
    {"corner", "humidity: 50", "humidity: 0.6", "60 %"},
    {"corner", "humidity: 50", "humididty: 50", "'humidity'"},
    {"corner", "humidity: 50", "RH: 50", "'humidity'"},
    {"corner", "temperature: 20", "temp: 20", "'temperature'"},
    {"corner", "temperature: 20", "temperature: 20,5", "20.5"},
    {"corner", "temperature: 20", "temperature: 68 F", "20 °C"},
    {"corner", "  room: {is", "\troom: {is", "replace the tab by spaces"},
    {"corner", "is: inside", "is: indoor", "'inside'"},
    {"corner", "is: outside", "is: exterior", "'outside'"},
    {"corner", "is: outside", "is: outdoors", "'outside'"},
    {"corner", "moisture: sheltered", "moisture: wet", "'saturated'"},
    {"corner", "moisture: sheltered", "moisture: 8%", "8 vol-%"},
    {"corner", "turn: external", "turn: outside", "'external'"},
    {"corner", "fRsi: 0.75", "fRsi: 75", "0.75"},
    {"corner", "fRsi: 0.75", "fRsi: 0,75", "0.75"},
    {"corner", "  corner:", "  corners:", "'corner'"},
    {"wall base", "  wall base:", "  wall_base:", "'wall base'"},
    {"reveal", "  reveal:", "  window reveal:", "'reveal'"},
};

std::string remedies_for(const Slip& slip) {
  std::string text = *cases::starting_case(slip.recipe);
  const std::size_t at = text.find(slip.right);
  REQUIRE(at != std::string::npos);
  text.replace(at, std::string(slip.right).size(), slip.slip);
  std::string remedies;
  try {
    (void)cases::case_of(text, "slip.yaml");
  } catch (const cases::InputError& error) {
    for (const cases::Fault& fault : error.faults) remedies += fault.remedy + "\n";
  }
  return remedies;
}

}  // namespace

TEST_CASE("each slip of a beginner is answered with the remedy that fits it") {
  for (const Slip& slip : slips) {
    CAPTURE(slip.slip);
    const std::string remedies = remedies_for(slip), wanted = slip.remedy;
    if (wanted.empty()) {
      CHECK(remedies == "");
    } else {
      CHECK(remedies.find(wanted) != std::string::npos);
    }
  }
}

TEST_CASE("what is like nothing gets no remedy that misleads") {
  for (const char* word : {"velvet", "moss", "gas"}) {
    const std::string slip = std::string("material: ") + word;
    CAPTURE(slip);
    const std::string remedies =
        remedies_for({"corner", "material: lime plaster", slip.c_str(), ""});
    CHECK(remedies == "\n");  // one fault, without one
  }
}

TEST_CASE("words of the trade lead to the recipe that draws them") {
  CHECK(cases::recipes_for("party wall") == "partition");
  CHECK(cases::recipes_for("Floor-joist") == "floor");
  CHECK(cases::recipes_for("foundation") == "wall base");
  CHECK(cases::recipes_for("suspended floor") == "wall base");
  CHECK(cases::recipes_for("window sill") == "sill");
  CHECK(cases::recipes_for("velvet").empty());
}

}  // namespace quoin::testing
