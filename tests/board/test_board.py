# SPDX-License-Identifier: Apache-2.0
"""The board in a real browser: the program's findings, the author's text, no network, few acts.

usage: test_board.py PROGRAM CHROMIUM SOURCE BOARD.html [unittest options]
"""

import glob
import json
import math
import os
import re
import subprocess
import sys
import tempfile
import time
import unittest

from hands import Board
from monkey import Monkey

PROGRAM, CHROMIUM, SOURCE, PAGE = sys.argv[1:5]
CASES = sorted(glob.glob(os.path.join(SOURCE, "cases", "examples", "*.yaml"))
               + glob.glob(os.path.join(SOURCE, "cases", "verification", "*.yaml")))

CORNER = """quoin: 1
title: Corner
spaces:
  kitchen: {is: inside, temperature: 19, humidity: 60}   # of a logger
  outdoors: {is: outside, temperature: 2}
section:
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: common brick, thickness: 330}         # one and a half
criteria:
  mould: {surface humidity: 80}
"""


def text_of(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def beside(path):
    """The files that a case may name: those of its folder."""
    return {os.path.basename(one): text_of(one)
            for one in glob.glob(os.path.join(os.path.dirname(path), "*.[cy][sa]*"))}


def differences(one, other, path=""):
    """Where two findings differ: texts at all, numbers by more than 1e-9."""
    if isinstance(one, dict) and isinstance(other, dict):
        found = [f"{path}: keys" for _ in [0] if list(one) != list(other)]
        return found + [d for key in one if key in other for d in differences(one[key], other[key], f"{path}/{key}")]
    if isinstance(one, list) and isinstance(other, list):
        found = [f"{path}: length" for _ in [0] if len(one) != len(other)]
        return found + [d for k, (a, b) in enumerate(zip(one, other)) for d in differences(a, b, f"{path}/{k}")]
    if isinstance(one, float) and isinstance(other, (int, float)) or isinstance(other, float) and isinstance(one, int):
        return [] if math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-9) else [f"{path}: {one} {other}"]
    return [] if one == other else [f"{path}: {one!r} {other!r}"]


class Page(unittest.TestCase):
    width, height, touch = 1280, 800, False

    @classmethod
    def setUpClass(cls):
        cls.board = Board(CHROMIUM, PAGE, cls.width, cls.height, cls.touch)
        cls.folder = tempfile.TemporaryDirectory(prefix="quoin-board-")

    @classmethod
    def tearDownClass(cls):
        cls.board.close()
        cls.folder.cleanup()

    def setUp(self):
        self.board.fresh()
        self.board.actions = []

    def ask(self, call, *given):
        return self.board.value(f"quoin.{call}({', '.join(json.dumps(one) for one in given)})")

    def put(self, text, **more):
        self.board.value(f"ready.then(() => board.open({json.dumps(text)}, {json.dumps(more)})).then(() => 0)")
        self.board.rest()

    def changed_page(self, *replacements):
        text = text_of(PAGE)
        for old, new in replacements:
            self.assertIn(old, text)
            text = text.replace(old, new, 1)
        path = os.path.join(self.folder.name, "changed.html")
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
        return path


class Findings(Page):
    def test_every_case_has_the_findings_of_the_program(self):
        for path in CASES:
            with self.subTest(case=os.path.basename(path)):
                wanted = json.loads(subprocess.run([PROGRAM, "solve", "--json", path], check=True, capture_output=True).stdout)
                found = self.ask("solve", text_of(path), {"beside": beside(path)})
                self.assertEqual(differences(wanted, found), [])

    def test_findings_of_another_case_differ(self):
        first = self.ask("solve", CORNER)
        self.assertNotEqual(differences(first, self.ask("solve", CORNER.replace("330", "331"))), [])

    def test_what_is_shown_is_what_is_found(self):
        self.put(CORNER)
        shown = self.board.value("""[...document.querySelectorAll("[data-finding]")].map((one) => {
          const value = one.dataset.finding.slice(1).split("/").reduce((inner, step) => inner[step.replace(/~1/g, "/").replace(/~0/g, "~")], board.found);
          return [one.dataset.finding, one.textContent, value];
        })""")
        self.assertGreater(len(shown), 3)
        for pointer, text, value in shown:
            if isinstance(value, str):
                self.assertIn(text.split(" ", 1)[-1][:12], value, pointer)
            elif isinstance(value, float):
                number = re.search(r"-?[\d.]+", text)
                scale = 100 if pointer.endswith("chance") else 1
                if number and "fewer" not in text and "more" not in text:
                    self.assertAlmostEqual(float(number[0]), value * scale, delta=1.0, msg=pointer)


