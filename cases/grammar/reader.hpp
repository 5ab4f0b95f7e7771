// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "cases/grammar/vocabulary.hpp"
#include "cases/grammar/written.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/words.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// A visitor that fills a described value from a map. Whatever is wrong goes to the faults; the
/// value then keeps its default.
class Reader : public Vocabulary<Reader> {
 public:
  /// `what` names the map in faults: "a space".
  Reader(const Node& map, std::string what, FaultList& faults);

  // Numbers. A plain double that is NaN before must be given.
  void quantity(std::string_view key, double& value, Measure measure, Range plausible,
                std::string_view about);
  void quantity(std::string_view key, std::optional<double>& value, Measure measure,
                Range plausible, std::string_view about);
  void humidity_give_or_take(std::string_view key, std::optional<double>& value,
                             std::optional<double>& spread, double low, double high,
                             std::string_view about);
  void sourced(std::string_view key, std::optional<materials::Sourced>& value, Measure measure,
               Range plausible, std::string_view about);
  void table(std::string_view key, std::vector<std::pair<double, double>>& rows,
             std::string_view left, std::string_view right, std::string_view about);

  // Words. A word must be given, a text may be.
  void word(std::string_view key, std::string& value, std::string_view about);
  void text(std::string_view key, std::string& value, std::string_view about);
  void moisture(std::string_view key, std::optional<WrittenMoisture>& value,
                std::string_view about);
  void coat(std::string_view key, std::optional<materials::Coat>& value, std::string_view about);
  void coats(std::string_view key, std::vector<materials::Coat>& list, std::string_view about);
  template <class T>
  void choice(std::string_view key, T& value, const Words<Plain<T>>& words,
              std::string_view /*about*/) {
    std::vector<std::string> names;
    for (const auto& [name, meaning] : words) names.emplace_back(name);
    if (const auto chosen = chosen_of(key, names)) value = (words.begin() + *chosen)->second;
  }

  // Places.
  void interval(std::string_view key, std::optional<Interval>& value, std::string_view about);
  void outline(std::string_view key, std::optional<geometry::Outline>& value,
               std::string_view about);
  void line(std::string_view key, std::optional<geometry::Outline>& value, std::string_view about);

  // Parts. One of which everything is commented out counts as not given.
  template <class T>
  void group(std::string_view key, std::optional<T>& value, std::string_view about);
  template <class T>
  void named(std::string_view key, std::vector<Named<T>>& list, std::string_view about);
  /// Kinds of which at most one is a key of this map: its inputs, or the one that may stand alone.
  template <class... T>
  void alternatives(std::optional<std::variant<T...>>& value);
  template <class... T>
  void one_of(std::string_view key, std::optional<std::variant<T...>>& value,
              std::string_view about);
  void amounts(std::string_view key, std::vector<Named<double>>& list, Measure measure,
               Range plausible, std::string_view about);
  void months(std::string_view key, std::optional<ByMonth>& values, Measure measure,
              Range plausible, std::string_view about);
  void version(std::string_view key, double& value, double current);
  void section(std::string_view key, const Node*& node, std::string_view about);
  void variants(std::string_view key, const Node*& node, std::string_view about);
  void explanations(std::string_view key, const Node*& node, std::string_view about);

  /// Says which keys of the map were not asked for. Call once, at the end.
  void finish();

 protected:
  [[nodiscard]] const Node* value_of(std::string_view key);  ///< null where the map has no such key
  void missing(std::string_view key, std::string_view about);

  const Node& map_;
  std::string what_;
  FaultList& faults_;

 private:
  /// A quantity that may be followed by how far it is known: 0.62 ± 0.1.
  void give_or_take(std::string_view key, std::optional<double>& value,
                    std::optional<double>& spread, Measure measure, Range plausible,
                    std::string_view about);
  [[nodiscard]] const Node* scalar_of(std::string_view key, std::string_view expected);
  /// Whether a decimal comma inside braces made two keys of a number: `{leg: 0,33}`. Says so.
  [[nodiscard]] bool is_split(std::string_view key);
  [[nodiscard]] std::optional<std::size_t> chosen_of(std::string_view key,
                                                     const std::vector<std::string>& words);
  /// The one entry that names which of several kinds a part is; a word alone counts as one.
  [[nodiscard]] std::optional<Entry> kind_of(std::string_view key,
                                             const std::vector<std::string>& kinds);
  void refuse_unknown(const Entry& entry);
  /// Says that two keys of the map exclude each other.
  void refuse_both(std::string_view first, std::string_view second);

