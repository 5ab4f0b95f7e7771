// SPDX-License-Identifier: Apache-2.0
#include "cases/text/decimal.hpp"

#include <cerrno>
#include <cstdlib>
#include <string>
#include <system_error>
#include <version>

namespace quoin::cases {

std::from_chars_result from_decimal(const char* first, const char* last, double& value) {
#ifdef __cpp_lib_to_chars
  return std::from_chars(first, last, value);
#else
  const std::string text(first, last);
  char* end = nullptr;
  errno = 0;
  const double read = std::strtod(text.c_str(), &end);
  if (end == text.c_str()) return {first, std::errc::invalid_argument};
  const char* const behind = first + (end - text.c_str());
  if (errno == ERANGE) return {behind, std::errc::result_out_of_range};
  value = read;
  return {behind, std::errc()};
#endif
}

}  // namespace quoin::cases
