// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/shelf.hpp"

#include <algorithm>
#include <map>
#include <mutex>

#include "cases/meaning/catalogue.hpp"
#include "cases/text/fault_list.hpp"
#include "materials/catalogue_text.hpp"

namespace quoin::cases {
namespace {

/// The catalogue is ours and keeps to this form: a material begins with its name, two spaces in.
bool begins_material(std::string_view line) {
  return line.size() > 3 && line.substr(0, 2) == "  " && line[2] != ' ' && line[2] != '#' &&
         line.back() == ':';
}

/// The text of the catalogue in pieces.
struct Shelf {
  std::string head;                  ///< what precedes the materials
  std::vector<std::string> names;    ///< in the order of the catalogue
  std::vector<std::string> entries;  ///< the text of each

  Shelf() {
    bool in_head = true;
    for (const std::string_view line : lines_of(materials::catalogue_text())) {
      if (in_head) {
        head.append(line) += '\n';
        in_head = line != "materials:";
      } else if (begins_material(line)) {
        names.emplace_back(line.substr(2, line.size() - 3));
        entries.emplace_back(line) += '\n';
      } else if (!entries.empty()) {
        entries.back().append(line) += '\n';
      }
    }
  }
};

const Shelf& shelf() {
  static const Shelf one;
  return one;
}

}  // namespace

const std::vector<std::string>& shelf_names() { return shelf().names; }

bool is_on_shelf(std::string_view name) {
  return std::find(shelf_names().begin(), shelf_names().end(), name) != shelf_names().end();
}

const materials::Material* from_shelf(std::string_view name) {
  static std::mutex reading;
  static std::map<std::string, materials::Material, std::less<>> read;  // whose nodes stay in place
  const std::lock_guard<std::mutex> alone(reading);
  if (const auto known = read.find(name); known != read.end()) return &known->second;
  const auto found = std::find(shelf_names().begin(), shelf_names().end(), name);
  if (found == shelf_names().end()) return nullptr;
  const std::string& entry =
      shelf().entries[static_cast<std::size_t>(found - shelf_names().begin())];
  const Catalogue one = catalogue_of(shelf().head + entry, "the catalogue");
  return &read.emplace(name, one.materials.at(0)).first->second;
}

}  // namespace quoin::cases
