// SPDX-License-Identifier: Apache-2.0
"use strict";

// The page: what is open, what was done to it, and who shows it.

const mostBytes = 4 * 1024 * 1024;
const keptAs = "quoin-board";
let hand, head, ready;
const $ = (selector) => document.querySelector(selector);

const board = {
  text: "", beside: {}, variant: "", assumed: new Set(), past: [], future: [], saved: null,
  tree: null, base: null, seen: null, found: null, foundFor: null, faults: null, side: "",
  plates: [], line: Promise.resolve(), ticket: 0, moving: false, finger: null, pinned: false,
  area: null, drawsArea: false, house: null, opened: 0, working: new Set(),
  catalogue: {materials: [], coats: []},
  drags: new Newest(), judgements: new Newest(),

  asked() { return {text: this.text, beside: this.beside, of_house: Boolean(this.house)}; },
  material(name) { return this.catalogue.materials.find((one) => one.name === name); },
  shownName() { return this.variant || this.base?.variant || ""; },
  /** Size of the figures on isotherms, in units of the picture, so that they can be read. */
  letters() {
    const {fit, seen} = this.plates[0];
    return fit ? Math.min(Math.max(11 * seen.view.units_per_mm / fit.scale, 8), 40) : 16;
  },
  say(text) { $("#live").textContent = text; $("#live").classList.toggle("unseen", false); clearTimeout(this.saying);
    this.saying = setTimeout(() => $("#live").classList.add("unseen"), 4000); },

  // what is open

  async open(text, {beside = {}, variant = "", assumed = [], past = [], future = [], saved = null, house = null} = {}) {
    textPane.forget();
    ++this.opened;
    this.forgotten = false;
    for (const plate of this.plates) plate.clear();
    Object.assign(this, {text, beside, variant, past, future, saved, found: null, foundFor: null, base: null, seen: null,
      faults: null, side: "", finger: null, tree: null, area: null, pending: null, house});
    this.assumed = new Set(assumed);
    this.pinning(false);
    this.drawing(false);
    tape.close();
    $("#start").hidden = true;
    $("#board").hidden = false;
    $(".thumb").hidden = false;
    this.turn("");
    scrollTo(0, 0);
    await this.refresh();
  },

  async begin(recipe) {
    await ready;
    let text = await hand.call("start", {recipe});
    for (const path of ["variants", "criteria/fRsi"]) {
      try { text = await hand.call("removed", {text, path}); } catch { /* it has none */ }
    }
    const tree = treeOf(await hand.call("values", {text})), assumed = [];
    for (const [, node] of entries(recipeOf(tree)?.node)) {
      for (const [, layer] of isList(node) ? entries(node) : []) {
        if (layerOf(layer).thickness) assumed.push(layerOf(layer).thickness.path);
      }
    }
    for (const [, own] of entries(under(tree, "materials"))) if (under(own, "moisture")) assumed.push(under(own, "moisture").path);
    for (const [, space] of entries(under(tree, "spaces")))
      for (const key of under(space, "is")?.text === "inside" ? ["temperature", "humidity"] : ["temperature"]) if (under(space, key)) assumed.push(under(space, key).path);
    await this.open(text, {assumed});
    this.nextAssumed("");
  },

  /** Away from what is open, to what `paint` shows. */
  leave(paint = paintStart) {
    textPane.leave();
    return this.settled(() => {
      this.store();
      leaveSection();
      tape.close();
      $("#board").hidden = true;
      $(".thumb").hidden = true;
      scrollTo(0, 0);
      return paint();
    });
  },

  store() {
    if (this.forgotten || !this.opened) return;
    try {
      localStorage.setItem(keptAs, JSON.stringify({text: this.text, beside: this.beside, variant: this.variant, assumed: [...this.assumed],
        house: this.house && {name: this.house.name, part: this.house.part}}));
    } catch { /* no store here, or it is full: the file can still be saved */ }
  },

  forget() {
    localStorage.removeItem(keptAs);
    this.forgotten = true;
    this.say(words.forgotten);
  },

  // changes

  /** Makes a text of the text; one step of undo. */
  change(make_) {
    const {opened} = this;
    return this.settled(async () => {
      const text = await make_(this.text), kept = text === this.text ? text : await this.keptProbes(text);
      if (opened === this.opened && kept !== this.text) await this.put(kept);
    });
  },

  /** Does something when what was asked before is done, if the same is open still; what cannot be done is said. */
  settled(act) {
    const {opened} = this;
    this.line = this.line.then(async () => {
      if (opened !== this.opened) return;
      const done = this.works();
      try {
        await act();
      } catch (error) {
        this.say(error.faults?.[0]?.what ?? error.message);
      } finally {
        done();
      }
    });
    return this.line;
  },

  async put(text) {
    this.past.push({text: this.text, variant: this.variant, assumed: [...this.assumed]});
    this.forgotten = false;
    this.future = [];
    this.text = text;
    this.paintTop();
    await this.refresh();
  },

  async back(from, to) {
    const step = from.pop();
    if (!step) return;
    to.push({text: this.text, variant: this.variant, assumed: [...this.assumed]});
    Object.assign(this, {text: step.text, variant: step.variant, assumed: new Set(step.assumed)});
    tape.close();
    this.paintTop();
    await this.refresh();
  },
  undo() { return this.settled(() => this.back(this.past, this.future)); },
  redo() { return this.settled(() => this.back(this.future, this.past)); },

  /** A word with what changes it. */
  details(word) {
    const details = {...word};
    details.put = (value) => value === word.text && !word.absent ? this.accept(word.path) : this.edit(details, value);
    if (this.assumed.has(word.path)) details.next = () => this.nextAssumed(word.path);
    return details;
  },

  edit(word, value) {
    if (value === null || (value === "" && word.kind !== "text")) {
      return word.absent ? this.line : this.change((text) => hand.call("removed", {text, path: word.path}));
    }
    this.assumed.delete(word.path);
    const next = word.kind === "moisture" && word.next;
    const done = this.change((text) => {
      if (!word.absent) return hand.call("edited", {text, path: word.path, value});
      const brief = isList(nodeAt(this.tree, word.path.split("/").slice(0, -1).join("/")));
      return hand.call(brief ? "inserted" : "placed", {text, path: word.path, value: yamlWord(value)});
    });
    if (tape.path === word.path && !next) {
      const now = {...word, text: value, value: word.kind === "length" ? millimetres(value) : Number(value), absent: false};
      const details = this.details(now);
      details.next = word.next;
      tape.open(details);
    }
    return next ? done.then(next) : done;
  },

  accept(path) {
    if (this.assumed.delete(path)) { this.store(); note.paint(); }
    return this.line;
  },

  choose(word) {
    if (performance.now() - tape.closedAt < 60) return;
    const area = /^section\/sheet\/(\d+)\//.exec(word.path);
    if (area) this.area = Number(area[1]);
    tape.open(word);
    this.plates.forEach((plate) => plate.seen && !plate.held && plate.mark(plate.seen));
  },

  /** On to the next word that is only assumed. */
  nextAssumed(path) {
    const field = tape.host.querySelector("[data-exact]");
    if (field && tape.path === path && field.value.trim() !== tape.word.text) tape.word.put(field.value.trim());
    this.assumed.delete(path);
    this.settled(() => {
      this.store();
      note.paint();
      const next = [...note.host.querySelectorAll(".word.assumed")].find((one) => one.dataset.path !== path);
      if (!next) return tape.close();
      next.focus({preventScroll: true});
      next.scrollIntoView({block: "nearest"});
    });
  },

  /** The text with its probes on inside surfaces as far from the next named place as they were. */
  async keptProbes(text) {
    const probes = entries(under(this.tree, "probes"));
    if (probes.length === 0 || !this.base?.surfaces) return text;
    let after;
    try {
      after = await hand.call("glance", {...this.asked(), text, field: true});
    } catch {
      return text;
    }
    for (const [name, node] of probes) {
      const [x, y] = ["0", "1"].map((k) => millimetres(under(node, k)?.text));
      const at = nearestOnSurface(this.base.surfaces, {x, y});
      const surface = at && after.surfaces[at.number];
      if (!surface || at.away > 1.5) continue;
      const origin = originOn(at.surface, at.along);
      const now = origin && surface.places.find((one) => one.name === origin.name && one.from_mm === one.to_mm);
      const to = placeAlong(surface, at.along + (now ? now.from_mm - origin.from_mm : 0));
      for (const [k, value, was] of [["0", to.x, x], ["1", to.y, y]]) {
        if (Math.abs(value - was) < 0.01) continue;
        try {
          text = await hand.call("edited", {text, path: joined("probes", stepped(name), k), value: lengthText(value)});
        } catch { /* it is gone */ }
      }
    }
    return text;
  },

  // variants

  async show(name) {
    this.variant = name;
    tape.close();
    await this.refresh();
  },
  addVariant({name, yaml}) {
    return this.change(async (text) => {
      const made = await hand.call("placed", {text, path: joined("variants", stepped(name)), value: yaml});
      this.variant = name;
      return made;
    });
  },
  dropVariant(name) {
    this.variant = "";
    const only = entries(under(this.tree, "variants")).length === 1;
    return this.change((text) => hand.call("removed", {text, path: only ? "variants" : joined("variants", stepped(name))}));
  },

  /** What the next touch of the section is for; null: nothing but looking. */
  asking(said) {
    $(".plates").classList.toggle("pinning", said !== null);
    $(".asking").hidden = said === null;
    $(".asking span").textContent = said ?? "";
    if (said !== null && this.variant) this.show("");
  },

  // readings

  pinning(on) {
    if (on && (!this.base || this.faults)) return this.say(words.notJudged(this.faults?.[0]?.line));
    this.pinned = on;
    this.asking(on ? words.tapWall : null);
    if (on) {
      tape.close();
      scrollTo({top: 0, behavior: "instant"});
    }
  },

  pinAt(place) {
    const at = nearestOnSurface(this.base.surfaces, place);
    if (!at) return;
    this.pinning(false);
    const origin = originOn(at.surface, at.along);
    let name = origin ? words.fromPlace(Math.round(Math.abs(at.along - origin.from_mm)), origin.name) : `${Math.round(at.x)}, ${Math.round(at.y)}`;
    for (let k = 2; under(this.tree, "probes", name); ++k) name = name.replace(/( \(\d+\))?$/, ` (${k})`);
    this.pending = {x: at.x, y: at.y};
    const put = (value) => {
      if (!/^-?[0-9.]+$/.test(value.replace(",", "."))) return;
      this.pending = null;
      tape.close();
      this.change(async (text) => {
        const probed = await hand.call("placed", {text, path: joined("probes", stepped(name)), value: `[${lengthText(at.x)}, ${lengthText(at.y)}]`});
        return hand.call("placed", {text: probed, path: joined("readings", stepped(name)), value: `{temperature: ${value.replace(",", ".")}}`});
      });
    };
    tape.open({path: joined("readings", stepped(name), "temperature"), kind: "reading", label: words.readThere, say: words.readFirst, text: "", unit: words.degrees, put});
    tape.host.querySelector(".exact").focus();
    this.plates[0].mark(this.plates[0].seen);
  },

  removeReading(name) {
    tape.close();
    const gone = (kind) => joined(...(entries(under(this.tree, kind)).length === 1 ? [kind] : [kind, stepped(name)]));
    return this.change(async (text) => {
      const less = await hand.call("removed", {text, path: gone("readings")});
      return under(this.tree, "probes", name) ? hand.call("removed", {text: less, path: gone("probes")}) : less;
    });
  },

  explain() {
    return this.change((text) => hand.call("placed", {text, path: "survey", value: "{surface: dry}"}));
  },

  // areas of a sheet

  drawing(on) {
    this.drawsArea = on;
    this.asking(on ? words.drawArea : null);
  },
  addArea({x, y}) {
    this.drawing(false);
    const sheet = sheetOf(this.tree), at = entries(sheet).length;
    const fill = entries(sheet).map(([, area]) => under(area, "fill")?.text).find((one) => one && !under(this.tree, "spaces", one) && one !== "nothing");
    const pair = (range) => `[${range.map(lengthText).join(", ")}]`;
    return this.change((text) => hand.call("inserted", {text, path: joined("section/sheet", String(at)),
      value: `{fill: ${yamlWord(fill ?? "common brick")}, x: ${pair(x)}, y: ${pair(y)}}`})).then(() => {
      this.area = at;
      note.host.querySelector(`.word[data-path="section/sheet/${at}/fill"]`)?.focus();
    });
  },
  /** A rectangle as an outline of four corners, which can slope. */
  slope(index) {
    const path = `section/sheet/${index}`, value = outlineOf(under(sheetOf(this.tree), index));
    tape.close();
    return this.change(async (text) => {
      let made = await hand.call("placed", {text, path: `${path}/outline`, value});
      for (const side of ["x", "y"]) made = await hand.call("removed", {text: made, path: `${path}/${side}`});
      return made;
    });
  },

  /** The thermometer at the place `along` of the first inside surface; its temperature, degC. */
  pointAlong() {
    if (!this.base?.surfaces?.[0]) return NaN;
    const at = placeAlong(this.base.surfaces[0], this.along);
    this.finger = {...at, seen: this.base};
    this.plates[0].mark(this.base);
    return at.temperature;
  },

  // showing

  async refresh() {
    const ticket = ++this.ticket;
    this.moving = false;
    if (this.house) this.beside = {...this.beside, [houseFile(this.house)]: this.text};
    this.store();
    const done = this.works();
    try {
      const values = await hand.call("values", {text: this.text});
      if (ticket !== this.ticket) return;
      this.tree = treeOf(values);
      if (this.variant && !under(this.tree, "variants", this.variant)) this.variant = "";
      const look = {...this.asked(), letters: this.letters(), field: true};
      const base = await hand.call("glance", look);
      const seen = this.variant ? await hand.call("glance", {...look, variant: this.variant}) : null;
      if (ticket !== this.ticket) return;
      Object.assign(this, {base, seen, faults: null});
    } catch (error) {
      if (ticket !== this.ticket) return;
      if (error.kind === "stopped") { this.say(words.stopped); this.paint(); return; }
      this.faults = error.faults?.length ? error.faults : [{line: 0, column: 0, what: error.message, found: "", expected: "", remedy: ""}];
    } finally {
      done();
    }
    this.paint();
    if (!this.faults) this.judge(ticket);
  },

  /** The whole findings, behind the picture; only of the newest text. */
  judge(ticket) {
    this.judgements.run(async () => {
      if (ticket !== this.ticket) return;
      const done = this.works();
      try {
        const {text} = this, found = await (this.house ? foundInHouse(this.house) : head.call("solve", this.asked()));
        if (text !== this.text) return;
        Object.assign(this, {found, foundFor: text});
        this.paintOutcome();
        this.paintLadder();
        for (const plate of this.plates) if (plate.seen && !plate.held) plate.mark(plate.seen);
        if (!tape.word || tape.word.kind !== "reading") note.paint();
      } catch (error) {
        if (error.kind === "stopped") this.say(words.stopped);
        else if (ticket === this.ticket) { this.faults = error.faults?.length ? error.faults : [{line: 0, column: 0, what: error.message, found: "", expected: "", remedy: ""}]; this.paint(); }
      } finally {
        done();
      }
    });
  },

  /** What a moving finger makes of the section. */
  follow(plate, seen) {
    plate.showSoon(seen, () => {
      this.moving = seen;
      this.pictures = (this.pictures ?? 0) + 1;
      this.paintOutcome();
    });
  },

  /** Something is being worked out, until what is handed back is called: said when it takes long, and
      when it takes longer it can be stopped. */
  works() {
    const one = {slow: false, long: false}, {working} = this;
    const paint = () => {
      document.body.classList.toggle("busy", [...working].some(({slow}) => slow));
      $("#stop").hidden = ![...working].some(({long}) => long);
    };
    const timers = [["slow", 250], ["long", 1150]].map(([what, after]) => setTimeout(() => { one[what] = true; paint(); }, after));
    working.add(one);
    return () => {
      timers.forEach(clearTimeout);
      working.delete(one);
      paint();
    };
  },

  paint() {
    document.body.classList.toggle("stale", Boolean(this.faults));
    this.paintTop();
    if (this.base && !this.faults) {
      $(".plates").classList.toggle("other", Boolean(this.seen));
      $(".second").hidden = !this.seen;
      for (const [selector, seen] of [[".first", this.base], [".second", this.seen]]) {
        const name = $(`${selector} .name`);
        name.hidden = !this.seen;
        name.textContent = seen ? seen === this.base ? words.asWritten : seen.variant : "";
      }
      this.plates[0].show(this.base);
      if (this.seen) this.plates[1].show(this.seen);
    }
    this.paintOutcome();
    this.paintLadder();
    if (this.side === "") note.paint();
    if (this.side === "text") textPane.paint();
  },

  paintTop() {
    $(".top h1").textContent = under(this.tree, "title")?.text ?? "";
    $("#undo").disabled = this.past.length === 0;
    $("#redo").disabled = this.future.length === 0;
    $("#kept").textContent = this.saved === this.text ? words.saved : words.notSaved;
  },

  variantIndex() {
    const index = (this.found?.variants ?? []).findIndex((one) => one.name === this.variant);
    return Math.max(index, 0);
  },

  paintOutcome() {
    const host = $(".outcome");
    if (this.faults) {
      const {line} = this.faults[0];
      host.replaceChildren(make("strong", {class: "bad"}, "? "), words.notJudged(line), " ",
        note.act(words.showFault, () => this.turn("text")));
      return;
    }
    const v = this.variantIndex(), variant = this.found?.variants?.[v];
    if (this.moving || !variant) {
      const room = (this.moving ?? this.seen ?? this.base)?.rooms?.[0];
      if (room) host.replaceChildren(make("strong", {}, `${degrees(room.coldest_C)} °C`), ` ${room.where}. `,
        make("small", {class: "rest"}, words.judging));
      return;
    }
    const order = ["bad", "doubtful", "good", "plain"], outcomes = variant.outcomes ?? [];
    const k = outcomes.reduce((best, one, at) => order.indexOf(one.tone) < order.indexOf(outcomes[best].tone) ? at : best, 0);
    const outcome = outcomes[k];
    if (!outcome) return host.replaceChildren(make("span", {"data-finding": `/variants/${v}/summary`}, variant.summary));
    const at = `/variants/${v}/outcomes/${k}`, space = variant.surface.spaces[outcome.space];
    const said = outcome.words, cut = said.indexOf(":");
    const strong = make("strong", {class: outcome.tone, "data-finding": `${at}/outcome`}, `${words.signs[outcome.tone]} ${outcome.outcome}`);
    const small = make("small", {});
    if (outcome.chance !== undefined) small.append(make("span", {"data-finding": `${at}/chance`}, `${outcome.outcome === "wet" ? "" : ""}${words.mould} ${words.chance(Math.round(outcome.chance * 100))}`), ". ");
    if (space?.highest_safe_humidity_percent) small.append(make("span", {"data-finding": `/variants/${v}/surface/spaces/${outcome.space.replace(/~/g, "~0").replace(/\//g, "~1")}/highest_safe_humidity_percent`}, words.upTo(Math.floor(space.highest_safe_humidity_percent))));
    const rest = said.slice(cut + 1).trim();
    host.replaceChildren(strong, ": ", make("span", {"data-finding": `${at}/words`, "data-full": said}, rest), this.variant ? make("em", {}, ` (${this.variant})`) : "", small);
  },

  paintLadder() {
    const host = $(".ladder"), variants = this.found?.variants ?? [];
    if (!variants.length || this.faults) return host.replaceChildren();
    const rows = variants.map((variant, v) => {
      const [name, space] = Object.entries(variant.surface.spaces).find(([, one]) => one.coldest && "humidity_percent" in one)
        ?? Object.entries(variant.surface.spaces).find(([, one]) => one.coldest) ?? [];
      return {variant, v, name, space};
    }).filter((row) => row.space);
    const all = rows.flatMap(({space}) => [space.coldest.temperature_C, space.dew_point_C, space.mould_temperature_C]).filter(Number.isFinite);
    if (!all.length) return host.replaceChildren();
    const low = Math.min(...all) - 2, high = Math.max(...all) + 3;
    const small = innerWidth < 900;
    const share = (t) => `${100 * (Math.min(Math.max(t, low), high) - low) / (high - low)}%`;
    const shown = small && rows.length > 2 && !this.allRungs ? rows.filter(({v}) => v === 0 || v === this.variantIndex()) : rows;
    host.setAttribute("aria-label", words.ladderLabel);
    host.replaceChildren(...shown.map(({variant, v, name, space}) => {
      const wet = make("span", {class: "zone-wet"}, words.wet), mould = make("span", {class: "zone-mould"}, words.mould);
      const enough = make("span", {class: "zone-enough"}, small ? words.enoughShort : words.enough), mark = make("i", {});
      const dew = space.dew_point_C, need = space.mould_temperature_C;
      wet.style.width = Number.isFinite(dew) ? share(dew) : "0";
      mould.style.width = Number.isFinite(need) ? `calc(${share(need)} - ${Number.isFinite(dew) ? share(dew) : "0%"})` : "0";
      mark.style.left = share(space.coldest.temperature_C);
      const outcome = (variant.outcomes ?? []).find((one) => one.space === name);
      const path = `/variants/${v}/surface/spaces/${name.replace(/~/g, "~0").replace(/\//g, "~1")}/coldest/temperature_C`;
      return make("button", {type: "button", class: v === this.variantIndex() ? "rung on" : "rung", "data-variant": variant.name,
        "aria-pressed": v === this.variantIndex(), onclick: () => this.show(v === 0 ? "" : variant.name)},
        make("span", {}, v === 0 ? words.asWritten : variant.name), make("span", {class: "bar", "aria-hidden": "true"}, wet, mould, enough, mark),
        make("span", {class: `res ${outcome?.tone ?? ""}`}, make("span", {"data-finding": path}, degrees(space.coldest.temperature_C)), " ",
          outcome ? `${words.signs[outcome.tone]} ${outcome.outcome}` : ""));
    }));
    if (small && rows.length > 2) host.append(make("button", {type: "button", class: "rung", onclick: () => { this.allRungs = !this.allRungs; this.paintLadder(); }}, this.allRungs ? "▴" : `▾ ${rows.length}`));
  },

  turn(side) {
    textPane.leave();
    this.side = side;
    tape.close();
    document.body.classList.toggle("turned", side !== "");
    const host = $("#side");
    host.classList.toggle("back", side !== "");
    if (side === "text") return textPane.open(host);
    else if (side === "take") paintTake(host);
    else note.paint();
  },

  /** What belongs onto a plate beside its layers: readings, finger, the place being read. */
  marks(plate, seen) {
    const pieces = [];
    if (seen === this.base) {
      if (this.area !== null && !this.pinned && !this.drawsArea) pieces.push(...areaMarks(plate, this.tree, this.area));
      for (const [name, probe] of entries(under(this.tree, "probes"))) {
        const at = plate.toScreen(millimetres(under(probe, "0")?.text), millimetres(under(probe, "1")?.text));
        if (!plate.inView(at)) continue;
        const reading = under(this.tree, "readings", name, "temperature");
        if (!reading) { pieces.push(plate.put(make("span", {class: "probe", title: name}), at.x, at.y)); continue; }
        const compared = (this.found?.variants?.[0]?.readings ?? []).find((one) => one.probe === name);
        pieces.push(plate.put(make("button", {type: "button", class: "pin", "aria-label": `${name}: ${reading.text} °C`,
          onclick: () => note.host.querySelector(`.word[data-path="${CSS.escape(reading.path)}"]`)?.focus()},
          make("b", {}, `${reading.text}${compared ? compared.explained ? " ✓" : " ✕" : ""}`)), at.x, at.y));
      }
      if (this.pending) {
        const at = plate.toScreen(this.pending.x, this.pending.y);
        pieces.push(plate.put(make("span", {class: "pin"}, make("b", {}, "?")), at.x, at.y));
      }
    }
    if (this.finger?.seen === seen) {
      const at = plate.toScreen(this.finger.x, this.finger.y);
      pieces.push(plate.put(make("span", {class: "probe"}), at.x, at.y),
        plate.put(make("span", {class: "tag finger"}, words.here(degrees(this.finger.temperature))),
          Math.min(at.x + 10, plate.wide - 110), Math.max(at.y - 40, 2)));
    }
    return pieces;
  },
};

