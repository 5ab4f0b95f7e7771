// SPDX-License-Identifier: Apache-2.0
#include "tools/html_basis.hpp"

namespace quoin::tools {

std::string_view html_assumptions() {
  return R"(<ul>
<li>Calculated following ISO 10211 two-dimensional rules; surface resistances per ISO 13788 for surface moisture
and ISO 6946 for heat flow. Readings are outside any standard.</li>
<li>Temperatures, fRsi and humidities at surfaces come from the first, L2D and ψ from the second.</li>
<li>Steady heat conduction in one section. Left out: the third dimension, air movement, heat storage, sun, the
movement of vapour and liquid water, salts.</li>
<li>The conductivity of a material is the same in every direction and everywhere in it.</li>
<li>Each band covers grid and solver only. What is not known of the house, its materials and its air moves the
answer more: compare variants.</li>
<li>80 % humidity at a surface stands for mould over weeks, not for one cold hour.</li>
</ul>
)";
}

std::string_view html_cautions() {
  return R"(<ul>
<li>This is a calculation aid. Local codes, licensed practitioners and judgement on site govern.</li>
<li>Find and stop the source of water, and let masonry dry, before anything is insulated.</li>
<li>Lead paint: test before stripping, no dry sanding, no hot air. Asbestos: survey before you drill, cut or
strip.</li>
<li>Lime burns eyes and skin; chasing and grinding masonry frees silica dust; clearing mould needs protection.
Medical advice belongs to clinicians.</li>
<li>Live cables in chases and behind linings. Rooms with a fire or boiler need their air.</li>
<li>Lowering the ground can undermine shallow footings: take structural advice. Look at lintels, ties and timber
ends before you close them in. Work at height needs proper access.</li>
<li>Linings have a fire class; bats and nesting birds are protected in many places; listed buildings, conservation
areas and party walls need consent.</li>
</ul>
)";
}

}  // namespace quoin::tools