class Text(Page):
    def write(self, text):
        """Replaces what stands in the text pane, as by typing."""
        self.board.value("textPane.view.focus()")
        self.board.value("(() => { const {view} = textPane; view.dispatch({selection: {anchor: 0, head: view.state.doc.length}}); })()")
        self.board.browser.call("Input.insertText", text=text)

    def offered(self, text):
        made = self.board.value(f"offersAt({json.dumps(text)}, textPane.schema, board.tree, board.catalogue)")
        return [one["label"] for one in made["offers"]] if made else []

    def test_what_could_be_written_is_offered_at_its_place(self):
        self.put(CORNER)
        self.board.value("board.turn('text')")
        self.board.until("textPane.schema")
        for text, wanted, not_wanted in (
                ("quoin: 1\nsp", "spaces", "temperature"), ("spaces:\n  kitchen: {is: inside, tem", "temperature", "spaces"),
                ("spaces:\n  hall: {like: k", "kitchen", "common brick"), ("section:\n  corner:\n    turn: ", "internal", "inside"),
                ("section:\n  corner:\n    layers:\n    - {material: lime plaster, thickness: 15}\n    - {material: c", "common brick", "thickness"),
                ("section:\n  corner:\n    layers:\n      - material: lime plaster   # {x\n        th", "thickness", "turn"),
                ("section:\n  corner:\n    layers:\n      - material: lime plaster\n    le", "leg", "thickness"),
                ("variants:\n  lined:\n    section:\n      ", "reveal", "lined")):
            with self.subTest(text=text):
                self.assertIn(wanted, self.offered(text))
                self.assertNotIn(not_wanted, self.offered(text))

    def test_a_word_offered_is_taken_by_key(self):
        self.put(CORNER)
        self.board.value("board.turn('text')")
        self.board.until("textPane.schema")
        self.write("quoin: 1\nno")
        self.board.until("textPane.frame.shadowRoot.querySelector('.cm-tooltip-autocomplete')")
        time.sleep(0.2)  # it takes no key at once, against keys that were meant for the text
        self.board.browser.key("Enter")
        self.board.until("textPane.view.state.doc.toString() === 'quoin: 1\\nnote: '")

    def test_open_save_open_is_the_identity(self):
        self.board.value("""(() => { window.carried = []; const make = URL.createObjectURL;
          URL.createObjectURL = (blob) => { if (blob.type === "application/yaml") carried.push(blob); return make(blob); }; })()""")
        self.board.value("HTMLAnchorElement.prototype.click = () => {}")
        for path in CASES:
            with self.subTest(case=os.path.basename(path)):
                text = text_of(path)
                for _ in range(2):
                    self.board.value(f"ready.then(() => board.open({json.dumps(text)}, {{beside: {json.dumps(beside(path))}}})).then(() => 0)")
                    self.assertIsNone(self.board.value("board.faults"))
                    self.board.value("takes.file()")
                    self.assertEqual(self.board.value("carried.pop().text()"), text)

    def test_an_edit_keeps_comments_and_undo_brings_all_back(self):
        self.put(CORNER)
        field = '.word[data-path="section/corner/layers/1/thickness"]'
        self.board.tap(field)
        self.board.value(f"document.querySelector('{field}').select()")
        self.board.type("440")
        self.board.browser.key("Enter")
        self.board.until("board.text.includes('440')")
        self.assertEqual(self.board.value("board.text"), CORNER.replace("330", "440"))
        self.board.rest()
        self.board.tap("#undo")
        self.board.until("!board.text.includes('440')")
        self.assertEqual(self.board.value("board.text"), CORNER)
        self.board.tap("#redo")
        self.board.until("board.text.includes('440')")

    def test_a_fault_is_shown_at_its_place_and_nothing_typed_is_lost(self):
        self.put(CORNER)
        broken = CORNER.replace("thickness: 330", "thickness: thick")
        self.board.value("board.turn('text')")
        self.write(broken)
        self.board.until("document.querySelector('.fault')")
        self.assertEqual(self.board.value("document.querySelector('.fault').dataset.line"), "10")
        self.assertEqual(self.board.value("textPane.view.state.doc.toString()"), broken)
        self.assertIn("line 10", self.board.value("document.querySelector('.outcome').textContent"))
        self.write(CORNER)
        self.board.until("!board.faults")
        self.board.rest()

    def test_what_is_edited_survives_a_reload_until_it_is_forgotten(self):
        self.put(CORNER)
        self.board.open()
        self.board.until("board.text !== ''")
        self.assertEqual(self.board.value("board.text"), CORNER)
        self.board.value("board.turn('take')")
        self.board.tap(".act", "forget it")
        self.board.open()
        self.assertEqual(self.board.value("board.text"), "")
        self.assertFalse(self.board.value("document.getElementById('start').hidden"))

    def test_a_link_holds_the_case(self):
        self.put(CORNER)
        link = self.board.value("packed(board.text)")
        self.board.value("localStorage.clear()")
        self.board.browser.call("Page.navigate", url="file://" + os.path.abspath(PAGE) + "#case=" + link)
        self.board.value("window.isLeft = true")  # until the reload, which comes when it likes
        self.board.browser.call("Page.reload")
        self.board.until("!window.isLeft && typeof board !== 'undefined' && board.text !== ''")
        self.assertEqual(self.board.value("board.text"), CORNER)


