// SPDX-License-Identifier: Apache-2.0
// The thermocouple and the air: what a reader does, and what the page then says.

const page = JSON.parse(document.getElementById('data').textContent);
const element = (id) => document.getElementById(id);

/// An element with attributes and children, which are elements or plain text.
function made(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) node.setAttribute(name, value);
  node.append(...children);
  return node;
}

const now = {
  number: 0,      // of the variant
  changed: Object.create(null),  // by name of space {temperature, humidity}
  place: null,    // of the cross-hair, mm
  view: null,
  picture: null,  // the field without cross-hair
  pinned: false,  // the cross-hair stays where it was clicked
  following: [],  // what the sliders of values that follow from others show
};
const variantNow = () => page.variants[now.number];
const stateNow = () => new State(variantNow(), now.changed);
const isRoom = (variant, room) => variant.spaces[room.air].is === 'inside';
const roomsOf = (variant) =>
    variant.rooms.some((room) => isRoom(variant, room)) ?
    variant.rooms.filter((room) => isRoom(variant, room)) : variant.rooms;

function percent(humidity) { return `${Math.round(100 * humidity)} %`; }

/// Whether the air of a room is within reach of a place.
function isOnSurface({variant, temperatures}, room, {x, y}) {
  const {field} = variant, reach = Math.max(1, 3 / now.view.scale);
  return Array.from({length: 16}, (_, k) => k * Math.PI / 8).some((way) => {
    const place = {x: x + reach * Math.cos(way), y: y + reach * Math.sin(way)};
    if (!field.contains(place)) return false;
    const {fill} = field.exactly(place, temperatures);
    return fill > field.regions && variant.spaces[fill - 1 - field.regions].air === room.air;
  });
}

/// What a room's air would do at a place of this temperature; within a wall it does nothing.
function roomWords(state, room, temperature) {
  const name = state.variant.spaces[room.air].name;
  const factor = state.factor(temperature, room.air);
  const words = Number.isFinite(factor) ? `${name}: fRsi ${factor.toFixed(3)}` : name;
  const pressure = state.pressure(room.air);
  if (pressure === undefined || !isOnSurface(state, room, now.place)) return words;
  const humidity = pressure / saturationPressure(temperature);
  const means = humidity >= 1 ? ': it gets wet' : humidity >= MOULD_LIMIT ? ': mould can grow' : '';
  return `${words}; on its surface ${percent(humidity)} humidity${means}`;
}

function showReading(state) {
  const {variant} = state, {field} = variant;
  const {x, y} = now.place;
  const here = field.at(now.place, state.temperatures);
  const at = `${Math.round(x)}, ${Math.round(y)} mm`;
  const lines = [];
  if (field.isSolid(here.fill)) {
    lines.push(made('strong', {}, `${here.temperature.toFixed(2)} °C`), ` in ${variant.regions[here.fill - 1]} at ${at}`);
    for (const room of roomsOf(variant)) lines.push(made('br'), roomWords(state, room, here.temperature));
  } else if (here.fill > 0) {
    const id = here.fill - 1 - field.regions;
    const humidity = state.humidity[id] === undefined ? '' : `, ${percent(state.humidity[id])} humidity`;
    lines.push(made('strong', {}, `${state.air[id].toFixed(1)} °C`), ` in the air of ${variant.spaces[id].name}${humidity}`);
  } else {
    lines.push(`Nothing is drawn at ${at}`);
  }
  element('reading').replaceChildren(...lines);
}

function drawCrossHair() {
  const canvas = element('field'), context = canvas.getContext('2d'), {view, place, picture} = now;
  const ratio = canvas.width / view.width;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.drawImage(picture, 0, 0);
  context.scale(ratio, ratio);
  const [x, y] = [view.x(place.x), view.y(place.y)];
  for (const [width, colour] of [[3, '#ffffff'], [1, INK]]) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.beginPath();
    context.moveTo(0, y); context.lineTo(x - 8, y); context.moveTo(x + 8, y); context.lineTo(view.fieldWidth, y);
    context.moveTo(x, 0); context.lineTo(x, y - 8); context.moveTo(x, y + 8); context.lineTo(x, view.height);
    context.moveTo(x + 8, y);
    context.arc(x, y, 8, 0, 2 * Math.PI);
    context.stroke();
  }
}

