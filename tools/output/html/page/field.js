// SPDX-License-Identifier: Apache-2.0
// The field of one variant: temperatures anywhere for any temperatures of the spaces, as a weighted
// sum of the basis fields. Places in mm, x to the right and y up.

const UNDIVIDED = 0, RISING = 1;

function numbersOf(base64) {
  const bytes = atob(base64);
  const numbers = new Uint16Array(bytes.length / 2);
  for (let k = 0; k < numbers.length; ++k) {
    numbers[k] = bytes.charCodeAt(2 * k) | bytes.charCodeAt(2 * k + 1) << 8;
  }
  return numbers;
}

/// The index of the strip between two lines that holds a coordinate.
function stripAt(lines, at) {
  let low = 0, high = lines.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (lines[middle] <= at) low = middle; else high = middle - 1;
  }
  return low;
}

class Field {
  constructor(variant) {
    const {x_mm, y_mm, cells, basis} = variant.grid;
    this.x = x_mm;
    this.y = y_mm;
    this.columns = x_mm.length - 1;
    this.rows = y_mm.length - 1;
    this.regions = variant.regions.length;
    this.below = numbersOf(cells.below);
    this.above = cells.above ? numbersOf(cells.above) : this.below;
    this.split = cells.split ? numbersOf(cells.split) : new Uint16Array(this.below.length);
    const nodes = x_mm.length * y_mm.length;
    this.basis = basis.map((each) => Float64Array.from(numbersOf(each), (share) => share / 65535));
    this.basis.push(new Float64Array(nodes).fill(1));  // what is left of one
    const last = this.basis[this.basis.length - 1];
    for (const each of this.basis.slice(0, -1)) each.forEach((share, n) => { last[n] -= share; });
  }

  /// At each node. `airs`: temperatures in the order of the basis fields.
  temperatures(airs) {
    const sum = new Float64Array(this.x.length * this.y.length);
    this.basis.forEach((basis, a) => basis.forEach((share, n) => { sum[n] += share * airs[a]; }));
    return sum;
  }

  isSolid(fill) { return fill > 0 && fill <= this.regions; }

  place(node) {
    return {x: this.x[node % this.x.length], y: this.y[Math.floor(node / this.x.length)]};
  }

  contains({x, y}) {
    return x >= this.x[0] && x <= this.x[this.columns] && y >= this.y[0] && y <= this.y[this.rows];
  }

  /// What lies at the shares u, v of a cell: its fill, and the temperature if that is solid.
  within(cell, node, u, v, t) {
    const sw = t[node], se = t[node + 1];
    const nw = t[node + this.x.length], ne = t[node + this.x.length + 1];
    const split = this.split[cell];
    if (split === UNDIVIDED) {
      return {
        fill: this.below[cell],
        temperature: (1 - v) * ((1 - u) * sw + u * se) + v * ((1 - u) * nw + u * ne),
      };
    }
    const below = split === RISING ? v <= u : u + v <= 1;
    const fill = below ? this.below[cell] : this.above[cell];
    if (split === RISING) {
      return {fill, temperature: below ? sw + u * (se - sw) + v * (ne - se) :
                                         sw + u * (ne - nw) + v * (nw - sw)};
    }
    return {fill, temperature: below ? sw + u * (se - sw) + v * (nw - sw) :
                                       ne - (1 - u) * (ne - nw) - (1 - v) * (ne - se)};
  }

  /// What lies at a place inside the grid.
  exactly(place, temperatures) {
    const i = stripAt(this.x, place.x), j = stripAt(this.y, place.y);
    const share = (lines, k, at) => Math.min(1, Math.max(0, (at - lines[k]) / (lines[k + 1] - lines[k])));
    return this.within(j * this.columns + i, j * this.x.length + i, share(this.x, i, place.x),
                       share(this.y, j, place.y), temperatures);
  }

  /// The same. On a line between two fills the solid one counts.
  at(place, temperatures) {
    let found = null;
    const nudge = 0.01;
    for (const [dx, dy] of [[0, 0], [-nudge, 0], [0, -nudge], [-nudge, -nudge], [nudge, 0],
                            [0, nudge], [nudge, nudge], [nudge, -nudge], [-nudge, nudge]]) {
      const here = this.exactly({x: place.x + dx, y: place.y + dy}, temperatures);
      found = found || here;
      if (this.isSolid(here.fill)) return here;
    }
    return found;
  }
}