function nodeAt(tree, path) { return path === "" ? tree : under(tree, ...steps(path)); }

const acts = {
  drag(handle, value) {
    board.drags.run(async () => {
      const plate = board.plates.find((one) => one.held);
      if (!plate) return;
      try {
        const seen = await hand.call("glance", {...board.asked(), edits: [[handle.path, lengthText(value)]],
          variant: plate === board.plates[1] ? board.variant : ""});
        board.follow(plate, seen);
      } catch { /* a thickness that cannot be built: the last picture stays */ }
    });
  },
  async drop(handle, value) {
    board.moving = false;
    board.assumed.delete(handle.path);
    const before = board.text;
    await board.change((text) => hand.call("edited", {text, path: handle.path, value: lengthText(value)}));
    if (board.text === before) board.paint();  // what moved is put back
    board.paintOutcome();
  },
  choose(handle) {
    board.choose(board.details({path: handle.path, text: handle.text, kind: "length", unit: words.mm, step: 5,
      low: Math.max(handle.low, handle.list === "sheet" ? handle.low : 1), high: handle.high, label: words.thickness(handle.material), value: handle.value}));
  },
  tap(place) {
    if (performance.now() - tape.closedAt < 300 || !board.base || board.faults) return;
    if (board.pinned) return board.pinAt(place);
    if (sheetOf(board.tree)) {
      board.area = areaAt(board.tree, place);
      board.plates[0].mark(board.base);
    }
    acts.hover(place);
  },
  /** True where a press on the plate was for drawing. */
  press(plate, event) {
    if (!board.drawsArea) return false;
    drawArea(plate, event, (area) => board.addArea(area));
    return true;
  },
  hover(place) {
    for (const plate of board.plates) {
      const seen = plate.seen, temperature = place && seen?.field ? temperatureAt(seen.field, place) : null;
      board.finger = temperature === null ? null : {...place, temperature, seen};
      if (seen && !plate.held) { plate.lay.querySelectorAll(".finger, .probe").forEach((one) => one.remove());
        plate.lay.append(...board.marks(plate, seen).filter((one) => !one.matches(".pin"))); }
      if (board.finger) break;
    }
  },
  marks(plate, seen) { return board.marks(plate, seen); },
};

