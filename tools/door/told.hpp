// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <new>
#include <nlohmann/json.hpp>
#include <string>

#include "cases/text/faults.hpp"
#include "solver/linear/errors.hpp"
#include "tools/door/case_text.hpp"
#include "tools/door/door.hpp"
#include "tools/door/written.hpp"
#include "tools/draw/section/view.hpp"

namespace quoin::door {

/// JSON as the door hands it out.
[[nodiscard]] std::string told(const nlohmann::ordered_json& json);

/// Metres as mm, to the millionth.
[[nodiscard]] double in_mm(double metres);

/// Size of a plate and where the section lies on it.
[[nodiscard]] nlohmann::ordered_json view_json(const tools::View& view);

/// The handles of a variant, in picture units.
[[nodiscard]] nlohmann::ordered_json handles_json(const Written& written,
                                                  const cases::Variant& variant,
                                                  const tools::View& view);

/// What a call makes; what it throws becomes a Refusal.
template <class Make>
[[nodiscard]] auto or_refusal(const Make& make) -> decltype(make()) {
  try {
    return make();
  } catch (const cases::InputError& error) {
    throw Refusal(Refusal::Kind::input, error.what(), faults_json(error.faults));
  } catch (const solver::SolveError& error) {
    throw Refusal(Refusal::Kind::numerics, error.what(), "[]");
  } catch (const std::bad_alloc&) {
    throw Refusal(Refusal::Kind::numerics, "there is not memory enough for this case", "[]");
  }
}

}  // namespace quoin::door
