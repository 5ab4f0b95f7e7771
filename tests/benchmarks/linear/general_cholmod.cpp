// SPDX-License-Identifier: Apache-2.0
#include <cholmod.h>

#include <algorithm>
#include <stdexcept>

#include "tests/benchmarks/linear/packed.hpp"

namespace quoin::benchmarks {

/// With its own choice of ordering and of simplicial or supernodal factors.
Outcome cholmod(const Packed& system) {
  const Memory before;
  cholmod_common common;
  cholmod_start(&common);
  // The upper triangle in columns is the lower one in rows; the matrix is symmetric.
  cholmod_sparse matrix{};
  matrix.nrow = matrix.ncol = system.rhs.size();
  matrix.nzmax = system.value.size();
  matrix.p = const_cast<int*>(system.row_start.data());
  matrix.i = const_cast<int*>(system.column.data());
  matrix.x = const_cast<double*>(system.value.data());
  matrix.stype = 1;
  matrix.itype = CHOLMOD_INT;
  matrix.xtype = CHOLMOD_REAL;
  matrix.dtype = CHOLMOD_DOUBLE;
  matrix.sorted = 1;
  matrix.packed = 1;
  cholmod_dense rhs{};
  rhs.nrow = rhs.nzmax = rhs.d = system.rhs.size();
  rhs.ncol = 1;
  rhs.x = const_cast<double*>(system.rhs.data());
  rhs.xtype = CHOLMOD_REAL;
  rhs.dtype = CHOLMOD_DOUBLE;

  Outcome outcome;
  const double start = processor_time();
  cholmod_factor* factor = cholmod_analyze(&matrix, &common);
  cholmod_factorize(&matrix, factor, &common);
  if (common.status != CHOLMOD_OK) throw std::runtime_error("the factorisation failed");
  const double middle = processor_time();
  cholmod_dense* solution = cholmod_solve(CHOLMOD_A, factor, &rhs, &common);
  outcome.setup = middle - start;
  outcome.solve = processor_time() - middle;
  outcome.bytes = bytes_since(before);
  const auto* values = static_cast<const double*>(solution->x);
  outcome.solution.assign(values, values + system.rhs.size());
  cholmod_free_dense(&solution, &common);
  cholmod_free_factor(&factor, &common);
  cholmod_finish(&common);
  return outcome;
}

}  // namespace quoin::benchmarks
