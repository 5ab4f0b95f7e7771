// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/vapour_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "cases/model/membranes.hpp"
#include "cases/text/sentences.hpp"
#include "geometry/surface.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/words/figures.hpp"

namespace quoin::tools {
namespace {

std::string name_of(const cases::Variant& variant, const geometry::Fill& fill) {
  if (const auto* region = std::get_if<RegionId>(&fill)) return variant.regions[*region].name;
  if (const auto* membrane = std::get_if<geometry::MembraneId>(&fill))
    return cases::display_name(variant.membranes[*membrane]);
  return variant.spaces[std::get<SpaceId>(fill)].name;
}

/// The warmest air inside.
SpaceId room_of(const cases::Variant& variant) {
  SpaceId room;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const cases::Space& space = variant.spaces[id];
    if (space.is != cases::SpaceKind::inside || space.air != id) continue;
    if (!room.valid() || space.temperature > variant.spaces[room].temperature) room = id;
  }
  return room;
}

/// How near each of the places where two meet comes to the surface of an air, m.
std::vector<double> distances(const geometry::Mesh& mesh, const solver::Sites& sites,
                              const solver::Meeting& meeting, const cases::Variant& variant,
                              SpaceId air) {
  std::vector<geometry::Point> surface;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    if (variant.spaces[face.space].air == air) surface.push_back(mesh.place(face.from));
  }
  std::vector<double> nearest(sites.parts(meeting), std::numeric_limits<double>::infinity());
  for (std::size_t n = 0; n < sites.nodes().size(); ++n) {
    const solver::Site site = sites.site(n);
    if (site.meeting != meeting) continue;
    const geometry::Point here = mesh.place(sites.nodes().of_mesh(n));
    for (const geometry::Point there : surface) {
      double& known = nearest[site.part];
      known = std::min(known, std::hypot(here.x - there.x, here.y - there.y));
    }
  }
  return nearest;
}

/// Which of several places where the same two meet, counted from the room; empty where there is
/// but one, or where they lie alike.
std::string which_of(const SolvedVariant& solved, const solver::Meeting& meeting,
                     std::size_t part) {
  constexpr double alike = 1e-3;  // m
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  const solver::Sites sites(mesh);
  const SpaceId room = room_of(solved.variant);
  if (sites.parts(meeting) < 2 || !room.valid()) return "";
  const std::vector<double> all = distances(mesh, sites, meeting, solved.variant, room);
  std::size_t nearer = 0;
  for (std::size_t k = 0; k < all.size(); ++k) {
    if (k == part) continue;
    if (!(std::abs(all[k] - all[part]) > alike)) return "";
    if (all[k] < all[part]) ++nearer;
  }
  const std::string& name = solved.variant.spaces[room].name;
  if (all.size() == 2)
    return fmt::format(", the one {} {}", nearer == 0 ? "nearer to" : "farther from", name);
  return fmt::format(", no. {} of {} from {}", nearer + 1, all.size(), name);
}

/// Months after which a section that held water holds none; nothing where it keeps some.
std::optional<std::size_t> dry_after(const WaterYear& place) {
  std::size_t last = 0;
  for (std::size_t k = 0; k < place.water.size(); ++k) {
    if (place.water[k] > 0.0) last = k;
  }
  if (last + 1 == place.water.size()) return std::nullopt;
  return last + 1;
}

/// "31.2", or "31.2 ± 0.5" where grid and solver leave so much open that it shows.
std::string with_band(double value, double band) {
  constexpr double shows = 0.005;  // of the value, whose three digits are told
  const double size = std::abs(value);
  if (band < shows * size) return three_digits(value);
  const int decimals = size >= 100.0 ? 0 : size >= 10.0 ? 1 : size >= 1.0 ? 2 : 3;
  const std::string told = size < 0.1 ? three_digits(value) : fixed(value, decimals);
  return fmt::format("{} ± {}", told, fixed_band(band, decimals));
}

