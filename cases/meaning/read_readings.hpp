// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/named.hpp"

namespace quoin::cases {

struct WrittenReading;

/// Sees that each reading is a temperature, or a difference across a pad, and that what only a
/// survey can tell of it is asked with one.
void check_readings(const std::vector<Named<WrittenReading>>& readings, bool with_survey,
                    FaultList& faults);

/// A wall in steady air is nowhere colder than the coldest air, as its surfaces feel it, nor warmer
/// than the warmest: refuses readings that are. Those that name an instrument are left to a survey,
/// which knows of the air of past days.
void refuse_impossible(const std::vector<Named<WrittenReading>>& readings,
                       const Per<SpaceId, Space>& spaces, FaultList& faults);

/// Gives a survey the readings of a section, their instruments and pads looked up.
void add_readings(const std::string& section, const std::vector<Named<WrittenReading>>& readings,
                  Survey& survey, FaultList& faults);

}  // namespace quoin::cases
