// SPDX-License-Identifier: Apache-2.0
#include "tools/pictures.hpp"

#include "tools/svg_compare.hpp"
#include "tools/svg_field.hpp"
#include "tools/svg_flow.hpp"
#include "tools/svg_section.hpp"
#include "tools/svg_surface.hpp"

namespace quoin::tools {

Pictures pictures_of(const Results& results) {
  Pictures pictures;
  const double step = results.variants.empty() ? 0.0 : flow_step(results);
  for (const SolvedVariant& solved : results.variants) {
    pictures.sections.push_back(drawn_section(solved.variant, solved.conductivity, results.title));
    pictures.fields.push_back(drawn_field(solved, results.title));
    pictures.flows.push_back(drawn_flow(solved, step, results.title));
  }
  pictures.surface = surface_picture(results);
  pictures.compare = compare_picture(results);
  return pictures;
}

}  // namespace quoin::tools
