// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include "cases/house.hpp"
#include "cases/read.hpp"

namespace quoin::testing {

/// A variant of a case file, with words to find it again.
struct NamedVariant {
  std::string name;
  cases::Variant variant;
};

/// Every variant of every case file in cases/, found when the tests run, in the order of names.
inline const std::vector<NamedVariant>& case_variants() {
  static const std::vector<NamedVariant> all = [] {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(QUOIN_SOURCE_DIR "/cases")) {
      if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
    }
    std::sort(paths.begin(), paths.end());
    std::vector<NamedVariant> variants;
    for (const auto& path : paths) {
      std::ifstream file(path);
      const std::string text{std::istreambuf_iterator<char>(file), {}};
      if (!file) throw std::runtime_error("cannot read " + path.string());
      const std::string name = path.filename().string();
      if (cases::is_house(text)) continue;  // its sections are here by themselves
      if (text.find("\nsection:") == std::string::npos)
        continue;  // a sweep, or layers of a drawing
      for (const cases::Variant& variant : cases::case_of_house(text, name, {}).variants) {
        variants.push_back({name + ", " + variant.name, variant});
      }
    }
    return variants;
  }();
  return all;
}

}  // namespace quoin::testing
