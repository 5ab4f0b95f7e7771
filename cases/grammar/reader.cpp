// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "cases/grammar/written_number.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

bool all_digits(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

constexpr std::string_view give_or_take_key = "plus or minus";
constexpr double most_apart = 5.0;  ///< from the value to either end, as a factor
constexpr const char* log_or_leave =
    "measure it, or leave out how far it is known: what is usual is then assumed";

/// The most that may be given or taken, 95 %: of a humidity a fixed number of points, of anything
/// else what leaves a fifth of it.
double widest(double value, Measure measure) {
  return measure == Measure::humidity ? 0.30 : (1.0 - 1.0 / most_apart) * std::abs(value);
}

std::string list_of(const std::vector<std::string>& words) { return joined(words, ", "); }

}  // namespace

Reader::Reader(const Node& map, std::string what, FaultList& faults)
    : map_(map), what_(std::move(what)), faults_(faults) {}

const Node* Reader::value_of(std::string_view key) {
  known_.emplace_back(key);
  const Entry* entry = map_.find(key);
  return entry == nullptr ? nullptr : &entry->value;
}

const Node* Reader::scalar_of(std::string_view key, std::string_view expected) {
  const Node* node = value_of(key);
  if (node == nullptr || is_split(key)) return nullptr;
  if (node->kind == Node::Kind::scalar) return node;
  faults_.add(
      node->mark,
      {fmt::format("'{}' has no plain value", key), words_of(*node), std::string(expected),
       node->kind == Node::Kind::nothing ? "write the value behind the colon, or remove the key"
                                         : ""});
  return nullptr;
}

bool Reader::is_split(std::string_view key) {
  const Entry* entry = map_.find(key);
  const Entry* next = entry + 1;
  if (next == map_.entries.data() + map_.entries.size()) return false;
  const std::string& before = entry->value.text;
  if (next->value.kind != Node::Kind::nothing || !all_digits(before) ||
      !all_digits(next->key.substr(0, 1)))
    return false;
  known_.push_back(next->key);
  const auto complaint = written_number(before + ',' + next->key);
  if (std::holds_alternative<Complaint>(complaint))
    faults_.add(entry->value.mark, std::get<Complaint>(complaint));
  return true;
}

void Reader::missing(std::string_view key, std::string_view about) {
  if (has_mistyped(map_, key)) return;  // finish() says so
  faults_.add(map_.mark, {fmt::format("'{}' is missing in {}", key, what_), "",
                          fmt::format("{}: {}", key, about), ""});
}

void Reader::quantity(std::string_view key, double& value, Measure measure, Range plausible,
                      std::string_view about) {
  std::optional<double> given;
  const std::size_t faults_before = faults_.met();
  quantity(key, given, measure, plausible, about);
  if (given) {
    value = *given;
  } else if (std::isnan(value) && faults_.met() == faults_before && map_.find(key) == nullptr) {
    missing(key, expected(measure, plausible));
  }
}

void Reader::quantity(std::string_view key, std::optional<double>& value, Measure measure,
                      Range plausible, std::string_view /*about*/) {
  const Node* node = scalar_of(key, expected(measure, plausible));
  if (node == nullptr) return;
  auto read = quantity_of(node->text, measure, plausible);
  if (auto* complaint = std::get_if<Complaint>(&read)) {
    if (key == give_or_take_key && complaint->remedy.empty())
      complaint->remedy = "what is known no better than that tells nothing: leave it out";
    faults_.add(node->mark, *complaint);
  } else {
    value = std::get<double>(read);
  }
}

void Reader::give_or_take(std::string_view key, std::optional<double>& value,
                          std::optional<double>& spread, Measure measure, Range plausible,
                          std::string_view about) {
  const Entry* entry = map_.find(key);
  constexpr std::array<std::string_view, 3> signs{"±", "+/-", "plus or minus"};
  if (entry != nullptr && entry->value.kind == Node::Kind::scalar) {
    const std::string& text = entry->value.text;
    for (const std::string_view sign : signs) {
      const std::size_t at = text.find(sign);
      if (at == std::string::npos) continue;
      known_.emplace_back(key);
      const auto middle =
          quantity_of(trimmed(std::string_view(text).substr(0, at)), measure, plausible);
      const std::string_view spread_text = trimmed(std::string_view(text).substr(at + sign.size()));
      const auto apart = quantity_of(spread_text, measure, {0.0, plausible.high});
      for (const auto* read : {&middle, &apart}) {
        if (const auto* complaint = std::get_if<Complaint>(read)) {
          faults_.add(entry->value.mark, *complaint);
          return;
        }
      }
      value = std::get<double>(middle);
      spread = std::get<double>(apart);
      const double most = widest(*value, measure);
      if (*spread <= most) return;
      faults_.add(entry->value.mark,
                  {"this is known too little to reckon with: nearly anything lies within it",
                   std::string(spread_text),
                   fmt::format("up to {} give or take", shown(most, measure)), log_or_leave});
      return;
    }
  }
  quantity(key, value, measure, plausible, about);
}

