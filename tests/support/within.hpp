// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <ostream>

namespace quoin::testing {

/// Equal to every double no further than `bound` from `target`, in the unit of the target.
/// A NaN on either side is equal to nothing.
struct WithinAbs {
  double target;
  double bound;

  friend bool operator==(double value, const WithinAbs& expected) {
    return value == expected.target || std::abs(value - expected.target) <= expected.bound;
  }
};

/// Equal to every double no further than `bound` times |target| from `target`.
/// A NaN on either side is equal to nothing; a target of 0 admits only 0.
struct WithinRel {
  double target;
  double bound;

  friend bool operator==(double value, const WithinRel& expected) {
    return value == WithinAbs{expected.target, expected.bound * std::abs(expected.target)};
  }
};

/// The stream with its former precision restored once `write` has run at `digits` digits.
template <typename Write>
std::ostream& with_precision(std::ostream& out, int digits, Write write) {
  const auto former = out.precision(digits);
  write(out);
  out.precision(former);
  return out;
}

inline std::ostream& operator<<(std::ostream& out, const WithinAbs& expected) {
  return with_precision(out, 12, [&](std::ostream& stream) {
    stream << expected.target << " +/- " << expected.bound;
  });
}

inline std::ostream& operator<<(std::ostream& out, const WithinRel& expected) {
  return with_precision(out, 12, [&](std::ostream& stream) {
    stream << expected.target << " +/- " << expected.bound << " of it";
  });
}

}  // namespace quoin::testing
