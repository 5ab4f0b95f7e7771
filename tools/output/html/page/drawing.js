// SPDX-License-Identifier: Apache-2.0
// Draws a field on a canvas as the pictures of the report do: bands of colour between isotherms, the
// isotherms of dew point and mould picked out, spaces, edges of materials.

const INK = '#101010', LIMIT_INK = '#9c0048', WHITE = [255, 255, 255];
const TINTS = {inside: '#fff6e6', outside: '#e8f1f9', unheated: '#f1eef6'};
const MARGIN = 26, BAR_ROOM = 58;

/// At most `most` levels between two temperatures, each a round number.
function roundLevels(low, high, most) {
  for (let power = 10 ** Math.floor(Math.log10((high - low) / most));; power *= 10) {
    for (const factor of [1, 2, 5]) {
      const step = factor * power, levels = [];
      for (let k = Math.floor(low / step) + 1; k * step < high && levels.length <= most; ++k) {
        levels.push(k * step);
      }
      if (levels.length <= most) return levels;
    }
  }
}

function rgbOf(hex) {
  return [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16));
}

/// The scale of colours: from the coldest to the warmest space.
class Bands {
  constructor(temperatures, colours) {
    this.low = Math.min(...temperatures);
    this.high = Math.max(...temperatures);
    if (this.high - this.low < 0.01) { this.low -= 0.5; this.high += 0.5; }
    this.levels = roundLevels(this.low, this.high, 11);
    const ends = [this.low, ...this.levels, this.high];
    this.colours = ends.slice(1).map((to, k) => {
      const warmth = ((ends[k] + to) / 2 - this.low) / (this.high - this.low);
      return colours[Math.round(warmth * (colours.length - 1))];
    });
  }

  band(temperature) {
    let k = 0;
    while (k < this.levels.length && temperature >= this.levels[k]) ++k;
    return k;
  }
}

/// How the material lies on the canvas, in CSS pixels: true to scale, with room for spaces around.
class View {
  constructor(field, closeUp, width, tallest) {
    let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let j = 0; j < field.rows; ++j) {
      for (let i = 0; i < field.columns; ++i) {
        const cell = j * field.columns + i;
        if (!field.isSolid(field.below[cell]) && !field.isSolid(field.above[cell])) continue;
        west = Math.min(west, field.x[i]);
        east = Math.max(east, field.x[i + 1]);
        south = Math.min(south, field.y[j]);
        north = Math.max(north, field.y[j + 1]);
      }
    }
    if (closeUp) {
      west = Math.max(west, closeUp[0]);
      east = Math.min(east, closeUp[1]);
      south = Math.max(south, closeUp[2]);
      north = Math.min(north, closeUp[3]);
    }
    this.scale = Math.min((width - 2 * MARGIN - BAR_ROOM) / (east - west),
                          (tallest - 2 * MARGIN) / (north - south));
    this.west = west;
    this.north = north;
    this.fieldWidth = (east - west) * this.scale + 2 * MARGIN;
    this.width = this.fieldWidth + BAR_ROOM;
    this.height = Math.max((north - south) * this.scale + 2 * MARGIN, 200);
    // Outermost strips without material may end before the margin does: they go on.
    this.ends = {x: [field.x[0], field.x[field.columns]], y: [field.y[0], field.y[field.rows]]};
    this.beyond = {x: [field.x[0] < west, field.x[field.columns] > east],
                   y: [field.y[0] < south, field.y[field.rows] > north]};
  }

  shows(x1, x2, y1, y2) {
    return this.x(x2) >= 0 && this.x(x1) <= this.fieldWidth && this.y(y1) >= 0 && this.y(y2) <= this.height;
  }

  x(mm) { return MARGIN + (mm - this.west) * this.scale; }
  y(mm) { return MARGIN + (this.north - mm) * this.scale; }

  place(px, py) {
    const held = (at, [low, high], [goesOnLow, goesOnHigh]) =>
        at < low && goesOnLow ? low + 1e-6 : at > high && goesOnHigh ? high - 1e-6 : at;
    return {x: held(this.west + (px - MARGIN) / this.scale, this.ends.x, this.beyond.x),
            y: held(this.north - (py - MARGIN) / this.scale, this.ends.y, this.beyond.y)};
  }
}

