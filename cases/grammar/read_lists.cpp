// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <string>

#include "cases/grammar/reader.hpp"

namespace quoin::cases {

void Reader::table(std::string_view key, std::vector<std::pair<double, double>>& rows,
                   std::string_view left, std::string_view right, std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  if (node->kind != Node::Kind::map) {
    faults_.add(node->mark, {fmt::format("'{}' is a table", key), words_of(*node),
                             fmt::format("{{{}: {}, ...}}", left, right), ""});
    return;
  }
  rows.clear();
  for (const Entry& entry : node->entries) {
    const auto from = quantity_of(entry.key, Measure::number, {0.0, 1e6});
    if (const auto* complaint = std::get_if<Complaint>(&from)) faults_.add(entry.mark, *complaint);
    const auto to = quantity_of(entry.value.text, Measure::number, {0.0, 1e6});
    if (const auto* complaint = std::get_if<Complaint>(&to))
      faults_.add(entry.value.mark, *complaint);
    if (std::holds_alternative<double>(from) && std::holds_alternative<double>(to))
      rows.emplace_back(std::get<double>(from), std::get<double>(to));
  }
}

void Reader::coats(std::string_view key, std::vector<materials::Coat>& list,
                   std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  if (node->kind != Node::Kind::sequence || node->items.empty()) {
    faults_.add(node->mark, {fmt::format("'{}' is a list of coats", key), words_of(*node),
                             "[limewash, plastic masonry paint, 0.5 m]", ""});
    return;
  }
  for (const Node& item : node->items) {
    if (item.kind != Node::Kind::scalar) {
      faults_.add(item.mark,
                  {"a coat belongs here", words_of(item), "its name, or its sd: 0.5 m", ""});
      continue;
    }
    const auto coat = coat_of(item.text);
    if (const auto* complaint = std::get_if<Complaint>(&coat)) {
      faults_.add(item.mark, *complaint);
    } else {
      list.push_back(std::get<materials::Coat>(coat));
    }
  }
}

void Reader::amounts(std::string_view key, std::vector<Named<double>>& list, Measure measure,
                     Range plausible, std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  if (node->kind != Node::Kind::map) {
    faults_.add(node->mark, {fmt::format("'{}' is a map of names", key), words_of(*node),
                             "name: " + expected(measure, plausible), ""});
    return;
  }
  for (const Entry& entry : node->entries) {
    const auto amount = quantity_of(entry.value.text, measure, plausible);
    if (const auto* complaint = std::get_if<Complaint>(&amount)) {
      faults_.add(entry.value.mark, *complaint);
    } else {
      list.push_back({entry.key, entry.mark, &entry.value, std::get<double>(amount)});
    }
  }
}

void Reader::months(std::string_view key, std::optional<ByMonth>& values, Measure measure,
                    Range plausible, std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  ByMonth read{};
  if (node->kind != Node::Kind::sequence || node->items.size() != read.size()) {
    faults_.add(node->mark,
                {fmt::format("'{}' is a list of twelve months", key),
                 node->kind == Node::Kind::sequence ? fmt::format("{} values", node->items.size())
                                                    : words_of(*node),
                 fmt::format("January to December, each {}", expected(measure, plausible)), ""});
    return;
  }
  const std::size_t faults_before = faults_.met();
  for (std::size_t month = 0; month < read.size(); ++month) {
    const auto value = quantity_of(node->items[month].text, measure, plausible);
    if (const auto* complaint = std::get_if<Complaint>(&value)) {
      faults_.add(node->items[month].mark, *complaint);
    } else {
      read[month] = std::get<double>(value);
    }
  }
  if (faults_.met() == faults_before) values = read;
}

}  // namespace quoin::cases
