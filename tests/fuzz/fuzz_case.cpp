// SPDX-License-Identifier: Apache-2.0
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "cases/faults.hpp"
#include "cases/read.hpp"

/// Whatever the text, the reader returns a case or throws InputError with at least one fault that
/// says what is wrong; each fault can be told.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    if (quoin::cases::case_of(text, "fuzz.yaml").variants.empty()) __builtin_trap();
  } catch (const quoin::cases::InputError& error) {
    if (error.faults.empty()) __builtin_trap();
    for (const auto& fault : error.faults) {
      if (fault.what.empty() || quoin::cases::text_of(fault).empty()) __builtin_trap();
    }
  }
  return 0;
}
