// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "materials/conductivity.hpp"
#include "solver/findings/findings.hpp"
#include "tools/answer/results/chance_findings.hpp"
#include "tools/answer/results/outcome.hpp"
#include "tools/answer/results/survey_findings.hpp"
#include "tools/answer/results/vapour_findings.hpp"
#include "tools/answer/results/year_findings.hpp"

namespace quoin::tools {

using geometry::Per;
using geometry::RegionId;
using geometry::SpaceId;

/// The humidity side of one inside air.
struct AirHumidity {
  SpaceId air;
  double humidity = 0.0;           ///< of the air, relative, 0 to 1
  double dew_point = 0.0;          ///< degC
  double mould_temperature = 0.0;  ///< where the surface humidity reaches 80 %, degC
  double surface_humidity = 0.0;   ///< at the coldest spot, relative; above 1 it condenses
  double margin_to_mould = 0.0;    ///< coldest spot above mould_temperature, K; negative: below
  double margin_to_condensation = 0.0;  ///< coldest spot above dew_point, K
  /// What the room asks of a surface: 80 % (ISO 13788), or the strictest criterion of humidity.
  std::string limit_by = "80 %";    ///< the name of that criterion, or "80 %"
  double limit = 0.8;               ///< humidity at the surface, relative
  double lowest_temperature = 0.0;  ///< of a surface that just keeps it, degC
  double factor_needed = 0.0;       ///< fRsi that just keeps it; NaN where it is no warmer inside
  double highest_safe_humidity = 0.0;  ///< of the room's air that just keeps it, relative
};

/// How likely it is that a criterion is broken, in the words of the trade.
enum class Degree { unlikely, marginal, likely, near_certain };

/// A verdict that allows for what a survey cannot know exactly.
struct Grade {
  Degree degree = Degree::unlikely;
  double chance = 0.0;    ///< that the criterion is broken, 0 to 1
  double humidity = 0.0;  ///< of the room, assumed; relative
};

/// One criterion judged at the coldest spot of one air.
struct Verdict {
  std::string criterion;
  SpaceId space;
  bool holds = false;
  double limit = 0.0;          ///< humidity at the surface, 0 to 1, or fRsi
  double has = 0.0;            ///< what the spot has, in the same terms
  double margin = 0.0;         ///< positive: on the safe side, in `unit`
  double band = 0.0;           ///< of the margin, same unit: of grid and solver
  std::string unit;            ///< "%RH" or "1"
  std::optional<Grade> grade;  ///< of criteria that look at the humidity
  std::string gate;            ///< why a favourable verdict is withheld; empty: it is not
};

/// The end of a joist in the masonry. Its humidity is that of the room's air cooled to the timber:
/// an upper estimate, reached where that air finds its way into the pocket.
struct TimberEnd {
  std::string name;
  geometry::Point place;
  solver::Estimate temperature;    ///< degC, surface purpose
  SpaceId room;                    ///< the inside air with the most vapour; not valid: none known
  std::optional<double> humidity;  ///< relative; above 1 it condenses
};

/// One variant, solved.
struct SolvedVariant {
  cases::Variant variant;
  Per<RegionId, materials::Conductivity> conductivity;
  solver::Solution surface;  ///< with the resistances of the surface-temperature purpose
  solver::Solution heat;     ///< with the resistances of the heat-flow purpose
  std::vector<solver::PlainPart> plain;  ///< what the recipe knows; else empty
  std::vector<solver::LinearTransmittance> psi;
  std::vector<solver::CutPlane> cut_planes;
  std::vector<AirHumidity> humidity;
  std::vector<TimberEnd> timber_ends;
  std::vector<Verdict> verdicts;
  std::vector<Outcome> outcomes;      ///< of every room inside
  std::vector<Year> years;            ///< of inside airs, where the case has a climate
  std::vector<Chance> chances;        ///< that each criterion is broken in each room
  std::vector<EnoughFor> enough;      ///< for each verdict, in the same order
  std::optional<VapourCheck> vapour;  ///< where the case asks for it; never a verdict
  std::optional<DryingLedger> drying;
  bool cut_off = false;  ///< cut planes too near the detail matter to its coldest spots
  std::vector<std::string> warnings;  ///< in plain words
  std::string summary;                ///< the verdict in plain words
};

/// One and the same place of a surface that is colder in a variant than in the first.
struct Colder {
  std::string name;       ///< in the words of the trade
  geometry::Point place;  ///< in the variant
  double before = 0.0;    ///< degC
  double after = 0.0;     ///< degC
};

/// What one variant changed against the first.
struct Change {
  std::string variant;
  SpaceId space;
  double before = 0.0;  ///< coldest spot, degC
  double after = 0.0;
  double moved = 0.0;          ///< how far the coldest spot moved, m
  std::vector<Colder> colder;  ///< the biggest drop first; empty: nothing got colder
  std::string words;           ///< the same in plain words
};

/// A whole case, solved.
struct Results {
  std::string title;
  std::string note;
  std::string file;
  std::string sha256;
  std::vector<SolvedVariant> variants;
  std::vector<Change> changes;
  std::string text = {};                      ///< the case file as read
  std::optional<SurveyFindings> survey = {};  ///< what readings of the first variant tell
};

}  // namespace quoin::tools
