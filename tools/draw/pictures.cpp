// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/pictures.hpp"

#include "tools/answer/words/advice.hpp"
#include "tools/draw/chart/chances.hpp"
#include "tools/draw/chart/odds.hpp"
#include "tools/draw/chart/readings.hpp"
#include "tools/draw/chart/surface.hpp"
#include "tools/draw/field/compare.hpp"
#include "tools/draw/field/field.hpp"
#include "tools/draw/field/flow.hpp"
#include "tools/draw/section/section.hpp"

namespace quoin::tools {

Pictures pictures_of(const Results& results) {
  Pictures pictures;
  const double step = results.variants.empty() ? 0.0 : flow_step(results);
  const double section = section_scale(results), field = field_scale(results),
               flow = flow_scale(results);
  for (const SolvedVariant& solved : results.variants) {
    pictures.sections.push_back(
        drawn_section(solved.variant, solved.conductivity, results.title, section));
    pictures.fields.push_back(drawn_field(solved, results.title, field));
    pictures.flows.push_back(drawn_flow(solved, step, results.title, flow));
  }
  pictures.surface = drawn_surface(results);
  pictures.compare = drawn_compare(results);
  pictures.readings = drawn_readings(results);
  pictures.odds = drawn_odds(results);
  const std::size_t chosen = results.variants.empty() ? 0 : advice_on(results).chosen;
  pictures.chances = drawn_chances(results, chosen);
  return pictures;
}

}  // namespace quoin::tools
