// SPDX-License-Identifier: Apache-2.0
#include "materials/coats.hpp"

#include <array>
#include <limits>

namespace quoin::materials {
namespace {

constexpr std::string_view practice = "common practice, no source";
constexpr std::string_view iso10456 = "ISO 10456:2007, thin layers";
constexpr std::string_view iso10456_felt = "ISO 10456:2007: 3 mm of mu 50000";

/// Old coats, coat on coat, are tighter than new ones: the spreads allow for some of it.
constexpr double infinite = std::numeric_limits<double>::infinity();

constexpr std::array<KnownCoat, 18> all{{
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
    // Sheets, mostly laid between materials.
    {"breather membrane", 0.20, 0.02, 0.30, iso10456, Confidence::memory},
    {"bitumen paper", 2.00, 1.00, 5.00, iso10456, Confidence::memory},
    {"stapled polyethylene", 8.00, 2.00, 20.00, iso10456, Confidence::memory},
    {"foil-faced paper", 10.00, 5.00, 50.00, iso10456, Confidence::memory},
    {"polyethylene sheet", 50.00, 30.00, 100.00, iso10456, Confidence::memory},
    {"bitumen felt", 150.00, 100.00, 300.00, iso10456_felt, Confidence::memory},
    {"aluminium foil", 1500.00, 1000.00, 2000.00, iso10456, Confidence::memory},
    {"tight", infinite, infinite, infinite, "an ideal sheet that nothing passes",
     Confidence::stated},
}};

}  // namespace

std::span<const KnownCoat> known_coats() { return all; }

}  // namespace quoin::materials
