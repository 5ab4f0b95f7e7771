// SPDX-License-Identifier: Apache-2.0
#include "tools/door/door.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>

#include "cases/house.hpp"
#include "cases/meaning/catalogue.hpp"
#include "cases/schema.hpp"
#include "cases/starting_case.hpp"
#include "cases/text/words.hpp"
#include "geometry/section.hpp"
#include "materials/coats.hpp"
#include "materials/conductivity.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/house_run.hpp"
#include "tools/answer/run.hpp"
#include "tools/door/edit.hpp"
#include "tools/door/handles.hpp"
#include "tools/door/plate.hpp"
#include "tools/door/told.hpp"
#include "tools/draw/pictures.hpp"
#include "tools/output/field/csv_surface.hpp"
#include "tools/output/file_names.hpp"
#include "tools/output/html/report.hpp"
#include "tools/output/json/findings.hpp"

namespace quoin::door {
namespace {

using Json = nlohmann::ordered_json;

solver::Effort effort_of(int threads) {
  solver::Effort effort;
  effort.linear.threads = threads;
  return effort;
}

tools::Results results_in(std::string_view text, const Wanted& wanted) {
  const cases::Case source = case_in(text, wanted.beside, wanted.of_house);
  if (!wanted.variant.empty()) (void)variant_in(source, wanted.variant);
  return tools::results_of(source, "", effort_of(wanted.threads), {}, wanted.variant);
}

void add(Json& named, const std::string& name, const tools::Picture& picture,
         const std::string& note) {
  if (!picture.is_empty()) named[name] = picture.noted(note).svg();
}

/// The pictures under the names of their files.
Json pictures_json(const tools::Results& results) {
  const tools::Pictures pictures = tools::pictures_of(results);
  const std::vector<std::string> stems = tools::file_stems(results.variants);
  Json named = Json::object();
  if (!pictures.sections.empty())
    add(named, "section.svg", pictures.sections.front(), results.note);
  for (std::size_t v = 0; v < stems.size(); ++v) {
    add(named, "field-" + stems[v] + ".svg", pictures.fields[v], results.note);
    add(named, "flow-" + stems[v] + ".svg", pictures.flows[v], results.note);
  }
  add(named, "surface.svg", pictures.surface, results.note);
  add(named, "compare.svg", pictures.compare, results.note);
  return named;
}

/// A JSON object with one member more at its end.
std::string with_member(std::string object, const std::string& name, const Json& member) {
  object.erase(object.find_last_of('}'));
  while (object.back() == '\n' || object.back() == ' ') object.pop_back();
  return object + fmt::format(", \"{}\": {}}}\n", name, member.dump());
}

Json states_of(const materials::Material& material) {
  Json states = Json::array();
  for (const auto& [name, state] : materials::named_states) {
    const auto moisture = materials::moisture_of(material, state);
    const double* known = std::get_if<double>(&moisture);
    if (known == nullptr) continue;
    states.push_back({{"state", name},
                      {"m3_per_m3", *known},
                      {"W_per_mK", materials::conductivity_of(material, *known).value}});
  }
  return states;
}

}  // namespace

std::string solve(std::string_view text, const Wanted& wanted) {
  return or_refusal([&]() -> std::string {
    if (cases::is_house(text)) {
      const cases::House house = cases::house_of(text, "house", files_of(wanted.beside));
      std::string lines;
      for (const tools::Results& results : tools::results_of(house, effort_of(wanted.threads))) {
        std::string line = tools::findings_line(results);
        if (wanted.pictures)
          line = with_member(std::move(line), "pictures", pictures_json(results));
        lines += line;
      }
      return lines;
    }
    const tools::Results results = results_in(text, wanted);
    std::string findings = tools::findings_json(results);
    if (!wanted.pictures) return findings;
    return with_member(std::move(findings), "pictures", pictures_json(results));
  });
}

std::string report(std::string_view text, const Beside& beside, bool of_house) {
  return or_refusal([&] {
    return tools::report_page(results_in(text, {"", false, beside, 1, of_house}));
  });
}

std::string surface_table(std::string_view text, const Beside& beside, bool of_house) {
  return or_refusal([&] {
    return tools::surface_csv(results_in(text, {"", false, beside, 1, of_house}));
  });
}

std::string start(std::string_view recipe) {
  return or_refusal([&] {
    if (std::optional<std::string> text = cases::starting_case(recipe)) return *std::move(text);
    std::vector<std::string> names;
    for (const cases::StartingPoint& point : cases::starting_points())
      names.emplace_back(point.name);
    cases::Fault fault;
    fault.what = "no recipe has this name";
    fault.found = recipe;
    fault.expected = cases::joined(names, ", ");
    fault.remedy = cases::did_you_mean(recipe, names);
    throw cases::InputError({fault});
  });
}

std::string starts() {
  Json all = Json::array();
  for (const cases::StartingPoint& point : cases::starting_points())
    all.push_back({{"name", point.name}, {"about", point.about}});
  return told(all);
}

std::string schema() { return cases::schema_text() + "\n"; }

std::string catalogue() {
  Json all = {{"materials", Json::array()}, {"coats", Json::array()}};
  for (const materials::Material& material : cases::catalogue().materials) {
    all["materials"].push_back({{"name", material.name},
                                {"about", material.about},
                                {"dry_W_per_mK", material.conductivity.value},
                                {"moistures", states_of(material)}});
  }
  for (const materials::KnownCoat& coat : materials::known_coats()) {
    all["coats"].push_back(
        {{"name", coat.name}, {"sd_m", std::isinf(coat.sd) ? Json(nullptr) : Json(coat.sd)}});
  }
  return told(all);
}

std::string values(std::string_view text) {
  return or_refusal([&] {
    const Written written(text);
    Json all = Json::array();
    for (const Place& place : written.places()) {
      const cases::Node& node = *place.node;
      const bool is_nothing = node.kind == cases::Node::Kind::nothing;
      if (node.kind != cases::Node::Kind::scalar && !is_nothing) continue;
      const cases::Mark mark = written.mark_of(place.begin);
      Json value = {{"path", place.path},
                    {"text", is_nothing ? Json(nullptr) : Json(node.text)},
                    {"line", mark.line},
                    {"column", mark.byte}};
      if (place.behind_alias || place.is_alias) {
        const Place* at = written.written(node);
        if (at != nullptr) value["at"] = at->path;
      }
      all.push_back(std::move(value));
    }
    return told(all);
  });
}

std::string edited(std::string_view text, std::string_view path, std::string_view value) {
  return or_refusal([&] { return edited_text(text, path, value); });
}

std::string placed(std::string_view text, std::string_view path, std::string_view yaml) {
  return or_refusal([&] { return placed_text(text, path, yaml); });
}

std::string inserted(std::string_view text, std::string_view path, std::string_view yaml) {
  return or_refusal([&] { return inserted_text(text, path, yaml); });
}

std::string removed(std::string_view text, std::string_view path) {
  return or_refusal([&] { return removed_text(text, path); });
}

std::string handles(std::string_view text, std::string_view variant, const Beside& beside) {
  return or_refusal([&] {
    const cases::Case source = case_in(text, beside);
    const cases::Variant& shown = variant_in(source, variant);
    const tools::View view = plate_view(shown, geometry::section_of(shown.sheet));
    return told({{"view", view_json(view)}, {"handles", handles_json(Written(text), shown, view)}});
  });
}

}  // namespace quoin::door
