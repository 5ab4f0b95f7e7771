// SPDX-License-Identifier: Apache-2.0
#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "solver/survey/posterior.hpp"
#include "solver/survey/quasi_random.hpp"

namespace quoin::solver {
namespace {

constexpr std::size_t first_share = 4;  ///< one draw in so many is from about the mode
constexpr double widened = 1.15;        ///< spread of these beside that of the mode
/// Of weights to which the second proposal is fitted: between what was proposed and what it should
/// be, so that few draws make no narrow one.
constexpr double fitted_power = 0.5;

/// A multivariate t with which draws are proposed.
struct Proposal {
  Eigen::VectorXd centre;
  Eigen::MatrixXd root;  ///< lower triangle; root * root' is its scale squared
  double degrees = 5.0;
  double log_constant = 0.0;
};

Proposal proposal_of(const Eigen::VectorXd& centre, const Eigen::MatrixXd& covariance,
                     double degrees) {
  Proposal result{centre, covariance.llt().matrixL(), degrees, 0.0};
  const auto d = static_cast<double>(centre.size());
  result.log_constant = std::lgamma((degrees + d) / 2) - std::lgamma(degrees / 2) -
                        d / 2 * std::log(degrees * std::numbers::pi) -
                        result.root.diagonal().array().log().sum();
  return result;
}

double log_proposed(const Proposal& proposal, const Eigen::VectorXd& at) {
  const Eigen::VectorXd t =
      proposal.root.triangularView<Eigen::Lower>().solve(at - proposal.centre);
  const auto d = static_cast<double>(at.size());
  return proposal.log_constant -
         (proposal.degrees + d) / 2 * std::log1p(t.squaredNorm() / proposal.degrees);
}

/// The logarithm of the mean of two exponentials, the first of which counts by `share`.
double log_mean(double first, double share, double second) {
  const double most = std::max(first, second);
  return most + std::log(share * std::exp(first - most) + (1.0 - share) * std::exp(second - most));
}

Eigen::Map<const Eigen::VectorXd> drawn(const Sample& sample, std::size_t k) {
  return {sample.draws.row(k).data(), Eigen::Index(sample.draws.columns)};
}

/// A sample with room for some draws.
Sample empty_sample(const Inference& inference, std::size_t draws) {
  Sample sample;
  sample.draws = Table(draws, inference.dimensions());
  sample.predicted = Table(draws, inference.read.size());
  sample.log_density.resize(draws);
  return sample;
}

/// Fills the draws of a sample from `from` on.
void draw(const Inference& inference, const Proposal& proposal, const StandardDraws& standard,
          std::size_t from, Sample& sample) {
  const auto n = Eigen::Index(inference.dimensions());
  for (std::size_t k = from; k < sample.draws.rows; ++k) {
    const Eigen::VectorXd t =
        standard.stretch[k] * Eigen::Map<const Eigen::VectorXd>(standard.normals.row(k).data(), n);
    Eigen::Map<Eigen::VectorXd> z(sample.draws.row(k).data(), n);
    z = proposal.centre + proposal.root.triangularView<Eigen::Lower>() * t;
    sample.log_density[k] = log_density(inference, sample.draws.row(k), sample.predicted.row(k));
  }
}

/// Weights from the logarithms of what draws were proposed with, and what they tell of evidence.
void weigh(const std::vector<double>& log_proposals, Sample& sample) {
  double most = sample.log_density[0] - log_proposals[0];
  for (std::size_t k = 0; k < log_proposals.size(); ++k)
    most = std::max(most, sample.log_density[k] - log_proposals[k]);
  double sum = 0.0, squares = 0.0;
  sample.weights.clear();
  for (std::size_t k = 0; k < log_proposals.size(); ++k) {
    const double weight = std::exp(sample.log_density[k] - log_proposals[k] - most);
    sample.weights.push_back(weight);
    sum += weight;
    squares += weight * weight;
  }
  for (double& weight : sample.weights) weight /= sum;
  const auto count = static_cast<double>(log_proposals.size());
  sample.effective = sum * sum / squares;
  sample.log_evidence = most + std::log(sum / count);
  sample.evidence_error = std::sqrt(std::max(0.0, count / sample.effective - 1.0) / count);
}

Proposal about_mode(const Mode& mode, const StandardDraws& standard) {
  const auto n = Eigen::Index(mode.at.size());
  Eigen::MatrixXd covariance(n, n);
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j)
      covariance(i, j) = mode.covariance(std::size_t(i), std::size_t(j)) * widened * widened;
  }
  return proposal_of(Eigen::Map<const Eigen::VectorXd>(mode.at.data(), n), covariance,
                     standard.degrees);
}