std::string amount(double water, double band, double length) {
  return length > 0.0 ? with_band(water / length, band / length) + " kg/m²"
                      : with_band(water, band) + " kg/m";
}

std::string place_words(const SolvedVariant& solved, const VapourYear& year,
                        const WaterYear& place) {
  const auto month = [&](std::size_t k) { return month_name((*year.first + k) % 12); };
  std::string text =
      fmt::format("{}: at most {}, at the end of {}, most at {:.0f}, {:.0f} mm",
                  words_for(solved, place.meeting, place.part),
                  amount(place.water[place.most], place.band, place.length), month(place.most),
                  1000 * place.place.x + 0.0, 1000 * place.place.y + 0.0);
  if (const auto dry = dry_after(place))
    return text + fmt::format("; it has dried by the end of {}.", month(*dry));
  return text + fmt::format("; {} are left after a year: it gathers from year to year.",
                            amount(place.water.back(), 0.0, place.length));
}

std::string at(geometry::Point place) {
  return fmt::format("{:.0f}, {:.0f} mm", 1000.0 * place.x + 0.0, 1000.0 * place.y + 0.0);
}

/// Whether masonry in it holds water of its own.
bool holds_water(const cases::Variant& variant) {
  return std::any_of(variant.regions.begin(), variant.regions.end(),
                     [](const cases::Region& region) {
                       return region.part == materials::Part::fabric &&
                              materials::wetter_than_damp(region.material, region.moisture);
                     });
}

/// Where vapour condenses at the stated conditions, in words.
std::string stated_words(const SolvedVariant& solved) {
  const VapourCheck& check = *solved.vapour;
  std::string text;
  if (check.stated->places.empty()) {
    const bool wet = holds_water(solved.variant);
    text = fmt::format("{}; the most humid pores, at {}, {} {:.0f} %.",
                       wet ? "no vapour of the airs condenses" : "condenses nowhere",
                       at(check.stated->dampest), wet ? "would have" : "have",
                       100.0 * check.stated->humidity);
  }
  for (const solver::CondensingPlace& place : check.stated->places) {
    const double rate = grams_a_day(place.rate.value), band = grams_a_day(place.rate.band);
    const bool line = place.length > 0.0;
    const double by = line ? place.length : 1.0;
    const std::string_view unit = line ? "m²" : "m";
    const std::string where = words_for(solved, place.meeting, place.part);
    text += fmt::format(
        "{}: {} g/({}·day), most at {}{}.", text.empty() ? where : " " + cases::capital(where),
        with_band(rate / by, band / by), unit, at(place.most),
        check.days ? fmt::format("; {:.3g} kg/{} in {:.0f} days", rate / by * *check.days / 1000.0,
                                 unit, *check.days)
                   : "");
  }
  for (const std::string& remark : check.remarks) text += " " + remark + ".";
  return text;
}

/// What gathers over the year, in words.
std::string year_words(const SolvedVariant& solved) {
  const VapourYear& year = *solved.vapour->year;
  std::string remarks;
  for (const std::string& remark : solved.vapour->remarks) remarks += " " + remark + ".";
  if (!year.first) return "no water gathers within the section in any month." + remarks;
  std::string text =
      fmt::format("water gathers from {} on. ", std::string(month_name(*year.first)));
  for (const WaterYear& place : year.places) {
    text += cases::capital(place_words(solved, year, place)) + " ";
  }
  text.pop_back();
  return text + remarks;
}

/// The wettest place and how wet it gets; empty where nothing condenses.
std::string wettest(const SolvedVariant& solved) {
  const VapourCheck& check = *solved.vapour;
  if (check.year) {
    if (check.year->places.empty()) return "";
    const WaterYear& place = check.year->places.front();
    return fmt::format("{}, at most {} in the year{}", words_for(solved, place.meeting, place.part),
                       amount(place.water[place.most], 0.0, place.length),
                       dry_after(place) ? "" : ", and more from year to year");
  }
  if (check.stated->places.empty()) return "";
  const solver::CondensingPlace& place = check.stated->places.front();
  const double by = place.length > 0.0 ? place.length : 1.0;
  return fmt::format("{}, {} g/({}·day)", words_for(solved, place.meeting, place.part),
                     three_digits(grams_a_day(place.rate.value) / by),
                     place.length > 0.0 ? "m²" : "m");
}

}  // namespace

