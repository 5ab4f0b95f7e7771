// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/wall_response.hpp"

#include <Eigen/Eigenvalues>
#include <cmath>

namespace quoin::solver {
namespace {

constexpr double slice = 0.006;  // m
constexpr double hour = 3600.0;  // s

/// A wall as a chain of nodes, the first and the last on its faces.
struct Chain {
  Eigen::VectorXd capacity;   ///< J/(m2 K)
  Eigen::VectorXd conducted;  ///< between a node and the next, W/(m2 K)
  double inside_film = 0.0;   ///< W/(m2 K)
  double outside_film = 0.0;  ///< W/(m2 K)
};

Chain chain_of(const StoringWall& wall) {
  std::vector<double> capacity{0.0}, conducted;
  for (const StoringLayer& layer : wall.layers) {
    const auto slices = static_cast<std::size_t>(std::ceil(layer.thickness / slice - 1e-9));
    const double thickness = layer.thickness / static_cast<double>(slices);
    for (std::size_t i = 0; i < slices; ++i) {
      capacity.back() += layer.heat_capacity * thickness / 2;
      capacity.push_back(layer.heat_capacity * thickness / 2);
      conducted.push_back(layer.conductivity / thickness);
    }
  }
  Chain chain;
  chain.capacity = Eigen::Map<Eigen::VectorXd>(capacity.data(), Eigen::Index(capacity.size()));
  chain.conducted = Eigen::Map<Eigen::VectorXd>(conducted.data(), Eigen::Index(conducted.size()));
  chain.inside_film = 1.0 / wall.inside_resistance;
  chain.outside_film = 1.0 / wall.outside_resistance;
  return chain;
}

}  // namespace

WallResponse::WallResponse(const StoringWall& wall, WallFace face, WallFace air) {
  const Chain chain = chain_of(wall);
  const Eigen::Index nodes = chain.capacity.size();
  Eigen::VectorXd diagonal = Eigen::VectorXd::Zero(nodes);
  Eigen::VectorXd beside(nodes - 1);
  diagonal[0] = chain.inside_film;
  diagonal[nodes - 1] += chain.outside_film;
  for (Eigen::Index i = 0; i + 1 < nodes; ++i) {
    diagonal[i] += chain.conducted[i];
    diagonal[i + 1] += chain.conducted[i];
    beside[i] = -chain.conducted[i] / std::sqrt(chain.capacity[i] * chain.capacity[i + 1]);
  }
  diagonal = diagonal.cwiseQuotient(chain.capacity);
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver;
  solver.computeFromTridiagonal(diagonal, beside);
  const Eigen::Index read = face == WallFace::inside ? 0 : nodes - 1;
  const Eigen::Index driven = air == WallFace::inside ? 0 : nodes - 1;
  const double film = air == WallFace::inside ? chain.inside_film : chain.outside_film;
  for (Eigen::Index m = 0; m < nodes; ++m) {
    const double rate = solver.eigenvalues()[m];
    const double share = film * solver.eigenvectors()(read, m) * solver.eigenvectors()(driven, m) /
                         std::sqrt(chain.capacity[read] * chain.capacity[driven]) / rate;
    rate_.push_back(rate);
    share_.push_back(share);
    steady_ += share;
  }
}

double WallResponse::mean_lag() const {
  double sum = 0.0;
  for (std::size_t m = 0; m < rate_.size(); ++m) sum += share_[m] / rate_[m];
  return sum / steady_;
}

double WallResponse::integrated_step(double seconds) const {
  double sum = 0.0;
  for (std::size_t m = 0; m < rate_.size(); ++m)
    sum += share_[m] * (seconds + std::expm1(-rate_[m] * seconds) / rate_[m]);
  return sum;
}

std::vector<double> WallResponse::hourly_weights(std::size_t hours) const {
  std::vector<double> integrated;
  for (std::size_t k = 0; k <= hours + 1; ++k)
    integrated.push_back(integrated_step(static_cast<double>(k) * hour));
  std::vector<double> weights{integrated[1] / hour};
  for (std::size_t k = 1; k <= hours; ++k)
    weights.push_back((integrated[k + 1] - 2 * integrated[k] + integrated[k - 1]) / hour);
  return weights;
}

}  // namespace quoin::solver