void Reader::humidity_give_or_take(std::string_view key, std::optional<double>& value,
                                   std::optional<double>& spread, double low, double high,
                                   std::string_view about) {
  give_or_take(key, value, spread, Measure::humidity, {low, high}, about);
}

void Reader::sourced(std::string_view key, std::optional<materials::Sourced>& value,
                     Measure measure, Range plausible, std::string_view about) {
  const Entry* entry = map_.find(key);
  if (entry == nullptr || entry->value.kind != Node::Kind::map) {
    std::optional<double> plain, spread;
    give_or_take(key, plain, spread, measure, plausible, about);
    if (!plain) return;
    value.emplace().value = *plain;
    if (!spread) return;
    constexpr double nine_in_ten = 1.645 / 1.960;  // of 95 in 100
    value->low = std::max(*plain - nine_in_ten * *spread, *plain / 10);
    value->high = *plain + nine_in_ten * *spread;
    return;
  }
  known_.emplace_back(key);
  materials::Sourced read;
  read.value = needed;
  Reader reader(entry->value, fmt::format("'{}'", key), faults_);
  describe_sourced(reader, read, measure, plausible);
  reader.finish();
  if (std::isnan(read.value)) return;
  value = read;
  for (const auto& [end, end_key] : {std::pair{read.low, "low"}, std::pair{read.high, "high"}}) {
    const bool too_far = measure == Measure::conductivity && end &&
                         (*end < read.value / most_apart || *end > read.value * most_apart);
    const Entry* stated = entry->value.find(end_key);
    if (!too_far || stated == nullptr) continue;
    faults_.add(stated->value.mark,
                {"this is known too little to reckon with: nearly anything lies within it",
                 shown(*end, measure),
                 fmt::format("{} to {}", shown(read.value / most_apart, measure),
                             shown(read.value * most_apart, measure)),
                 log_or_leave});
  }
}

void Reader::word(std::string_view key, std::string& value, std::string_view about) {
  text(key, value, about);
  if (map_.find(key) == nullptr) missing(key, about);
}

void Reader::text(std::string_view key, std::string& value, std::string_view about) {
  const Node* node = scalar_of(key, about);
  if (node == nullptr) return;
  value = trimmed(node->text);
  if (value.empty())
    faults_.add(node->mark, {fmt::format("'{}' is empty", key), "", std::string(about), ""});
}

void Reader::moisture(std::string_view key, std::optional<WrittenMoisture>& value,
                      std::string_view about) {
  const Node* node = scalar_of(key, about);
  if (node == nullptr) return;
  const std::string text(trimmed(node->text));
  constexpr std::string_view between = "between ", and_then = " and ";
  const std::size_t and_at = text.find(and_then);
  const bool is_range = text.rfind(between, 0) == 0 && and_at != std::string::npos;
  const auto state = moisture_state_of(
      is_range ? trimmed(std::string_view(text).substr(between.size(), and_at - between.size()))
               : text);
  const auto to =
      is_range ? moisture_state_of(trimmed(std::string_view(text).substr(and_at + and_then.size())))
               : state;
  for (const auto* one : {&state, &to}) {
    if (const auto* complaint = std::get_if<Complaint>(one)) {
      faults_.add(node->mark, *complaint);
      return;
    }
  }
  value = {std::get<materials::MoistureState>(state), text, std::nullopt};
  if (is_range) value->to = std::get<materials::MoistureState>(to);
}

void Reader::coat(std::string_view key, std::optional<materials::Coat>& value,
                  std::string_view about) {
  const Node* node = scalar_of(key, about);
  if (node == nullptr) return;
  const auto coat = coat_of(node->text);
  if (const auto* complaint = std::get_if<Complaint>(&coat)) {
    faults_.add(node->mark, *complaint);
  } else {
    value = std::get<materials::Coat>(coat);
  }
}

