// SPDX-License-Identifier: Apache-2.0
#include "cases/text/synonyms.hpp"

#include <algorithm>
#include <array>

namespace quoin::cases {
namespace {

/// A word, and what it is called here, separated by bars.
struct Synonym {
  std::string_view word;
  std::string_view called;
};

// Common practice, no source. Each word once; what it is called, the likeliest first.
constexpr std::array<Synonym, 66> table{{
    // materials
    {"adobe", "cob"},
    {"aluminum", "aluminium"},
    {"ashlar", "soft limestone|dense sandstone"},
    {"breeze block", "concrete block"},
    {"calsil", "calcium silicate board"},
    {"cement plaster", "cement render"},
    {"drywall", "gypsum board"},
    {"earth", "clay soil|cob"},
    {"expanded polystyrene", "EPS"},
    {"extruded polystyrene", "XPS"},
    {"fibreboard", "wood fibre board"},
    {"fiberboard", "wood fibre board"},
    {"glass wool", "mineral wool"},
    {"gravel", "sand and gravel"},
    {"hempcrete", "hemp lime"},
    {"insulation", "wood fibre board|mineral wool|calcium silicate board|cork board"},
    {"iron", "steel"},
    {"masonry", "common brick|soft limestone|limestone rubble|sandstone rubble"},
    {"metal", "steel|aluminium"},
    {"mortar", "lime mortar|cement mortar"},
    {"oak", "oak across the grain|oak along the grain"},
    {"pine", "softwood across the grain|softwood along the grain"},
    {"plasterboard", "gypsum board"},
    {"polystyrene", "EPS|XPS"},
    {"rockwool", "mineral wool"},
    {"sand", "sand and gravel"},
    {"soil", "clay soil|sand and gravel"},
    {"spruce", "softwood across the grain|softwood along the grain"},
    {"stone wool", "mineral wool"},
    {"styrofoam", "EPS|XPS"},
    {"timber", "softwood across the grain|softwood along the grain|oak across the grain"},
    {"wood fiber", "wood fibre board"},
    {"wood fiber board", "wood fibre board"},
    {"woodfibre", "wood fibre board"},
    {"woodfiber", "wood fibre board"},
    // coats and membranes
    {"damp proof membrane", "polyethylene sheet|bitumen felt"},
    {"dpc", "bitumen felt|polyethylene sheet"},
    {"membrane", "breather membrane|polyethylene sheet|bitumen felt"},
    {"polythene", "polyethylene sheet"},
    {"tar paper", "bitumen paper|bitumen felt"},
    {"vapor barrier", "polyethylene sheet|aluminium foil"},
    {"vapour barrier", "polyethylene sheet|aluminium foil"},
    {"vapour control layer", "polyethylene sheet|aluminium foil"},
    {"whitewash", "limewash"},
    // keys
    {"depth", "thickness"},
    {"lambda", "conductivity"},
    {"mu", "vapour resistance"},
    {"relative humidity", "humidity"},
    {"rh", "humidity"},
    {"rse", "resistance"},
    {"rsi", "resistance"},
    {"temp", "temperature"},
    {"width", "thickness"},
    // kinds of spaces, turns, moistures
    {"exterior", "outside|external"},
    {"heated", "inside"},
    {"indoor", "inside"},
    {"indoors", "inside"},
    {"interior", "inside|internal"},
    {"moist", "damp|exposed"},
    {"outdoor", "outside"},
    {"outdoors", "outside"},
    {"outside", "external"},
    {"inside", "internal"},
    {"soaked", "saturated"},
    {"unheated space", "unheated"},
    {"wet", "saturated|damp"},
}};

}  // namespace

std::vector<std::string> synonyms(std::string_view word, const std::vector<std::string>& known) {
  std::vector<std::string> found;
  const auto* entry = std::find_if(table.begin(), table.end(),
                                   [&](const Synonym& each) { return each.word == word; });
  if (entry == table.end()) return found;
  for (std::string_view rest = entry->called; !rest.empty();) {
    const std::size_t bar = std::min(rest.find('|'), rest.size());
    if (std::find(known.begin(), known.end(), rest.substr(0, bar)) != known.end())
      found.emplace_back(rest.substr(0, bar));
    rest.remove_prefix(std::min(bar + 1, rest.size()));
  }
  return found;
}

}  // namespace quoin::cases