/** Arrow keys move a thermometer along the inside surface. */
function surfaceKeys(event) {
  const sign = {ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1}[event.key];
  const surface = board.base?.surfaces?.[0];
  if (!sign || !surface || event.target !== event.currentTarget) return;
  event.preventDefault();
  const origin = originOn(surface, surface.points[Math.floor(surface.points.length / 2)][2]);
  board.along = Math.min(Math.max((board.along ?? origin?.from_mm ?? 0) + sign * (event.shiftKey ? 100 : 10), 0), surface.points[surface.points.length - 1][2]);
  $("#live").textContent = words.here(degrees(board.pointAlong()));
}

// opening

async function openFiles(files) {
  const texts = Object.create(null);  // whatever the files are called
  for (const file of files) {
    if (file.size > mostBytes) return board.say(words.tooLarge);
    try {
      texts[file.name] = await file.text();
    } catch {
      return board.say(words.notRead(file.name));  // a folder, or it is gone
    }
  }
  const names = Object.keys(texts);
  if (names.length === 0) return;
  const house = names.find((name) => /^house:/m.test(texts[name]) && /\.ya?ml$/.test(name));
  const first = names.find((name) => /\.ya?ml$/.test(name)) ?? names[0];
  await ready;
  if (house) return openHouse(texts, house);
  await board.open(texts[first], {beside: texts, saved: texts[first]});
}

