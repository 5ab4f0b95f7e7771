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
  if (criterion.test === 'fRsi')  // by other resistances where these were stated for it
    return (criterion.factors ? criterion.factors[spot.air] : spot.factor) - criterion.limit;
  const limit = criterion.test === 'critical humidity' ? criticalMouldHumidity(spot.temperature) :
                                                         criterion.limit;
  return 100 * (limit - spot.pressure / saturationPressure(spot.temperature));
}

/// The humidity of a room by what the household adds to the air outside, by the formulas of
/// materials/humidity_sources/.
function householdHumidity(household, inside, outside, outsideHumidity) {
  const GAS_CONSTANT = 461.5;  // J/(kg K)
  const winter = Math.min(1, Math.max(0, 1 - outside / 20));
  const {excess_Pa, given_off_kg_s, volume_m3, winter_1_s, summer_1_s} = household;
  const carried = volume_m3 * (winter * winter_1_s + (1 - winter) * summer_1_s);
  const excess = excess_Pa === undefined ? given_off_kg_s / carried * GAS_CONSTANT * (inside + 273.15) :
                                           excess_Pa * winter;
  return Math.min(1, (outsideHumidity * saturationPressure(outside) + excess) / saturationPressure(inside));
}

/// What is looked at whatever the criteria.
const MOULD = {name: '80 %', test: 'surface humidity', limit: MOULD_LIMIT, mould: true};

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
function judged(variant, spot) {
  const at = (bands) => ({
    temperature: spot.temperature + bands * spot.band,
    factor: spot.factor + bands * spot.factorBand,
    pressure: spot.pressure,
    air: spot.air,
  });
  const known = spot.pressure !== undefined;
  const asked = variant.criteria.filter((criterion) => !looksAtHumidity(criterion) || known);
  if (known && !asked.some((each) => each.mould && each.limit <= MOULD_LIMIT)) asked.push(MOULD);
  return asked.map((criterion) => {
    const value = margin(criterion, at(0));
    const band = Math.max(value - margin(criterion, at(-1)), margin(criterion, at(1)) - value);
    return {criterion, margin: value, band, holds: value >= 0};
  });
}

/// The outcome {words, tone} of a spot in other air than solved: as tools/answer/judge/outcome.cpp
/// decides it, but for the chance, which only draws over the case tell: what holds is not called safe.
function outcomeOf(variant, spot) {
  const all = judged(variant, spot), known = spot.pressure !== undefined;
  const tell = (words, tone) => ({words, tone, all});
  if (known) {
    const over = spot.temperature - saturationTemperature(spot.pressure);
    if (over < -spot.band) return tell('wet', 'bad');
    if (over <= spot.band) return tell('at the dew point', 'doubtful');
  }
  const failing = all.filter((each) => !each.holds);
  if (failing.some((each) => each.criterion.mould)) return tell('mould', 'bad');
  if (failing.length > 0) {
    failing.sort((a, b) => looksAtHumidity(a.criterion) - looksAtHumidity(b.criterion) || a.margin - b.margin);
    const names = failing.map(({criterion}) =>
        looksAtHumidity(criterion) ? criterion.name : `fRsi ${Number(criterion.limit.toPrecision(3))}`);
    return tell(`fails ${names.join(', ')}`, 'bad');
  }
  if (all.length === 0 || !known && variant.criteria.some(looksAtHumidity)) return tell('not judged', 'plain');
  if (variant.gate) return tell('dry first', 'doubtful');
  if (all.some((each) => each.margin <= each.band)) return tell('marginal', 'doubtful');
  return tell('holds', 'plain');
}

function criterionWords({criterion, margin: by, band, holds}) {
  const size = looksAtHumidity(criterion) ? `${Math.abs(by).toFixed(1)} points of humidity` :
                                            `${Math.abs(by).toFixed(3)} of fRsi`;
  if (Math.abs(by) <= band) return `${criterion.name}: too near its limit to tell`;
  return holds ? `${criterion.name}: holds, with ${size} to spare` :
                 `${criterion.name}: does not hold, by ${size}`;
}
