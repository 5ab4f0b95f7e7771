// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace quoin::materials {

/// The text of materials/catalogue.yaml, embedded in the library by the build.
std::string_view catalogue_text();

}  // namespace quoin::materials