std::optional<std::size_t> Reader::chosen_of(std::string_view key,
                                             const std::vector<std::string>& words) {
  const Node* node = scalar_of(key, "one of: " + list_of(words));
  if (node == nullptr) return std::nullopt;
  const auto found = std::find(words.begin(), words.end(), node->text);
  if (found != words.end()) return static_cast<std::size_t>(found - words.begin());
  faults_.add(node->mark, {fmt::format("'{}' cannot be '{}'", key, node->text), node->text,
                           "one of: " + list_of(words), did_you_mean(node->text, words)});
  return std::nullopt;
}

std::optional<Entry> Reader::kind_of(std::string_view key, const std::vector<std::string>& kinds) {
  const Node* node = value_of(key);
  if (node == nullptr) return std::nullopt;
  const std::string wanted = "one of: " + list_of(kinds);
  Entry entry;
  if (node->kind == Node::Kind::scalar) {
    entry = {node->text, node->mark, {}};
    entry.value.kind = Node::Kind::map;
    entry.value.mark = node->mark;
  } else if (node->kind == Node::Kind::map && node->entries.size() == 1) {
    entry = node->entries.front();
  } else {
    faults_.add(node->mark,
                {fmt::format("'{}' names exactly one kind", key), words_of(*node), wanted, ""});
    return std::nullopt;
  }
  if (std::find(kinds.begin(), kinds.end(), entry.key) == kinds.end()) {
    faults_.add(entry.mark, {fmt::format("unknown {} '{}'", key, entry.key), entry.key, wanted,
                             did_you_mean(entry.key, kinds)});
    return std::nullopt;
  }
  return entry;
}

void Reader::version(std::string_view key, double& value, double current) {
  std::optional<double> given;
  const std::size_t faults_before = faults_.met();
  quantity(key, given, Measure::number, {0.0, 1e6}, "");
  if (given) value = *given;
  if (faults_.met() != faults_before || value == current) return;
  const Entry* entry = map_.find(key);
  faults_.add(entry == nullptr ? map_.mark : entry->value.mark,
              {entry == nullptr ? fmt::format("'{}' is missing in {}", key, what_)
                                : fmt::format("this program does not know format {}", value),
               "", fmt::format("{}: {}", key, current), ""});
}

void Reader::section(std::string_view key, const Node*& node, std::string_view about) {
  node = value_of(key);
  if (node == nullptr) missing(key, about);
}

void Reader::variants(std::string_view key, const Node*& node, std::string_view /*about*/) {
  node = value_of(key);
}

void Reader::explanations(std::string_view key, const Node*& node, std::string_view /*about*/) {
  node = value_of(key);
}

void Reader::refuse_both(std::string_view first, std::string_view second) {
  faults_.add(map_.find(second)->mark,
              {fmt::format("'{}' and '{}' exclude each other in {}", first, second, what_), "",
               "one of the two", fmt::format("remove `{}`, or `{}`", first, second)});
}

void Reader::refuse_unknown(const Entry& entry) {
  faults_.add(entry.mark, [&]() -> Complaint {
    const std::size_t colon = entry.key.find(':');
    if (colon != std::string::npos && entry.value.kind == Node::Kind::nothing &&
        std::find(known_.begin(), known_.end(), entry.key.substr(0, colon)) != known_.end()) {
      return {"a space is missing after the colon", entry.key, "key: value",
              fmt::format("write {}: {}", entry.key.substr(0, colon), entry.key.substr(colon + 1))};
    }
    return {fmt::format("unknown key '{}' in {}", entry.key, what_), entry.key,
            known_.empty() ? "no keys" : list_of(known_), did_you_mean(entry.key, known_)};
  });
}

void Reader::finish() {
  for (const Entry& entry : map_.entries) {
    if (std::find(known_.begin(), known_.end(), entry.key) == known_.end()) refuse_unknown(entry);
  }
}

void check_name(const Entry& named, FaultList& faults) {
  if (!trimmed(named.key).empty() && trimmed(named.key).size() == named.key.size()) return;
  faults.add(named.mark, {"this name begins or ends with a blank", named.key,
                          "a name without blanks at its ends", "remove them"});
}

Node standing_alone(const Node& node, std::string_view key) {
  if (node.kind != Node::Kind::scalar) return node;
  Node map;
  map.kind = Node::Kind::map;
  map.mark = node.mark;
  map.entries.push_back({std::string(key), node.mark, node});
  return map;
}

void read_named(const Entry& entry, const std::string& what, FaultList& faults, std::string& text) {
  if (entry.value.kind == Node::Kind::scalar) {
    text = entry.value.text;
  } else {
    faults.add(entry.value.mark, {what + " is a text", words_of(entry.value), "a text", ""});
  }
}

}  // namespace quoin::cases
