// SPDX-License-Identifier: Apache-2.0
#include "materials/published_tests.hpp"

#include <array>

namespace quoin::materials {
namespace {

constexpr std::string_view thermal_bridge_guide =
    "guide IP 1/06 on thermal bridges at junctions and openings";

const std::array<PublishedTest, 9> all{{
    {"DIN 4108-2", FactorThreshold{0.70, 0.25}, "DIN 4108-2, dwellings", Confidence::published},
    {"IP 1/06 dwellings", FactorThreshold{0.75, 0.13}, thermal_bridge_guide},
    {"IP 1/06 offices", FactorThreshold{0.50, 0.13}, thermal_bridge_guide},
    {"IP 1/06 sports halls", FactorThreshold{0.80, 0.13}, thermal_bridge_guide},
    {"IP 1/06 swimming pools", FactorThreshold{0.90, 0.13}, thermal_bridge_guide},
    {"ISO 13788 mould", SurfaceHumidityLimit{0.8}, "ISO 13788, mould: mean of a month"},
    {"ISO 13788 condensation", SurfaceHumidityLimit{1.0}, "ISO 13788, condensation"},
    {"ISO 13788 corrosion", SurfaceHumidityLimit{0.6}, "ISO 13788, corrosion"},
    {"mould growth 1999", CriticalHumidity{},
     "A mathematical model of mould growth on wooden material, Wood Science and Technology 33 "
     "(1999)"},
}};

}  // namespace

std::span<const PublishedTest> published_tests() { return all; }

}  // namespace quoin::materials
