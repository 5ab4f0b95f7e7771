// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/figure.hpp"

namespace quoin::tools::report {

std::string picture_of(const Figure& figure, const Pictures& pictures) {
  switch (figure.kind) {
    case Figure::Kind::section:
      return pictures.sections[figure.variant].svg();
    case Figure::Kind::field:
      return pictures.fields[figure.variant].svg();
    case Figure::Kind::flow:
      return pictures.flows[figure.variant].svg();
    case Figure::Kind::surface:
      return pictures.surface;
    case Figure::Kind::compare:
      return pictures.compare;
  }
  return "";
}

}  // namespace quoin::tools::report
