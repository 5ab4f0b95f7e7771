// SPDX-License-Identifier: Apache-2.0
#include "cases/vary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>
#include <set>

#include "cases/grammar/quantity.hpp"
#include "cases/grammar/reader.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/words.hpp"
#include "cases/text/yaml_path.hpp"
#include "cases/text/yaml_text.hpp"

namespace quoin::cases {
namespace {

constexpr std::uint64_t most_rows = 1'000'000'000;
constexpr std::size_t most_steps = 100'000;  ///< of one axis

/// The keys of a vary file.
struct VaryDocument {
  double format = needed;
  std::string file;
  const Node* over = nullptr;
  const Node* table = nullptr;
};

template <class Visitor>
void describe(Visitor& visit, VaryDocument& document) {
  visit.version("vary", document.format, 1);
  visit.word("case", document.file, "a case file in the folder of this file, or below it");
  visit.section("over", document.over, "paths of the case, each with its values");
  visit.section("table", document.table, "a list of what is wanted of each row");
}

/// Evenly spaced values, as written.
struct Steps {
  double from = needed, to = needed, step = needed;
};

template <class Visitor>
void describe(Visitor& visit, Steps& steps) {
  constexpr Range any{-1e9, 1e9};
  visit.quantity("from", steps.from, Measure::number, any, "the first value");
  visit.quantity("to", steps.to, Measure::number, any, "the last value");
  visit.quantity("step", steps.step, Measure::number, any, "from one value to the next");
}

std::vector<Node> values_of_steps(const Entry& entry, FaultList& faults) {
  Steps steps;
  const std::size_t faults_before = faults.met();
  read(entry.value, fmt::format("the steps of '{}'", entry.key), faults, steps);
  if (faults.met() != faults_before) return {};
  const double count = (steps.to - steps.from) / steps.step;
  constexpr double whole = 1e-9;  // of a step
  if (!(steps.step != 0.0) || count < 0.0 || count >= static_cast<double>(most_steps) ||
      std::abs(count - std::round(count)) > whole * std::max(1.0, count)) {
    faults.add(entry.value.mark,
               {"these steps do not lead from the first value to the last",
                fmt::format("{} to {} by {}", steps.from, steps.to, steps.step),
                fmt::format("whole steps, at most {}", most_steps),
                "make 'to' a value that is reached, with a step in that direction"});
    return {};
  }
  std::vector<Node> values;
  for (double k = 0; k <= std::round(count); ++k) {
    Node value = entry.value;
    value.entries.clear();
    value.kind = Node::Kind::scalar;
    const double number = steps.from + k * steps.step;
    value.text =
        fmt::format("{:.10g}", std::abs(number) < whole * std::abs(steps.step) ? 0.0 : number);
    values.push_back(std::move(value));
  }
  return values;
}

std::vector<Node> values_of(const Entry& entry, FaultList& faults) {
  if (entry.value.kind == Node::Kind::map) return values_of_steps(entry, faults);
  if (entry.value.kind != Node::Kind::sequence || entry.value.items.empty()) {
    faults.add(entry.value.mark, {fmt::format("'{}' has no list of values", entry.key),
                                  words_of(entry.value), "[one, another, ...] or {from, to, step}",
                                  "write a single value into the case itself"});
    return {};
  }
  std::set<std::string> known;
  for (const Node& item : entry.value.items) {
    if (item.kind == Node::Kind::nothing) {
      faults.add(item.mark, {fmt::format("a value of '{}' is missing", entry.key), "nothing",
                             "a value, a list or a map", ""});
    } else if (!known.insert(yaml_line(item)).second) {
      faults.add(item.mark, {fmt::format("this value of '{}' stands twice in the list", entry.key),
                             words_of(item), "each value once", "remove one of them"});
    }
  }
  return entry.value.items;
}

/// Whether an axis changes the air or what is asked of it, and nothing that heat flows through:
/// rows that differ in it alone share their solved fields.
bool is_of_the_air(const Axis& axis) {
  const std::string& last = axis.steps.back();
  return axis.steps.front() == "criteria" ||
         (axis.steps.front() == "spaces" && (last == "temperature" || last == "humidity"));
}

bool lies_within(const std::vector<std::string>& inner, const std::vector<std::string>& outer) {
  return inner.size() >= outer.size() && std::equal(outer.begin(), outer.end(), inner.begin());
}

void add_axis(const Entry& entry, Vary& vary, FaultList& faults) {
  Axis axis{entry.key, steps_of(entry.key), values_of(entry, faults), {}};
  if (value_at(vary.tree, axis.steps) == nullptr) {
    faults.add(entry.mark, [&]() -> Complaint {
      const std::vector<std::string> paths = paths_of(vary.tree);
      const std::string remedy = did_you_mean(entry.key, paths);
      return {"the case has nothing at this path", entry.key,
              "keys and positions from 0, joined by '/', of what the case holds",
              remedy.empty() ? "write the key into the case, so that there is something to vary"
                             : remedy};
    });
    return;
  }
  for (const Axis& other : vary.axes) {
    if (!lies_within(axis.steps, other.steps) && !lies_within(other.steps, axis.steps)) continue;
    faults.add(entry.mark,
               {fmt::format("this path and '{}' change the same thing", other.path), entry.key,
                "paths of which none holds another", "leave one of them out"});
    return;
  }
  for (const Node& value : axis.values)
    axis.texts.push_back(value.kind == Node::Kind::scalar ? value.text : yaml_line(value));
  vary.axes.push_back(std::move(axis));
}

void read_axes(const Node& over, Vary& vary, FaultList& faults) {
  if (over.kind != Node::Kind::map || over.entries.empty()) {
    faults.add(over.mark, {"'over' is a map of paths", words_of(over),
                           "section/corner/layers/0/thickness: [10, 20]", ""});
    return;
  }
  for (const Entry& entry : over.entries) add_axis(entry, vary, faults);
  double rows = 1.0;
  for (const Axis& axis : vary.axes) rows *= static_cast<double>(axis.values.size());
  if (rows > static_cast<double>(most_rows)) {
    faults.add(over.mark, {"these are too many combinations", fmt::format("{:.3g}", rows),
                           fmt::format("at most {}", most_rows), "vary less at once"});
  }
  for (const bool air : {false, true}) {
    for (std::size_t a = 0; a < vary.axes.size(); ++a) {
      if (is_of_the_air(vary.axes[a]) == air) vary.order.push_back(a);
    }
  }
}

void read_columns(const Node& table, const std::vector<std::string>& known, Vary& vary,
                  FaultList& faults) {
  if (table.kind != Node::Kind::sequence || table.items.empty()) {
    faults.add(table.mark, {"'table' is a list of what is wanted of each row", words_of(table),
                            "some of: " + joined(known, ", "), ""});
    return;
  }
  for (const Node& item : table.items) {
    const bool is_known = std::find(known.begin(), known.end(), item.text) != known.end();
    if (item.kind != Node::Kind::scalar || !is_known) {
      faults.add(item.mark, {"there is no such column", words_of(item),
                             "some of: " + joined(known, ", "), did_you_mean(item.text, known)});
    } else if (std::find(vary.columns.begin(), vary.columns.end(), item.text) !=
               vary.columns.end()) {
      faults.add(item.mark, {"this column stands twice in the table", item.text, "each once", ""});
    } else {
      vary.columns.push_back(item.text);
    }
  }
}

/// The tree of the case; its faults go to `all`.
std::optional<Node> tree_of_case(const std::string& file, const std::string& text,
                                 std::vector<Fault>& all) {
  if (auto other = fault_of_kind(text, file, FileKind::section)) {
    all.push_back(*std::move(other));
    return std::nullopt;
  }
  FaultList faults(file, text);
  std::optional<Node> tree = tree_of(text, faults);
  if (tree && tree->kind != Node::Kind::map)
    faults.add(tree->mark, {"a case is a map: key: value", words_of(*tree), "a map", ""});
  const std::vector<Fault> found = faults.sorted();
  all.insert(all.end(), found.begin(), found.end());
  return found.empty() ? tree : std::nullopt;
}

}  // namespace

std::uint64_t Vary::rows() const {
  std::uint64_t rows = 1;
  for (const Axis& axis : axes) rows *= axis.values.size();
  return rows;
}

std::vector<std::size_t> Vary::choice(std::uint64_t row) const {
  std::vector<std::size_t> choice(axes.size());
  for (auto axis = order.rbegin(); axis != order.rend(); ++axis) {
    const std::uint64_t count = axes[*axis].values.size();
    choice[*axis] = static_cast<std::size_t>(row % count);
    row /= count;
  }
  return choice;
}

Node Vary::merged(const std::vector<std::size_t>& choice) const {
  Node result = tree;
  for (std::size_t a = 0; a < axes.size(); ++a)
    *value_at(result, axes[a].steps) = axes[a].values[choice[a]];
  return result;
}

Vary vary_of(std::string_view text, const std::string& file, const Files& files,
             const std::vector<std::string>& known) {
  FaultList faults(file, text);
  std::vector<Fault> of_case;
  Vary vary;
  vary.sha256 = sha256(text);
  if (const std::optional<Node> tree = tree_of(text, faults)) {
    VaryDocument document;
    read(*tree, "a vary file", faults, document);
    if (document.table != nullptr) read_columns(*document.table, known, vary, faults);
    if (!document.file.empty()) {
      vary.file = document.file;
      const Entry* named = tree->find("case");
      if (auto source = case_text_of(vary.file, named->value.mark, files, faults)) {
        vary.case_text = *std::move(source);
        auto read_tree = tree_of_case(vary.file, vary.case_text, of_case);
        if (read_tree) vary.tree = *std::move(read_tree);
        if (read_tree && document.over != nullptr) read_axes(*document.over, vary, faults);
      }
    }
  }
  std::vector<Fault> all = faults.sorted();
  all.insert(all.end(), of_case.begin(), of_case.end());
  if (!all.empty()) {
    if (auto other = fault_of_kind(text, file, FileKind::vary)) throw InputError({*other});
    throw InputError(std::move(all));
  }
  return vary;
}

}  // namespace quoin::cases
