// SPDX-License-Identifier: Apache-2.0
#include "cases/read.hpp"

#include <fmt/format.h>

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "cases/grammar/reader.hpp"
#include "cases/meaning/enough.hpp"
#include "cases/meaning/merge.hpp"
#include "cases/meaning/read_readings.hpp"
#include "cases/meaning/read_survey.hpp"
#include "cases/meaning/unused_spaces.hpp"
#include "cases/meaning/variant.hpp"
#include "cases/meaning/wall_remarks.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/text/sha256.hpp"

namespace quoin::cases {
namespace {

constexpr std::string_view default_name = "as found";
constexpr std::size_t most_variants = 100;
/// Keys that belong to the case as a whole.
constexpr std::array<std::string_view, 5> common_keys{"quoin", "title", "note", "survey",
                                                      "variants"};

/// The tree of a variant: that of the case with what the variant replaces.
Node merged(const Node& tree, const Entry& variant, FaultList& faults) {
  Node result = tree;
  Node replaced = variant.value;
  for (const std::string_view key : common_keys) {
    const Entry* entry = replaced.find(key);
    if (entry == nullptr) continue;
    faults.add(entry->mark, {fmt::format("a variant cannot replace '{}'", key), "",
                             "keys that describe the building", ""});
    replaced.entries.erase(replaced.entries.begin() + (entry - replaced.entries.data()));
  }
  merge(result, replaced, faults);
  return result;
}

bool replaces_nothing(const Node& node) {
  return node.kind == Node::Kind::nothing || (node.kind == Node::Kind::map && node.entries.empty());
}

/// The case as written and its variants, as they are read one after the other.
class VariantReader {
 public:
  VariantReader(const Files& files, FaultList& faults) : files_(files), faults_(faults) {}

  /// `document`: the keys of the tree, as read; `faults_before`: how many were met before it was.
  void add(const Node& tree, const Document& document, std::size_t faults_before,
           std::string name) {
    variants_.push_back(variant_of(tree, document, faults_before, files_, faults_));
    variants_.back().name = std::move(name);
    asked_.push_back(asked_enough(tree));
    if (faults_.empty()) uses_.push_back(uses_of(document, variants_.back()));
  }

  /// A variant in the list of the case with this tree, which was added before.
  void add(const Node& tree, const Entry& variant, bool first_of_list) {
    if (replaces_nothing(variant.value)) {
      add_unchanged(variant, first_of_list);
      return;
    }
    faults_.enter_variant(variant.key);
    check_name(variant, faults_);
    if (variant.key == variants_.front().name) {
      faults_.add(variant.mark,
                  {fmt::format("'{}' is the name of the case as written", variant.key), "",
                   "another name", ""});
    }
    if (variant.value.kind != Node::Kind::map) {
      faults_.add(variant.value.mark, {fmt::format("the variant '{}' is no map", variant.key),
                                       words_of(variant.value), "keys to replace", ""});
      return;
    }
    const std::size_t faults_before = faults_.met();
    const Node changed = merged(tree, variant, faults_);
    Document document;
    read(changed, "a case", faults_, document);
    add(changed, document, faults_before, variant.key);
    if (faults_.empty()) remark_on_losses(variants_.front(), variant.mark, variants_.back());
  }

  /// What all of them together have to be is checked last.
  [[nodiscard]] std::vector<Variant> checked() && {
    if (faults_.empty()) check_enough(variants_, asked_, faults_);
    if (faults_.empty()) check_uses(uses_, faults_);
    return std::move(variants_);
  }

 private:
  /// The first of a list may be empty: it then names the case as written.
  void add_unchanged(const Entry& variant, bool first_of_list) {
    if (first_of_list) {
      variants_.front().name = variant.key;
      return;
    }
    faults_.enter_variant("");  // a fault of the list, not of the variant before
    faults_.add(variant.mark, {fmt::format("the variant '{}' replaces nothing", variant.key), "",
                               "keys to replace; only the first variant may be empty: it then "
                               "names the case as written",
                               ""});
  }

  const Files& files_;
  FaultList& faults_;
  std::vector<Variant> variants_;
  std::vector<AskedEnough> asked_;
  std::vector<std::vector<SpaceUse>> uses_;
};

/// The variants listed in a case; none with a fault where what stands there is no list of them.
const std::vector<Entry>& listed_variants(const Node* list, FaultList& faults) {
  static const std::vector<Entry> none;
  if (list == nullptr || list->kind == Node::Kind::nothing) return none;
  if (list->kind != Node::Kind::map) {
    faults.add(list->mark,
               {"'variants' is a map of names", words_of(*list), "name: {keys to replace}", ""});
    return none;
  }
  if (list->entries.size() > most_variants) {
    faults.add(list->mark,
               {"the case has too many variants", fmt::format("{} variants", list->entries.size()),
                fmt::format("at most {}", most_variants), "split the case"});
    return none;
  }
  return list->entries;
}

/// Reads the case as written and each of its variants.
std::vector<Variant> variants_of(const Node& tree, const Document& document, const Files& files,
                                 FaultList& faults) {
  VariantReader reader(files, faults);
  reader.add(tree, document, 0, std::string(default_name));
  const std::vector<Entry>& list = listed_variants(document.variants, faults);
  for (const Entry& entry : list) reader.add(tree, entry, &entry == &list.front());
  return std::move(reader).checked();
}

/// What was read on site, and how.
void read_survey(const Node& tree, const Document& document, const Files& files, bool in_house,
                 Case& result, FaultList& faults) {
  const Entry* entry = tree.find("survey");
  check_readings(document.readings, entry != nullptr || in_house, faults);
  if (entry == nullptr || !document.survey) return;
  const std::vector<ReadSection> sections{{"", &result.variants.front()}};
  result.survey = survey_of(*document.survey, entry->value, sections, files, faults);
  add_readings("", document.readings, *result.survey, faults);
  result.household = document.survey->household.value_or(Household{});
}

/// What a tree says; with `in_house` readings may name instruments of the house's survey.
void read_tree(const Node& tree, const Files& files, bool in_house, Case& result,
               FaultList& faults) {
  Document document;
  read(tree, "a case", faults, document);
  if (document.format != 1) return;
  result.title = document.title;
  result.note = document.note;
  result.variants = variants_of(tree, document, files, faults);
  if (faults.empty()) read_survey(tree, document, files, in_house, result, faults);
}

Case read_text(std::string_view text, const std::string& file, const Files& files, bool in_house) {
  FaultList faults(file, text);
  Case result;
  result.sha256 = sha256(text);
  result.text = text;
  if (const std::optional<Node> tree = tree_of(text, faults))
    read_tree(*tree, files, in_house, result, faults);
  if (!faults.empty()) {
    if (auto other = fault_of_kind(text, file, FileKind::section)) throw InputError({*other});
    throw InputError(faults.sorted());
  }
  return result;
}

}  // namespace

Case case_of(std::string_view text, const std::string& file, const Files& files) {
  return read_text(text, file, files, false);
}

Case case_of(const Node& tree, std::string_view text, const std::string& file, const Files& files) {
  FaultList faults(file, text);
  Case result;
  result.sha256 = sha256(text);
  result.text = text;
  read_tree(tree, files, false, result, faults);
  if (!faults.empty()) throw InputError(faults.sorted());
  return result;
}

Case case_of_house(std::string_view text, const std::string& file, const Files& files) {
  return read_text(text, file, files, true);
}

}  // namespace quoin::cases
