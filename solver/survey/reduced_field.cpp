// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/reduced_field.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

namespace quoin::solver {
namespace {

/// Sums of fields whose energy is a smaller share of that of all fields than this count for
/// nothing: a ten-thousandth of the amplitude, where what is read is wanted to a thousandth.
constexpr double least_energy = 1e-8;

/// What one unit operator conducts between vectors, columns of a matrix whose rows are nodes.
Eigen::MatrixXd projected(const UnitOperator& unit, const Eigen::MatrixXd& vectors) {
  Eigen::MatrixXd result = Eigen::MatrixXd::Zero(vectors.cols(), vectors.cols());
  if (unit.links.empty()) return result;  // Eigen divides by the number of columns
  Eigen::MatrixXd drops(vectors.cols(), Eigen::Index(unit.links.size()));
  for (std::size_t l = 0; l < unit.links.size(); ++l) {
    const UnitOperator::Link& link = unit.links[l];
    const auto from = Eigen::Index(link.from), to = Eigen::Index(link.to);
    const double root = std::sqrt(link.conductance);
    if (from == to) {
      drops.col(Eigen::Index(l)) = root * vectors.row(from).transpose();
    } else {
      drops.col(Eigen::Index(l)) = root * (vectors.row(from) - vectors.row(to)).transpose();
    }
  }
  result.selfadjointView<Eigen::Lower>().rankUpdate(drops);
  return result.selfadjointView<Eigen::Lower>();
}

double value_of(const Parametrised& section, const Setting& setting, std::size_t parameter) {
  return parameter < section.regions ? setting.conductivity[parameter]
                                     : setting.conductance[parameter - section.regions];
}

/// The mean of the logarithms of each parameter.
Setting middle_of(const std::vector<Setting>& settings) {
  Setting middle = settings.front();
  const auto mean = [&](std::vector<double>& values, auto member) {
    for (std::size_t i = 0; i < values.size(); ++i) {
      double sum = 0.0;
      for (const Setting& setting : settings) sum += std::log((setting.*member)[i]);
      values[i] = std::exp(sum / static_cast<double>(settings.size()));
    }
  };
  mean(middle.conductivity, &Setting::conductivity);
  mean(middle.conductance, &Setting::conductance);
  return middle;
}

}  // namespace

struct ReducedField::Parts {
  std::size_t regions = 0;
  std::size_t parameters = 0;
  std::size_t airs = 0;
  std::size_t solves = 0;
  std::vector<std::size_t> group_air;
  std::vector<Eigen::MatrixXd> operators;  ///< of each parameter
  Eigen::MatrixXd stacked;                 ///< their lower triangles, one column each
  std::vector<Eigen::VectorXd> loads;      ///< of each group
  Eigen::MatrixXd watch;                   ///< watched by sums
  Eigen::VectorXd whole;                   ///< of each thing watched when all airs are at 1
};

ReducedField::ReducedField(const Parametrised& section, const std::vector<Setting>& training,
                           const std::vector<Watched>& watched, const LinearOptions& options)
    : parts_(std::make_unique<Parts>()) {
  Parts& parts = *parts_;
  parts.regions = section.regions;
  parts.airs = section.airs;
  parts.group_air = section.group_air;
  const std::vector<UnitOperator> units = unit_operators(section);
  parts.parameters = units.size();
  const auto nodes = Eigen::Index(section.mesh.nodes());
  const auto fields = Eigen::Index(section.airs - 1);
  Eigen::MatrixXd solved(nodes, fields * Eigen::Index(training.size()) + 1);
  for (std::size_t s = 0; s < training.size(); ++s) {
    const auto of_setting = full_fields(section, units, training[s], options);
    for (Eigen::Index a = 0; a < fields; ++a)
      solved.col(Eigen::Index(s) * fields + a) =
          Eigen::Map<const Eigen::VectorXd>(of_setting[std::size_t(a)].data(), nodes);
  }
  parts.solves = training.size() * std::size_t(fields);
  // The constant: all airs at 1.
  solved.rightCols(1).setZero();
  for (const UnitOperator& unit : units) {
    for (const UnitOperator::Link& link : unit.links) {
      solved(Eigen::Index(link.from), solved.cols() - 1) = 1.0;
      solved(Eigen::Index(link.to), solved.cols() - 1) = 1.0;
    }
  }
  // Sums of fields of unit energy at the middle of the settings, the strongest kept.
  const Setting middle = middle_of(training);
  std::vector<Eigen::MatrixXd> between;
  Eigen::MatrixXd energy = Eigen::MatrixXd::Zero(solved.cols(), solved.cols());
  for (std::size_t p = 0; p < units.size(); ++p) {
    between.push_back(projected(units[p], solved));
    energy += value_of(section, middle, p) * between.back();
  }
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(energy);
  const double most = eigen.eigenvalues().tail(1)[0];
  Eigen::Index kept = 0;
  while (kept < energy.cols() &&
         eigen.eigenvalues()[energy.cols() - 1 - kept] > least_energy * most)
    ++kept;
  const Eigen::MatrixXd sums =
      eigen.eigenvectors().rightCols(kept) *
      eigen.eigenvalues().tail(kept).cwiseSqrt().cwiseInverse().asDiagonal();
  parts.stacked = Eigen::MatrixXd(kept * (kept + 1) / 2, Eigen::Index(units.size()));
  for (std::size_t p = 0; p < units.size(); ++p) {
    parts.operators.push_back(sums.transpose() * between[p] * sums);
    for (Eigen::Index column = 0, begin = 0; column < kept; begin += kept - column, ++column)
      parts.stacked.col(Eigen::Index(p)).segment(begin, kept - column) =
          parts.operators.back().col(column).tail(kept - column);
  }
  for (std::size_t g = 0; g < section.group_air.size(); ++g) {
    Eigen::VectorXd load = Eigen::VectorXd::Zero(solved.cols());
    for (const UnitOperator::Link& link : units[section.regions + g].links)
      load += link.conductance * solved.row(Eigen::Index(link.from)).transpose();
    parts.loads.push_back(sums.transpose() * load);
  }
  Eigen::MatrixXd watch(Eigen::Index(watched.size()), solved.cols());
  parts.whole = Eigen::VectorXd::Zero(Eigen::Index(watched.size()));
  watch.setZero();
  for (std::size_t w = 0; w < watched.size(); ++w) {
    for (const auto& [node, weight] : watched[w]) {
      watch.row(Eigen::Index(w)) += weight * solved.row(Eigen::Index(node));
      parts.whole[Eigen::Index(w)] += weight;
    }
  }
  parts.watch = watch * sums;
}

ReducedField::~ReducedField() = default;
ReducedField::ReducedField(ReducedField&&) noexcept = default;
ReducedField& ReducedField::operator=(ReducedField&&) noexcept = default;

std::size_t ReducedField::size() const { return std::size_t(parts_->watch.cols()); }
std::size_t ReducedField::solves() const { return parts_->solves; }

void ReducedField::evaluate(const Setting& setting, std::span<double> shares, Table* slopes) const {
  const Parts& parts = *parts_;
  const Eigen::Index n = parts.watch.cols();
  // Asked for by the thousand: kept from call to call, so that only the first takes memory.
  thread_local Eigen::VectorXd value, stacked;
  thread_local Eigen::MatrixXd whole, solved, seen;
  value.resize(Eigen::Index(parts.parameters));
  for (std::size_t p = 0; p < parts.parameters; ++p)
    value[Eigen::Index(p)] =
        p < parts.regions ? setting.conductivity[p] : setting.conductance[p - parts.regions];
  stacked.noalias() = parts.stacked * value;
  whole.resize(n, n);  // of which the lower triangle is looked at
  for (Eigen::Index column = 0, begin = 0; column < n; begin += n - column, ++column)
    whole.col(column).tail(n - column) = stacked.segment(begin, n - column);
  const Eigen::LLT<Eigen::Ref<Eigen::MatrixXd>> factored(whole);  // in place
  const auto fields = Eigen::Index(parts.airs) - 1;
  solved.setZero(n, fields);  // at first the load
  for (std::size_t g = 0; g < parts.loads.size(); ++g) {
    const auto air = Eigen::Index(parts.group_air[g]);
    if (air < fields) solved.col(air) += value[Eigen::Index(parts.regions + g)] * parts.loads[g];
  }
  for (Eigen::Index air = 0; air < fields; ++air) {
    auto one = solved.col(air);
    factored.matrixL().solveInPlace(one);
    factored.matrixU().solveInPlace(one);
  }
  seen.noalias() = parts.watch * solved;
  for (Eigen::Index w = 0; w < seen.rows(); ++w) {
    double rest = parts.whole[w];
    for (Eigen::Index a = 0; a < fields; ++a) {
      shares[std::size_t(w * (fields + 1) + a)] = seen(w, a);
      rest -= seen(w, a);
    }
    shares[std::size_t(w * (fields + 1) + fields)] = rest;
  }
  if (slopes == nullptr) return;
  *slopes = Table(std::size_t(seen.rows() * (fields + 1)), parts.parameters);
  for (std::size_t p = 0; p < parts.parameters; ++p) {
    Eigen::MatrixXd moved = -(parts.operators[p] * solved);
    if (p >= parts.regions) {
      const auto air = Eigen::Index(parts.group_air[p - parts.regions]);
      if (air < fields) moved.col(air) += parts.loads[p - parts.regions];
    }
    const Eigen::MatrixXd change = parts.watch * factored.solve(value[Eigen::Index(p)] * moved);
    for (Eigen::Index w = 0; w < change.rows(); ++w) {
      double rest = 0.0;
      for (Eigen::Index a = 0; a < fields; ++a) {
        (*slopes)(std::size_t(w * (fields + 1) + a), p) = change(w, a);
        rest -= change(w, a);
      }
      (*slopes)(std::size_t(w * (fields + 1) + fields), p) = rest;
    }
  }
}

double reduction_error(const Parametrised& section, const ReducedField& reduced,
                       const std::vector<Setting>& settings, const std::vector<Watched>& watched,
                       const LinearOptions& options) {
  double worst = 0.0;
  std::vector<double> shares(watched.size() * section.airs);
  const std::vector<UnitOperator> units = unit_operators(section);
  for (const Setting& setting : settings) {
    reduced.evaluate(setting, shares);
    const std::vector<double> full = full_shares(section, units, setting, watched, options);
    for (std::size_t k = 0; k < full.size(); ++k)
      worst = std::max(worst, std::abs(full[k] - shares[k]));
  }
  return worst;
}

}  // namespace quoin::solver
