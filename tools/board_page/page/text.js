// SPDX-License-Identifier: Apache-2.0
"use strict";

// The case as text, and what is wrong with it at its place. The editor lives in a shadow tree, for
// which it makes its sheets of style by script: the page's policy allows no other.

const textPane = {
  /** Marks what the page puts there itself. */
  own: null,

  async open(host) {
    await Promise.all([editorScript(), ready]);
    if (board.side !== "text") return;
    const {EditorView} = CodeMirror;
    this.faults = make("div", {role: "status"});
    const frame = make("div", {id: "text"}), shadow = frame.attachShadow({mode: "open"});
    host.replaceChildren(...(board.house ? [sectionsOf(board.house)] : []), make("p", {}, note.act(words.backToNote, () => board.turn(""))), make("p", {class: "soft"}, words.textHow), this.faults, frame);
    this.view = new EditorView({root: shadow, parent: shadow, doc: board.text, extensions: this.extensions()});
    this.frame = frame;
    this.paint();
    this.schema ??= await hand.call("schema").catch(() => null);
  },

  extensions() {
    const {EditorView, EditorState, keymap, lineNumbers, drawSelection, highlightActiveLine, highlightSpecialChars, defaultKeymap, history,
      historyKeymap, indentWithTab, autocompletion, completionKeymap, lintGutter, StreamLanguage, syntaxHighlighting, HighlightStyle,
      indentUnit, yaml, tags} = CodeMirror;
    this.own = CodeMirror.Annotation.define();
    const colours = HighlightStyle.define([
      {tag: tags.comment, color: "var(--soft)", fontStyle: "italic"}, {tag: [tags.propertyName, tags.atom, tags.definition(tags.propertyName)], fontWeight: "600"},
      {tag: [tags.string, tags.number], color: "var(--pick-text, inherit)"}]);
    const look = EditorView.theme({
      "&": {backgroundColor: "var(--paper)", color: "var(--ink)", fontSize: ".95rem", border: "1px solid var(--line)", borderRadius: "4px"},
      "&.cm-focused": {outline: "3px solid var(--pick)"},
      ".cm-content": {fontFamily: "ui-monospace, Menlo, Consolas, monospace", caretColor: "var(--ink)", minHeight: "18rem", paddingBottom: "6rem"},
      ".cm-scroller": {maxHeight: "70vh", overflow: "auto", lineHeight: "1.45"},
      ".cm-gutters": {backgroundColor: "var(--well)", color: "var(--soft)", border: "0"},
      ".cm-activeLine, .cm-activeLineGutter": {backgroundColor: "var(--well)"},
      "&.cm-focused .cm-selectionBackground, .cm-selectionBackground": {backgroundColor: "#7aa7d477 !important"},
      ".cm-tooltip": {backgroundColor: "var(--well)", color: "var(--ink)", border: "1px solid var(--ink)", maxWidth: "min(90vw, 34rem)"},
      ".cm-tooltip-autocomplete > ul > li": {minHeight: "2rem", lineHeight: "2rem"},
      ".cm-tooltip-autocomplete > ul > li[aria-selected]": {backgroundColor: "var(--pick)", color: "var(--pick-ink)"},
      ".cm-completionDetail": {fontStyle: "normal", opacity: ".85"},
      ".cm-diagnostic": {whiteSpace: "pre-wrap"},
    });
    const heard = EditorView.updateListener.of((update) => {
      if (!update.docChanged || update.transactions.every((one) => one.annotation(this.own))) return;
      clearTimeout(this.waiting);
      this.waiting = setTimeout(() => this.leave(), 350);
    });
    return [lineNumbers(), highlightSpecialChars(), history(), drawSelection(), highlightActiveLine(), EditorState.tabSize.of(2), indentUnit.of("  "),
      StreamLanguage.define(yaml), syntaxHighlighting(colours), lintGutter(),
      autocompletion({override: [(context) => this.offers(context)], icons: false}),
      keymap.of([...completionKeymap, ...defaultKeymap, ...historyKeymap, indentWithTab]),
      EditorView.contentAttributes.of({"aria-label": words.textLabel, tabindex: "0", spellcheck: "false", autocapitalize: "off"}), look, heard];
  },

  /** What is written becomes the case, one step of undo. */
  take() {
    const typed = this.typed();
    return board.change(async () => typed);
  },
  forget() {
    clearTimeout(this.waiting);
    this.waiting = null;
  },
  typed() { return this.view.state.doc.toString(); },
  /** Takes at once what was typed but not taken yet. */
  leave() {
    if (!this.waiting) return;
    this.forget();
    this.take();
  },

  offers(context) {
    if (!this.schema) return null;
    const before = context.state.doc.sliceString(0, context.pos), made = offersAt(before, this.schema, board.tree, board.catalogue);
    if (!made || (!context.explicit && made.from === context.pos && !/[:[{,]\s$/.test(before))) return null;
    return {from: made.from, options: made.offers.map((one) => ({label: one.label, detail: one.detail.slice(0, 90), apply: one.apply})), validFor: /^[^\n:{}[\],]*$/};
  },

  paint() {
    if (!this.frame?.isConnected) return;
    const shown = this.view.state.doc.toString();
    if (shown !== board.text && !this.view.hasFocus) {
      this.view.dispatch({changes: {from: 0, to: shown.length, insert: board.text}, annotations: this.own.of(true)});
    }
    const faults = (board.faults ?? []).slice(0, 12), state = this.view.state;
    this.view.dispatch(CodeMirror.setDiagnostics(state, faults.map((fault) => {
      const line = state.doc.line(Math.min(Math.max(fault.line, 1), state.doc.lines)), from = this.at(fault);
      return {from, to: Math.max(from, line.to), severity: "error", message: [fault.what, fault.remedy].filter(Boolean).join("\n")};
    })));
    this.faults.replaceChildren(...faults.map((fault) => make("button", {type: "button", class: "fault",
      "data-line": fault.line, onclick: () => this.go(fault)},
      make("b", {}, words.faultAt(fault.line, fault.column)), `: ${fault.what}`,
      fault.found ? `\n${words.found}: ${fault.found}` : "", fault.expected ? `\n${words.expected}: ${fault.expected}` : "",
      fault.remedy ? `\n${fault.remedy}` : "")));
  },

  /** Where a fault begins in the text. */
  at({line, column}) {
    const there = this.view.state.doc.line(Math.min(Math.max(line, 1), this.view.state.doc.lines));
    return there.from + [...there.text].slice(0, Math.max(column - 1, 0)).join("").length;
  },
  go(fault) {
    const from = this.at(fault);
    this.view.focus();
    this.view.dispatch({selection: {anchor: from, head: this.view.state.doc.lineAt(from).to}, effects: CodeMirror.EditorView.scrollIntoView(from, {y: "center"})});
  },
};
