// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "cases/text/faults.hpp"

namespace quoin::cases {

/// What a file is, as far as its text tells.
enum class FileKind : std::uint8_t {
  unknown,
  section,   ///< a case file
  house,     ///< a house file
  vary,      ///< a vary file
  findings,  ///< what a solved case left
  rows,      ///< what a sweep left
  schema,
  table,  ///< CSV
  drawing,
  picture,
  page,
  document,
  archive,
  binary,
};

/// By the keys of the file, or by how it begins. `unknown` where nothing is sure: the file is then
/// to be read as what it is wanted for, which says what is wrong with it.
[[nodiscard]] FileKind kind_of(std::string_view text);

/// "a vary file".
[[nodiscard]] std::string_view words_for(FileKind kind);

/// What to do with a file of this kind: which command takes it, or where else it belongs.
[[nodiscard]] std::string_view use_of(FileKind kind);

/// The one fault of a file that surely is of another kind than wanted. Nothing where it is not.
[[nodiscard]] std::optional<Fault> fault_of_kind(std::string_view text, const std::string& file,
                                                 FileKind wanted);

}  // namespace quoin::cases