  std::vector<std::string> known_;
};

/// Fills a described value from a node, which should be a map.
template <class T>
void read(const Node& node, std::string what, FaultList& faults, T& value) {
  if (node.kind != Node::Kind::map) {
    faults.add(node.mark, {what + " is a map: key: value", words_of(node), "a map", ""});
    return;
  }
  Reader reader(node, std::move(what), faults);
  describe(reader, value);
  reader.finish();
}

/// The map that a plain value stands for: `fRsi: 0.75` is `fRsi: {threshold: 0.75}`. Anything else
/// as it is.
[[nodiscard]] Node standing_alone(const Node& node, std::string_view key);

/// Fills a described value from a map, or from a plain value where one of its inputs may stand
/// alone.
template <class T>
void read_part(const Node& node, std::string what, FaultList& faults, T& value) {
  if constexpr (requires { T::alone; }) {
    read(standing_alone(node, T::alone), std::move(what), faults, value);
  } else {
    read(node, std::move(what), faults, value);
  }
}

// What stands below a name: a map of its own, except for these.
template <class T>
void read_named(const Entry& entry, const std::string& what, FaultList& faults, T& value) {
  read_part(entry.value, what, faults, value);
}
void read_named(const Entry& entry, const std::string& what, FaultList& faults,
                WrittenProbe& probe);
void read_named(const Entry& entry, const std::string& what, FaultList& faults,
                WrittenCriterion& criterion);

void read_named(const Entry& entry, const std::string& what, FaultList& faults, std::string& text);

/// Refuses a name that nobody could tell from another, by the blanks at its ends.
void check_name(const Entry& named, FaultList& faults);

/// A coordinate, m.
[[nodiscard]] std::optional<double> coordinate(const Node& node, FaultList& faults);

template <class T>
void Reader::group(std::string_view key, std::optional<T>& value, std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  read_part(*node, quoted(key), faults_, value.emplace());
}

template <class T>
void Reader::named(std::string_view key, std::vector<Named<T>>& list, std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  if (node->kind != Node::Kind::map) {
    faults_.add(node->mark,
                {quoted(key) + " is a map of names", words_of(*node), "name: ... for each", ""});
    return;
  }
  list.reserve(node->entries.size());
  for (const Entry& entry : node->entries) {
    check_name(entry, faults_);
    list.push_back({entry.key, entry.mark, &entry.value, {}});
    read_named(entry, quoted(entry.key), faults_, list.back().value);
  }
}

template <class... T>
void Reader::alternatives(std::optional<std::variant<T...>>& value) {
  std::string_view chosen;
  const auto look_for = [&]<class Kind>(Kind kind) {
    const Node* node = value_of(Kind::name);
    if (node == nullptr) return;
    if (!chosen.empty()) {
      refuse_both(chosen, Kind::name);
      return;
    }
    chosen = Kind::name;
    const std::size_t faults_before = faults_.met();
    read_part(*node, quoted(Kind::name), faults_, kind);
    if (faults_.met() == faults_before) value = kind;
  };
  (look_for(T{}), ...);
}

template <class... T>
void Reader::one_of(std::string_view key, std::optional<std::variant<T...>>& value,
                    std::string_view /*about*/) {
  const std::optional<Entry> entry = kind_of(key, {std::string(T::name)...});
  if (!entry) return;
  const auto try_kind = [&]<class Kind>(Kind kind) {
    if (entry->key != Kind::name) return;
    read(entry->value, quoted(entry->key), faults_, kind);
    value = kind;
  };
  (try_kind(T{}), ...);
}

}  // namespace quoin::cases
