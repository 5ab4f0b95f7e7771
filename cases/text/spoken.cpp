// SPDX-License-Identifier: Apache-2.0
#include "cases/text/spoken.hpp"

namespace quoin::cases {

std::string spoken(std::string_view word) {
  std::string result(word);
  for (char& sign : result) {
    if (sign >= 'A' && sign <= 'Z') sign = static_cast<char>(sign - 'A' + 'a');
    if (sign == '_' || sign == '-') sign = ' ';
  }
  return result;
}

}  // namespace quoin::cases