const spots = [["corner", 120, 186], ["head", 250, 104], ["reveal", 318, 166], ["sill", 216, 236], ["wall base", 160, 300],
  ["partition", 334, 322], ["wall", 56, 112]];

/** The room one stands in, in lines. */
function room() {
  const lines = ["M120 92H390V292H120Z", "M120 92L14 22M390 92L448 36M120 292L14 388M390 292L448 372", "M222 124h92v100H222z",
    "M212 114h112v110M268 124v100M222 174h92", "M208 226h120l6 9H202z", "M340 92V292L382 372V34Z", "M382 34l12 0V372H382", "M340 92l42 -58"];
  return drawn("svg", {viewBox: "0 0 460 400", fill: "none", stroke: "currentColor", "stroke-width": "2", "stroke-linejoin": "round", "aria-hidden": "true"},
    ...lines.map((d) => drawn("path", {d})));
}

function paintStart() {
  const host = $("#start"), stand = make("div", {class: "stand"}, room());
  for (const [recipe, x, y] of spots) {
    const spot = make("button", {type: "button", class: "spot", "data-recipe": recipe, onclick: () => board.begin(recipe)}, make("i"), make("b", {}, words.places[recipe]));
    spot.style.left = `${x / 4.6}%`;
    spot.style.top = `${y / 4}%`;
    stand.append(spot);
  }
  const rest = Object.keys(words.places).filter((name) => !spots.some(([recipe]) => recipe === name));
  const others = make("div", {class: "also"}, make("span", {}, words.others), ...rest.map((recipe) =>
    make("button", {type: "button", class: "act", "data-recipe": recipe, onclick: () => board.begin(recipe)}, words.places[recipe])));
  const also = make("div", {class: "also"}, note.act(words.open, () => $("#file").click()), note.act(words.paste, pasted),
    note.act(words.demo, async () => { await ready; board.open($("#demo").textContent); }));
  if (board.text) {
    also.prepend(note.act(words.goOn, () => board.open(board.text, {beside: board.beside, variant: board.variant, assumed: [...board.assumed],
      past: board.past, future: board.future, saved: board.saved, house: board.house})));
  }
  host.replaceChildren(make("h1", {}, words.ask), make("p", {}, words.how), stand, others, also, make("p", {class: "soft"}, words.promise));
  host.hidden = false;
}

