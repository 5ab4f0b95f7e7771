// SPDX-License-Identifier: Apache-2.0
#include "tools/disk/base64.hpp"

#include <cstddef>
#include <string_view>

namespace quoin::tools {

std::string base64(const std::vector<std::uint8_t>& bytes) {
  constexpr std::string_view letters =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t at = 0; at < bytes.size(); at += 3) {
    const std::size_t given = bytes.size() - at;
    const auto byte = [&](std::size_t k) -> std::uint32_t {
      return k < given ? bytes[at + k] : 0U;
    };
    const std::uint32_t group = byte(0) << 16U | byte(1) << 8U | byte(2);
    text += letters[group >> 18U];
    text += letters[group >> 12U & 63U];
    text += given > 1 ? letters[group >> 6U & 63U] : '=';
    text += given > 2 ? letters[group & 63U] : '=';
  }
  return text;
}

}  // namespace quoin::tools