class Policy(Page):
    def test_nothing_is_asked_for_and_no_line_is_said(self):
        self.put(CORNER)
        self.board.value("board.turn('text')")
        self.board.value("board.turn('take')")
        page = "file://" + os.path.abspath(PAGE)
        asked = [url for url in self.board.browser.requests() if url.split("#")[0] != page and not url.startswith("blob:")]
        self.assertEqual(asked, [])
        self.assertEqual(self.board.browser.complaints(), [])

    def test_without_leave_to_compile_there_is_no_engine(self):
        self.board.open(self.changed_page((" 'wasm-unsafe-eval'", "")))
        self.assertTrue(self.board.value("ready.then(() => false, () => true)"))

    def test_without_leave_for_workers_there_is_none(self):
        self.board.open(self.changed_page(("worker-src blob:; ", "")))
        self.assertTrue(self.board.value("Promise.race([ready.then(() => false, () => true), new Promise((done) => setTimeout(done, 3000, true))])"))

    def test_a_script_that_was_changed_does_not_run(self):
        self.board.open(self.changed_page(("Where is it damp?", "Where is it dry?")))
        self.assertEqual(self.board.value("typeof window.quoin"), "undefined")

    def test_the_page_has_a_size_that_travels(self):
        self.assertLess(os.path.getsize(PAGE), 1_600_000)

    def test_hostile_names_are_words_and_nothing_else(self):
        name = "</script><img src=x onerror=\"document.title='taken'\"> & 'q' / ~"
        text = CORNER.replace("kitchen", json.dumps(name)).replace("title: Corner", f"title: {json.dumps(name)}")
        self.put(text)
        self.board.value("board.turn('text')")
        self.board.value("board.turn('')")
        self.assertEqual(self.board.value("document.title"), "Quoin board")
        self.assertEqual(self.board.value("document.querySelectorAll('#board img').length"), 0)
        self.assertEqual(self.board.browser.complaints(), [])

    def test_bad_files_leave_the_board_usable(self):
        for text in ("", "\x00\x01", "a: [", "quoin: 1", "- " * 2000, "#" * (4 << 20), "x: 'y\n" * 1000):
            self.board.value(f"ready.then(() => board.open({json.dumps(text)})).then(() => 0)")
            self.assertTrue(self.board.value("board.faults.length > 0"))
        self.put(CORNER)
        self.assertIsNone(self.board.value("board.faults"))

    def test_an_endless_solve_can_be_stopped(self):
        self.put(CORNER)
        slow = CORNER.replace("criteria:", "accuracy: {fRsi: 0.0001, L2D: 0.001 %}\ncriteria:").replace("common brick, thickness: 330", "aluminium, thickness: 330")
        self.board.value(f"(() => {{ head.call('solve', {{text: {json.dumps(slow)}}}).then(() => window.ended = 'done', (error) => window.ended = error.kind); }})()")
        self.board.value("$('#stop').hidden = false")
        self.board.tap("#stop")
        self.board.until("window.ended")
        self.assertIn(self.board.value("window.ended"), ("stopped", "done"))
        self.put(CORNER)
        self.assertIsNone(self.board.value("board.faults"))