async function pasted() {
  let text = "";
  try { text = await navigator.clipboard.readText(); } catch { /* typed or pasted by hand */ }
  await ready;
  await board.open(text || "quoin: 1\n");
  board.turn("text");
}

/** For pages and tests from outside: the functions of the door as promises. */
function offerDoor() {
  const call = (name, ...keys) => async (...given) => {
    await ready;
    const details = {};
    keys.forEach((key, k) => {
      if (typeof given[k] === "object" && given[k] !== null) Object.assign(details, given[k]);
      else if (given[k] !== undefined) details[key] = given[k];
    });
    return (["solve", "report"].includes(name) ? head : hand).call(name, details);
  };
  window.quoin = {
    solve: call("solve", "text", "options"), report: call("report", "text", "options"), start: call("start", "recipe"),
    starts: call("starts"), schema: call("schema"), catalogue: call("catalogue"), values: call("values", "text"),
    edited: call("edited", "text", "path", "value"), placed: call("placed", "text", "path", "value"),
    inserted: call("inserted", "text", "path", "value"), removed: call("removed", "text", "path"),
    handles: call("handles", "text", "variant", "options"), glance: call("glance", "text", "options"),
    surface_table: call("surface_table", "text", "options"),
    open: async (text) => { await ready; await board.open(text); }, text: () => board.text,
  };
}