/// A variant with the air changed. `changed`: by the name of a space {temperature, humidity}.
class State {
  constructor(variant, changed) {
    this.variant = variant;
    const change = variant.drivers.map((id) => {
      const space = variant.spaces[id];
      const wanted = (changed[space.name] || {}).temperature;
      return wanted === undefined ? 0 : wanted - space.temperature_C;
    });
    const follow = (air) => {
      const row = variant.airs.indexOf(air);
      if (row >= 0) return variant.follows[row].reduce((sum, by, d) => sum + by * change[d], 0);
      const driver = variant.drivers.indexOf(air);
      return driver >= 0 ? change[driver] : 0;
    };
    // Of each space the air, and what its surfaces feel of it: colder by a clear sky or evaporation.
    this.air = variant.spaces.map((space) => variant.spaces[space.air].temperature_C + follow(space.air));
    this.felt = variant.spaces.map((space, id) => this.air[id] - variant.spaces[space.air].cooling_K);
    this.outside = this.coldestOutside();
    this.humidity = variant.spaces.map((space) => this.humidityOf(space.air, changed, change));
    const wetter = variant.wet ? [] : variant.spaces.filter(({name, humidity}) =>
        (changed[name] || {}).humidity !== undefined && changed[name].humidity !== humidity);
    this.asSolved = change.every((by) => by === 0) && wetter.length === 0;
    const airs = variant.airs.map((air) => this.felt[air]);
    this.temperatures = variant.field ? variant.field.temperatures(airs) : null;
  }

  /// The air that fRsi is measured against: the coldest outside, or of all where none is outside.
  coldestOutside() {
    const {spaces} = this.variant, outside = spaces.map((_, id) => id).filter((id) => spaces[id].is === 'outside');
    const among = outside.length > 0 ? outside : spaces.map((_, id) => id);
    return spaces[among.reduce((best, id) => this.air[id] < this.air[best] ? id : best)].air;
  }

  /// As set, as solved, or as it follows from the household where temperatures have changed.
  humidityOf(air, changed, change) {
    const {spaces, wet} = this.variant, own = spaces[air];
    const wanted = wet ? undefined : (changed[own.name] || {}).humidity;
    if (wanted !== undefined) return wanted;
    if (!own.household || change.every((by) => by === 0)) return own.humidity;
    return householdHumidity(own.household, this.air[air], this.air[this.outside], spaces[this.outside].humidity);
  }

  factor(temperature, air) {
    const outside = this.felt[this.outside];
    return (temperature - outside) / (this.felt[air] - outside);
  }

  pressure(air) {
    return this.humidity[air] === undefined ? undefined :
                                              this.humidity[air] * saturationPressure(this.air[air]);
  }

  /// The coldest spot of a room at this air, with what criteria look at.
  coldest(room) {
    const t = this.temperatures;
    let node = room.coldest;
    for (const each of room.nodes) if (t[each] < t[node] - 0.001) node = each;
    const {spaces} = this.variant, {outside} = this;
    const before = spaces[room.air].temperature_C - spaces[room.air].cooling_K -
                   spaces[outside].temperature_C + spaces[outside].cooling_K;
    const now = this.felt[room.air] - this.felt[outside];
    const band = before === 0 ? room.band_K : room.band_K * Math.abs(now / before);
    const temperature = t[node], pressure = this.pressure(room.air);
    const known = room.spots.find((spot) => spot.node === node);
    const {x, y} = this.variant.field.place(node);
    const spot = {
      node, temperature, band, pressure, air: room.air,
      room: this.air[room.air],
      outside: this.air[outside],
      factor: this.factor(temperature, room.air),
      factorBand: now === 0 ? 0 : band / Math.abs(now),
      humidity: pressure === undefined ? undefined : pressure / saturationPressure(temperature),
      where: known ? known.where : `the surface at ${Math.round(x)}, ${Math.round(y)}`,
    };
    if (pressure !== undefined) spot.safe = highestSafe(this.variant, spot);
    return spot;
  }
}
