// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "cases/read.hpp"
#include "cases/text/faults.hpp"

namespace quoin::testing {

/// The case of a text that must have no faults.
inline cases::Case read(const std::string& text) {
  try {
    return cases::case_of(text, "case.yaml");
  } catch (const cases::InputError& error) {
    FAIL(std::string(error.what()));
  }
  return {};
}

/// The faults of a text; none where it reads.
inline std::vector<cases::Fault> faults_of(const std::string& text) {
  try {
    (void)cases::case_of(text, "case.yaml");
  } catch (const cases::InputError& error) {
    return error.faults;
  }
  return {};
}

/// The beginning of a case: a room and the outside, invented.
inline const std::string head =
    "quoin: 1\n"
    "spaces:\n"
    "  hall: {is: inside, temperature: 18, humidity: 62}\n"
    "  yard: {is: outside, temperature: 1, humidity: 90, wind: 4}\n";

}  // namespace quoin::testing
