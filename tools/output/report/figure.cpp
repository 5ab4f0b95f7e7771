// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/figure.hpp"

namespace quoin::tools::report {

const Picture& picture_of(const Figure& figure, const Pictures& pictures) {
  switch (figure.kind) {
    case Figure::Kind::section:
      return pictures.sections[figure.variant];
    case Figure::Kind::field:
      return pictures.fields[figure.variant];
    case Figure::Kind::flow:
      return pictures.flows[figure.variant];
    case Figure::Kind::surface:
      return pictures.surface;
    case Figure::Kind::compare:
      return pictures.compare;
    case Figure::Kind::readings:
      return pictures.readings;
    case Figure::Kind::odds:
      return pictures.odds;
    case Figure::Kind::chances:
      return pictures.chances;
  }
  return pictures.compare;
}

}  // namespace quoin::tools::report
