// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <CLI/App.hpp>
#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <ostream>

#include "cases/meaning/catalogue.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/words.hpp"
#include "materials/coats.hpp"
#include "materials/conductivity.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/command/command.hpp"

namespace quoin::tools {
namespace {

using materials::Material;
using materials::Sourced;

std::string number(double value) {
  return std::isinf(value) ? "infinite" : fmt::format("{:.4g}", value);
}

std::vector<TextTable::Cell> row(const std::string& name, const std::optional<Sourced>& value,
                                 const std::string& unit) {
  if (!value) return {{name}, {"-"}, {unit}, {"not known"}};
  const std::string spread =
      value->low && value->high
          ? fmt::format(" ({} to {})", number(*value->low), number(*value->high))
          : "";
  return {{name},
          {number(value->value) + spread},
          {unit},
          {fmt::format("{}: {}", words_for(value->confidence), value->source)}};
}

/// A share of volume in per cent.
std::optional<Sourced> by_volume(std::optional<Sourced> value) {
  if (!value) return value;
  value->value *= 100;
  if (value->low) value->low = 100 * *value->low;
  if (value->high) value->high = 100 * *value->high;
  return value;
}

std::string entry(const Material& material, const TextStyle& style) {
  std::string text = toned(harmless(material.name, style), Tone::strong, style) + "\n" +
                     paragraph(material.about, 2, style) + "\n";
  TextTable values("lll");
  std::string sources;
  const auto add = [&](const std::string& name, const std::optional<Sourced>& value,
                       const std::string& unit) {
    auto cells = row(name, value, unit);
    sources += paragraph(name + ": " + cells.back().text, 2, style);
    cells.pop_back();
    values.add(std::move(cells));
  };
  add("conductivity, dry", material.conductivity, "W/(m K)");
  add("density, dry", material.density, "kg/m3");
  add("moisture when saturated", by_volume(material.saturation), "vol-%");
  add("moisture at 80 % humidity", by_volume(material.moisture_at_80), "vol-%");
  add("vapour resistance, dry", material.vapour_resistance_dry, "mu");
  add("vapour resistance, wet", material.vapour_resistance_wet, "mu");
  text += values.text(style) + "\n";

  TextTable states("lrr");
  states.add({{"state"}, {"moisture vol-%"}, {"conductivity W/(m K)"}});
  for (const auto& [name, state] : materials::named_states) {
    const auto moisture = materials::moisture_of(material, state);
    const double* known = std::get_if<double>(&moisture);
    states.add({{std::string(name)},
                {known != nullptr ? fmt::format("{:.1f}", 100 * *known) : "not known"},
                {known != nullptr
                     ? fmt::format("{:.3f}", materials::conductivity_of(material, *known).value)
                     : "-"}});
  }
  text += paragraph(fmt::format("Moisture law: {} ({}: {})", materials::name_of(material.law),
                                words_for(material.law_confidence), material.law_source),
                    2, style) +
          states.text(style) + "\n";
  return text + "Sources\n" + sources;
}

std::string metres(double sd) { return std::isinf(sd) ? "infinite" : fmt::format("{:g}", sd); }

std::string source_of(const materials::KnownCoat& coat) {
  return std::string(coat.source) +
         (coat.confidence == materials::Confidence::memory ? ", from memory" : "");
}

std::string entry(const materials::KnownCoat& coat, const TextStyle& style) {
  std::string text = toned(coat.name, Tone::strong, style) + "\n" +
                     paragraph(
                         "A coat on a surface, or a sheet between materials: it resists "
                         "vapour and nothing else.",
                         2, style) +
                     "\n";
  TextTable values("lll");
  values.add({{"sd"},
              {coat.low == coat.high ? metres(coat.sd)
                                     : fmt::format("{} ({} to {})", metres(coat.sd),
                                                   metres(coat.low), metres(coat.high))},
              {"m of still air"}});
  return text + values.text(style) + "\nSource\n" + paragraph(source_of(coat), 2, style);
}

std::string coats_table(const TextStyle& style) {
  TextTable table("lrl");
  table.add({{"coat or sheet"}, {"sd m"}, {"source"}});
  for (const materials::KnownCoat& coat : materials::known_coats())
    table.add({{std::string(coat.name)}, {metres(coat.sd)}, {source_of(coat)}});
  return table.text(style);
}

Exit list_or_entry(const std::optional<std::string>& name, const Terminal& terminal) {
  const cases::Catalogue catalogue = cases::catalogue();
  if (name) {
    const auto coats = materials::known_coats();
    const auto coat = std::find_if(coats.begin(), coats.end(),
                                   [&](const auto& known) { return known.name == *name; });
    if (coat != coats.end()) {
      terminal.out << entry(*coat, terminal.style);
      return Exit::done;
    }
    const Material* material = catalogue.find(*name);
    if (material == nullptr) {
      std::vector<std::string> names = catalogue.names();
      for (const auto& known : coats) names.emplace_back(known.name);
      cases::Fault fault;
      fault.file = "quoin materials";
      fault.what = "the catalogue has no such material";
      fault.found = harmless(*name, {});
      fault.expected = "a name that quoin materials lists";
      fault.remedy = cases::did_you_mean(*name, names);
      throw cases::InputError({fault});
    }
    terminal.out << entry(*material, terminal.style);
    return Exit::done;
  }
  TextTable table("lrrl");
  table.add({{"material"}, {"W/(m K) dry"}, {"kg/m3"}, {"moisture law"}});
  for (const Material& material : catalogue.materials) {
    table.add({{material.name},
               {number(material.conductivity.value)},
               {number(material.density.value)},
               {std::string(materials::name_of(material.law))}});
  }
  terminal.out << table.text(terminal.style) << "\n" << coats_table(terminal.style);
  return Exit::done;
}

}  // namespace

Command materials_command(CLI::App& program) {
  CLI::App* words = program.add_subcommand("materials", "the catalogue: values, laws and sources");
  const auto name = std::make_shared<std::optional<std::string>>();
  words->add_option("NAME", *name, "one material in full")->type_name("");
  return {words, [name](const Terminal& terminal) { return list_or_entry(*name, terminal); }};
}

}  // namespace quoin::tools
