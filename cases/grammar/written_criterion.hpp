// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "cases/grammar/vocabulary.hpp"
#include "cases/model/case.hpp"
#include "materials/criterion.hpp"

namespace quoin::cases {

/// Whether a threshold may be compared with a factor computed with another resistance.
enum class WithRsi : std::uint8_t { as_stated, as_computed };

/// A threshold known by the name of the guide that states it.
struct PublishedTest {
  static constexpr std::string_view name = "published";
  static constexpr std::string_view about = "a threshold by the name of the guide that states it";
  static constexpr std::string_view alone = "guide";

  std::string guide;
  WithRsi with = WithRsi::as_stated;
};

template <class Visitor>
void describe(Visitor& visit, PublishedTest& test) {
  visit.word("guide", test.guide, "a name of the list of published thresholds");
  visit.choice("with Rsi", test.with,
               {{"as stated", WithRsi::as_stated}, {"as computed", WithRsi::as_computed}},
               "as computed: compare even where the guide means another surface resistance");
}

template <class Test, class Published>
struct Adding;
template <class... T, class Published>
struct Adding<std::variant<T...>, Published> {
  using type = std::variant<T..., Published>;
};
using WrittenTest = Adding<materials::Test, PublishedTest>::type;

/// Exactly one test.
struct WrittenCriterion {
  std::optional<WrittenTest> test;
};

template <class Visitor>
void describe(Visitor& visit, WrittenCriterion& criterion) {
  visit.alternatives(criterion.test);
}

}  // namespace quoin::cases
