// SPDX-License-Identifier: Apache-2.0
#include "tools/command/verified.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"

namespace quoin::tools {
namespace {

/// The temperature at a probe and what is known of it, degC.
struct KnownPoint {
  std::string_view probe;
  double temperature;
};

/// A number of the case as a whole and what is known of it.
struct KnownNumber {
  enum Kind { factor, coupling, flow, coldest } kind;
  double value;
  double limit;
};

/// What is known of a case from outside.
struct Known {
  std::string_view file;
  std::string_view source;
  std::span<const KnownPoint> points;
  double point_limit = 0.0;      ///< K
  bool points_are_heat = false;  ///< the points belong to the heat-flow purpose
  std::vector<KnownNumber> numbers;
};

constexpr std::array case1_points = std::to_array<KnownPoint>({
    {"1-1", 9.658188}, {"1-2", 13.379055}, {"1-3", 14.728918}, {"1-4", 15.085380},
    {"2-1", 5.251738}, {"2-2", 8.640567},  {"2-3", 10.315548}, {"2-4", 10.810584},
    {"3-1", 3.188684}, {"3-2", 5.608999},  {"3-3", 7.014153},  {"3-4", 7.465122},
    {"4-1", 2.014153}, {"4-2", 3.640567},  {"4-3", 4.658188},  {"4-4", 5.000000},
    {"5-1", 1.262467}, {"5-2", 2.308603},  {"5-3", 2.985847},  {"5-4", 3.218502},
    {"6-1", 0.739647}, {"6-2", 1.359433},  {"6-3", 1.766849},  {"6-4", 1.908282},
    {"7-1", 0.341812}, {"7-2", 0.629560},  {"7-3", 0.819931},  {"7-4", 0.886314},
});

constexpr std::array case2_points = std::to_array<KnownPoint>({
    {"A", 7.065},
    {"B", 0.7613},
    {"C", 7.898},
    {"D", 6.274},
    {"E", 0.8275},
    {"F", 16.408},
    {"G", 16.334},
    {"H", 16.768},
    {"I", 18.334},
});

constexpr std::array layered_points = std::to_array<KnownPoint>({
    {"inside face", 14.940228},
    {"plaster to brick", 14.210453},
    {"brick to render", -2.470114},
    {"outside face", -3.443147},
});

std::vector<Known> known() {
  using enum KnownNumber::Kind;
  return {
      {"layered_wall.yaml",
       "exact: sum of resistances",
       layered_points,
       1e-5,
       true,
       {{coldest, 11.801359, 1e-5}, {coupling, 1.55685293, 1e-6}, {flow, 38.921323, 1e-5}}},
      {"isothermal_corner.yaml",
       "exact: conformal mapping, legs and 1 - (2/pi) ln 2",
       {},
       0.0,
       false,
       {{coupling, 6.5587287997, 3e-4}}},
      {"t7_corner.yaml",
       "computed by two independent discretisations that bracket it",
       {},
       0.0,
       false,
       {{factor, 0.62146, 0.001}, {coupling, 3.72876, 3.7e-4}}},
      {"iso10211_case1.yaml",
       "EN ISO 10211 case 1 (the printed points, limit 0.1 K, are these rounded); exact by Fourier "
       "series",
       case1_points,
       0.05,
       false,
       {}},
      {"iso10211_case2.yaml",
       "EN ISO 10211 case 2 (printed to a tenth, limits 0.1 K and 0.1 W/m); digits beyond by two "
       "independent discretisations",
       case2_points,
       0.02,
       false,
       {{flow, 9.4906, 0.02}}},
      {"iso10077_2_d4.yaml",
       "EN ISO 10077-2 example D.4 (memory; limit 3 %)",
       {},
       0.0,
       false,
       {{coupling, 0.346, 0.03 * 0.346}}},
  };
}

/// The computed side of a number: the rooms and their first coupling stand for the case.
struct Computed {
  std::string quantity;
  std::string unit;
  solver::Estimate estimate;
};

Computed computed(KnownNumber::Kind kind, const SolvedVariant& solved) {
  const solver::Coupling& coupling = solved.heat.couplings.front();
  const solver::Spot& coldest = solved.surface.airs.front().coldest;
  const double band = std::max(0.0, (coupling.high - coupling.low) / 2);  // of rounding
  switch (kind) {
    case KnownNumber::factor:
      return {"fRsi", "1", coldest.factor};
    case KnownNumber::coldest:
      return {"coldest surface", "°C", coldest.temperature};
    case KnownNumber::coupling:
      return {"L2D", "W/(m·K)", {coupling.value, band, true}};
    case KnownNumber::flow: {
      const double difference = std::abs(solved.variant.spaces[coupling.a].temperature -
                                         solved.variant.spaces[coupling.b].temperature);
      return {"heat flow", "W/m", {coupling.value * difference, band * difference, true}};
    }
  }
  return {};
}

VerifyRow row(const std::string& title, std::string_view source, const Computed& computed,
              double reference, double limit) {
  return {title,
          computed.quantity,
          computed.unit,
          computed.estimate.value,
          computed.estimate.band,
          reference,
          limit,
          std::abs(computed.estimate.value - reference) <= limit,
          std::string(source)};
}

solver::Estimate probe_value(const SolvedVariant& solved, const Known& known,
                             std::string_view name) {
  const auto& probes = solved.variant.probes;
  const auto found = std::find_if(probes.begin(), probes.end(),
                                  [&](const cases::Probe& probe) { return probe.name == name; });
  if (found == probes.end()) {
    throw std::invalid_argument(fmt::format("{} has no probe {}", known.file, name));
  }
  const solver::Solution& solution = known.points_are_heat ? solved.heat : solved.surface;
  return solution.probes[static_cast<std::size_t>(found - probes.begin())].temperature;
}

/// With as many digits as the limit asks for, and one more.
std::string digits(double value, double limit) {
  const int after_point = std::max(0, 1 - static_cast<int>(std::floor(std::log10(limit))));
  return fmt::format("{:.{}f}", value, after_point);
}

}  // namespace

std::vector<VerifyRow> verified(const EmbeddedFile& file, const solver::Effort& effort) {
  const std::vector<Known> all = known();
  const auto about =
      std::find_if(all.begin(), all.end(), [&](const Known& one) { return one.file == file.name; });
  if (about == all.end()) {
    throw std::invalid_argument(fmt::format("nothing is known of {}", file.name));
  }
  const cases::Case source = cases::case_of(file.text, std::string(file.name));
  const SolvedVariant result = solved(source.variants.front(), effort);
  std::vector<VerifyRow> rows;
  for (const KnownPoint& point : about->points) {
    const Computed value{fmt::format("at {}", point.probe), "°C",
                         probe_value(result, *about, point.probe)};
    rows.push_back(row(source.title, about->source, value, point.temperature, about->point_limit));
  }
  for (const KnownNumber& number : about->numbers) {
    rows.push_back(row(source.title, about->source, computed(number.kind, result), number.value,
                       number.limit));
  }
  return rows;
}

std::vector<VerifyRow> verify(const solver::Effort& effort) {
  std::vector<VerifyRow> rows;
  for (const EmbeddedFile& file : verification_files()) {
    for (VerifyRow& one : verified(file, effort)) rows.push_back(std::move(one));
  }
  return rows;
}

std::string text_of(const std::vector<VerifyRow>& rows, const TextStyle& style) {
  std::string text;
  for (std::size_t begin = 0; begin < rows.size();) {
    const VerifyRow& first = rows[begin];
    text += toned(first.title, Tone::strong, style) + "\n";
    text += paragraph("Source: " + first.source, 2, style);
    TextTable table("llrrrrl");
    table.add({{"  quantity"}, {"unit"}, {"computed"}, {"band"}, {"reference"}, {"limit"}, {""}});
    std::size_t end = begin;
    for (; end < rows.size() && rows[end].title == first.title; ++end) {
      const VerifyRow& one = rows[end];
      table.add(
          {{"  " + one.quantity},
           {one.unit},
           {digits(one.computed, one.limit)},
           {fmt::format("{:.1g}", one.band)},
           {digits(one.reference, one.limit)},
           {fmt::format("{:.2g}", one.limit)},
           one.holds ? TextTable::Cell{"holds", Tone::good} : TextTable::Cell{"FAILS", Tone::bad}});
    }
    text += table.text(style) + "\n";
    begin = end;
  }
  const auto fails =
      std::count_if(rows.begin(), rows.end(), [](const VerifyRow& one) { return !one.holds; });
  return text + fmt::format("{} values hold, {} fail\n",
                            static_cast<std::ptrdiff_t>(rows.size()) - fails, fails);
}

}  // namespace quoin::tools
