// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include "cases/grammar/quantity.hpp"
#include "cases/grammar/written_vapour.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr Range plausible_sd{0.005, 2000.0};  // m

bool begins_like_a_number(std::string_view text) {
  return text.find_first_of("0123456789") <= 1;  // a sign or a point may stand before it
}

}  // namespace

std::variant<materials::Coat, Complaint> coat_of(std::string_view text) {
  const std::string_view name = trimmed(text);
  std::vector<std::string> names;
  for (const materials::KnownCoat& known : materials::known_coats()) {
    if (known.name == name) return materials::Coat{std::string(name), known.sd};
    names.emplace_back(known.name);
  }
  if (begins_like_a_number(name)) {
    const auto sd = quantity_of(name, Measure::length, plausible_sd);
    if (const auto* complaint = std::get_if<Complaint>(&sd)) return *complaint;
    const double metres = std::get<double>(sd);
    return materials::Coat{fmt::format("{:.9g} m", metres), metres};
  }
  const std::string near = nearest(std::string(name), names);
  return Complaint{fmt::format("unknown coat '{}'", name), std::string(name),
                   joined(names, ", ") + ", or its sd: 0.5 m",
                   near.empty() ? "" : fmt::format("did you mean '{}'?", near)};
}

}  // namespace quoin::cases
