// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "cases/vary.hpp"
#include "tools/sweep/store.hpp"

namespace quoin::tools {

/// What the parts of a sweep in a folder hold together.
class Gathered {
 public:
  /// Throws: DiskError where the folder holds no sweep or cannot be read; InputError where this
  /// program cannot read what is varied.
  explicit Gathered(const std::filesystem::path& folder);

  [[nodiscard]] const cases::Vary& vary() const { return vary_; }
  /// Files of another state of the sweep than the one written last, or of another program.
  [[nodiscard]] const std::vector<std::string>& left_aside() const { return left_aside_; }

  /// Every row once, in order, one at a time; `missing` hears of the numbers from the first to
  /// before the last that no part holds. Throws: DiskError, also where a run began another state of
  /// the sweep meanwhile.
  void each(const std::function<void(const StoredRow&)>& take,
            const std::function<void(std::uint64_t, std::uint64_t)>& missing);

 private:
  cases::Vary vary_;
  /// The file of a part, and what it noted of itself when it was opened.
  struct Part {
    std::unique_ptr<SweepStore> store;
    SweepStore::Notes notes;
  };
  std::vector<Part> parts_;
  std::vector<std::string> left_aside_;
};

/// What a sweep as a whole came to.
struct GatheredCount {
  std::uint64_t rows = 0;
  std::uint64_t solved = 0;
  std::uint64_t wrong = 0;   ///< kept with a fault of the input
  std::uint64_t failed = 0;  ///< kept as the numerics failed
  std::uint64_t missing = 0;
  std::vector<std::string> remarks;  ///< the first faults and gaps, a line each
};

/// The rows as CSV, a line at a time: their number, the values of the axes, the columns, the fault.
GatheredCount write_csv(Gathered& gathered, const std::function<void(const std::string&)>& write);

}  // namespace quoin::tools
