// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/output/report/cell.hpp"

namespace quoin::tools::report {

/// For whom a section is first of all.
enum class Reader : std::uint8_t { owner, contractor, building_control, engineer };

/// A word or two that stand out beside a heading.
struct Badge {
  std::string words;
  Tone tone = Tone::plain;
};

struct Heading {
  std::string words;
  std::vector<Badge> badges = {};
};

struct Paragraph {
  std::string words;
};

struct List {
  std::vector<std::string> items;
  bool in_order = false;
};

struct Column {
  std::string heading;  ///< its unit included: "coldest °C"
  double weight = 1.0;  ///< how wide beside others, where columns cannot be as wide as they like
};

/// Shape: each row as long as `columns`.
struct Table {
  std::string caption;
  std::vector<Column> columns;
  std::vector<std::vector<Cell>> rows;
  std::size_t keys = 1;  ///< how many of the first columns tell the rows apart
};

/// A picture of the results, by what it shows.
struct Figure {
  enum class Kind : std::uint8_t {
    section,
    field,
    flow,
    surface,
    compare,
    readings,
    odds,
    chances
  };
  Kind kind = Kind::compare;
  std::size_t variant = 0;  ///< of section, field and flow
  std::string says;         ///< for who cannot see it
};

/// Text as it was written.
struct Verbatim {
  std::string caption;
  std::string text;
};

/// Room to write in, under what belongs there.
struct Blank {
  std::vector<std::string> lines;
};

using Block = std::variant<Heading, Paragraph, List, Table, Figure, Verbatim, Blank>;

struct Section {
  std::string name;  ///< one lower-case word: its anchor
  std::string title;
  Reader reader = Reader::owner;
  std::vector<Block> blocks;
};

/// What an owner must be able to say within half a minute: what is wrong, what to do, how sure.
struct FirstScreen {
  std::string place;     ///< where, and the air inside and outside
  std::string sentence;  ///< what happens at which spot, and what mends it
  Tone tone = Tone::plain;
  List steps;              ///< what to do, in order; empty: nothing, or nothing that the case shows
  std::string sure;        ///< what the chances count, and what they do not
  Table variants;          ///< a row each room of each variant
  List changes;            ///< what the variants change
  std::size_t chosen = 0;  ///< the variant that the steps lead to
};

/// The report of a case, stated once: terminal, page and PDF show it and nothing else.
struct Document {
  std::string title;
  std::string note;
  FirstScreen first;
  std::vector<Section> sections;  ///< in the order of reading
};

[[nodiscard]] Document document_of(const Results& results);

/// The section of a name; null where the document has none.
[[nodiscard]] const Section* section_named(const Document& document, std::string_view name);

}  // namespace quoin::tools::report