class Acts(Page):
    """The two tasks of a new user, by pointer, counted."""

    def damp_wall_between(self, inside, humidity, outside):
        """From the moisture of the wall on: damp, then the air on both sides."""
        board = self.board
        board.tap(".picks button", "damp")
        board.until("tape.word && tape.word.kind === 'temperature'")
        board.ruler(inside, 9)
        board.tap(".tape .head button", "Next")
        board.until("tape.word && tape.word.kind === 'humidity'")
        board.ruler(humidity, 9)
        board.tap(".tape .head button", "Next")
        board.until("tape.word && tape.word.kind === 'temperature'")
        board.ruler(outside, 9)
        board.tap(".tape .head button", "Done")
        board.rest()

    def corner(self):
        board = self.board
        board.tap(".spot", "corner")
        board.until("tape.word")
        for wanted, pixels in ((15, 1.6), (330, 1.6)):
            board.ruler(wanted, pixels)
            board.tap(".tape .head button", "Next")
        self.damp_wall_between(19, 60, 2)

    def test_a_damp_corner_is_entered_lined_and_judged_in_sixteen_acts(self):
        board = self.board
        self.corner()
        values = {one["path"]: one["text"] for one in self.ask("values", board.value("board.text"))}
        self.assertEqual([values[path] for path in ("section/corner/layers/0/thickness", "section/corner/layers/1/thickness",
                                                    "materials/wall brick/moisture", "spaces/room/temperature", "spaces/room/humidity",
                                                    "spaces/outdoors/temperature")], ["15", "330", "damp", "19", "60", "2"])
        self.assertRegex(board.value("document.querySelector('.outcome').textContent"), r"\d+\.\d °C")
        board.tap(".note .act", "dried, then lined")
        board.until("board.variant !== ''")
        board.rest()
        self.assertIn("wood fibre board, thickness: 40", board.value("board.text"))
        self.assertRegex(board.value("document.querySelector('.outcome').textContent"), r"safe|marginal|mould|wet|dry first")
        print(f"\n{self.width} px: {len(board.actions)} acts: {', '.join(board.actions)}")
        self.assertLessEqual(len(board.actions), 16)

    def test_a_window_side_with_two_readings_and_a_remedy_in_twenty_four_acts(self):
        board = self.board
        board.tap(".spot", "window side")
        board.until("tape.word")
        for _ in range(2):
            board.tap(".tape .head button", "Next")
        self.damp_wall_between(18.5, 62, 2)
        for share, reading in ((0.3, "11.5"), (0.8, "12.9")):
            board.until("performance.now() - tape.closedAt > 320")  # no tap goes through a tape just closed
            board.tap(".thumb button", "I measured")
            board.until("board.pinned")
            at = board.value(f"""(() => {{ const plate = board.plates[0], surface = board.base.surfaces[0];
              const inView = surface.points.map((p) => ({{...plate.toScreen(p[0], p[1])}})).filter((p) => plate.inView(p) && p.y > 60);
              const box = plate.host.getBoundingClientRect(), p = inView[Math.floor((inView.length - 1) * {share})];
              return [p.x + box.x, p.y + box.y]; }})()""")
            board.tap_at(*at, "the wall")
            board.until("tape.word && tape.word.kind === 'reading'")
            board.type(reading)
            board.tap(".tape .head button", "Done")
            board.rest()
        board.tap(".note .act", "reveal lined")
        board.until("board.variant !== ''")
        board.rest()
        readings = self.ask("solve", board.value("board.text"))["variants"][0]["readings"]
        self.assertEqual([one["read_C"] for one in readings], [11.5, 12.9])
        print(f"\n{self.width} px: {len(board.actions)} acts: {', '.join(board.actions)}")
        self.assertLessEqual(len(board.actions), 24)

    def test_readings_keep_their_distance_when_a_layer_grows(self):
        text = CORNER + "probes:\n  A: [645, 345]\nreadings:\n  A: {temperature: 12}\n"
        self.put(text)
        self.board.value("board.change((text) => hand.call('edited', {text, path: 'section/corner/layers/1/thickness', value: '440'})).then(() => 0)")
        self.board.rest()
        self.assertIn("A: [755, 455]", self.board.value("board.text"))

    def test_an_edge_that_is_brought_back_leaves_the_picture_as_it_was(self):
        self.put(CORNER)
        self.board.value("""(() => { const knob = document.querySelector('.knob[data-path="section/corner/layers/1/thickness"]');
          window.tell = (kind, by) => (kind === "pointerdown" ? knob : window).dispatchEvent(new PointerEvent(kind, {bubbles: true, cancelable: true, pointerId: 7, clientX: 200 + by, clientY: 200 - by}));
          tell("pointerdown", 0); tell("pointermove", 60); })()""")
        self.board.until("board.moving && board.plates[0].seen !== board.base")
        self.board.value("(() => { tell('pointermove', 0); tell('pointerup', 0); })()")
        self.board.until("!board.plates[0].held && board.plates[0].seen === board.base")
        self.assertEqual(self.board.value("board.text"), CORNER)

    def test_a_reading_right_beside_the_origin_can_be_read(self):
        # A bare number under 1 would be taken for metres.
        self.put(CORNER)
        written = self.board.value("[0, 0.4, -0.4, 0.004, 0.999, 1, -12.5].map(lengthText)")
        self.assertEqual(written, ["0", "0.4 mm", "-0.4 mm", "0", "1", "1", "-12.5"])
        text = self.ask("placed", CORNER, "probes", "{A: [344.9, 345.2], B: [0.4 mm, 100]}")
        self.put(text)
        self.assertIsNone(self.board.value("board.faults"))

    def test_arrow_keys_on_a_length_with_its_unit_keep_it_a_length(self):
        self.put(CORNER.replace("thickness: 330", "thickness: 33 cm"))
        self.board.value("document.querySelector('.word[data-path=\"section/corner/layers/1/thickness\"]').focus()")
        self.board.browser.key("ArrowUp")
        self.board.until("board.text.includes('thickness: 335}')")

    def test_an_edge_is_dragged_and_the_outer_face_stays(self):
        self.put(CORNER)
        # Where the outer face stands in each picture of the drag.
        self.board.value("""(() => { const plate = board.plates[0], show = plate.show; window.stood = [];
          plate.show = function (seen) { show.call(this, seen); const p = this.toScreen(0, 0); if (this.held) stood.push([p.x, p.y]); }; })()""")
        before = self.board.value("(() => { const p = board.plates[0].toScreen(0, 0); return [p.x, p.y]; })()")
        knob = '.knob[data-path="section/corner/layers/1/thickness"]'
        lies = self.board.value(f"document.querySelector('{knob}') && board.plates[0].chosen(board.base).find((one) => one.handle.path.endsWith('1/thickness')).handle.axis") == "y"
        self.board.value("board.pictures = 0")
        self.board.drag(knob, 0 if lies else 150, -150 if lies else 0, steps=180, seconds=3.0)
        self.board.until("Number(under(board.tree, 'section', 'corner', 'layers', '1', 'thickness').text) > 330")
        self.board.rest()
        print(f"\n{self.width} px: {self.board.value('board.pictures')} pictures for a drag of 3 s")
        self.assertGreater(self.board.value("board.pictures"), 4)
        self.assertEqual(float(self.board.value("under(board.tree, 'section', 'corner', 'layers', '1', 'thickness').text")) % 5, 0)
        stood = self.board.value("stood")
        self.assertGreater(len(stood), 4)
        for place in stood:
            for is_at, was_at in zip(place, before):
                self.assertAlmostEqual(is_at, was_at, delta=0.1)


