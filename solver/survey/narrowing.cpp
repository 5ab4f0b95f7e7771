// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/narrowing.hpp"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>

namespace quoin::solver {
namespace {

using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

Eigen::Map<const Rows> matrix(const Table& table) {
  return {table.values.data(), Eigen::Index(table.rows), Eigen::Index(table.columns)};
}

Table table_of(const Eigen::MatrixXd& matrix) {
  Table table(std::size_t(matrix.rows()), std::size_t(matrix.cols()));
  Eigen::Map<Rows>(table.values.data(), matrix.rows(), matrix.cols()) = matrix;
  return table;
}

}  // namespace

double spread_along(const Table& covariance, std::span<const double> target) {
  const Eigen::Map<const Eigen::VectorXd> t(target.data(), Eigen::Index(target.size()));
  return std::sqrt(std::max(0.0, t.dot(matrix(covariance) * t)));
}

Table narrowed(const Table& covariance, const Table& slopes, std::span<const double> variance) {
  const Eigen::MatrixXd before = matrix(covariance);
  const Eigen::MatrixXd across = matrix(slopes) * before;
  Eigen::MatrixXd spread = across * matrix(slopes).transpose();
  for (std::size_t j = 0; j < variance.size(); ++j)
    spread(Eigen::Index(j), Eigen::Index(j)) += variance[j];
  return table_of(before - across.transpose() * spread.ldlt().solve(across));
}

Table read_again(const Table& covariance, std::span<const std::size_t> lasting) {
  const auto n = Eigen::Index(lasting.size());
  Eigen::MatrixXd block(n, n);
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j)
      block(i, j) = covariance(lasting[std::size_t(i)], lasting[std::size_t(j)]);
  }
  const Eigen::MatrixXd told = block.inverse();
  // What one day tells of the lasting ones beyond what was known of them, twice.
  const Eigen::MatrixXd twice = 2.0 * told - Eigen::MatrixXd::Identity(n, n);
  const Eigen::MatrixXd after = twice.inverse();
  Table result = covariance;
  for (Eigen::Index i = 0; i < n; ++i) {
    for (Eigen::Index j = 0; j < n; ++j)
      result(lasting[std::size_t(i)], lasting[std::size_t(j)]) = after(i, j);
  }
  return result;
}

}  // namespace quoin::solver
