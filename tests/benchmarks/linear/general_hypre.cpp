// SPDX-License-Identifier: Apache-2.0
#include <HYPRE.h>
#include <HYPRE_IJ_mv.h>
#include <HYPRE_parcsr_ls.h>
#include <mpi.h>

#include <numeric>

#include "tests/benchmarks/linear/packed.hpp"

namespace quoin::benchmarks {

namespace {

/// Once for the whole process.
struct Session {
  Session() {
    MPI_Init(nullptr, nullptr);
    HYPRE_Init();
  }
  ~Session() {
    HYPRE_Finalize();
    MPI_Finalize();
  }
};

HYPRE_IJVector vector(const std::vector<int>& rows, const std::vector<double>& values) {
  HYPRE_IJVector result = nullptr;
  HYPRE_IJVectorCreate(MPI_COMM_WORLD, 0, rows.back(), &result);
  HYPRE_IJVectorSetObjectType(result, HYPRE_PARCSR);
  HYPRE_IJVectorInitialize(result);
  HYPRE_IJVectorSetValues(result, static_cast<int>(rows.size()), rows.data(), values.data());
  HYPRE_IJVectorAssemble(result);
  return result;
}

}  // namespace

/// Conjugate gradients with one V-cycle, with the options that suit such systems best: HMIS
/// coarsening, extended+i interpolation with four entries, symmetric Gauss-Seidel.
Outcome boomer_amg(const Packed& system) {
  static Session session;
  const Memory before;
  std::vector<int> rows(system.rhs.size());
  std::iota(rows.begin(), rows.end(), 0);
  std::vector<int> counts(rows.size());
  for (std::size_t row = 0; row < rows.size(); ++row) {
    counts[row] = system.row_start[row + 1] - system.row_start[row];
  }
  HYPRE_IJMatrix matrix = nullptr;
  HYPRE_IJMatrixCreate(MPI_COMM_WORLD, 0, rows.back(), 0, rows.back(), &matrix);
  HYPRE_IJMatrixSetObjectType(matrix, HYPRE_PARCSR);
  HYPRE_IJMatrixSetRowSizes(matrix, counts.data());
  HYPRE_IJMatrixInitialize(matrix);
  HYPRE_IJMatrixSetValues(matrix, system.rows(), counts.data(), rows.data(), system.column.data(),
                          system.value.data());
  HYPRE_IJMatrixAssemble(matrix);
  HYPRE_IJVector rhs = vector(rows, system.rhs);
  HYPRE_IJVector solution = vector(rows, std::vector<double>(rows.size(), 0.0));
  HYPRE_ParCSRMatrix a = nullptr;
  HYPRE_ParVector b = nullptr;
  HYPRE_ParVector x = nullptr;
  HYPRE_IJMatrixGetObject(matrix, reinterpret_cast<void**>(&a));
  HYPRE_IJVectorGetObject(rhs, reinterpret_cast<void**>(&b));
  HYPRE_IJVectorGetObject(solution, reinterpret_cast<void**>(&x));

  Outcome outcome;
  const double start = processor_time();
  HYPRE_Solver gradients = nullptr;
  HYPRE_ParCSRPCGCreate(MPI_COMM_WORLD, &gradients);
  HYPRE_ParCSRPCGSetTol(gradients, tolerance);
  HYPRE_ParCSRPCGSetMaxIter(gradients, 500);
  HYPRE_ParCSRPCGSetTwoNorm(gradients, 1);
  HYPRE_Solver amg = nullptr;
  HYPRE_BoomerAMGCreate(&amg);
  HYPRE_BoomerAMGSetPrintLevel(amg, 0);
  HYPRE_BoomerAMGSetCoarsenType(amg, 10);
  HYPRE_BoomerAMGSetInterpType(amg, 6);
  HYPRE_BoomerAMGSetPMaxElmts(amg, 4);
  HYPRE_BoomerAMGSetStrongThreshold(amg, 0.25);
  HYPRE_BoomerAMGSetRelaxType(amg, 6);
  HYPRE_BoomerAMGSetTol(amg, 0.0);
  HYPRE_BoomerAMGSetMaxIter(amg, 1);
  HYPRE_ParCSRPCGSetPrecond(gradients, HYPRE_BoomerAMGSolve, HYPRE_BoomerAMGSetup, amg);
  HYPRE_ParCSRPCGSetup(gradients, a, b, x);
  const double middle = processor_time();
  HYPRE_ParCSRPCGSolve(gradients, a, b, x);
  outcome.setup = middle - start;
  outcome.solve = processor_time() - middle;
  HYPRE_ParCSRPCGGetNumIterations(gradients, &outcome.iterations);
  outcome.bytes = bytes_since(before);
  outcome.solution.resize(rows.size());
  HYPRE_IJVectorGetValues(solution, system.rows(), rows.data(), outcome.solution.data());
  HYPRE_BoomerAMGDestroy(amg);
  HYPRE_ParCSRPCGDestroy(gradients);
  HYPRE_IJVectorDestroy(solution);
  HYPRE_IJVectorDestroy(rhs);
  HYPRE_IJMatrixDestroy(matrix);
  HYPRE_ClearAllErrors();
  return outcome;
}

}  // namespace quoin::benchmarks
