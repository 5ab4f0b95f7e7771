// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "materials/laws/basis.hpp"

namespace quoin::materials {

/// The conductivity stays at its dry value: for what takes up no water, and where no growth with
/// moisture is known.
struct Constant {
  static constexpr std::string_view name = "constant";
};

template <class Visitor>
void describe(Visitor& /*visit*/, Constant& /*law*/) {}

/// W/(m K)
[[nodiscard]] inline double conductivity(const Constant& /*law*/, const Basis& dry,
                                         double /*moisture*/) {
  return dry.conductivity;
}

[[nodiscard]] inline TrustedRange trusted(const Constant& /*law*/, const Basis& /*dry*/) {
  return {0.0, "no growth with moisture is known for it, so that the dry value is kept"};
}

[[nodiscard]] inline std::optional<std::string> flaw(const Constant& /*law*/,
                                                     const Basis& /*dry*/) {
  return std::nullopt;
}

}  // namespace quoin::materials
