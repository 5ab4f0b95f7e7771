// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/words/choices.hpp"

namespace quoin::tools {

std::string_view words_for(Degree degree) {
  switch (degree) {
    case Degree::unlikely:
      return "unlikely";
    case Degree::marginal:
      return "marginal";
    case Degree::likely:
      return "likely";
    case Degree::near_certain:
      return "near-certain";
  }
  return "";
}

std::string_view words_for(Threshold::Kind kind) {
  switch (kind) {
    case Threshold::Kind::found:
      return "found";
    case Threshold::Kind::holds_always:
      return "holds always";
    case Threshold::Kind::holds_never:
      return "holds never";
    case Threshold::Kind::up_to:
      return "up to";
    case Threshold::Kind::between:
      return "between";
    case Threshold::Kind::up_to_damp:
      return "up to damp";
    case Threshold::Kind::dry_first:
      return "dry first";
  }
  return "";
}

std::string_view words_for(Threshold::More more) {
  switch (more) {
    case Threshold::More::helps:
      return "helps, but not enough";
    case Threshold::More::nothing:
      return "does not help";
    case Threshold::More::harm:
      return "does harm";
  }
  return "";
}

std::string_view words_for(geometry::Dimensions dimensions) {
  switch (dimensions) {
    case geometry::Dimensions::internal:
      return "internal";
    case geometry::Dimensions::overall_internal:
      return "overall internal";
    case geometry::Dimensions::external:
      return "external";
  }
  return "";
}

std::string words_for(const solver::LinearTransmittance& psi) {
  const std::string dimensions = std::string(words_for(psi.dimensions)) + " dimensions";
  switch (psi.floor) {
    case solver::FloorLoss::none:
      return dimensions;
    case solver::FloorLoss::by_formula:
      return dimensions + ", floor by ISO 13370";
    case solver::FloorLoss::solved:
      return dimensions + ", floor solved";
  }
  return dimensions;
}

std::string psi_by(const SolvedVariant& solved, const solver::LinearTransmittance& psi) {
  return solved.variant.recipe ? words_for(psi) : "lengths as stated";
}

std::string_view words_for(materials::Confidence confidence) {
  switch (confidence) {
    case materials::Confidence::published:
      return "published";
    case materials::Confidence::memory:
      return "from memory";
    case materials::Confidence::typical:
      return "typical";
    case materials::Confidence::stated:
      return "stated";
  }
  return "";
}

}  // namespace quoin::tools
