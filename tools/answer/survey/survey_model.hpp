// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "solver/survey/posterior.hpp"
#include "solver/survey/reading_model.hpp"
#include "tools/answer/survey/surveyed_section.hpp"

namespace quoin::tools {

/// One section of a house and what it is called; the only one may have no name.
struct HouseSection {
  std::string name;
  const cases::Variant* variant = nullptr;  ///< as found, with its readings
};

/// What an unknown is.
enum class UnknownKind : std::uint8_t {
  conductivity,     ///< factor of a masonry's
  ratio,            ///< factor of a zone's
  surface,          ///< factor of the resistance of inside surfaces
  angle,            ///< factor of it near inside angles
  cover,            ///< factor of it in a stretch
  outside_surface,  ///< factor of that outside
  stated_surface,   ///< factor of one that the author states
  air_now,          ///< K that an air differs from what is said
  air_felt,         ///< K that the air outside felt by inside faces does
  offset,           ///< K an instrument adds
  emissivity,       ///< what its share of reflection errs by
  pad,              ///< factor of a pad's resistance
};

/// One unknown of a survey with what is known of it beforehand.
struct SurveyUnknown {
  UnknownKind kind = UnknownKind::conductivity;
  std::string of;
  solver::Unknown before;
  double reference = 1.0;  ///< what it is a factor of
};

/// One reading and what the model needs of it.
struct SurveyedReading {
  std::size_t section = 0;
  std::size_t number = 0;  ///< in the file; readings of a model are in the order of their places
  std::string probe;
  geometry::Point place;
  double read = 0.0;
  bool on_surface = true;
  bool is_inside = true;   ///< on a surface of a room
  double deviation = 0.0;  ///< standard, of this reading alone, K
  double joints = 0.2;     ///< standard, by joints and headers, K
  const cases::Instrument* instrument = nullptr;
  const cases::Pad* pad = nullptr;
  std::size_t watched = 0;  ///< its mean; the two that follow: either side of its place
  cases::SpaceId space;     ///< in front of it
  std::size_t group = 0;    ///< of the face
  WallBehind behind;
  double to_angle = 1e9;        ///< m
  std::vector<double> to_zone;  ///< how far from each zone as drawn, m; 0 within
  std::string left_out;         ///< why it counts for nothing; empty: it counts
};

/// All that the readings of a house rest on, whatever explains them.
struct SurveyModel {
  const cases::Survey* survey = nullptr;
  std::vector<SurveyedSection> sections;
  std::vector<std::unique_ptr<solver::ReducedField>> fields;
  std::vector<std::vector<solver::Watched>> watched;
  std::vector<solver::Setting> base;  ///< of each section
  std::vector<SurveyUnknown> unknowns;
  std::vector<SurveyedReading> readings;
  std::vector<SurveyedReading> candidates;     ///< places that might be read next
  std::vector<cases::Instrument> instruments;  ///< those stated and one for readings that name none
  std::vector<std::size_t> training;           ///< settings that each field was solved for
  double basis_error = 0.0;                    ///< K, at check points and modes
  std::size_t solves = 0;

  [[nodiscard]] std::optional<std::size_t> find(UnknownKind kind, const std::string& of) const;
};

/// One explanation with one choice of how far the zones reach.
struct Hypothesis {
  std::vector<solver::Unknown> before;  ///< of every unknown
  std::vector<ZoneExtent> extents;      ///< of every zone
};

/// Everything solved that readings are compared with. Throws: SolveError.
[[nodiscard]] SurveyModel survey_model(const std::vector<HouseSection>& house,
                                       const cases::Survey& survey,
                                       const solver::LinearOptions& options);

/// How far what reduced fields say may be from full ones, K.
inline constexpr double wanted_basis_error = 0.02;

/// Solves every section for twice as many settings, where it may be. False where none may.
/// Throws: SolveError.
[[nodiscard]] bool solve_more(SurveyModel& model, const solver::LinearOptions& options);

/// How far reduced fields of a section are from full ones at some settings, K. Throws: SolveError.
[[nodiscard]] double error_at(const SurveyModel& model, std::size_t section,
                              const std::vector<solver::Setting>& settings,
                              const solver::LinearOptions& options);

/// What the section is like as drawn.
[[nodiscard]] Hypothesis as_drawn(const SurveyModel& model);

/// What an explanation changes of that; with extents of the zone it is about.
[[nodiscard]] Hypothesis hypothesis_of(const SurveyModel& model,
                                       const cases::Explanation& explanation, ZoneExtent extent);

/// Whether the extents of the zone that an explanation is about differ from each other.
[[nodiscard]] bool has_extents(const SurveyModel& model, const cases::Explanation& explanation);

/// How plane walls follow the airs beside them, each wall worked out once.
class FeltAirs {
 public:
  /// The temperature of an air that the place of a reading feels, degC, before any unknown is
  /// added.
  [[nodiscard]] double at(const SurveyModel& model, const SurveyedReading& reading, std::size_t air,
                          const Hypothesis& hypothesis, const std::vector<double>& unknowns);

 private:
  /// Of a wall and the air before (0) or behind (1) it, what each past hour counts for.
  std::map<std::pair<std::vector<double>, int>, std::vector<double>> weights_;
};

/// The readings that count under a hypothesis. The airs that walls felt are those with the
/// conductivities at `unknowns`.
[[nodiscard]] solver::ReadingModel reading_model(const SurveyModel& model,
                                                 const Hypothesis& hypothesis,
                                                 const std::vector<double>& unknowns,
                                                 FeltAirs& felt);

/// The same for other places, with the readings of a model or without; all of them count.
[[nodiscard]] solver::ReadingModel reading_model(const SurveyModel& model,
                                                 const std::vector<SurveyedReading>& places,
                                                 const Hypothesis& hypothesis,
                                                 const std::vector<double>& unknowns,
                                                 FeltAirs& felt);

/// The growth of one section's parameters with the unknowns.
[[nodiscard]] std::vector<solver::Growth> growth_of(const SurveyModel& model, std::size_t section,
                                                    const std::vector<ZoneExtent>& extents);

/// How long the inside face of the wall behind a reading lags behind the air outside, h; nothing
/// where the wall ends within the section.
[[nodiscard]] std::optional<double> lag_of(const SurveyModel& model, const SurveyedReading& reading,
                                           const std::vector<double>& unknowns);

/// The air of a survey by the name of its space; null: nothing is said of it.
[[nodiscard]] const cases::SurveyedAir* surveyed_air(const cases::Survey& survey,
                                                     const std::string& space);

/// The inference that readings of a model ask for, of those that count.
[[nodiscard]] solver::Inference inference_of(const SurveyModel& model,
                                             const solver::ReadingModel& readings);

}  // namespace quoin::tools