/// A proposal fitted to weighted draws.
Proposal fitted(const Sample& sample, const Proposal& before) {
  const auto dimensions = before.centre.size();
  Eigen::VectorXd mean = Eigen::VectorXd::Zero(dimensions);
  Eigen::MatrixXd second = Eigen::MatrixXd::Zero(dimensions, dimensions);
  double sum = 0.0;
  for (std::size_t k = 0; k < sample.draws.rows; ++k) {
    const double weight = std::pow(sample.weights[k], fitted_power);
    const Eigen::VectorXd off = drawn(sample, k) - before.centre;
    sum += weight;
    mean += weight * off;
    second += weight * off * off.transpose();
  }
  mean /= sum;
  const Eigen::MatrixXd covariance = second / sum - mean * mean.transpose() +
                                     1e-9 * Eigen::MatrixXd::Identity(dimensions, dimensions);
  return proposal_of(before.centre + mean, covariance, before.degrees);
}

}  // namespace

StandardDraws::StandardDraws(std::size_t draws, std::size_t dimensions, double degrees_)
    : degrees(degrees_), normals(draws, dimensions) {
  const std::vector<double> points = even_points(draws, dimensions + 1);
  for (std::size_t k = 0; k < draws; ++k) {
    const double* point = points.data() + k * (dimensions + 1);
    stretch.push_back(std::sqrt(degrees / chi_squared_quantile(point[0], degrees)));
    for (std::size_t u = 0; u < dimensions; ++u) normals(k, u) = normal_quantile(point[u + 1]);
  }
}

Sample sample_about(const Inference& inference, const Mode& mode, const StandardDraws& standard) {
  const Proposal proposal = about_mode(mode, standard);
  Sample sample = empty_sample(inference, standard.normals.rows / first_share);
  draw(inference, proposal, standard, 0, sample);
  std::vector<double> log_proposals;
  for (std::size_t k = 0; k < sample.draws.rows; ++k)
    log_proposals.push_back(log_proposed(proposal, drawn(sample, k)));
  weigh(log_proposals, sample);
  return sample;
}

Sample sample_of(const Inference& inference, const Mode& mode, const StandardDraws& standard,
                 const Sample& first, std::size_t draws) {
  const Proposal near = about_mode(mode, standard);
  const Proposal fit = fitted(first, near);
  Sample sample = empty_sample(inference, draws);
  const std::size_t begun = first.draws.rows;
  std::copy(first.draws.values.begin(), first.draws.values.end(), sample.draws.values.begin());
  std::copy(first.predicted.values.begin(), first.predicted.values.end(),
            sample.predicted.values.begin());
  std::copy(first.log_density.begin(), first.log_density.end(), sample.log_density.begin());
  draw(inference, fit, standard, begun, sample);
  const double share = static_cast<double>(begun) / static_cast<double>(sample.draws.rows);
  std::vector<double> log_proposals;
  for (std::size_t k = 0; k < sample.draws.rows; ++k)
    log_proposals.push_back(
        log_mean(log_proposed(near, drawn(sample, k)), share, log_proposed(fit, drawn(sample, k))));
  weigh(log_proposals, sample);
  return sample;
}

Sample sample_of(const Inference& inference, const Mode& mode, const StandardDraws& standard) {
  return sample_of(inference, mode, standard, sample_about(inference, mode, standard),
                   standard.normals.rows);
}

}  // namespace quoin::solver
