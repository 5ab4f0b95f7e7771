// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace quoin::materials {

struct Material;

/// A hollow full of air in a frame. What it conducts depends on its shape.
struct Cavity {
  enum class Ventilation : std::uint8_t {
    unventilated,        ///< closed, or a slit to the outside of at most 2 mm
    slightly_ventilated  ///< a slit of more than 2 and at most 10 mm
  };
  enum class Flow : std::uint8_t { along_x, along_y };

  Ventilation ventilation = Ventilation::unventilated;
  Flow flow = Flow::along_y;  ///< which way the heat crosses it
};

template <class Visitor>
void choose_cavity(Visitor& visit, std::optional<Cavity::Ventilation>& ventilation,
                   std::optional<Cavity::Flow>& flow) {
  visit.choice("cavity", ventilation,
               {{"unventilated", Cavity::Ventilation::unventilated},
                {"slightly ventilated", Cavity::Ventilation::slightly_ventilated}},
               "in place of all values: air in a hollow of a frame by ISO 10077-2, each painted "
               "area one cavity; slightly ventilated by a slit of 2 to 10 mm to the outside; "
               "behind a wider one paint the space outside");
  visit.choice("flow", flow,
               {{"along x", Cavity::Flow::along_x}, {"along y", Cavity::Flow::along_y}},
               "which way the heat crosses the cavity");
}

/// The name under which results show what gave a cavity its conductivity.
inline constexpr std::string_view cavity_law = "air cavity by ISO 10077-2";

/// The equivalent conductivity of a cavity, W/(m K), between surfaces of emissivity 0.9 at about
/// 10 degC and 10 K apart. Of any shape but an upright rectangle that of the rectangle of the same
/// area with the sides in the ratio of those around the shape. `area` in m2, `width` along x and
/// `height` along y of the smallest upright rectangle around the shape in m; all above 0.
/// Source: EN ISO 10077-2, unventilated and slightly ventilated air cavities of frames (memory).
[[nodiscard]] double cavity_conductivity(Cavity cavity, double area, double width, double height);

/// The air in a cavity as a material: still air, until its shape is known.
[[nodiscard]] Material cavity_air(Cavity cavity);

}  // namespace quoin::materials
