// SPDX-License-Identifier: Apache-2.0
#include "cases/schema.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "cases/grammar/units.hpp"
#include "cases/grammar/vocabulary.hpp"
#include "cases/grammar/written.hpp"
#include "cases/text/json.hpp"
#include "geometry/recipe.hpp"

namespace quoin::cases {
namespace {

Json typed(std::string_view type) {
  return std::move(Json::object().set("type", Json::text(type)));
}

Json typed(const std::vector<std::string>& types) {
  return std::move(Json::object().set("type", Json::texts(types)));
}

Json any_of(std::vector<Json> kinds) {
  return std::move(Json::object().set("anyOf", Json::list(std::move(kinds))));
}

Json list_of(Json item) { return std::move(typed("array").set("items", std::move(item))); }

Json pair_of(Json item) {
  Json list = list_of(std::move(item));
  list.set("minItems", Json::number(2)).set("maxItems", Json::number(2));
  return list;
}

/// Bounds hold for bare numbers; a text may bring a unit of its own.
Json quantity_schema(Measure measure, Range plausible) {
  Json schema = typed(std::vector<std::string>{"number", "string"});
  schema.set("minimum", Json::number_text(bare_number(plausible.low, measure)));
  if (std::isfinite(plausible.high))
    schema.set("maximum", Json::number_text(bare_number(plausible.high, measure)));
  return schema;
}

std::string told(std::string_view about, Measure measure, Range plausible) {
  const std::string_view unit = spoken(measure).unit;
  return fmt::format("{} ({}{})", about, expected(measure, plausible),
                     unit.empty() ? "" : fmt::format("; a bare number is in {}", unit));
}

Json coordinate_schema() { return typed(std::vector<std::string>{"number", "string"}); }

template <class T>
Json schema_of(T value = {});

/// A visitor that gathers the schema of a map from its description.
class Schema : public Vocabulary<Schema> {
 public:
  void quantity(std::string_view key, double value, Measure measure, Range plausible,
                std::string_view about) {
    Json schema = quantity_schema(measure, plausible);
    if (std::isnan(value)) {
      need(key);
    } else {
      schema.set("default", Json::number_text(bare_number(value, measure)));
    }
    set(key, std::move(schema), told(about, measure, plausible));
  }
  void quantity(std::string_view key, const std::optional<double>&, Measure measure,
                Range plausible, std::string_view about) {
    set(key, quantity_schema(measure, plausible), told(about, measure, plausible));
  }
  void sourced(std::string_view key, const std::optional<materials::Sourced>&, Measure measure,
               Range plausible, std::string_view about) {
    Schema inner;
    materials::Sourced value;
    value.value = needed;
    describe_sourced(inner, value, measure, plausible);
    set(key, any_of({quantity_schema(measure, plausible), inner.json()}),
        told(about, measure, plausible));
  }
  void table(std::string_view key, const std::vector<std::pair<double, double>>&,
             std::string_view left, std::string_view right, std::string_view about) {
    Json schema = typed("object");
    schema.set("additionalProperties", typed("number"));
    set(key, std::move(schema), fmt::format("{{{}: {}, ...}}: {}", left, right, about));
  }
  void word(std::string_view key, const std::string&, std::string_view about) {
    need(key);
    set(key, typed("string"), about);
  }
  void text(std::string_view key, const std::string&, std::string_view about) {
    set(key, typed("string"), about);
  }
  void moisture(std::string_view key, const std::optional<WrittenMoisture>&,
                std::string_view about) {
    set(key, typed("string"), about);
  }
  void coat(std::string_view key, const std::optional<materials::Coat>&, std::string_view about) {
    set(key, typed("string"), about);
  }
  void coats(std::string_view key, const std::vector<materials::Coat>&, std::string_view about) {
    set(key, list_of(typed("string")), about);
  }
  template <class T>
  void choice(std::string_view key, const T&, const Words<Plain<T>>& words,
              std::string_view about) {
    Json list = Json::list();
    for (const auto& [word, meaning] : words) list.add(Json::text(word));
    Json schema = Json::object();
    schema.set("enum", std::move(list));
    set(key, std::move(schema), about);
  }
  void interval(std::string_view key, const std::optional<Interval>&, std::string_view about) {
    set(key, pair_of(coordinate_schema()), about);
  }
  void outline(std::string_view key, const std::optional<geometry::Outline>&,
               std::string_view about) {
    set(key, list_of(pair_of(coordinate_schema())), about);
  }
  void line(std::string_view key, const std::optional<geometry::Outline>&, std::string_view about) {
    need(key);
    Json schema = list_of(pair_of(coordinate_schema()));
    schema.set("minItems", Json::number(2));
    set(key, std::move(schema), about);
  }
  template <class T>
  void group(std::string_view key, const std::optional<T>&, std::string_view about) {
    set(key, part_schema<T>(), about);
  }
  template <class T>
  void named(std::string_view key, const std::vector<Named<T>>&, std::string_view about) {
    Json schema = typed("object");
    schema.set("additionalProperties", part_schema<T>());
    set(key, std::move(schema), about);
  }
  template <class... T>
  void alternatives(const std::optional<std::variant<T...>>&) {
    (set(T::name, part_schema<T>(), T::about), ...);
  }
  void amounts(std::string_view key, const std::vector<Named<double>>&, Measure measure,
               Range plausible, std::string_view about) {
    Json schema = typed("object");
    schema.set("additionalProperties", quantity_schema(measure, plausible));
    set(key, std::move(schema), told(about, measure, plausible));
  }
  void months(std::string_view key, const std::optional<ByMonth>&, Measure measure, Range plausible,
              std::string_view about) {
    Json schema = list_of(quantity_schema(measure, plausible));
    schema.set("minItems", Json::number(12)).set("maxItems", Json::number(12));
    set(key, std::move(schema), told(about, measure, plausible));
  }
  template <class... T>
  void one_of(std::string_view key, const std::optional<std::variant<T...>>&,
              std::string_view about) {
    Schema kinds;
    (kinds.set(T::name, schema_of<T>(), ""), ...);
    Json one = kinds.json();
    one.set("minProperties", Json::number(1)).set("maxProperties", Json::number(1));
    Json names = Json::object();
    names.set("enum", Json::texts({std::string(T::name)...}));
    set(key, any_of({std::move(names), std::move(one)}), about);
  }
  void version(std::string_view key, double, double current) {
    need(key);
    Json schema = Json::object();
    schema.set("const", Json::number(current));
    set(key, std::move(schema), "version of the format");
  }
  void section(std::string_view key, const Node*, std::string_view about) {
    need(key);
    Schema kinds;
    add_recipes(kinds, static_cast<const geometry::Recipe*>(nullptr));
    kinds.set("sheet",
              list_of(any_of({schema_of<WrittenPatch>(), membrane<WrittenMembraneLine>()})),
              "painted areas, later ones cover earlier ones, and membranes between them");
    kinds.set("bands", list_of(schema_of<WrittenBand>()), "parts that are wetter or drier");
    set(key, kinds.json(), about);
  }
  void variants(std::string_view key, const Node*, std::string_view about) {
    Json schema = typed("object");
    schema.set("additionalProperties", typed(std::vector<std::string>{"object", "null"}));
    set(key, std::move(schema), about);
  }
  void explanations(std::string_view key, const Node*, std::string_view about) {
    set(key, list_of(typed(std::vector<std::string>{"string", "object"})), about);
  }
  void layers(std::string_view key, const std::vector<geometry::Layer>& list,
              std::string_view about, std::string_view /*example*/ = {}) {
    need(key);
    optional_layers(key, list, about);
  }
  void optional_layers(std::string_view key, const std::vector<geometry::Layer>&,
                       std::string_view about, std::string_view /*example*/ = {}) {
    Json brief = typed("array");
    brief.set("minItems", Json::number(2)).set("maxItems", Json::number(3));
    set(key,
        list_of(any_of({schema_of<WrittenLayer>(), membrane<WrittenMembrane>(), std::move(brief)})),
        about);
  }
  void frame(std::string_view key, RegionId, std::string_view about) {
    need(key);
    set(key, typed("string"), about);
  }
  void material(std::string_view key, RegionId region, std::string_view /*example*/,
                std::string_view about) {
    frame(key, region, about);
  }
  void ground(std::string_view key, RegionId region, std::string_view /*example*/,
              std::string_view about) {
    frame(key, region, about);
  }
  void optional_material(std::string_view key, RegionId, std::string_view /*example*/,
                         std::string_view about) {
    set(key, typed("string"), about);
  }
  void optional_membrane(std::string_view key, MembraneId, std::string_view /*example*/,
                         std::string_view about) {
    set(key, typed("string"), about);
  }
  void space(std::string_view key, SpaceId, std::string_view kind, std::string_view about) {
    set(key, typed("string"), fmt::format("{}; by default the only one that is {}", about, kind));
  }
  void optional_space(std::string_view key, SpaceId, std::string_view /*example*/,
                      std::string_view about) {
    set(key, typed("string"), about);
  }

