// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "cases/house.hpp"
#include "cases/model/case.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/text/files.hpp"
#include "tools/command/command.hpp"

namespace quoin::tools {

/// What a file holds: a case, or a house in its place.
struct CaseOrHouse {
  cases::Case source;
  std::optional<cases::House> house;
};

/// What a file holds, as far as a case may reach; "-" is standard input. Throws: InputError.
[[nodiscard]] std::string text_of_file(const std::string& file);

/// Refuses a file that surely is of another kind than wanted. Throws: InputError.
void refuse_other_kind(const std::string& text, const std::string& file, cases::FileKind wanted);

/// The files that a file may name: from its folder, that of standard input being the current one,
/// and from below. A link that leads out of the folder is no such file.
[[nodiscard]] cases::Files files_beside(const std::string& file);

/// The case or house in a file; "-" is standard input, beside which lies what the current folder
/// holds. Throws: InputError.
[[nodiscard]] CaseOrHouse case_or_house_in(const std::string& file);

/// Work on several cases, of which none stops the others: what it throws is told.
class EachCase {
 public:
  EachCase(std::vector<std::string> files, const Terminal& terminal)
      : files_(std::move(files)), terminal_(terminal) {}

  /// Works on the case of this number. Whether that could be done.
  bool run(std::size_t number, const std::function<Exit()>& work);

  /// Says which of several failed. The worst exit of all.
  [[nodiscard]] Exit end();

 private:
  std::vector<std::string> files_;
  const Terminal& terminal_;
  std::vector<std::size_t> failed_;
  Exit exit_ = Exit::done;
};

}  // namespace quoin::tools
