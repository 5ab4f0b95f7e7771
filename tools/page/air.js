// SPDX-License-Identifier: Apache-2.0
'use strict';
// Moist air and criteria, by the formulas of materials/moist_air.cpp and materials/criteria/.
// Temperatures in degC, pressures in Pa, humidities from 0 to 1.

const OVER_WATER = {steepness: 17.269, offset: 237.3};
const OVER_ICE = {steepness: 21.875, offset: 265.5};
const PRESSURE_AT_FREEZING = 610.5;
const MOULD_LIMIT = 0.8;
const MARGINAL_CHANCE = 0.10;

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

/// The complementary error function, within 2e-7 (a rational approximation of 1955, from memory).
function erfc(x) {
  if (x < 0) return 2 - erfc(-x);
  const t = 1 / (1 + 0.3275911 * x);
  const sum = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  return sum * Math.exp(-x * x);
}

/// The chance that a limit of humidity is passed, as tools/grade.cpp has it. `spreads`: what a
/// survey leaves open.
function chanceOf(criterion, spot, spreads) {
  const saturated = saturationPressure(spot.room), humidity = spot.pressure / saturated;
  const at = (temperature, wetness) =>
      margin(criterion, {temperature, factor: spot.factor, pressure: wetness * saturated});
  const warmth = Math.hypot(spreads.factor * (spot.room - spot.outside), spot.band);
  const byWarmth = (at(spot.temperature + warmth, humidity) - at(spot.temperature - warmth, humidity)) / 2;
  const byHumidity = (at(spot.temperature, humidity - spreads.humidity) -
                      at(spot.temperature, humidity + spreads.humidity)) / 2;
  return 0.5 * erfc(at(spot.temperature, humidity) / Math.hypot(byWarmth, byHumidity) / Math.SQRT2);
}

/// What is looked at whatever the criteria.
const MOULD = {name: '80 %', test: 'surface humidity', limit: MOULD_LIMIT};

/// The criterion of humidity that asks most of a spot.
function strictest(variant, spot) {
  let found = MOULD;
  for (const each of variant.criteria.filter(looksAtHumidity)) {
    const by = margin(each, spot), known = margin(found, spot);
    if (by < known || (found === MOULD && by === known)) found = each;
  }
  return found;
}

/// The humidity of the room, 0 to 1, up to which a spot keeps every limit.
function highestSafe(variant, spot) {
  const asked = strictest(variant, spot);
  const limit = asked.test === 'critical humidity' ? criticalMouldHumidity(spot.temperature) : asked.limit;
  return Math.min(1, limit * saturationPressure(spot.temperature) / saturationPressure(spot.room));
}

/// Everything asked of a coldest spot {temperature, band, factor, factorBand, pressure, room, outside};
/// humidity only where the pressure of the room's air is known.
function judged(variant, spot, spreads) {
  const at = (bands) => ({
    temperature: spot.temperature + bands * spot.band,
    factor: spot.factor + bands * spot.factorBand,
    pressure: spot.pressure,
  });
  const known = spot.pressure !== undefined;
  const asked = variant.criteria.filter((criterion) => !looksAtHumidity(criterion) || known);
  if (known && strictest(variant, spot) === MOULD) asked.push(MOULD);
  return asked.map((criterion) => {
    const value = margin(criterion, at(0));
    const band = Math.max(value - margin(criterion, at(-1)), margin(criterion, at(1)) - value);
    const chance = looksAtHumidity(criterion) ? chanceOf(criterion, spot, spreads) : 0;
    return {criterion, margin: value, band, holds: value >= 0, chance};
  });
}

function meansMould({criterion}) {
  return criterion.test === 'critical humidity' ||
      looksAtHumidity(criterion) && (criterion.limit >= 0.79 || criterion.name.includes('mould'));
}

/// The outcome {words, tone, chance} of a spot: as tools/answer/judge/outcome.cpp decides it.
function outcomeOf(variant, spot, spreads) {
  const all = judged(variant, spot, spreads), known = spot.pressure !== undefined;
  const chance = known ? Math.max(0, ...all.map((each) => each.chance)) : undefined;
  const tell = (words, tone) => ({words, tone, chance, all});
  if (known) {
    const over = spot.temperature - saturationTemperature(spot.pressure);
    if (over < -spot.band) return tell('wet', 'bad');
    if (over <= spot.band) return tell('at the dew point', 'doubtful');
  }
  const failing = all.filter((each) => !each.holds);
  if (failing.some(meansMould)) return tell('mould', 'bad');
  if (failing.length > 0) {
    const worst = failing.sort((a, b) => looksAtHumidity(a.criterion) - looksAtHumidity(b.criterion) ||
                                         a.margin - b.margin)[0].criterion;
    return tell(`fails ${looksAtHumidity(worst) ? worst.name : `fRsi ${Number(worst.limit.toPrecision(3))}`}`, 'bad');
  }
  if (all.length === 0) return tell('not judged', 'plain');
  if (variant.gate) return tell('dry first', 'doubtful');
  if (chance > MARGINAL_CHANCE || all.some((each) => each.margin <= each.band)) return tell('marginal', 'doubtful');
  if (!known && variant.criteria.some(looksAtHumidity)) return tell('not judged', 'plain');
  return tell('safe', 'good');
}

function criterionWords({criterion, margin: by, band, holds}) {
  const size = looksAtHumidity(criterion) ? `${Math.abs(by).toFixed(1)} points of humidity` :
                                            `${Math.abs(by).toFixed(3)} of fRsi`;
  if (Math.abs(by) <= band) return `${criterion.name}: too near its limit to tell`;
  return holds ? `${criterion.name}: holds, with ${size} to spare` :
                 `${criterion.name}: does not hold, by ${size}`;
}
