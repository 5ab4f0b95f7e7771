// SPDX-License-Identifier: Apache-2.0
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "cases/write_sheet.hpp"
#include "tools/output/text/section.hpp"

namespace {

using quoin::cases::InputError;

/// Ends the program where an error does not say what is wrong.
void tell(const InputError& error) {
  if (error.faults.empty()) __builtin_trap();
  for (const auto& fault : error.faults) {
    if (fault.what.empty() || quoin::cases::text_of(fault).empty()) __builtin_trap();
  }
}

}  // namespace

/// Whatever the text, the reader returns a case or throws InputError with at least one fault that
/// says what is wrong; each fault can be told. What it returns can be drawn and written down as a
/// sheet, which the reader takes or refuses as well.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    const quoin::cases::Case read = quoin::cases::case_of(text, "fuzz.yaml");
    if (read.variants.empty()) __builtin_trap();
    for (const auto& variant : read.variants) {
      if (quoin::tools::section_drawing(variant, {}).empty()) __builtin_trap();
      if (quoin::cases::case_of(quoin::cases::sheet_text(variant), "sheet.yaml").variants.empty())
        __builtin_trap();
    }
  } catch (const InputError& error) {
    tell(error);
  }
  return 0;
}