class Houses(Page):
    """A house file edited as one."""

    FILE = os.path.join(SOURCE, "cases", "examples", "house", "house.yaml")

    def visit(self):
        texts = beside(self.FILE)
        self.board.value(f"ready.then(() => openHouse({json.dumps(texts)}, 'house.yaml')).then(() => 0)")
        return texts

    def section(self, name):
        self.board.tap(".act", name)
        self.board.until(f"board.house && board.house.part === {json.dumps(name)}")
        self.board.rest()

    def grow(self, value):
        self.board.value("board.change((text) => hand.call('edited', {text, path: recipeOf(board.tree).node.path + '/layers/1/thickness', "
                         f"value: '{value}'}})).then(() => 0)")
        self.board.rest()

    def test_each_section_has_its_own_text_and_undo(self):
        texts = self.visit()
        self.section("wall")
        self.grow(444)
        wall = self.board.value("board.text")
        self.assertIn("444", wall)
        self.section("corner")
        self.assertEqual(self.board.value("board.text"), texts["corner.yaml"])
        self.assertTrue(self.board.value("$('#undo').disabled"))
        self.section("wall")
        self.assertEqual(self.board.value("board.text"), wall)
        self.board.tap("#undo")
        self.board.until(f"board.text === {json.dumps(texts['wall.yaml'])}")
        self.assertEqual(self.board.browser.complaints(), [])

    def test_the_whole_house_is_judged_as_it_is_written_now(self):
        before = self.ask("solve", self.visit()["house.yaml"], {"beside": beside(self.FILE)})
        self.section("wall")
        self.grow(700)
        self.board.tap(".act", "the whole house")
        self.board.until("[...document.querySelectorAll('[data-part]')].every((one) => one.textContent !== 'solving')")
        shown = self.board.value("[...document.querySelectorAll('[data-part]')].map((one) => one.textContent)")
        after = self.ask("solve", self.board.value("board.beside['house.yaml']"), {"beside": self.board.value("board.beside")})
        said = [[one["variants"][0]["outcomes"][0]["words"] for one in found] for found in (before, after)]
        self.assertEqual(shown, said[1])
        self.assertNotEqual(shown, said[0])

    def test_a_house_survives_a_reload_with_all_its_sections(self):
        self.visit()
        self.section("wall")
        self.grow(444)
        self.section("corner")
        self.board.open()
        self.board.until("board.house && board.house.part === 'corner'")
        self.board.rest()
        self.section("wall")
        self.assertIn("444", self.board.value("board.text"))

    def test_a_house_without_one_of_its_files_says_which(self):
        texts = beside(self.FILE)
        del texts["reveal.yaml"]
        self.board.value(f"ready.then(() => openHouse({json.dumps(texts)}, 'house.yaml')).then(() => 0)")
        self.assertIn("reveal.yaml is missing", self.board.value("$('#live').textContent"))
        self.assertFalse(self.board.value("$('#start').hidden"))

    def test_what_was_typed_a_moment_ago_goes_with_its_own_section(self):
        self.visit()
        self.section("wall")
        self.board.value("board.turn('text')")
        self.board.until("textPane.view && textPane.frame.isConnected")
        self.board.value("textPane.view.dispatch({changes: {from: 0, insert: '# typed\\n'}})")
        self.board.value("document.querySelector('[data-act=\"section/corner\"]').click()")
        self.board.until("board.house.part === 'corner' && board.foundFor === board.text")
        self.assertNotIn("# typed", self.board.value("board.text"))
        self.assertIn("# typed", self.board.value("board.beside['wall.yaml']"))


