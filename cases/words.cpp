// SPDX-License-Identifier: Apache-2.0
#include "cases/words.hpp"

#include <algorithm>
#include <array>

namespace quoin::cases {
namespace {

/// Longer words are not compared: no known word is as long, and the cost grows with the square.
constexpr std::size_t longest = 64;

std::string lower(std::string_view word) {
  std::string result(word);
  for (char& sign : result) {
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    if (sign == '_' || sign == '-') sign = ' ';
  }
  return result;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Rows of the usual table: the one being filled, the last, and the one before it for swaps.
  std::array<std::vector<std::size_t>, 3> rows;
  rows.fill(std::vector<std::size_t>(b.size() + 1));
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto& row = rows[i % 3];
    const auto& last = rows[(i + 2) % 3];
    const auto& before = rows[(i + 1) % 3];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replaced});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], before[j - 2] + 1);
    }
  }
  return rows[a.size() % 3][b.size()];
}

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
  if (word.size() > longest) return {};
  const std::string wanted = lower(word);
  std::string best;
  // A third of the letters may be wrong, one of them always, but not all.
  std::size_t least = std::min(std::max<std::size_t>(word.size() / 3, 1) + 1, word.size());
  const auto consider = [&](std::string_view part, const std::string& candidate) {
    if (part.size() > longest) return;
    const std::size_t distance = edit_distance(wanted, lower(part));
    if (distance >= least) return;
    least = distance;
    best = candidate;
  };
  for (const std::string& candidate : known) consider(candidate, candidate);
  if (!best.empty()) return best;
  // "softwod" for "softwood, across the grain": its beginning is near.
  for (const std::string& candidate : known)
    consider(std::string_view(candidate).substr(0, candidate.find_first_of(" ,(")), candidate);
  return best;
}

std::string joined(const std::vector<std::string>& words, std::string_view separator) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += separator;
    text += word;
  }
  return text;
}

}  // namespace quoin::cases