function drawPicture(state) {
  const canvas = element('field');
  if (element('bench').clientWidth < 60) return;  // nothing could be told on it
  const ratio = Math.min(2, window.devicePixelRatio || 1);
  now.view = new View(state.variant.field, state.variant.close_up_mm, element('bench').clientWidth, Math.max(260, Math.min(560, 0.8 * window.innerHeight)));
  canvas.width = Math.round(now.view.width * ratio);
  canvas.height = Math.round(now.view.height * ratio);
  canvas.style.width = `${now.view.width}px`;
  canvas.style.height = `${now.view.height}px`;
  now.picture = drawField(state, now.view, page.colours, ratio);
  drawCrossHair();
}

/// All variants at the air as it stands now.
function showConditions() {
  const rows = [], sentences = [];
  page.variants.forEach((variant, number) => {
    if (!variant.field) return;
    const state = new State(variant, now.changed);
    for (const room of roomsOf(variant)) {
      const spot = state.coldest(room);
      const live = outcomeOf(variant, spot), judgements = live.all;
      const {words, tone, chance} = state.asSolved && room.outcome ? room.outcome : live;
      const {name} = variant.spaces[room.air];
      const air = `${name} ${state.air[room.air].toFixed(1)} °C${
          spot.pressure === undefined ? '' : `, ${percent(state.humidity[room.air])}`}`;
      const known = spot.pressure !== undefined;
      rows.push(made('tr', number === now.number ? {'class': 'chosen'} : {},
          made('td', {}, variant.name), made('td', {}, air), made('td', {}, spot.where),
          made('td', {'class': 'n'}, spot.temperature.toFixed(1)),
          made('td', {'class': 'n'}, Number.isFinite(spot.factor) ? spot.factor.toFixed(3) : '–'),
          made('td', {'class': 'n'}, known ? `${Math.round(100 * spot.humidity)}` : '–'),
          made('td', {'class': 'n'}, known ? `${Math.floor(100 * spot.safe)}` : '–'),
          made('td', {'class': 'n'}, chance === undefined ? '–' : chance),
          made('td', {}, made('span', {'class': `mark ${tone}`}, words))));
      if (number !== now.number) continue;
      sentences.push(made('p', {}, `${variant.name}, ${air}: the coldest spot, ${spot.where}, is at ${
          spot.temperature.toFixed(1)} °C. ${judgements.map(criterionWords).join('; ')}${judgements.length ? '.' : ''}${
          variant.gate ? ` No favourable outcome: ${variant.gate}.` : ''}`));
      if (variant.wet) sentences.push(made('p', {}, 'What leaves its wet surfaces depends on the air: this variant stays as solved.'));
      if (!state.asSolved && words === 'holds')
        sentences.push(made('p', {}, 'How sure that is for this house is told for the air as solved only: solve the case with this air to know.'));
    }
  });
  const headings = [['variant'], ['air'], ['coldest spot'], ['°C', 'n'], ['fRsi', 'n'], ['humidity there %', 'n'],
                    ['kept up to %', 'n'],
                    ['times passed in 100', 'n'], ['outcome']];
  element('sentences').replaceChildren(...sentences);
  element('conditions').replaceChildren(made('div', {'class': 'wide', role: 'region', 'aria-label': 'All variants in this air'},
          made('table', {}, made('caption', {}, 'All variants in this air'),
              made('thead', {}, made('tr', {}, ...headings.map(([words, kind]) =>
                  made('th', kind ? {scope: 'col', 'class': kind} : {scope: 'col'}, words)))),
              made('tbody', {}, ...rows))));
}

let waiting = false;
/// Everything again, once a frame however fast a slider moves.
function update() {
  if (waiting) return;
  waiting = true;
  requestAnimationFrame(() => {
    waiting = false;
    const state = stateNow();
    for (const follow of now.following) follow(state);
    markScrolling();  // tables are made anew
    const hasField = Boolean(state.variant.field);
    element('bench').hidden = !hasField;
    element('no-field').hidden = hasField;
    if (hasField) {
      drawPicture(state);
      showReading(state);
    }
    showConditions();
  });
}

function moveTo(place) {
  now.place = place;
  drawCrossHair();
  showReading(stateNow());
}

/// Marks a number outside its range, which stays out of use, and says the range.
function markRange(input, {min, max}) {
  const wrong = input.value === '' || !(Number(input.value) >= min && Number(input.value) <= max);
  input.setAttribute('aria-invalid', wrong);
  const note = input.parentElement.querySelector('.range-note');
  note.textContent = wrong ? `${min} to ${max} only` : '';
  return !wrong;
}