SHEET = """quoin: 1
title: Painted
spaces:
  room: {is: inside, temperature: 20, humidity: 50}
  outdoors: {is: outside, temperature: 0}
section:
  sheet:
    - {fill: outdoors, x: [-100, 0], y: [0, 600]}
    - {fill: common brick, x: [0, 330], y: [0, 600]}     # as found
    - {fill: room, x: [330, 430], y: [0, 600]}
criteria:
  mould: {surface humidity: 80}
"""


class Sheets(Page):
    """Areas under the hand."""

    def screen(self, x, y):
        return self.board.value(f"""(() => {{ const plate = board.plates[0], box = plate.host.getBoundingClientRect(), at = plate.toScreen({x}, {y});
          return [at.x + box.x, at.y + box.y]; }})()""")

    def draw(self, start, end):
        """The sheet with an area drawn on it between two places of the section."""
        self.put(SHEET)
        self.board.tap(".note .act", "+ an area")
        start, end = self.screen(*start), self.screen(*end)
        self.board.drag_from(*start, end[0] - start[0], end[1] - start[1])
        self.board.until("under(board.tree, 'section', 'sheet', '3')")

    def number(self, path):
        return float(self.board.value(f"nodeAt(board.tree, {json.dumps(path)})?.text ?? 'nan'"))

    def test_an_area_is_drawn_on_the_grid_and_moved_as_a_whole(self):
        self.draw((131, 203), (222, 297))
        self.board.rest()
        sides = [self.number(f"section/sheet/3/{side}/{k}") for side in "xy" for k in "01"]
        self.assertEqual([one % 5 for one in sides], [0, 0, 0, 0])
        for one, wanted in zip(sides, (131, 222, 203, 297)):
            self.assertAlmostEqual(one, wanted, delta=6)
        self.assertIn("# as found", self.board.value("board.text"))
        self.board.value("tape.close()")
        pixels = self.board.value("board.plates[0].fit.scale")
        self.board.drag('.grip[aria-label^="Move area 4"]', 50 * pixels, 0)
        self.board.until(f"nodeAt(board.tree, 'section/sheet/3/x/0').text !== '{sides[0]:g}'")
        self.board.rest()
        moved = [self.number(f"section/sheet/3/{side}/{k}") for side in "xy" for k in "01"]
        self.assertEqual([b - a for a, b in zip(sides, moved)], [50, 50, 0, 0])
        self.assertEqual(self.board.browser.complaints(), [])

    def test_an_area_drawn_nearly_at_a_line_meets_it(self):
        self.draw((329, 101), (268, 199))
        self.assertEqual(self.number("section/sheet/3/x/1"), 330)

    def test_a_corner_is_pulled_into_a_slope(self):
        self.put(SHEET)
        self.board.tap_at(*self.screen(160, 300), "the brick")
        self.board.value("note.host.querySelector('.word[data-path=\"section/sheet/1/fill\"]').focus()")
        self.board.tap(".tape button", "give it slopes")
        self.board.until("nodeAt(board.tree, 'section/sheet/1/outline') && !nodeAt(board.tree, 'section/sheet/1/x')")
        self.board.rest()
        before = self.board.value("board.found.variants[0].surface.spaces.room.coldest.temperature_C")
        pixels = self.board.value("board.plates[0].fit.scale")
        self.board.drag('.grip[aria-label^="Move corner 1"]', -50 * pixels, 0)
        self.board.until("nodeAt(board.tree, 'section/sheet/1/outline/0/0')?.text === '-50'")
        self.board.rest()
        self.assertIsNone(self.board.value("board.faults"))
        after = self.board.value("board.found.variants[0].surface.spaces.room.coldest.temperature_C")
        self.assertGreater(abs(after - before), 0.05)
        self.assertIn("# as found", self.board.value("board.text"))


