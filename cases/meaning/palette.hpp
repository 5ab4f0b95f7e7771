// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "cases/grammar/written.hpp"
#include "cases/model/case.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// A name and where it was written.
struct PlacedName {
  const std::string& name;
  Mark mark;
};

/// The materials of one variant by name, and the regions painted with them so far.
class Palette {
 public:
  explicit Palette(FaultList& faults);

  /// Looks up and checks the materials the author defines.
  void add_own(const std::vector<Named<WrittenMaterial>>& written);

  [[nodiscard]] bool knows(std::string_view name) const;
  [[nodiscard]] std::vector<std::string> names() const;
  [[nodiscard]] bool is_cavity(std::string_view name) const;

  /// The region of a material in a state and a use; absent with a fault where there is none.
  /// The state is the moisture if given, else that of the material, else dry; the use likewise.
  /// Air cavities differ by their shapes: each call gives a region of its own.
  [[nodiscard]] std::optional<RegionId> region(PlacedName name,
                                               const std::optional<WrittenMoisture>& moisture,
                                               std::optional<materials::Part> part);

  /// The membrane of a written one that says what it is. Each has an id of its own.
  [[nodiscard]] MembraneId membrane(const WrittenMembrane& written);

  /// The membranes so far.
  [[nodiscard]] const Per<MembraneId, Membrane>& membranes() const { return membranes_; }

  /// The regions so far, for those that come from one name.
  [[nodiscard]] const Per<RegionId, Region>& regions() const { return regions_; }

 private:
  struct Stock {
    materials::Material material;
    std::optional<WrittenMoisture> moisture;
  };

  [[nodiscard]] const Stock* stock(PlacedName name);
  [[nodiscard]] std::optional<double> content(PlacedName name, const Stock& stock,
                                              const std::optional<WrittenMoisture>& moisture);
  void add_own(const Named<WrittenMaterial>& written);
  void check_cavity(const Named<WrittenMaterial>& written, const std::optional<Stock>& own);
  void check_air_layer(const Named<WrittenMaterial>& written, const std::optional<Stock>& own);
  void refuse_values(const Named<WrittenMaterial>& written, std::string_view what,
                     std::string_view expected, bool with_like);
  /// The material that one is like; absent with a fault.
  [[nodiscard]] std::optional<Stock> original(const Named<WrittenMaterial>& written);
  /// What a material that is like no other starts from; absent where values are missing.
  [[nodiscard]] std::optional<Stock> blank(const Named<WrittenMaterial>& written);

  FaultList& faults_;
  std::vector<std::string> own_;                                     ///< in the order of the file
  std::map<std::string, std::optional<Stock>, std::less<>> stocks_;  ///< absent: faulty
  Per<RegionId, Region> regions_;
  Per<MembraneId, Membrane> membranes_;
  std::map<std::tuple<std::string, double, materials::Part>, RegionId> known_;
};

}  // namespace quoin::cases
