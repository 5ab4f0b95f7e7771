// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/catalogue.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "cases/grammar/reader.hpp"
#include "cases/text/faults.hpp"
#include "materials/catalogue_text.hpp"
#include "materials/conductivity.hpp"

namespace quoin::cases {
namespace {

using materials::Material;
using materials::Sourced;

/// The keys at the top of a catalogue.
struct CatalogueText {
  double format = needed;
  std::vector<Named<std::string>> sources;
  std::vector<Named<WrittenMaterial>> materials;
};

template <class Visitor>
void describe(Visitor& visit, CatalogueText& text) {
  visit.version("quoin catalogue", text.format, 1);
  visit.named("sources", text.sources, "short names of sources");
  visit.named("materials", text.materials, "the materials");
}

/// Puts full titles in the place of the short names of sources.
class Sources {
 public:
  Sources(const std::vector<Named<std::string>>& sources, FaultList& faults) : faults_(faults) {
    for (const auto& source : sources) titles_.emplace(source.name, source.value);
  }

  void spell_out(std::string& source, Mark mark) {
    if (const auto title = titles_.find(source); title != titles_.end()) {
      source = title->second;
    } else {
      faults_.add(mark, {fmt::format("unknown source '{}'", source), source, "a name in `sources`",
                         "add it to `sources`"});
    }
  }

  void spell_out(std::optional<Sourced>& value, Mark mark) {
    if (value) spell_out(value->source, mark);
  }

  void spell_out(WrittenMaterial& written, Mark mark) {
    spell_out(written.conductivity, mark);
    spell_out(written.density, mark);
    spell_out(written.saturation, mark);
    spell_out(written.moisture_at_80, mark);
    if (written.vapour_resistance) {
      spell_out(written.vapour_resistance->dry, mark);
      spell_out(written.vapour_resistance->wet, mark);
    }
    if (!written.law_source.empty()) spell_out(written.law_source, mark);
  }

 private:
  FaultList& faults_;
  std::map<std::string, std::string> titles_;
};

}  // namespace

const Material* Catalogue::find(std::string_view name) const {
  const auto found = std::find_if(materials.begin(), materials.end(),
                                  [&](const Material& material) { return material.name == name; });
  return found == materials.end() ? nullptr : &*found;
}

std::vector<std::string> Catalogue::names() const {
  std::vector<std::string> names;
  for (const Material& material : materials) names.push_back(material.name);
  return names;
}

void apply(const WrittenMaterial& written, Material& material) {
  const auto replace = [](auto& value, const auto& by) {
    if (by) value = *by;
  };
  if (!written.about.empty()) material.about = written.about;
  replace(material.conductivity, written.conductivity);
  replace(material.density, written.density);
  replace(material.saturation, written.saturation);
  replace(material.moisture_at_80, written.moisture_at_80);
  if (written.vapour_resistance) {
    replace(material.vapour_resistance_dry, written.vapour_resistance->dry);
    replace(material.vapour_resistance_wet, written.vapour_resistance->wet);
  }
  if (written.law) {
    material.law = *written.law;
    material.law_source.clear();
    material.law_confidence = materials::Confidence::stated;
  }
  if (!written.law_source.empty()) material.law_source = written.law_source;
  replace(material.law_confidence, written.law_confidence);
  replace(material.part, written.part);
  if (written.cavity) material.cavity.emplace().ventilation = *written.cavity;
  if (written.flow && material.cavity) material.cavity->flow = *written.flow;
}

Catalogue catalogue_of(std::string_view text, const std::string& file) {
  FaultList faults(file, text);
  Catalogue result;
  if (const std::optional<Node> tree = tree_of(text, faults)) {
    CatalogueText written;
    read(*tree, "the catalogue", faults, written);
    Sources sources(written.sources, faults);
    for (auto& [name, mark, node, value] : written.materials) {
      sources.spell_out(value, mark);
      Material material;
      material.name = name;
      apply(value, material);
      if (material.law_source.empty()) {
        material.law_confidence = materials::Confidence::typical;
        material.law_source = "taken to conduct the same however moist: common practice, no source";
      }
      for (const std::string& flaw : materials::flaws(material))
        faults.add(mark, {fmt::format("'{}' contradicts itself", name), flaw, "", ""});
      result.materials.push_back(std::move(material));
    }
  }
  if (!faults.empty()) throw InputError(faults.sorted());
  return result;
}

Catalogue catalogue() { return catalogue_of(materials::catalogue_text(), "the catalogue"); }

}  // namespace quoin::cases
