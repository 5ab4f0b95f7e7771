// SPDX-License-Identifier: Apache-2.0
#include "materials/coats.hpp"

#include <array>

namespace quoin::materials {
namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr std::string_view iso10456 = "ISO 10456:2007, table of thin layers";

/// Old coats, coat on coat, are tighter than new ones: the spreads allow for some of it.
constexpr std::array<KnownCoat, 10> all{{
    {"none", 0.0, 0.0, 0.0, "no coat", Confidence::typical},
    {"limewash", 0.05, 0.02, 0.10, practice, Confidence::typical},
    {"silicate paint", 0.05, 0.02, 0.14, practice, Confidence::typical},
    {"silicone resin paint", 0.14, 0.05, 0.30, practice, Confidence::typical},
    {"emulsion paint", 0.10, 0.05, 0.50, iso10456, Confidence::memory},
    {"acrylic masonry paint", 0.50, 0.20, 1.00, practice, Confidence::typical},
    {"plastic masonry paint", 1.00, 0.50, 2.00, practice, Confidence::typical},
    {"elastomeric paint", 2.00, 1.00, 5.00, practice, Confidence::typical},
    {"vinyl wallpaper", 2.00, 1.00, 4.00, iso10456, Confidence::memory},
    {"gloss paint", 3.00, 1.50, 6.00, iso10456, Confidence::memory},
}};

}  // namespace

std::span<const KnownCoat> known_coats() { return all; }

}  // namespace quoin::materials
