// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"

namespace quoin::tools {

/// Whether a layer of this shuts in what it covers. `apart`: air lies between the two, as in a
/// cavity wall, whose inner leaf of light blocks does not close in the outer one.
[[nodiscard]] bool insulates(const cases::Region& region, bool apart);

/// Why no favourable verdict may be given: masonry wetter than `damp` behind insulation would be
/// shut in wet. Empty where nothing stands against one. Insulation counts where it lies between
/// wet masonry and a space: straight through the section, with no more than a thick wall between
/// the two. A partition that only abuts on the wet wall does not cover it.
[[nodiscard]] std::string gate(const cases::Variant& variant);

}  // namespace quoin::tools