function bind() {
  note.host = $("#side");
  tape.host = $(".tape");
  board.plates = [new Plate($(".first"), acts), new Plate($(".second"), acts)];
  $(".first").addEventListener("keydown", surfaceKeys);
  $(".first").setAttribute("aria-label", words.plateLabel);
  for (const [id, label] of [["undo", words.undo], ["redo", words.redo]]) $(`#${id}`).setAttribute("aria-label", label);
  $("#undo").onclick = () => board.undo();
  $("#redo").onclick = () => board.redo();
  $("#stop").textContent = words.stop;
  $("#stop").onclick = () => { head.stop(); hand.stop(); };
  $("#kept").onclick = () => board.turn("take");
  $(".asking button").textContent = words.notNow;
  $(".asking button").onclick = () => { board.pinning(false); board.drawing(false); };
  const thumb = (label, act) => make("button", {type: "button", onclick: () => { if (performance.now() - tape.closedAt > 300) act(); }}, label);
  $(".thumb").replaceChildren(thumb(words.iMeasured, () => { board.turn(""); board.pinning(true); }),
    thumb(words.whatIfShort, () => { board.turn(""); [...note.host.querySelectorAll("h2")].find((one) => one.textContent === words.whatIf)?.scrollIntoView({block: "center"}); }),
    thumb(words.takeShort, () => board.turn("take")));
  $("#file").onchange = (event) => { openFiles(event.target.files); event.target.value = ""; };
  // What is scrolled to comes out below what is held at the top.
  new ResizeObserver(() => {
    document.documentElement.style.scrollPaddingTop = $(".held").offsetWidth >= document.documentElement.clientWidth ? `${$(".held").offsetHeight + 8}px` : "8px";
    document.documentElement.style.scrollPaddingBottom = "150px";
  }).observe($(".held"));
  addEventListener("pagehide", () => {  // what was typed a moment ago stays, too
    if (textPane.waiting) board.text = textPane.typed();
    if (textPane.waiting) board.store();
  });
  addEventListener("dragover", (event) => event.preventDefault());
  addEventListener("drop", (event) => { event.preventDefault(); openFiles(event.dataTransfer.files); });
  addEventListener("keydown", (event) => {
    if (event.key === "Escape") { tape.close(); board.pinning(false); board.drawing(false); }
    const typing = /^(INPUT|TEXTAREA)$/.test(event.target.tagName);
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "z" && (!typing || event.target.type === "range")) {
      event.preventDefault();
      if (event.shiftKey) board.redo();
      else board.undo();
    }
  });
}

async function main() {
  bind();
  offerDoor();
  ready = (async () => {
    const module = await engineModule();
    const source = URL.createObjectURL(new Blob([workerText()], {type: "text/javascript"}));
    hand = new Hand(module, source);
    head = new Hand(module, source);
    await hand.ready;
    board.catalogue = await hand.call("catalogue");
  })();
  ready.catch(() => { $("#start").hidden = false; $("#start").replaceChildren(make("p", {}, words.tooOld)); });
  let kept = null;
  try { kept = JSON.parse(localStorage.getItem(keptAs)); } catch { /* nothing readable is kept */ }
  const shared = /^#case=(.+)$/.exec(location.hash);
  if (!shared && !kept) return paintStart();
  try {
    const text = shared ? await unpacked(shared[1]) : kept.text;
    await ready;
    if (!shared && kept.house) kept.house = await houseIn(kept.beside, kept.house.name).then((house) => ({...house, part: kept.house.part}), () => null);
    await board.open(text, shared ? {} : kept);
  } catch (error) {
    paintStart();
    board.say(error.message);
  }
}

if (location.protocol === "https:" && document.querySelector("link[rel=manifest]"))
  navigator.serviceWorker?.register("keep.js");
main();
