// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <set>
#include <string>
#include <string_view>
#include <tuple>
#include <type_traits>
#include <vector>

#include "cases/text/faults.hpp"

namespace quoin::cases {

/// A place in a text. Line 0: the text as a whole.
struct Mark {
  std::size_t line = 0;  ///< from 1
  std::size_t byte = 0;  ///< in the line, from 1
};

/// What is wrong, before it has a place.
struct Complaint {
  std::string what;
  std::string found = {};
  std::string expected = {};
  std::string remedy = {};
};

/// The faults met so far in one text.
class FaultList {
 public:
  /// The text must outlive the list.
  FaultList(std::string file, std::string_view text);

  void add(Mark at, Complaint complaint);

  /// The same where it takes effort to tell what is wrong: once the list is full, faults are only
  /// counted.
  template <class Tell>
  requires std::is_invocable_r_v<Complaint, Tell>
  void add(Mark at, Tell tell) { add(at, is_full() ? Complaint{} : tell()); }

  /// The faults that follow belong to this variant; empty: to the case as written. A fault of the
  /// case as written is not said again for its variants.
  void enter_variant(std::string name) { variant_ = std::move(name); }

  /// Takes over the faults of another text, such as a table that the case names, each once.
  void take(const FaultList& other);

  /// How many faults were met, those said before included: unchanged means that nothing was wrong.
  [[nodiscard]] std::size_t met() const { return met_; }
  [[nodiscard]] bool empty() const { return faults_.empty(); }

  /// All that are told in the order of the text, and how many more there are.
  [[nodiscard]] std::vector<Fault> sorted() const;

 private:
  [[nodiscard]] bool is_full() const;

  std::string file_;
  std::vector<std::string_view> lines_;
  std::string variant_;
  std::vector<Fault> faults_;
  std::size_t met_ = 0;
  std::size_t untold_ = 0;
  std::set<std::tuple<std::size_t, std::size_t, std::string>> said_;
};

/// The lines of a text, without their ends (LF, CR LF or CR).
[[nodiscard]] std::vector<std::string_view> lines_of(std::string_view text);

}  // namespace quoin::cases
