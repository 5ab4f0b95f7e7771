// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/bands.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/draw/field/isotherms.hpp"

namespace quoin::tools {
namespace {

constexpr double thickness = 16.0;  ///< of a bar of colours, units
const Lettering lettering{12.0, Anchor::start, 0.0, false, black, {}};
constexpr Stroke frame{black, 0.8};

void include(Bands& bands, const cases::Variant& variant) {
  for (const cases::Space& space : variant.spaces) {
    bands.low = std::min(bands.low, space.temperature);
    bands.high = std::max(bands.high, space.temperature);
  }
}

void find_levels(Bands& bands) {
  if (bands.high - bands.low < 0.01) {  // the same everywhere: still a picture
    bands.low -= 0.5;
    bands.high += 0.5;
  }
  constexpr std::size_t most = 11;
  bands.levels = round_levels(bands.low, bands.high, most);
}

double lower_end(const Bands& bands, std::size_t k) {
  return k == 0 ? bands.low : bands.levels[k - 1];
}

double upper_end(const Bands& bands, std::size_t k) {
  return k == bands.levels.size() ? bands.high : bands.levels[k];
}

}  // namespace

Lab Bands::colour(std::size_t k) const {
  return temperature_colour(((lower_end(*this, k) + upper_end(*this, k)) / 2 - low) / (high - low));
}

double Bands::step() const { return levels.size() > 1 ? levels[1] - levels[0] : high - low; }

Bands bands_of(const cases::Variant& variant) {
  Bands bands;
  include(bands, variant);
  find_levels(bands);
  return bands;
}

Bands bands_of(const std::vector<SolvedVariant>& variants) {
  Bands bands;
  for (const SolvedVariant& solved : variants) include(bands, solved.variant);
  find_levels(bands);
  return bands;
}

std::string figure_of(double level) {
  return fmt::format("{:g}", std::round(level * 1000.0) / 1000.0);
}

void draw_colour_bar(Canvas& canvas, const Bands& bands, Point at, double height) {
  const auto up = [&](double temperature) {
    return at.y + height * (1.0 - (temperature - bands.low) / (bands.high - bands.low));
  };
  for (std::size_t k = 0; k <= bands.levels.size(); ++k) {
    const double top = up(upper_end(bands, k));
    canvas.rectangle({at.x, top}, thickness, up(lower_end(bands, k)) - top,
                     {shown(bands.colour(k)), {}});
  }
  canvas.rectangle({at.x, at.y}, thickness, height, {{}, frame});
  for (const double level : bands.levels) {
    canvas.line({at.x + thickness, up(level)}, {at.x + thickness + 4.0, up(level)}, frame);
    canvas.text({at.x + thickness + 8.0, up(level) + 4.2}, figure_of(level), lettering);
  }
  canvas.text({at.x, at.y - 8.0}, "°C", lettering);
}

void draw_lying_colour_bar(Canvas& canvas, const Bands& bands, Point at, double width) {
  const auto along = [&](double temperature) {
    return at.x + width * (temperature - bands.low) / (bands.high - bands.low);
  };
  for (std::size_t k = 0; k <= bands.levels.size(); ++k) {
    const double from = along(lower_end(bands, k));
    canvas.rectangle({from, at.y}, along(upper_end(bands, k)) - from, thickness,
                     {shown(bands.colour(k)), {}});
  }
  canvas.rectangle(at, width, thickness, {{}, frame});
  Lettering middle = lettering;
  middle.anchor = Anchor::middle;
  for (const double level : bands.levels) {
    canvas.line({along(level), at.y + thickness}, {along(level), at.y + thickness + 4.0}, frame);
    canvas.text({along(level), at.y + thickness + 16.0}, figure_of(level), middle);
  }
  canvas.text({at.x + width + 8.0, at.y + 12.5}, "°C", lettering);
}

}  // namespace quoin::tools
