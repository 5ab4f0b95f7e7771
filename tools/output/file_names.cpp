// SPDX-License-Identifier: Apache-2.0
#include "tools/output/file_names.hpp"

#include <fmt/format.h>

#include <set>
#include <string_view>

namespace quoin::tools {
namespace {

/// Lower-case ASCII letters and digits, with a hyphen for each run of anything else.
std::string stem_of(std::string_view name) {
  constexpr std::size_t longest = 60;
  std::string stem;
  for (const char c : name) {
    const bool upper = c >= 'A' && c <= 'Z';
    if (upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
      stem += upper ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!stem.empty() && stem.back() != '-') {
      stem += '-';
    }
    if (stem.size() == longest) break;
  }
  while (!stem.empty() && stem.back() == '-') stem.pop_back();
  return stem.empty() ? "variant" : stem;
}

}  // namespace

std::vector<std::string> file_stems(const std::vector<SolvedVariant>& variants) {
  std::vector<std::string> names;
  for (const SolvedVariant& solved : variants) names.push_back(solved.variant.name);
  return file_stems(names);
}

std::vector<std::string> file_stems(const std::vector<std::string>& variants) {
  std::vector<std::string> stems;
  std::set<std::string> taken;
  for (const std::string& name : variants) {
    const std::string wanted = stem_of(name);
    std::string stem = wanted;
    for (int number = 2; !taken.insert(stem).second; ++number) {
      stem = fmt::format("{}-{}", wanted, number);
    }
    stems.push_back(std::move(stem));
  }
  return stems;
}

}  // namespace quoin::tools