std::string words_for(const SolvedVariant& solved, const solver::Meeting& meeting,
                      std::size_t part) {
  const cases::Variant& variant = solved.variant;
  const auto& [one, other] = meeting;
  const std::string first = name_of(variant, one), second = name_of(variant, other);
  if (const auto* space = std::get_if<SpaceId>(&other)) {
    const auto& coat = variant.spaces[*space].coat;
    return fmt::format("under the {} towards {}", coat ? "coat, " + coat->name + "," : "surface",
                       second);
  }
  return (first == second ? "within " + first : fmt::format("between {} and {}", first, second)) +
         which_of(solved, meeting, part);
}

std::string drying_time(double seconds) {
  if (!std::isfinite(seconds)) return "never";
  const double days = seconds / 86400.0;
  if (days < 1.0) return "1 day";
  if (days < 100.0) return fmt::format("{:.0f} days", days);
  if (days < 300.0) return fmt::format("{:.0f} months", days / 30.4);
  return days < 3652.0 ? fmt::format("{:.1f} years", days / 365.25)
                       : fmt::format("{:.0f} years", days / 365.25);
}

std::string three_digits(double value) {
  return std::abs(value) >= 100.0 ? fmt::format("{:.0f}", value) : fmt::format("{:.3g}", value);
}

LedgerTable ledger_table(const SolvedVariant& solved) {
  const DryingLedger& ledger = *solved.drying;
  LedgerTable table;
  if (ledger.rows.empty()) return table;
  const bool inner = !ledger.rows.front().inside_coat.empty();
  table.coats = {"coat outside"};
  if (inner) table.coats.emplace_back("coat inside");
  for (const SpaceId air : ledger.airs) table.airs.push_back(solved.variant.spaces[air].name);
  for (const DryingRow& row : ledger.rows) {
    std::vector<std::string> cells{row.outside_coat};
    if (inner) cells.push_back(row.inside_coat);
    for (const double out : row.out) cells.push_back(three_digits(grams_a_day(out)));
    cells.push_back(drying_time(row.seconds));
    table.cells.push_back(std::move(cells));
  }
  return table;
}

std::string vapour_words(const SolvedVariant& solved) {
  return solved.vapour->year ? year_words(solved) : stated_words(solved);
}

std::string vapour_remark(const SolvedVariant& solved) {
  if (!solved.vapour) return "";
  const std::string where = wettest(solved);
  if (where.empty()) return "";
  return fmt::format(
      "vapour condenses {}, by diffusion alone; no outcome counts it: have a transient assessment "
      "(EN 15026) made before anything is built",
      where);
}

std::string drying_words(const SolvedVariant& solved) {
  const DryingLedger& ledger = *solved.drying;
  if (ledger.rows.empty())
    return solved.variant.name + ": nothing in it is so wet that its pores are saturated.";
  std::string text = fmt::format(
      "{}: {:.1f} kg of water a metre of section to go from {}, down to {}{}. What "
      "leaves is told by the m² of surface with the wet part behind it.",
      solved.variant.name, ledger.excess, fmt::join(ledger.wet, ", "), ledger.down_to,
      ledger.by_month ? ", at the means of the year" : ", at the stated conditions");
  double cooling = 0.0;
  for (const DryingRow& row : ledger.rows) cooling = std::max(cooling, row.cooling);
  if (cooling < 0.5) return text;
  return text + fmt::format(
                    " The fastest of these would cool their surface by up to {:.1f} K, which slows "
                    "them down and is left out.",
                    cooling);
}

}  // namespace quoin::tools
