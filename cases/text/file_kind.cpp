// SPDX-License-Identifier: Apache-2.0
#include "cases/text/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {
namespace {

using namespace std::string_view_literals;

constexpr std::size_t beginning = 2000;  // bytes in which a file shows what it is

/// How files that are no text begin.
constexpr std::array<std::pair<std::string_view, FileKind>, 7> signatures{{
    {"%PDF-"sv, FileKind::document},
    {"SQLite format 3\0"sv, FileKind::rows},
    {"\x89PNG"sv, FileKind::picture},
    {"\xFF\xD8\xFF"sv, FileKind::picture},
    {"PK\x03\x04"sv, FileKind::archive},
    {"\x1F\x8B"sv, FileKind::archive},
    {"\xFD\x37zXZ"sv, FileKind::archive},
}};

bool holds(std::string_view text, std::string_view words) {
  return text.find(words) != std::string_view::npos;
}

std::string_view without_blanks(std::string_view text) {
  if (text.substr(0, 3) == "\xEF\xBB\xBF") text.remove_prefix(3);  // byte order mark
  const std::size_t start = text.find_first_not_of(" \t\r\n");
  return start == std::string_view::npos ? std::string_view{} : text.substr(start);
}

/// The next line of a text without what surrounds it.
std::string_view next_line(std::string_view& text) {
  const std::size_t end = std::min(text.find('\n'), text.size());
  std::string_view line = without_blanks(text.substr(0, end));
  text.remove_prefix(std::min(end + 1, text.size()));
  while (!line.empty() && holds(" \t\r", line.substr(line.size() - 1))) line.remove_suffix(1);
  return line;
}

FileKind kind_of_markup(std::string_view start) {
  std::string small(start);
  for (char& c : small) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  if (holds(small, "<svg")) return FileKind::picture;
  if (holds(small, "<html") || holds(small, "<!doctype html")) return FileKind::page;
  return FileKind::document;
}

bool is_drawing(std::string_view start) {
  std::string_view line = next_line(start);
  while (line == "999") {  // a remark
    next_line(start);
    line = next_line(start);
  }
  return line == "0" && next_line(start) == "SECTION";
}

/// Whether the first two lines with something in them are parted alike, by commas or the like, and
/// hold no key with its value.
bool is_table(std::string_view start) {
  std::array<std::string_view, 2> lines;
  for (std::string_view& line : lines) {
    while (line.empty() && !start.empty()) {
      line = next_line(start);
      if (line.substr(0, 1) == "#") line = {};
    }
  }
  if (holds(lines[0], ": ") || holds(lines[1], ": ")) return false;
  return std::any_of(std::begin(",;\t"), std::end(",;\t") - 1, [&](char mark) {
    const auto first = std::count(lines[0].begin(), lines[0].end(), mark);
    return first > 0 && first == std::count(lines[1].begin(), lines[1].end(), mark);
  });
}

FileKind kind_of_tree(const Node& tree) {
  const auto has = [&](std::string_view key) { return tree.find(key) != nullptr; };
  if (has("house")) return FileKind::house;
  if (has("vary") || (has("case") && has("over"))) return FileKind::vary;
  if (has("$schema")) return FileKind::schema;
  if (const Entry* list = tree.find("variants");
      has("format") && list != nullptr && list->value.kind == Node::Kind::sequence)
    return FileKind::findings;
  const bool is_section = has("section") || has("spaces") || has("materials") || has("layers");
  return is_section ? FileKind::section : FileKind::unknown;
}

}  // namespace

FileKind kind_of(std::string_view text) {
  for (const auto& [signature, kind] : signatures) {
    if (text.substr(0, signature.size()) == signature) return kind;
  }
  const std::string_view start = without_blanks(text.substr(0, beginning));
  const bool is_utf_16 = text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF";
  if (!is_utf_16 && std::count(start.begin(), start.end(), '\0') > 1) return FileKind::binary;
  if (start.substr(0, 1) == "<") return kind_of_markup(start);
  if (is_drawing(start)) return FileKind::drawing;
  if (start.substr(0, 1) == "{" && holds(start, "\"quoin\"") && holds(start, "\"format\""))
    return FileKind::findings;
  FaultList unsaid("", text);
  const std::optional<Node> tree = tree_of(text, unsaid);
  if (tree && tree->kind == Node::Kind::map) return kind_of_tree(*tree);
  return is_table(start) ? FileKind::table : FileKind::unknown;
}

std::string_view words_for(FileKind kind) {
  switch (kind) {
    case FileKind::section:
      return "a case file";
    case FileKind::house:
      return "a house file";
    case FileKind::vary:
      return "a vary file";
    case FileKind::findings:
      return "the findings of a solved case";
    case FileKind::rows:
      return "a file of rows of a sweep";
    case FileKind::schema:
      return "a JSON schema";
    case FileKind::table:
      return "a table (CSV)";
    case FileKind::drawing:
      return "a drawing (DXF)";
    case FileKind::picture:
      return "a picture";
    case FileKind::page:
      return "a web page";
    case FileKind::document:
      return "a document";
    case FileKind::archive:
      return "a packed file";
    case FileKind::binary:
      return "no text at all";
    case FileKind::unknown:
      break;
  }
  return "";
}

std::string_view use_of(FileKind kind) {
  switch (kind) {
    case FileKind::section:
      return "`quoin solve` and `quoin check` take a case file; a vary file names it as its `case`";
    case FileKind::house:
      return "`quoin solve` and `quoin check` take a house file; name one of its sections here";
    case FileKind::vary:
      return "`quoin vary FILE -o DIR` takes it; the case file is the one it names";
    case FileKind::findings:
      return "name the case file that was solved; its text is in report.html";
    case FileKind::rows:
      return "`quoin gather DIR` takes the folder it lies in";
    case FileKind::schema:
      return "editors take it; name the case file";
    case FileKind::table:
      return "a case file names it: `climate: {table: airs.csv}`, or as `history` in a survey";
    case FileKind::drawing:
      return "`quoin trace DRAWING --layers FILE` makes a case file of it";
    case FileKind::picture:
    case FileKind::page:
    case FileKind::document:
      return "name the case file that it was made from";
    case FileKind::archive:
      return "unpack it, or save what it holds as plain text";
    case FileKind::binary:
    case FileKind::unknown:
      break;
  }
  return "name the .yaml file";
}

std::optional<Fault> fault_of_kind(std::string_view text, const std::string& file,
                                   FileKind wanted) {
  const FileKind kind = kind_of(text);
  if (kind == FileKind::unknown || kind == wanted) return std::nullopt;
  Fault fault;
  fault.file = file;
  fault.what = fmt::format("this is {}, not {}", words_for(kind), words_for(wanted));
  fault.expected = words_for(wanted);
  fault.remedy = use_of(kind);
  return fault;
}

}  // namespace quoin::cases
