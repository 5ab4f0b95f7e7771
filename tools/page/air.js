// SPDX-License-Identifier: Apache-2.0
'use strict';
// Moist air and criteria, by the formulas of materials/moist_air.cpp and materials/criteria/.
// Temperatures in degC, pressures in Pa, humidities from 0 to 1.

const OVER_WATER = {steepness: 17.269, offset: 237.3};
const OVER_ICE = {steepness: 21.875, offset: 265.5};
const PRESSURE_AT_FREEZING = 610.5;
const MOULD_LIMIT = 0.8;

function saturationPressure(temperature) {
  const {steepness, offset} = temperature < 0 ? OVER_ICE : OVER_WATER;
  return PRESSURE_AT_FREEZING * Math.exp(steepness * temperature / (offset + temperature));
}

function saturationTemperature(pressure) {
  const {steepness, offset} = pressure < PRESSURE_AT_FREEZING ? OVER_ICE : OVER_WATER;
  const exponent = Math.log(pressure / PRESSURE_AT_FREEZING);
  return offset * exponent / (steepness - exponent);
}

function criticalMouldHumidity(t) {
  if (t <= 0) return 1;
  if (t > 20) return 0.8;
  return ((-0.00267 * t + 0.160) * t - 3.13) * t / 100 + 1;
}

function looksAtHumidity(criterion) {
  return criterion.test !== 'fRsi';
}

/// How far a spot {temperature, factor, pressure} is on the safe side: points of humidity, or fRsi.
function margin(criterion, spot) {
  if (criterion.test === 'fRsi') return spot.factor - criterion.limit;
  const limit = criterion.test === 'critical humidity' ? criticalMouldHumidity(spot.temperature) :
                                                         criterion.limit;
  return 100 * (limit - spot.pressure / saturationPressure(spot.temperature));
}

/// Each criterion judged at a coldest spot {temperature, band, factor, factorBand}; those of humidity
/// only where the pressure of the room's air is known.
function judged(variant, spot) {
  const at = (bands) => ({
    temperature: spot.temperature + bands * spot.band,
    factor: spot.factor + bands * spot.factorBand,
    pressure: spot.pressure,
  });
  return variant.criteria
      .filter((criterion) => !looksAtHumidity(criterion) || spot.pressure !== undefined)
      .map((criterion) => {
        const value = margin(criterion, at(0));
        const band = Math.max(value - margin(criterion, at(-1)), margin(criterion, at(1)) - value);
        return {criterion, margin: value, holds: value >= 0, close: Math.abs(value) <= band};
      });
}

/// A verdict in one or two words, and its tone: as tools/text_report.cpp has it.
function shortVerdict(variant, spot, judgements) {
  const sure = judgements.filter((each) => !each.close && !each.holds);
  if (spot.pressure !== undefined && spot.humidity >= 1) return ['wet', 'bad'];
  if (sure.some((each) => looksAtHumidity(each.criterion))) return ['mould', 'bad'];
  if (sure.length > 0) return ['fRsi low', 'bad'];
  if (judgements.some((each) => each.close)) return ['too close', 'doubtful'];
  if (judgements.length > 0 && variant.gate) return ['dry first', 'doubtful'];
  return judgements.length > 0 ? ['safe', 'good'] : ['–', 'plain'];
}

function criterionWords({criterion, margin: by, holds, close}) {
  const size = looksAtHumidity(criterion) ? `${Math.abs(by).toFixed(1)} points of humidity` :
                                            `${Math.abs(by).toFixed(3)} of fRsi`;
  if (close) return `${criterion.name}: too close to call`;
  return holds ? `${criterion.name}: holds, with ${size} to spare` :
                 `${criterion.name}: does not hold, by ${size}`;
}
