// SPDX-License-Identifier: Apache-2.0
#include "cases/text/words.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "cases/text/spoken.hpp"
#include "cases/text/synonyms.hpp"

namespace quoin::cases {
namespace {

/// Longer words are not compared: no known word is as long, and the cost grows with the square.
constexpr std::size_t longest = 64;
constexpr std::size_t shortest = 4;      ///< letters of a word looked for within others
constexpr std::size_t most_known = 500;  ///< known words that are compared: a person knows fewer
constexpr std::size_t most_found = 4;

/// "lime stone" in one word.
std::string without_blanks(std::string_view word) {
  std::string result(word);
  result.erase(std::remove(result.begin(), result.end(), ' '), result.end());
  return result;
}

/// Looks for a word among known ones.
class Search {
 public:
  Search(std::string_view word, const std::vector<std::string>& known)
      : wanted_(word.size() > longest ? std::string() : spoken(word)), known_(known) {
    count_ = wanted_.empty() ? 0 : std::min(known.size(), most_known);
  }

  /// In lower case; empty where it is too long to be a slip.
  [[nodiscard]] std::string_view wanted() const { return wanted_; }

  [[nodiscard]] std::string nearest_whole() const {
    return nearest([](std::string_view candidate) { return candidate; });
  }

  /// "softwod" for "softwood, across the grain": its beginning is near.
  [[nodiscard]] std::string nearest_beginning() const {
    return nearest([](std::string_view candidate) {
      return candidate.substr(0, candidate.find_first_of(" ,("));
    });
  }

  /// The known words with a word or several at the end of one of theirs: "brick" in "common brick",
  /// "stone" in "soft limestone".
  [[nodiscard]] std::vector<std::string> holding(std::string_view part) const {
    std::vector<std::string> found;
    if (part.size() < shortest) return found;
    for (std::size_t k = 0; k < count_ && found.size() < most_found; ++k) {
      const std::string candidate = spoken(known_[k]) + ' ';
      if (candidate.find(std::string(part) + ' ') != std::string::npos) found.push_back(known_[k]);
    }
    return found;
  }

 private:
  template <class Part>
  [[nodiscard]] std::string nearest(Part part_of) const {
    std::string best;
    // A third of the letters may be wrong, one of them always, but not all.
    std::size_t least = std::min(std::max<std::size_t>(wanted_.size() / 3, 1) + 1, wanted_.size());
    for (std::size_t k = 0; k < count_; ++k) {
      const std::string_view part = part_of(std::string_view(known_[k]));
      const std::size_t longer = std::max(part.size(), wanted_.size());
      const std::size_t shorter = std::min(part.size(), wanted_.size());
      if (longer - shorter >= least) continue;  // so many letters are wrong at least
      const std::size_t distance = edit_distance(wanted_, spoken(part));
      if (distance >= least) continue;
      least = distance;
      best = known_[k];
    }
    return best;
  }

  std::string wanted_;
  const std::vector<std::string>& known_;
  std::size_t count_ = 0;
};

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
  const Search search(word, known);
  const std::string best = search.nearest_whole();
  return best.empty() ? search.nearest_beginning() : best;
}

std::vector<std::string> likely(std::string_view word, const std::vector<std::string>& known) {
  const Search search(word, known);
  if (auto called = synonyms(search.wanted(), known); !called.empty()) return called;
  if (std::string best = search.nearest_whole(); !best.empty()) return {std::move(best)};
  if (auto holding = search.holding(search.wanted()); !holding.empty()) return holding;
  if (auto holding = search.holding(without_blanks(search.wanted())); !holding.empty())
    return holding;
  if (std::string best = search.nearest_beginning(); !best.empty()) return {std::move(best)};
  // Of "rock wool" the last word says what it is.
  const std::string_view wanted = search.wanted();
  return search.holding(wanted.substr(wanted.find_last_of(' ') + 1));
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& known) {
  const std::vector<std::string> all = likely(word, known);
  if (all.empty()) return {};
  return "did you mean '" + joined(all, "' or '") + "'?";
}

std::string joined(const std::vector<std::string>& words, std::string_view separator) {
  std::string text;
  for (const std::string& word : words) {
    if (!text.empty()) text += separator;
    text += word;
  }
  return text;
}

std::string quoted(std::string_view word) {
  std::string text = "'";
  text += word;
  text += '\'';
  return text;
}

}  // namespace quoin::cases
