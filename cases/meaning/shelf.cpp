// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/shelf.hpp"

#include <algorithm>

#include "cases/text/fault_list.hpp"
#include "materials/catalogue_text.hpp"

namespace quoin::cases {
namespace {

/// The catalogue is ours and keeps to this form: a material begins with its name, two spaces in.
bool begins_material(std::string_view line) {
  return line.size() > 3 && line.substr(0, 2) == "  " && line[2] != ' ' && line[2] != '#' &&
         line.back() == ':';
}

}  // namespace

Shelf::Shelf() {
  bool in_head = true;
  for (const std::string_view line : lines_of(materials::catalogue_text())) {
    if (in_head) {
      head_.append(line) += '\n';
      in_head = line != "materials:";
    } else if (begins_material(line)) {
      names_.emplace_back(line.substr(2, line.size() - 3));
      entries_.emplace_back(line) += '\n';
    } else if (!entries_.empty()) {
      entries_.back().append(line) += '\n';
    }
  }
}

bool Shelf::has(std::string_view name) const {
  return std::find(names_.begin(), names_.end(), name) != names_.end();
}

const materials::Material* Shelf::find(std::string_view name) {
  if (const auto known = read_.find(name); known != read_.end()) return &known->second;
  const auto found = std::find(names_.begin(), names_.end(), name);
  if (found == names_.end()) return nullptr;
  const std::string& entry = entries_[static_cast<std::size_t>(found - names_.begin())];
  const Catalogue one = catalogue_of(head_ + entry, "the catalogue");
  return &read_.emplace(name, one.materials.at(0)).first->second;
}

}  // namespace quoin::cases