  [[nodiscard]] Json json() const {
    Json schema = typed("object");
    schema.set("properties", properties_);
    if (!required_.empty()) schema.set("required", Json::texts(required_));
    schema.set("additionalProperties", Json::boolean(false));
    return schema;
  }

 private:
  /// A membrane, which must say what it is.
  template <class T>
  static Json membrane() {
    Schema schema;
    T value;
    describe(schema, value);
    schema.need(WrittenMembrane::key);
    return schema.json();
  }

  /// Of a part one input of which may stand alone.
  template <class T>
  static Json part_schema() {
    if constexpr (requires { T::alone; }) {
      return any_of({typed(std::vector<std::string>{"number", "string"}), schema_of<T>()});
    } else {
      return schema_of<T>();
    }
  }

  template <class... T>
  static void add_recipes(Schema& kinds, const std::variant<T...>*) {
    (kinds.set(T::name, schema_of<T>(), T::about), ...);
  }

  void need(std::string_view key) { required_.emplace_back(key); }

  void set(std::string_view key, Json schema, std::string_view about) {
    if (!about.empty()) schema.set("description", Json::text(about));
    properties_.set(std::string(key), std::move(schema));
  }

  Json properties_ = Json::object();
  std::vector<std::string> required_;
};

template <class T>
Json schema_of(T value) {
  Schema schema;
  describe(schema, value);
  return schema.json();
}

// What stands below a name and is no map, or may be something else.
template <>
Json schema_of(WrittenProbe) {
  return any_of({pair_of(coordinate_schema()), schema_of<WrittenOnSurface>()});
}

template <>
Json schema_of(WrittenCriterion criterion) {
  Schema schema;
  describe(schema, criterion);
  return any_of({schema.json(), typed(std::vector<std::string>{"number", "string"})});
}

}  // namespace

std::string schema_text() {
  Schema schema;
  Document document;
  describe(schema, document);
  Json json = schema.json();
  json.set("$schema", Json::text("http://json-schema.org/draft-07/schema#"))
      .set("title", Json::text("case file"));
  return json.written() + '\n';
}

}  // namespace quoin::cases
