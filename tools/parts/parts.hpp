// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <stdexcept>
#include <string>

namespace quoin::tools {

// Some outputs need large libraries that take longer to load than a case takes to solve. What calls
// them are parts of the program: shared modules that are loaded when first needed.

/// A part of the program is missing, or the libraries behind it failed: no fonts, no memory.
struct PartError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

using PartFunction = void (*)();

/// A function of a part, to be cast to its own type; null, with the reason in `reason`, where the
/// part or the function is not there. Throws: std::bad_alloc where there is no memory to load it.
[[nodiscard]] PartFunction function_of(const std::string& part, const char* name,
                                       std::string& reason);

/// The text that a function of a part makes of its arguments. Its last argument is the text; where
/// it returns false that is the reason. `what` begins the words of the error. Throws: PartError,
/// std::bad_alloc.
template <class Function, class... Arguments>
std::string made_by(const std::string& part, const char* name, const std::string& what,
                    const Arguments&... arguments) {
  std::string text;
  const auto make = reinterpret_cast<Function*>(function_of(part, name, text));
  if (make == nullptr || !make(arguments..., text)) throw PartError(what + ": " + text);
  return text;
}

}  // namespace quoin::tools
