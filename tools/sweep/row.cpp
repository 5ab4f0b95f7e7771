// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/row.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <new>
#include <optional>
#include <utility>

#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/yaml_text.hpp"
#include "solver/findings/between_airs.hpp"
#include "solver/linear/errors.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/numbers.hpp"
#include "tools/answer/survey/chances.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::tools {
namespace {

/// Solutions kept: of both purposes and of a floor without its wall.
constexpr std::size_t most_known = 3;

template <class List>
bool same(const List& one, const List& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end());
}

bool same(const solver::Physics& one, const solver::Physics& other) {
  const auto& a = one.resistance;
  const auto& b = other.resistance;
  return same(one.conductivity, other.conductivity) && same(one.air, other.air) &&
         same(one.is_fabric, other.is_fabric) &&
         std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](const auto& p, const auto& q) { return same(p, q); });
}

bool same(const geometry::Sheet& one, const geometry::Sheet& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [](const geometry::Patch& a, const geometry::Patch& b) {
                      return a.fill == b.fill && a.only_over == b.only_over &&
                             a.outline == b.outline;
                    });
}

/// Whether two questions between 0 and 1 have one answer. The section follows from the sheet.
bool same(const solver::Question& one, const solver::Question& other) {
  return one.rooms == other.rooms && one.outside == other.outside && one.probes == other.probes &&
         one.factor_band == other.factor_band && one.coupling_band == other.coupling_band &&
         same(one.temperatures, other.temperatures) && same(one.physics, other.physics) &&
         same(one.sheet, other.sheet);
}

/// Whether the chance that a limit is passed, which takes long to find, decides the outcome.
bool hangs_on_chance(const SolvedVariant& solved, const solver::AirSurface& surface) {
  const Outcome never = outcome_in(solved, surface, 0.0);
  const Outcome always = outcome_in(solved, surface, 1.0);
  return never.kind != always.kind || never.decided_by != always.decided_by;
}

/// A fault in one line: its place in the merged case, what is wrong, found, expected.
std::string in_one_line(const cases::Fault& fault) {
  std::string line =
      fault.line == 0 ? fault.what : fmt::format("line {}: {}", fault.line, fault.what);
  if (!fault.found.empty()) line += fmt::format("; found: {}", fault.found);
  if (!fault.expected.empty()) line += fmt::format("; expected: {}", fault.expected);
  return line;
}

std::string in_one_line(const std::vector<cases::Fault>& faults) {
  std::string all;
  for (const cases::Fault& fault : faults) all += (all.empty() ? "" : " | ") + in_one_line(fault);
  return all;
}

std::string digest_of(const std::optional<std::string>& table) {
  return table ? cases::sha256(*table) : "missing";
}

}  // namespace

std::string digest_of_table(const cases::Files& files, const std::string& name) {
  return digest_of(files ? files(name) : std::nullopt);
}

SweepSolver::SweepSolver(const cases::Vary& vary, std::vector<SweepColumn> columns,
                         cases::Files files, const solver::Effort& effort)
    : vary_(vary), files_(std::move(files)), effort_(effort), columns_(std::move(columns)) {
  for (const SweepColumn& column : columns_) {
    outcome_ = outcome_ || column.by_outcome;
    chance_ = chance_ || column.by_chance;
  }
}

SweepCase SweepSolver::read(std::uint64_t row) {
  const cases::Node tree = vary_.merged(vary_.choice(row));
  SweepCase result;
  result.text = cases::yaml_text(tree);
  const cases::Files noting = [&](const std::string& name) {
    std::optional<std::string> text = files_ ? files_(name) : std::nullopt;
    result.tables[name] = digest_of(text);
    return text;
  };
  try {
    result.read = cases::case_of(tree, result.text, vary_.file, noting);
  } catch (const cases::InputError&) {
    // Told by the lines of the merged case, which is what stands on its own.
    try {
      result.read = cases::case_of(result.text, vary_.file, noting);
    } catch (const cases::InputError& error) {
      result.fault = in_one_line(error.faults);
    }
  }
  std::string named = result.text;
  for (const auto& [name, digest] : result.tables) named += fmt::format("# {} {}\n", digest, name);
  result.key =
      result.tables.empty() && result.fault.empty() ? result.read.sha256 : cases::sha256(named);
  return result;
}

solver::Solution SweepSolver::solution(const solver::Question& question,
                                       const solver::Effort& effort) {
  solver::Question between = solver::between_airs(question);
  for (const Known& known : known_) {
    if (same(known.question, between))
      return solver::at_temperatures(known.between, question.temperatures);
  }
  solver::Solution found = solver::solution_between(question, effort);
  if (known_.size() < most_known) known_.emplace_back();
  Known& place = known_[next_++ % most_known];
  place = {std::move(between), std::move(found)};
  return solver::at_temperatures(place.between, question.temperatures);
}

std::vector<Cell> SweepSolver::cells(const cases::Case& read) {
  SolvedVariant solved;
  solved.variant = read.variants.front();
  static_cast<void>(solve_numbers(
      solved, effort_, [this](const solver::Question& question, const solver::Effort& effort) {
        return solution(question, effort);
      }));
  if (outcome_) {
    bool asked = chance_;
    for (const solver::AirSurface* surface : judged_surfaces(solved))
      asked = asked || hangs_on_chance(solved, *surface);
    if (asked) {
      ChanceGround ground{read.household, nullptr, ""};
      std::optional<WorkedSurvey> worked;
      if (read.survey && !read.survey->readings.empty()) {
        worked = worked_survey({{"", &read.variants.front()}}, *read.survey, effort_.linear);
        ground.worked = &*worked;
      }
      solved.chances = chances_of(solved, ground, effort_.linear);
    }
    solved.outcomes = outcomes(solved);
  }
  std::vector<Cell> cells;
  for (const SweepColumn& column : columns_) cells.push_back(column.value(solved));
  return cells;
}

SweepAnswer SweepSolver::answer(const SweepCase& row) {
  if (!row.fault.empty()) return {{}, row.fault, RowEnd::wrong_input};
  try {
    return {cells(row.read), "", RowEnd::solved};
  } catch (const solver::SolveError& error) {
    return {{}, fmt::format("the numerics failed: {}", error.what()), RowEnd::numerics_failed};
  } catch (const std::bad_alloc&) {
    return {{}, "the memory of this machine is not enough", RowEnd::numerics_failed};
  }
}

}  // namespace quoin::tools