class ActsOnAPhone(Acts):
    width, height, touch = 380, 760, True


class RandomActs(Page):
    """Whatever is done, no error is left, and the board goes on."""

    def test_random_acts_leave_no_complaint_and_a_board_that_works(self):
        monkey = Monkey(self.board, self.width, self.height, [CORNER, SHEET, *map(text_of, CASES[:6])], seed=20)
        for _ in range(60):
            monkey.act()
            self.assertEqual(self.board.browser.complaints(), [], monkey.done[-6:])
        self.put(CORNER)
        self.assertIsNone(self.board.value("board.faults"))
        self.assertEqual(self.board.value("board.plates.some((plate) => plate.held || plate.frozen)"), False)


class RandomActsOnAPhone(RandomActs):
    width, height, touch = 380, 760, True


class Targets(Page):
    width, height, touch = 360, 740, True

    SMALL = """[...document.querySelectorAll("button, input, [role=slider], textarea, a")].filter((one) => {
      const box = one.getBoundingClientRect();
      return one.getClientRects().length && getComputedStyle(one).visibility !== "hidden" && (box.height < 43.9 || box.width < 43.9)
        && !(one.classList.contains("word") && box.height >= 43.9);
    }).map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect().width, one.getBoundingClientRect().height])"""

    def look(self, name):
        self.assertEqual(self.board.value(self.SMALL), [], name)
        self.assertLessEqual(self.board.value("document.documentElement.scrollWidth"), 360, name)

    def test_no_target_is_smaller_than_a_finger(self):
        self.look("start")
        self.board.tap(".spot", "corner")
        self.board.until("tape.word")
        self.look("tape")
        self.board.value("tape.close()")
        self.board.rest()
        self.look("note")
        for side in ("text", "take"):
            self.board.value(f"board.turn('{side}')")
            self.look(side)


if __name__ == "__main__":
    if not os.path.exists(PAGE):
        print("No board here: tools/board builds it")
        sys.exit(77)
    unittest.main(argv=[sys.argv[0], *sys.argv[5:]])