/// A slider and a number for one property of a space.
function control(space, property, words, value, [low, high, step]) {
  const id = `air-${space.name}-${property}`.replace(/[^a-z0-9-]/gi, (c) => `_${c.codePointAt(0)}`);
  const attributes = {min: Math.min(low, Math.floor(value)), max: Math.max(high, Math.ceil(value)), step};
  const inputs = ['range', 'number'].map((type) => made('input', {type, ...attributes, id: `${id}-${type}`,
      'aria-label': `${space.name}, ${words}`}));
  const shown = Math.round(value * 10) / 10;
  for (const input of inputs) {
    input.value = shown;
    input.addEventListener('input', () => {
      if (!markRange(input, attributes)) return;
      const wanted = Number(input.value);
      for (const other of inputs) {
        if (other !== input) other.value = input.value;
        other.setAttribute('aria-invalid', false);
      }
      now.changed[space.name] = {...now.changed[space.name],
                                 [property]: property === 'humidity' ? wanted / 100 : wanted};
      update();
    });
  }
  return made('div', {'class': 'control'}, made('label', {'for': `${id}-range`}, words), ...inputs,
      made('span', {'class': 'range-note', role: 'status'}));
}

/// Shows the humidity of a room that follows from its household, as long as nobody sets it.
function followHousehold(space, box) {
  now.following.push((state) => {
    if ((now.changed[space.name] || {}).humidity !== undefined) return;
    const shown = Math.round(1000 * state.humidity[space.air]) / 10;
    for (const input of box.querySelectorAll('input')) input.value = shown;
  });
}

function showControls() {
  const state = stateNow(), {variant} = state;
  now.following = [];
  element('airs').replaceChildren(...variant.drivers.map((id) => {
    const space = variant.spaces[id], inside = space.is === 'inside';
    const parts = [control(space, 'temperature', 'temperature, °C', state.air[id], inside ? [5, 30, 0.1] : [-20, 25, 0.1])];
    if (inside && state.humidity[id] !== undefined) {
      parts.push(control(space, 'humidity', 'humidity, %', 100 * state.humidity[id], [20, 100, 0.5]));
      if (space.household) followHousehold(space, parts[1]);
    }
    return made('fieldset', {}, made('legend', {}, space.name), ...parts);
  }));
  const jump = (words, place) => {
    const button = made('button', {type: 'button'}, words);
    button.addEventListener('click', () => moveTo(place()));
    return button;
  };
  const jumps = roomsOf(variant).map((room) => jump(`coldest spot of ${variant.spaces[room.air].name}`,
      () => variant.field.place(stateNow().coldest(room).node)));
  for (const {name, at_mm} of variant.probes) jumps.push(jump(name, () => ({x: at_mm[0], y: at_mm[1]})));
  element('places').replaceChildren(...jumps);
}

function choose(number) {
  now.number = number;
  const {field, rooms} = variantNow();
  if (field && (!now.place || !field.contains(now.place))) {
    now.place = rooms.length ? field.place(stateNow().coldest(roomsOf(variantNow())[0]).node) :
                               {x: field.x[0], y: field.y[0]};
  }
  showControls();
  update();
}

/// The place under a pointer; just off the material the nearest place of it, as fingers are wide.
function placeOf(event) {
  const box = element('field').getBoundingClientRect();
  const [px, py] = [event.clientX - box.left, event.clientY - box.top];
  const {field} = variantNow(), {temperatures} = stateNow();
  const solid = (place) => field.contains(place) && field.isSolid(field.at(place, temperatures).fill);
  const reach = event.pointerType === 'touch' ? 14 : 6;
  for (let away = 0; away <= reach; ++away) {
    for (let k = 0; k < (away ? 16 : 1); ++k) {
      const place = now.view.place(px + away * Math.cos(k * Math.PI / 8), py + away * Math.sin(k * Math.PI / 8));
      if (solid(place)) return place;
    }
  }
  const place = now.view.place(px, py);
  return field.contains(place) ? place : null;
}

function listen() {
  const canvas = element('field');
  const point = (event) => {
    const place = placeOf(event);
    if (place) moveTo(place);
  };
  canvas.addEventListener('pointermove', (event) => { if (!now.pinned) point(event); });
  canvas.addEventListener('pointerdown', (event) => {
    point(event);
    now.pinned = event.pointerType === 'mouse' && !now.pinned;
  });
  canvas.addEventListener('keydown', (event) => {
    const {field, rooms} = variantNow(), step = event.shiftKey ? 1 : 10;
    const way = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1]}[event.key];
    if (way) {
      const place = {x: now.place.x + step * way[0], y: now.place.y + step * way[1]};
      if (field.contains(place)) moveTo(place);
    } else if (event.key === 'Home' && rooms.length) {
      moveTo(field.place(stateNow().coldest(roomsOf(variantNow())[0]).node));
    } else {
      return;
    }
    event.preventDefault();
  });
  element('variant').addEventListener('change', (event) => choose(Number(event.target.value)));
  element('as-solved').addEventListener('click', () => { now.changed = Object.create(null); choose(now.number); });
  window.addEventListener('resize', update);
}