/// Bands and tints, pixel by pixel.
function paintFills(context, field, state, bands, view, ratio) {
  const width = Math.round(view.fieldWidth * ratio), height = Math.round(view.height * ratio);
  const image = context.createImageData(width, height);
  const bandColours = bands.colours.map(rgbOf);
  const tints = state.variant.spaces.map((space) => rgbOf(TINTS[space.is]));
  const columns = Array.from({length: width}, (_, px) => {
    const at = view.place((px + 0.5) / ratio, 0).x, i = stripAt(field.x, at);
    return {at, i, u: (at - field.x[i]) / (field.x[i + 1] - field.x[i])};
  });
  for (let py = 0; py < height; ++py) {
    const y = view.place(0, (py + 0.5) / ratio).y;
    const j = stripAt(field.y, y), v = (y - field.y[j]) / (field.y[j + 1] - field.y[j]);
    for (let px = 0; px < width; ++px) {
      const {at, i, u} = columns[px];
      const here = field.contains({x: at, y}) ?
          field.within(j * field.columns + i, j * field.x.length + i, u, v, state.temperatures) :
          {fill: 0};
      const colour = here.fill === 0 ? WHITE :
          field.isSolid(here.fill) ? bandColours[bands.band(here.temperature)] :
                                     tints[here.fill - 1 - field.regions];
      const byte = 4 * (py * width + px);
      image.data[byte] = colour[0];
      image.data[byte + 1] = colour[1];
      image.data[byte + 2] = colour[2];
      image.data[byte + 3] = 255;
    }
  }
  context.putImageData(image, 0, 0);
}

/// The lines between materials and around them.
function strokeEdges(context, field, view) {
  context.beginPath();
  const line = (x1, y1, x2, y2) => {
    context.moveTo(view.x(x1), view.y(y1));
    context.lineTo(view.x(x2), view.y(y2));
  };
  const differ = (a, b) => a !== b && (field.isSolid(a) || field.isSolid(b));
  for (let j = 0; j < field.rows; ++j) {
    for (let i = 0; i < field.columns; ++i) {
      const cell = j * field.columns + i, rising = field.split[cell] === RISING;
      const [x1, x2, y1, y2] = [field.x[i], field.x[i + 1], field.y[j], field.y[j + 1]];
      if (field.split[cell] !== UNDIVIDED && differ(field.below[cell], field.above[cell])) {
        line(x1, rising ? y1 : y2, x2, rising ? y2 : y1);
      }
      const west = i === 0 ? 0 : field.split[cell - 1] === RISING || !field.split[cell - 1] ?
          field.below[cell - 1] : field.above[cell - 1];
      const south = j === 0 ? 0 : field.above[cell - field.columns];
      if (differ(west, rising ? field.above[cell] : field.below[cell])) line(x1, y1, x1, y2);
      if (differ(south, field.below[cell])) line(x1, y1, x2, y1);
      if (i + 1 === field.columns && field.isSolid(rising ? field.below[cell] : field.above[cell])) {
        line(x2, y1, x2, y2);
      }
      if (j + 1 === field.rows && field.isSolid(field.above[cell])) line(x1, y2, x2, y2);
    }
  }
  context.lineWidth = 1;
  context.strokeStyle = INK;
  context.stroke();
}

/// The limits of the rooms whose humidity is known: isotherms that mean something.
function limitsOf(state) {
  const limits = [];
  const rooms = state.variant.rooms.filter(
      ({air}) => state.variant.spaces[air].is === 'inside' && state.pressure(air) > 0);
  for (const {air} of rooms) {
    const of = rooms.length > 1 ? `, ${state.variant.spaces[air].name}` : '';
    const add = (what, dash, pressure) => {
      const level = saturationTemperature(pressure);
      limits.push({level, dash, words: `${what} ${level.toFixed(1)} °C${of}`});
    };
    add('dew point', [0.01, 5], state.pressure(air));
    add('mould', [11, 4], state.pressure(air) / MOULD_LIMIT);
  }
  return limits;
}

function strokeLimits(context, field, state, view, taken, fits) {
  const limits = limitsOf(state);
  contours(field, view, state.temperatures, limits.map(({level}) => level)).forEach((lines, k) => {
    context.lineCap = 'round';
    context.setLineDash([]);
    context.lineWidth = 4.4;
    context.strokeStyle = '#ffffff';
    strokeLines(context, lines);
    context.setLineDash(limits[k].dash);
    context.lineWidth = 2.4;
    context.strokeStyle = LIMIT_INK;
    strokeLines(context, lines);
    context.setLineDash([]);
    label(context, lines, limits[k].words, LIMIT_INK, '#ffffff', taken, fits);
  });
}

/// What is written into each space that has room for it: words, and the box of that room in pixels.
function spaceLabels(state, view) {
  return state.variant.spaces.flatMap((space, id) => {
    if (!space.label_mm) return [];
    const [x, y, width, height] = space.label_mm;
    const humidity = state.humidity[id] === undefined ? '' : `, ${Math.round(100 * state.humidity[id])} %`;
    return [{name: space.name, words: `${space.name}, ${state.air[id].toFixed(1)} °C${humidity}`,
             x: view.x(x), y: view.y(y), width: width * view.scale, height: height * view.scale}];
  });
}

