// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/symmetric.hpp"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <algorithm>

#include "solver/linear/errors.hpp"

namespace quoin::solver {

struct SymmetricSystem::Inside {
  std::vector<Eigen::Triplet<double>> entries;  ///< of the lower triangle
  Eigen::SparseMatrix<double> matrix;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors;
};

SymmetricSystem::SymmetricSystem(std::size_t unknowns)
    : unknowns_(unknowns), inside_(std::make_unique<Inside>()) {}
SymmetricSystem::~SymmetricSystem() = default;
SymmetricSystem::SymmetricSystem(SymmetricSystem&&) noexcept = default;
SymmetricSystem& SymmetricSystem::operator=(SymmetricSystem&&) noexcept = default;

void SymmetricSystem::add(std::uint32_t row, std::uint32_t column, double value) {
  inside_->entries.emplace_back(static_cast<int>(std::max(row, column)),
                                static_cast<int>(std::min(row, column)), value);
}

void SymmetricSystem::factorise() {
  if (unknowns_ == 0) return;
  const auto size = static_cast<Eigen::Index>(unknowns_);
  inside_->matrix.resize(size, size);
  inside_->matrix.setFromTriplets(inside_->entries.begin(), inside_->entries.end());
  inside_->entries = {};
  inside_->factors.compute(inside_->matrix);
  const bool positive =
      inside_->factors.info() == Eigen::Success && inside_->factors.vectorD().minCoeff() > 0;
  if (!positive) throw SolveError("the factorisation of the system on triangles failed");
}

std::vector<double> SymmetricSystem::solve(const std::vector<double>& rhs) const {
  if (unknowns_ == 0) return {};
  const Eigen::Map<const Eigen::VectorXd> given(rhs.data(), static_cast<Eigen::Index>(unknowns_));
  Eigen::VectorXd x = inside_->factors.solve(given);
  const Eigen::VectorXd residual = given - inside_->matrix.selfadjointView<Eigen::Lower>() * x;
  x += inside_->factors.solve(residual);
  return {x.data(), x.data() + x.size()};
}

}  // namespace quoin::solver