/// Before and after on one scale, the outer face fixed, parted where the slider stands.
const both = {before: null, after: null, view: null, ratio: 1, labels: []};

/// Labels are whole and on one side: what both say alike stands once, where there is more room.
function labelBoth(context, at) {
  const {view} = both, [before, after] = both.labels.map(({rooms}) => rooms);
  context.save();
  context.scale(both.ratio, both.ratio);
  setLetters(context);
  const alike = (label) => (other) => other.name === label.name && other.words === label.words;
  const parted = Math.min(at, view.fieldWidth);
  const onLeft = (label) => writeLabel(context, view, label, 0, parted);
  const onRight = (label) => writeLabel(context, view, label, parted, view.fieldWidth);
  const leftIsWider = parted > view.fieldWidth / 2;
  for (const label of before) {
    const other = after.find(alike(label));
    if (!other) onLeft(label);
    else if (leftIsWider) onLeft(label) || onRight(other);
    else onRight(other) || onLeft(label);
  }
  after.filter((label) => !before.some(alike(label))).forEach(onRight);
  both.labels.forEach(({lines}, side) => lines.forEach((label) => {
    const reach = Math.abs(Math.cos(label.turn)) * label.width / 2 + 8;
    if (side === 0 ? label.x + reach < parted : label.x - reach > parted) writeAlong(context, label);
  }));
  context.restore();
}

function paintBoth() {
  const canvas = element('both'), context = canvas.getContext('2d');
  const share = Number(element('split').value) / 100, at = Math.round(share * both.before.width);
  context.drawImage(both.after, 0, 0);
  if (at > 0) context.drawImage(both.before, 0, 0, at, canvas.height, 0, 0, at, canvas.height);
  context.fillStyle = INK;
  context.fillRect(at - 1, 0, 2, canvas.height);
  labelBoth(context, at / both.ratio);
}

/// Draws both anew for the room there is.
function drawBoth() {
  const box = element('before-after'), width = box.clientWidth;
  if (box.hidden || width < 120) return;
  const ratio = Math.min(2, window.devicePixelRatio || 1), first = page.variants[0];
  const other = page.variants[Number(element('after').value)];
  const views = [first, other].map((variant) => new View(variant.field, variant.close_up_mm, width, 0.55 * window.innerHeight));
  const view = views[0].scale <= views[1].scale ? views[0] : views[1];
  const canvas = element('both');
  canvas.width = Math.round(view.width * ratio);
  canvas.height = Math.round(view.height * ratio);
  canvas.style.width = `${view.width}px`;
  canvas.style.height = `${view.height}px`;
  both.labels = [{rooms: [], lines: []}, {rooms: [], lines: []}];
  [both.before, both.after] = [first, other].map(
      (variant, side) => drawField(new State(variant, {}), view, page.colours, ratio, both.labels[side]));
  Object.assign(both, {view, ratio});
  paintBoth();
}

function showBoth() {
  const others = page.variants.map((variant, number) => ({variant, number})).slice(1).filter(({variant}) => variant.field);
  if (!page.variants[0].field || others.length === 0) return;
  element('after').append(...others.map(({variant, number}) => made('option', {value: number}, variant.name)));
  if (others.some(({number}) => number === page.chosen)) element('after').value = page.chosen;
  element('before-after').hidden = false;
  element('split').addEventListener('input', paintBoth);
  element('after').addEventListener('change', drawBoth);
  window.addEventListener('resize', drawBoth);
  drawBoth();
}

/// Boxes that scroll can be reached by keyboard; others are no stop on the way.
function markScrolling() {
  for (const box of document.querySelectorAll('.wide')) {
    if (box.scrollWidth > box.clientWidth + 1) box.tabIndex = 0; else box.removeAttribute('tabindex');
    box.classList.toggle('scrolls', box.tabIndex === 0);
  }
}

function listenToPrint() {
  const button = element('print');
  button.hidden = false;
  button.addEventListener('click', () => {
    document.body.classList.add('summary');
    window.print();
    document.body.classList.remove('summary');
  });
}

for (const variant of page.variants) if (variant.grid) variant.field = new Field(variant);
element('variant').append(...page.variants.map(({name}, number) => made('option', {value: number}, name)));
element('thermocouple').hidden = false;
listen();
choose(0);
showBoth();
markScrolling();
listenToPrint();
window.addEventListener('resize', markScrolling);
new ResizeObserver(markScrolling).observe(element('conditions'));  // it comes to be shown later
