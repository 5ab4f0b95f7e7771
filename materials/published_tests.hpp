// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <string_view>

#include "materials/criterion.hpp"
#include "materials/material.hpp"

namespace quoin::materials {

/// A limit that a published guide states. Guides are revised: ask which one holds where you build.
struct PublishedTest {
  std::string_view guide;  ///< as case files write it
  Test test;
  std::string_view source;
  Confidence confidence = Confidence::memory;
};

/// Every published limit the case file knows by name. A new one is one line.
[[nodiscard]] std::span<const PublishedTest> published_tests();

}  // namespace quoin::materials
