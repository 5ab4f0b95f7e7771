// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace quoin::tools {

/// Rows of a table that several variants share, told once. Rows can be compared with ==.
template <class Row>
class SharedRows {
 public:
  void add(std::string_view variant, Row row) {
    auto known =
        std::find_if(all_.begin(), all_.end(), [&](const auto& each) { return each.first == row; });
    if (known == all_.end()) known = all_.insert(all_.end(), {std::move(row), {}});
    if (known->second.empty() || known->second.back() != variant)
      known->second.emplace_back(variant);
  }

  /// A row and the names of its variants, or "all" where it is that of all of them.
  struct Told {
    std::string variants;
    Row row;
  };
  [[nodiscard]] std::vector<Told> rows(std::size_t variants) const {
    std::vector<Told> told;
    for (const auto& [row, names] : all_) {
      const bool all = names.size() == variants && variants > 1;
      told.push_back({all ? "all" : fmt::format("{}", fmt::join(names, "; ")), row});
    }
    return told;
  }

 private:
  std::vector<std::pair<Row, std::vector<std::string>>> all_;
};

}  // namespace quoin::tools
