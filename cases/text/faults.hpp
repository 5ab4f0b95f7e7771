// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <stdexcept>
#include <string>
#include <vector>

namespace quoin::cases {

/// One thing wrong with the input, with all a person needs to mend it.
struct Fault {
  std::string file;
  std::size_t line = 0;    ///< from 1; 0: the file as a whole
  std::size_t column = 0;  ///< from 1, in characters
  std::string source;      ///< the line itself; of a long one the part about the column
  std::size_t caret = 0;   ///< the character of `source` meant, from 1
  std::string what;        ///< what is wrong, one sentence
  std::string found;
  std::string expected;
  std::string remedy;
};

/// The input is wrong: every fault of the file at once, in the order of the file.
struct InputError : std::runtime_error {
  explicit InputError(std::vector<Fault> all);
  std::vector<Fault> faults;
};

/// A fault as text: place, what, the line with a caret under the place, found, expected, remedy.
/// Whatever names and lines hold, it does not steer a terminal.
[[nodiscard]] std::string text_of(const Fault& fault);

}  // namespace quoin::cases
