// SPDX-License-Identifier: Apache-2.0
#include "tools/output/json/findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"
#include "tools/answer/find/readings.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/output/json/fields.hpp"
#include "tools/output/json/judged.hpp"
#include "tools/output/json/survey.hpp"
#include "tools/output/json/timber_ends.hpp"
#include "tools/output/json/units.hpp"
#include "tools/output/json/vapour.hpp"
#include "tools/output/json/year.hpp"

namespace quoin::tools {
namespace {

using Json = nlohmann::ordered_json;

constexpr int format_version = 1;

Json list() { return Json::array(); }

/// Writes one variant.
class VariantFindings {
 public:
  explicit VariantFindings(const SolvedVariant& solved)
      : solved_(solved), variant_(solved.variant) {}

  [[nodiscard]] Json json() const {
    Json all = {{"name", variant_.name},
                {"summary", solved_.summary},
                {"surface", surface_json(solved_)},
                {"heat", heat_json(solved_)},
                {"outcomes", outcomes_json(solved_)},
                {"verdicts", verdicts_json(solved_)},
                {"enough", enough_json(solved_)},
                {"year", years_json(solved_)},
                {"plain", plain()},
                {"psi_W_mK", psi()},
                {"materials", materials()},
                {"cut_planes", cut_planes()},
                {"warnings", solved_.warnings},
                {"checks", checks()},
                {"mesh", mesh()}};
    if (!variant_.readings.empty()) all["readings"] = readings();
    if (!solved_.chances.empty()) all["chance"] = chance_json(solved_.chances, variant_);
    if (solved_.vapour) all["vapour"] = vapour_json(solved_);
    if (solved_.drying) all["drying"] = drying_json(solved_);
    if (!solved_.timber_ends.empty()) all["timber_ends"] = timber_ends_json(solved_);
    return all;
  }

 private:
  [[nodiscard]] Json plain() const {
    Json all = list();
    for (const solver::PlainPart& part : solved_.plain) {
      all.push_back({{"name", part.name},
                     {"U_W_m2K", part.transmittance},
                     {"fRsi", part.surface_factor},
                     {"surface_temperature_C", part.surface_temperature}});
    }
    return all;
  }

  [[nodiscard]] Json psi() const {
    Json all = list();
    for (const solver::LinearTransmittance& psi : solved_.psi) {
      const bool stated = !variant_.recipe;
      all.push_back({{"dimensions", stated ? "as stated" : words_for(psi.dimensions)},
                     {"value", psi.value.value},
                     {"band", psi.value.band}});
      if (variant_.psi.catalogue) all.back()["catalogue"] = *variant_.psi.catalogue;
      if (psi.floor != solver::FloorLoss::none)
        all.back()["floor"] = psi.floor == solver::FloorLoss::solved ? "solved" : "ISO 13370";
    }
    return all;
  }

  [[nodiscard]] Json materials() const {
    Json all = list();
    for (const RegionId id : geometry::ids(variant_.regions)) {
      const cases::Region& region = variant_.regions[id];
      const quoin::materials::Material& material = region.material;
      all.push_back({{"name", region.name},
                     {"material", material.name},
                     {"state", region.state.empty() ? "dry" : region.state},
                     {"moisture_m3_m3", region.moisture},
                     {"conductivity_dry_W_mK", material.conductivity.value},
                     {"conductivity_W_mK", solved_.conductivity[id].value},
                     {"law", std::string(solved_.conductivity[id].law)},
                     {"source", material.conductivity.source},
                     {"confidence", words_for(material.conductivity.confidence)},
                     {"law_source", material.law_source},
                     {"law_confidence", words_for(material.law_confidence)}});
    }
    return all;
  }

  [[nodiscard]] Json readings() const {
    Json all = list();
    for (const ComparedReading& reading : compared_readings(solved_)) {
      all.push_back({{"probe", reading.probe},
                     {"read_C", reading.read},
                     {"plus_or_minus_K", reading.plus_minus},
                     {"computed_with_surface_resistances_C", reading.with_surface},
                     {"computed_with_heat_resistances_C", reading.with_heat},
                     {"computed_C", reading.computed},
                     {"explained", reading.explained}});
    }
    return all;
  }

  [[nodiscard]] Json cut_planes() const {
    Json all = list();
    for (const solver::CutPlane& plane : solved_.cut_planes) {
      all.push_back({{"from_mm", place_json(plane.from)},
                     {"to_mm", place_json(plane.to)},
                     {"departure", plane.departure},
                     {"distance_mm", mm(plane.distance)}});
    }
    return all;
  }

  [[nodiscard]] Json checks() const {
    Json all = list();
    const auto add = [&](const solver::Solution& solution, std::string_view purpose) {
      for (const solver::Check& check : solution.checks) {
        all.push_back({{"name", check.name},
                       {"purpose", purpose},
                       {"value", check.value},
                       {"limit", check.limit},
                       {"holds", check.holds}});
      }
    };
    add(solved_.surface, "surface");
    add(solved_.heat, "heat");
    return all;
  }

  [[nodiscard]] Json mesh() const {
    const geometry::Mesh& mesh = solved_.surface.field.mesh;
    return {{"nodes", mesh.nx() * mesh.ny()}, {"columns", mesh.nx()}, {"rows", mesh.ny()}};
  }

  const SolvedVariant& solved_;
  const cases::Variant& variant_;
};

Json change_json(const Change& change, const SolvedVariant& first) {
  Json colder = list();
  for (const Colder& each : change.colder) {
    colder.push_back({{"name", each.name},
                      {"x_mm", mm(each.place.x)},
                      {"y_mm", mm(each.place.y)},
                      {"before_C", each.before},
                      {"after_C", each.after}});
  }
  return {{"variant", change.variant},
          {"space", first.variant.spaces[change.space].name},
          {"coldest_before_C", change.before},
          {"coldest_after_C", change.after},
          {"moved_mm", mm(change.moved)},
          {"colder", std::move(colder)},
          {"words", change.words}};
}

/// A JSON text in which the signs that steer a terminal or turn the writing are spelt out.
std::string safe_text(const Json& findings, int indent) {
  const std::string text = findings.dump(indent, ' ', false, Json::error_handler_t::replace);
  std::string_view json = text;
  std::string safe;
  safe.reserve(json.size());
  while (!json.empty()) {
    const cases::Character next = cases::first_character(json);
    const std::size_t bytes = std::max<std::size_t>(next.bytes, 1);
    if (cases::is_harmful(next.code)) {
      safe += fmt::format("\\u{:04x}", static_cast<unsigned>(next.code));
    } else {
      safe += json.substr(0, bytes);
    }
    json.remove_prefix(bytes);
  }
  return safe;
}

Json findings_of(const Results& results) {
  Json json = {{"quoin", QUOIN_VERSION}, {"format", format_version},       {"title", results.title},
               {"note", results.note},   {"input_sha256", results.sha256}, {"variants", list()},
               {"changes", list()}};
  for (const SolvedVariant& solved : results.variants) {
    json["variants"].push_back(VariantFindings(solved).json());
  }
  for (const Change& change : results.changes) {
    json["changes"].push_back(change_json(change, results.variants.front()));
  }
  if (results.survey) {
    json["survey"] = survey_json(*results.survey);
  }
  return json;
}

}  // namespace

std::string findings_json(const Results& results) {
  return safe_text(findings_of(results), 1) + "\n";
}

std::string findings_line(const Results& results) {
  return safe_text(findings_of(results), -1) + "\n";
}

}  // namespace quoin::tools