/// Writes a label where all of it is in its room and between two abscissas, or not at all. Whether
/// it did.
function writeLabel(context, view, {words, x, y, width, height}, from = 0, to = view.fieldWidth) {
  const long = context.measureText(words).width + 8, thick = 14;
  const upright = width < long && height > width;
  if (Math.max(Math.min(width, height), MARGIN) < thick) return false;
  const place = (at, size, length, low, high) => {
    const least = Math.max(at - size / 2, low) + length / 2, most = Math.min(at + size / 2, high) - length / 2;
    return least > most ? NaN : Math.min(Math.max(at, least), most);
  };
  // Across itself it may reach beyond a narrow room, which goes on beyond the picture.
  const across = (size) => Math.max(size, 2 * MARGIN);
  const px = upright ? place(x, across(width), thick, from, to) : place(x, width, long, from, to);
  const py = upright ? place(y, height, long, 0, view.height) : place(y, across(height), thick, 0, view.height);
  if (Number.isNaN(px) || Number.isNaN(py)) return false;
  context.save();
  context.fillStyle = '#3b3b3b';
  context.translate(px, py);
  if (upright) context.rotate(-Math.PI / 2);
  context.fillText(words, 0, 0);
  context.restore();
  return true;
}

/// Letters as pictures have them.
function setLetters(context) {
  context.font = '12px "DejaVu Sans", Verdana, sans-serif';
  context.textAlign = 'center';
  context.textBaseline = 'middle';
}

function drawBar(context, bands, view) {
  const left = view.fieldWidth + 8, top = 30, height = Math.min(view.height - 50, 360);
  const up = (t) => top + height * (1 - (t - bands.low) / (bands.high - bands.low));
  const ends = [bands.low, ...bands.levels, bands.high];
  bands.colours.forEach((colour, k) => {
    context.fillStyle = colour;
    context.fillRect(left, up(ends[k + 1]), 14, up(ends[k]) - up(ends[k + 1]));
  });
  context.lineWidth = 1;
  context.strokeStyle = INK;
  context.strokeRect(left, top, 14, height);
  context.fillStyle = INK;
  context.textAlign = 'left';
  for (const level of bands.levels) context.fillText(String(Math.round(level * 1000) / 1000), left + 19, up(level));
  context.fillText('°C', left, top - 12);
  context.textAlign = 'center';
}

function drawMark(context, x, y) {
  for (const [radius, fill] of [[5, '#ffffff'], [1.8, INK]]) {
    context.beginPath();
    context.arc(x, y, radius, 0, 2 * Math.PI);
    context.fillStyle = fill;
    context.fill();
    if (radius > 2) { context.lineWidth = 1.8; context.strokeStyle = INK; context.stroke(); }
  }
}

/// The whole picture of a state on a canvas of its own, to be shown below the cross-hair. Labels are
/// put aside where a list is given for those of rooms and one for those along lines.
function drawField(state, view, colours, ratio, aside) {
  const {field} = state.variant;
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(view.width * ratio);
  canvas.height = Math.round(view.height * ratio);
  const context = canvas.getContext('2d');
  const bands = new Bands(state.felt, colours);
  paintFills(context, field, state, bands, view, ratio);
  context.scale(ratio, ratio);
  setLetters(context);
  context.lineJoin = 'round';
  context.save();
  context.beginPath();
  context.rect(0, 0, view.fieldWidth, view.height);
  context.clip();
  if (aside) aside.rooms.push(...spaceLabels(state, view));
  else spaceLabels(state, view).forEach((each) => writeLabel(context, view, each));
  strokeEdges(context, field, view);
  const marks = state.variant.rooms.filter(({air}) => state.variant.spaces[air].is === 'inside').map((room) => {
    const {x, y} = field.place(state.coldest(room).node);
    return {x: view.x(x), y: view.y(y), width: 6};
  });
  const taken = [...marks];
  const lines = contours(field, view, state.temperatures, bands.levels);
  const fits = (px, py) => {
    const place = view.place(px, py);
    return field.contains(place) && field.isSolid(field.exactly(place, state.temperatures).fill);
  };
  strokeLimits(context, field, state, view, taken, fits);
  lines.forEach((each, k) => {
    const dark = rgbOf(bands.colours[k]).reduce((sum, part) => sum + part, 0) < 340;
    context.lineWidth = 0.8;
    context.strokeStyle = dark ? '#ffffff' : INK;
    strokeLines(context, each);
    label(context, each, String(Math.round(bands.levels[k] * 1000) / 1000), dark ? '#ffffff' : INK,
          bands.colours[k], taken, fits);
  });
  const written = taken.slice(marks.length);
  if (aside) aside.lines.push(...written);
  else written.forEach((each) => writeAlong(context, each));
  for (const {x, y} of marks) drawMark(context, x, y);
  context.restore();
  drawBar(context, bands, view);
  return canvas;
}
