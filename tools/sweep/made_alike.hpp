// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/model/case.hpp"

namespace quoin::tools {

/// Whether two variants of one recipe are made up alike but for the layers of their wall and how
/// far they are drawn: frames, linings and all else are there in both, of lengths, resistances and
/// conductivities that differ little, between a room and the outside with surfaces of the standard.
[[nodiscard]] bool made_alike(const cases::Variant& one, const cases::Variant& other);

}  // namespace quoin::tools
