// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "cases/grammar/reader.hpp"
#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

/// No building section is larger, m.
constexpr Range anywhere{-200.0, 200.0};

/// Whether a bare number somewhere in a list can be no length in metres.
bool is_in_millimetres(const Node& list) {
  if (list.kind == Node::Kind::scalar) {
    const auto read = quantity_of(list.text, Measure::number, {-1e9, 1e9});
    return std::holds_alternative<double>(read) && std::abs(std::get<double>(read)) > anywhere.high;
  }
  return std::any_of(list.items.begin(), list.items.end(), is_in_millimetres);
}

/// A coordinate; a bare one below 1 is hardly meant, but beside lengths in millimetres it is.
std::optional<double> coordinate_of(const Node& node, bool in_millimetres, FaultList& faults) {
  if (in_millimetres && node.kind == Node::Kind::scalar) {
    const auto read = quantity_of(node.text + " mm", Measure::length, anywhere);
    if (const auto* value = std::get_if<double>(&read)) return *value;
  }
  return coordinate(node, faults);
}

/// The two coordinates of a pair such as [345, 345].
std::optional<std::pair<double, double>> pair_of(const Node& node, std::string_view expected,
                                                 FaultList& faults, bool in_millimetres) {
  if (node.kind != Node::Kind::sequence || node.items.size() != 2) {
    std::string remedy;
    if (node.kind == Node::Kind::sequence && node.items.size() == 4)
      remedy = "a comma inside a number counts as two numbers: write 0.33, not 0,33";
    faults.add(node.mark, {"two coordinates belong here", words_of(node), std::string(expected),
                           std::move(remedy)});
    return std::nullopt;
  }
  const auto first = coordinate_of(node.items[0], in_millimetres, faults);
  const auto second = coordinate_of(node.items[1], in_millimetres, faults);
  if (!first || !second) return std::nullopt;
  return std::pair(*first, *second);
}

/// A list of places; absent, with faults, where any of them is none.
std::optional<geometry::Outline> places_of(const Node& node, FaultList& faults) {
  geometry::Outline places;
  const bool in_millimetres = is_in_millimetres(node);
  for (const Node& item : node.items) {
    if (const auto place = pair_of(item, "[x, y]", faults, in_millimetres))
      places.push_back({place->first, place->second});
  }
  if (places.size() != node.items.size()) return std::nullopt;
  return places;
}

}  // namespace

std::optional<double> coordinate(const Node& node, FaultList& faults) {
  if (node.kind != Node::Kind::scalar) {
    faults.add(node.mark, {"a coordinate belongs here", words_of(node), "a length", ""});
    return std::nullopt;
  }
  const auto read = quantity_of(node.text, Measure::length, anywhere);
  if (const auto* complaint = std::get_if<Complaint>(&read)) {
    faults.add(node.mark, *complaint);
    return std::nullopt;
  }
  return std::get<double>(read);
}

void Reader::interval(std::string_view key, std::optional<Interval>& value,
                      std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  const auto ends =
      pair_of(*node, fmt::format("{}: [from, to]", key), faults_, is_in_millimetres(*node));
  if (!ends) return;
  if (ends->first == ends->second) {
    faults_.add(node->mark, {fmt::format("'{}' has no extent: both ends are the same", key),
                             shown(ends->first, Measure::length), "[from, to]", ""});
  } else if (ends->first > ends->second) {
    faults_.add(node->mark, {fmt::format("the ends of '{}' are the wrong way round", key),
                             fmt::format("[{}, {}]", shown(ends->first, Measure::length),
                                         shown(ends->second, Measure::length)),
                             "[from, to], the smaller one first", "swap the two"});
  } else {
    value = Interval{ends->first, ends->second};
  }
}

void Reader::outline(std::string_view key, std::optional<geometry::Outline>& value,
                     std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  if (node->kind != Node::Kind::sequence || node->items.size() < 3) {
    faults_.add(node->mark, {"an outline is a list of at least three corners", words_of(*node),
                             "[[x, y], [x, y], [x, y]]", ""});
    return;
  }
  value = places_of(*node, faults_);
}

void Reader::line(std::string_view key, std::optional<geometry::Outline>& value,
                  std::string_view /*about*/) {
  const Node* node = value_of(key);
  if (node == nullptr) return;
  if (node->kind != Node::Kind::sequence || node->items.size() < 2) {
    faults_.add(node->mark, {"a line is a list of at least two places", words_of(*node),
                             "[[x, y], [x, y]]", ""});
    return;
  }
  value = places_of(*node, faults_);
  for (std::size_t k = 0; value && k + 1 < value->size(); ++k) {
    const geometry::Point a = (*value)[k], b = (*value)[k + 1];
    const double dx = std::abs(a.x - b.x), dy = std::abs(a.y - b.y);
    if (std::max(dx, dy) < geometry::snap) {
      faults_.add(node->items[k + 1].mark, {"two places in a row are the same", "",
                                            "a line that goes on", "remove one of them"});
    }
  }
}

void read_named(const Entry& entry, const std::string& what, FaultList& faults,
                WrittenProbe& probe) {
  if (entry.value.kind == Node::Kind::map) {
    const std::size_t before = faults.met();
    WrittenOnSurface surface;
    read(entry.value, what, faults, surface);
    if (faults.met() == before) probe.surface = std::move(surface);
  } else if (const auto pair =
                 pair_of(entry.value, "[x, y], or {on: inside, from: the angle, at: 250}", faults,
                         is_in_millimetres(entry.value))) {
    probe.point = {pair->first, pair->second};
  }
}

void read_named(const Entry& entry, const std::string& what, FaultList& faults,
                WrittenCriterion& criterion) {
  if (entry.value.kind == Node::Kind::map) {
    read(entry.value, what, faults, criterion);
    return;
  }
  // `fRsi: 0.75` is short for `fRsi: {fRsi: 0.75}`.
  Node map;
  map.kind = Node::Kind::map;
  map.mark = entry.mark;
  map.entries.push_back(entry);
  read(map, "criteria", faults, criterion);
}

}  // namespace quoin::cases
