// SPDX-License-Identifier: Apache-2.0
#include "cases/text/sentences.hpp"

namespace quoin::cases {

std::string capital(std::string words) {
  if (!words.empty() && words[0] >= 'a' && words[0] <= 'z')
    words[0] = static_cast<char>(words[0] - 'a' + 'A');
  return words;
}

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t n = 0; n < names.size(); ++n)
    text += (n == 0 ? "" : n + 1 == names.size() ? " and " : ", ") + names[n];
  return text;
}

}  // namespace quoin::cases
