// SPDX-License-Identifier: Apache-2.0
"use strict";

// The one instrument: it changes whatever word is chosen.

const tape = {
  host: null, path: null, word: null, closedAt: 0,

  /** `word`: {path, kind, label, text, unit, step, low, high, put(text), next, material} */
  open(word) {
    this.word = word;
    this.path = word.path;
    this.paint();
    this.host.hidden = false;
    document.querySelector(".thumb").hidden = true;
  },

  close() {
    if (this.host.hidden) return;
    this.host.hidden = true;
    this.word = null;
    this.path = null;
    this.closedAt = performance.now();
    document.querySelector(".thumb").hidden = false;
    board.plates.forEach((plate) => plate.seen && !plate.held && plate.mark(plate.seen));
  },

  paint() {
    const {word} = this, inner = [];
    const next = word.next ? make("button", {type: "button", onclick: () => word.next()}, words.next) : null;
    const done = make("button", {type: "button", class: "main", onclick: () => this.finish()}, words.done);
    const exact = this.exactField();
    inner.push(make("div", {class: "head"}, make("span", {}, word.label),
      ["material", "text", "choice"].includes(word.kind) ? null : exact,
      word.unit ? make("b", {class: "unit"}, word.unit) : null, next, done));
    if (word.kind === "material") inner.push(...this.materials(exact));
    else if (word.kind === "moisture") inner.push(...this.moistures());
    else if (word.kind === "choice") inner.push(this.choices());
    else if (word.kind === "text") inner.push(exact);
    else if (word.kind !== "reading") inner.push(this.ruler());
    if (word.say) inner.push(make("p", {class: "say"}, word.say));
    if (word.acts) {
      inner.push(make("div", {class: "picks"}, ...word.acts.map(([label, act]) =>
        make("button", {type: "button", onclick: act}, label))));
    }
    this.host.replaceChildren(...inner);
  },

  finish() {
    const field = this.host.querySelector(".exact");
    if (field && field.value !== this.word.text) this.word.put(field.value.trim());
    this.close();
  },

  exactField() {
    const {word} = this;
    const field = make("input", {
      class: word.kind === "material" || word.kind === "text" ? "exact wide" : word.kind === "moisture" ? "exact state" : "exact", "data-path": word.path,
      "data-exact": true, value: word.text, "aria-label": word.label, autocomplete: "off", spellcheck: "false",
      inputmode: ["length", "temperature", "humidity", "reading"].includes(word.kind) ? "decimal" : "text",
      placeholder: word.kind === "material" ? words.search : "",
    });
    const commit = () => { if (this.word === word && field.value.trim() !== word.text) word.put(field.value.trim()); };
    field.addEventListener("change", () => { if (word.kind !== "material") commit(); });
    field.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      event.preventDefault();
      commit();
      if (word.next) word.next();
      else this.close();
    });
    field.addEventListener("input", () => { if (word.kind === "material") this.filter(field.value); });
    return field;
  },

  written(value) { return this.word.kind === "length" ? lengthText(value) : bare(value); },

  stepped(sign, big = false) {
    const {word} = this, value = Number(word.value) + sign * word.step * (big ? 10 : 1);
    if (!Number.isFinite(value)) return;
    word.put(this.written(Math.min(Math.max(value, word.low), word.high)));
  },

  /** A ruler that moves under a fixed mark. */
  ruler() {
    const {word} = this, value = Number(word.value);
    const strip = make("div", {
      class: "strip", role: "slider", tabindex: "0", "aria-label": word.label, "aria-valuemin": word.low,
      "aria-valuemax": word.high, "aria-valuenow": value, "aria-valuetext": `${word.text} ${word.unit ?? ""}`,
      onkeydown: (event) => {
        const sign = {ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1}[event.key];
        if (!sign) return;
        event.preventDefault();
        this.stepped(sign, event.shiftKey);
      },
    });
    const pixels = word.kind === "length" ? 1.6 : 9;  // a unit
    const draw = (at) => {
      const picture = drawn("svg", {"aria-hidden": "true"}), middle = (strip.clientWidth || 220) / 2;
      const fine = word.kind === "length" ? 10 : 1, coarse = word.kind === "length" ? 50 : 5;
      for (let mark = Math.floor((at - middle / pixels) / fine) * fine; (mark - at) * pixels < middle + 20; mark += fine) {
        if (mark < word.low - fine || mark > word.high) continue;
        const x = middle + (mark - at) * pixels, tall = mark % coarse === 0;
        picture.append(drawn("line", {x1: x, x2: x, y1: 0, y2: tall ? 26 : 12}));
        if (tall) picture.append(drawn("text", {x, y: 46}, document.createTextNode(String(mark))));
      }
      picture.append(drawn("line", {class: "mark", x1: middle, x2: middle, y1: 0, y2: 60}));
      strip.replaceChildren(picture);
    };
    strip.addEventListener("pointerdown", (event) => {
      strip.setPointerCapture(event.pointerId);
      const start = event.clientX;
      let now = value;
      const move = (to) => {
        const raw = value - (to.clientX - start) / pixels;
        now = Math.min(Math.max(Math.round(raw / word.step) * word.step, word.low), word.high);
        draw(now);
        word.moving?.(bare(now));
      };
      strip.addEventListener("pointermove", move);
      strip.addEventListener("pointerup", () => {
        strip.removeEventListener("pointermove", move);
        if (now !== value) word.put(this.written(now));
      }, {once: true});
    });
    const button = (sign, label) => make("button", {type: "button", "aria-label": label,
      onclick: () => this.stepped(sign)}, label);
    requestAnimationFrame(() => draw(value));
    return make("div", {class: "run"}, button(-1, "−"), strip, button(1, "+"));
  },

  /** The state a material is in, from dry to saturated, and what it does to the conductivity. */
  moistures() {
    const {word} = this;
    const known = board.material(word.material)?.moistures ?? [];
    if (known.length === 0) return [];
    const dry = known[0].W_per_mK;
    const at = known.find((one) => one.state === word.text);
    const picks = known.map((one) => make("button", {type: "button", "aria-pressed": one.state === word.text,
      "data-pick": one.state, onclick: () => word.put(one.state)}, one.state));
    const slider = make("input", {type: "range", class: "wide", min: 0, max: known.length - 1, step: 1,
      value: Math.max(known.indexOf(at), 0), "aria-label": word.label, "aria-valuetext": word.text,
      oninput: (event) => word.put(known[Number(event.target.value)].state)});
    slider.style.minHeight = "44px";
    const says = at ? words.water(bare(at.m3_per_m3 * 100), (at.W_per_mK / dry).toFixed(2), at.W_per_mK.toFixed(2)) : "";
    return [slider, make("div", {class: "picks"}, ...picks), make("p", {class: "say"}, says)];
  },

  choices() {
    const {word} = this;
    return make("div", {class: "picks"}, ...word.choices.map(([label, value]) => make("button", {type: "button",
      "aria-pressed": word.text === (value ?? label), "data-pick": value ?? label,
      onclick: () => { word.put(value); this.close(); }}, label)));
  },

  materials(field) {
    const list = make("div", {class: "picks", "data-list": "materials"});
    this.list = list;
    queueMicrotask(() => this.filter(""));
    return [field, list];
  },

  filter(text) {
    const {word} = this, asked = text === word.text ? "" : text.toLowerCase();
    const own = entries(under(board.tree, "materials")).map(([name]) => name);
    const names = [...own, ...board.catalogue.materials.map((one) => one.name)];
    const found = names.filter((name) => name.toLowerCase().includes(asked));
    this.list.replaceChildren(...(found.length ? found : []).map((name) =>
      make("button", {type: "button", "aria-pressed": name === word.text, "data-pick": name,
        onclick: () => { word.put(name); }}, name)));
    if (found.length === 0) this.list.append(words.noSuch);
  },
};
