// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"

namespace quoin::cases {

/// Gives the layers of air that are open to outdoors what ISO 6946 says of them. One that is well
/// ventilated is painted as a space of the air outside, with the surface resistance of still air;
/// the layers outside of it no longer count for the plane wall, and where something solid joins
/// them to the rest they are a fin in that air. One that is slightly ventilated gets the resistance
/// that its plane wall asks for. Call it on what a recipe or a sheet has drawn, once each time.
/// Error: in plain words why a layer cannot be open as it is said to be.
[[nodiscard]] std::optional<std::string> open_layers(Variant& variant);

/// What such layers leave open, in plain words.
[[nodiscard]] std::vector<std::string> remarks_on_open_layers(const Variant& variant);

}  // namespace quoin::cases
