# SPDX-License-Identifier: Apache-2.0
"""The report page in a real browser: it reads what the findings say, follows the air, keeps to itself.

usage: test_report.py PROGRAM CHROMIUM SOURCE [unittest options]
"""

import csv
import json
import os
import re
import subprocess
import sys
import tempfile
import unittest

from chromium import Chromium

PROGRAM, CHROMIUM, SOURCE = sys.argv[1:4]
EXAMPLES = os.path.join(SOURCE, "cases", "examples")
EXAMPLE_NAMES = sorted(re.match(r"lock_keepers_house_(.+)\.yaml", name)[1]
                       for name in os.listdir(EXAMPLES) if name.startswith("lock_keepers_house_"))
CHECKS = open(os.path.join(os.path.dirname(__file__), "checks.js"), encoding="utf-8").read()

HOSTILE = "'</script><script>document.title = \"taken\"</script> & \"q\" \U0001F600 ' + alert(1) + '"


def text_of(path):
    with open(path, encoding="utf-8") as file:
        return file.read()


def reading(text):
    """What the thermocouple says: degC, and by room fRsi and the humidity on its surface."""
    temperature = float(re.match(r"(-?[\d.]+) °C", text)[1])
    factors = {room: float(factor) for room, factor in re.findall(r"^(.+): fRsi (-?[\d.]+)", text, re.M)}
    humidities = {room: int(humidity) for room, humidity in
                  re.findall(r"^(.+): fRsi .*; on its surface (\d+) % humidity", text, re.M)}
    return temperature, factors, humidities


class Report(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory(prefix="quoin-report-")
        cls.browser = Chromium(CHROMIUM).__enter__()
        cls.browser.size(1000, 900)
        cls.solved = {}

    @classmethod
    def tearDownClass(cls):
        cls.browser.__exit__()
        cls.folder.cleanup()

    def solve(self, name, text=None):
        """The folder with the results of an example, or of another text in its place."""
        if text is None and name in self.solved:
            return self.solved[name]
        if text is None:
            path = os.path.join(EXAMPLES, f"lock_keepers_house_{name}.yaml")
        else:
            path = os.path.join(self.folder.name, f"{name}.yaml")
            with open(path, "w", encoding="utf-8") as file:
                file.write(text)
        output = os.path.join(self.folder.name, f"{name}{len(os.listdir(self.folder.name))}")
        subprocess.run([PROGRAM, "solve", path, "-o", output, "--quiet"], check=True,
                       stdout=subprocess.DEVNULL)
        if text is None:
            self.solved[name] = output
        return output

    def open(self, folder):
        self.browser.open(os.path.join(folder, "report.html"))
        with open(os.path.join(folder, "findings.json"), encoding="utf-8") as file:
            return json.load(file)

    def choose(self, number):
        self.browser.value(f"""{{ const list = document.getElementById('variant');
            list.value = {number}; list.dispatchEvent(new Event('change')); }}""")
        self.browser.frame()

    def press(self, words):
        self.browser.value(f"""[...document.querySelectorAll('button')].find(
            (button) => button.textContent === {json.dumps(words)}).click()""")
        self.browser.frame()

    def set(self, label, value):
        """Types a number into the input of that label."""
        self.browser.value(f"""{{ const input = [...document.querySelectorAll('input[type=number]')].find(
            (each) => each.getAttribute('aria-label') === {json.dumps(label)});
            input.value = {value}; input.dispatchEvent(new Event('input')); }}""")
        self.browser.frame()

    def reading(self):
        return self.browser.value("document.getElementById('reading').innerText")

    def verdicts(self):
        """Whether each criterion of the chosen variant holds, by the words of the page."""
        words = self.browser.value("document.querySelector('#sentences p').innerText")
        return {name: "does not" not in holds for name, holds in
                re.findall(r"(?:^|[.;] )([^.;:]+): (holds|does not hold)", words)}

    def faults_of_readings(self, findings):
        """Where the thermocouple at the coldest spot of a room is not what the findings say."""
        faults = []
        for number, variant in enumerate(findings["variants"]):
            self.choose(number)
            rooms = variant["surface"]["spaces"]
            buttons = self.browser.value("[...document.querySelectorAll('#places button')].map((b) => b.textContent)")
            for room in rooms:
                if f"coldest spot of {room}" not in buttons:
                    continue
                self.press(f"coldest spot of {room}")
                temperature, factors, humidities = reading(self.reading())
                coldest = rooms[room]["coldest"]
                if abs(temperature - coldest["temperature_C"]) > 0.01:
                    faults.append(f"{variant['name']}: {temperature} for {coldest['temperature_C']}")
                if abs(factors[room] - coldest["fRsi"]) > 0.001:
                    faults.append(f"{variant['name']}: fRsi {factors[room]} for {coldest['fRsi']}")
                humidity = coldest.get("surface_humidity_percent")
                if humidity is not None and abs(humidities.get(room, -1) - humidity) > 0.6:  # rounded to 1
                    faults.append(f"{variant['name']}: {humidities.get(room)} % for {humidity}")
        return faults

    def test_the_thermocouple_reads_the_findings_at_every_coldest_spot(self):
        for name in EXAMPLE_NAMES:
            findings = self.open(self.solve(name))
            self.assertEqual(self.faults_of_readings(findings), [], name)
            self.assertEqual(self.browser.complaints(), [], name)
            self.assertEqual(len(self.browser.requests()), 1, "the page itself and nothing else")

    def test_the_thermocouple_reads_the_surface_everywhere(self):
        for name in ("reveal", "sill"):  # upright edges; sloping ones
            folder = self.solve(name)
            self.open(folder)
            with open(os.path.join(folder, "surface.csv"), encoding="utf-8", newline="") as file:
                rows = [row for row in csv.DictReader(file) if row["variant"] == "as found"]
            for row in rows[:: len(rows) // 12]:
                place = f"{{x: {row['x_mm']}, y: {row['y_mm']}}}"
                self.browser.value(f"moveTo({place})")
                self.assertAlmostEqual(reading(self.reading())[0], float(row["temperature_C"]), delta=0.01)

    def test_tampered_data_is_told_from_the_findings(self):
        folder = self.solve("reveal")
        findings = self.open(folder)
        path = os.path.join(self.folder.name, "tampered.html")
        page = text_of(os.path.join(folder, "report.html"))
        cooled = re.sub(r'"cooling_K":0\.0', '"cooling_K":0.05', page)
        self.assertNotEqual(cooled, page)
        with open(path, "w", encoding="utf-8") as file:
            file.write(cooled)
        self.browser.open(path)
        self.assertNotEqual(self.faults_of_readings(findings), [])

    def test_a_script_or_picture_that_is_not_its_own_is_refused(self):
        page = text_of(os.path.join(self.solve("wall"), "report.html"))
        path = os.path.join(self.folder.name, "added.html")
        for added in ("<script>document.title = 'taken'</script>", "<img src='http://192.0.2.1/x.png' alt='x'>",
                      "<p style='position: fixed'>x</p>"):
            with open(path, "w", encoding="utf-8") as file:
                file.write(page.replace("</main>", added + "</main>"))
            self.browser.open(path)
            self.assertNotEqual(self.browser.complaints(), [], added)
            self.assertNotEqual(self.browser.value("document.title"), "taken")

    def test_changed_air_gives_what_the_program_gives_for_a_changed_case(self):
        text = text_of(os.path.join(EXAMPLES, "lock_keepers_house_reveal.yaml"))
        changed = text.replace("temperature: 18.5, humidity: 62", "temperature: 21, humidity: 45")
        changed = changed.replace("temperature: 2,", "temperature: -5,")
        self.assertEqual(len([1 for a, b in zip(text.splitlines(), changed.splitlines()) if a != b]), 2)
        before = self.open(self.solve("reveal"))
        with open(os.path.join(self.solve("changed", changed), "findings.json"), encoding="utf-8") as file:
            after = json.load(file)
        self.set("parlour, temperature, °C", 21)
        self.set("parlour, humidity, %", 45)
        self.set("outdoors, temperature, °C", -5)
        self.assertEqual(self.faults_of_readings(after), [])
        self.assertNotEqual(self.faults_of_readings(before), [])
        moved = 0
        for number, variant in enumerate(after["variants"]):
            self.choose(number)
            now = {each["criterion"]: each["holds"] for each in variant["verdicts"]}
            self.assertEqual(self.verdicts(), now)
            moved += now != {each["criterion"]: each["holds"] for each in before["variants"][number]["verdicts"]}
        self.assertGreater(moved, 0, "the change of air changes no verdict: it tests nothing")
        self.press("Air as solved")
        self.assertEqual(self.faults_of_readings(before), [])

    def test_an_unheated_space_follows_the_air_outside(self):
        text = text_of(os.path.join(EXAMPLES, "lock_keepers_house_porch.yaml"))
        changed = text.replace("outdoors: {is: outside, temperature: 2,", "outdoors: {is: outside, temperature: -8,")
        self.assertNotEqual(text, changed)
        with open(os.path.join(self.solve("frost", changed), "findings.json"), encoding="utf-8") as file:
            after = json.load(file)
        self.open(self.solve("porch"))
        self.set("outdoors, temperature, °C", -8)
        faults = self.faults_of_readings(after)
        self.assertEqual([fault for fault in faults if "%" not in fault], [])
        self.assertEqual(faults, [], "the humidity of the household follows too")

    def test_keys_a_mouse_and_a_finger_move_the_cross_hair(self):
        self.open(self.solve("reveal"))
        browser = self.browser
        browser.value("document.getElementById('field').focus()")
        browser.key("Home")
        home = self.reading()
        place = browser.value("now.place")
        browser.key("ArrowLeft")
        self.assertEqual(browser.value("now.place"), {"x": place["x"] - 10, "y": place["y"]})
        self.assertNotEqual(self.reading(), home)
        browser.key("ArrowDown", shift=True)
        self.assertEqual(browser.value("now.place"), {"x": place["x"] - 10, "y": place["y"] - 1})
        browser.key("Home")
        self.assertEqual(self.reading(), home)
        browser.value("document.getElementById('field').scrollIntoView({block: 'center'})")
        at = browser.value("""(() => { const box = document.getElementById('field').getBoundingClientRect();
            return [box.left + now.view.x(-500), box.top + now.view.y(-100)]; })()""")
        for move in (browser.point, browser.touch):
            browser.key("Home")
            move(*at)
            there = browser.value("now.place")
            self.assertAlmostEqual(there["x"], -500, delta=2)
            self.assertAlmostEqual(there["y"], -100, delta=2)

    def test_a_slider_moves_by_keys(self):
        self.open(self.solve("wall"))
        before = self.browser.value("document.getElementById('conditions').innerText")
        self.browser.value("document.querySelector('#airs input[type=range]').focus()")
        for _ in range(10):
            self.browser.key("ArrowRight")
        self.assertNotEqual(self.browser.value("document.getElementById('conditions').innerText"), before)
        self.assertEqual(*self.browser.value("[...document.querySelectorAll('#airs .control')].slice(0, 1).flatMap("
                                             "(each) => [...each.querySelectorAll('input')].map((i) => i.value))"))

    def test_the_field_is_drawn_in_colours(self):
        self.open(self.solve("reveal"))
        colours = self.browser.value("""(() => { const canvas = document.getElementById('field');
            const {data} = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
            const seen = {}; for (let k = 0; k < data.length; k += 4) {
              const key = [data[k], data[k + 1], data[k + 2]].join(); seen[key] = (seen[key] || 0) + 1; }
            return Object.values(seen).filter((count) => count > 500).length; })()""")
        self.assertGreater(colours, 8)  # bands, tints, white

    def test_labels_of_rooms_are_whole_wherever_the_slider_parts_the_picture(self):
        self.open(self.solve("corner"))
        cut = self.browser.value("""(() => {
            const context = CanvasRenderingContext2D.prototype, write = context.fillText, found = [], seen = [];
            context.fillText = function(words, ...rest) {
              const half = this.measureText(words).width / 2, {a, b, e, f} = this.getTransform();
              const ratio = both.ratio, [w, h] = [a, b].map((each) => Math.abs(each) / ratio * half);
              const [x, y, at] = [e / ratio, f / ratio, Number(document.getElementById('split').value) / 100 *
                                  both.before.width / ratio];
              seen.push(words);
              if (x - w < 0 || x + w > both.view.fieldWidth || y - h < 0 || y + h > both.view.height) found.push(words);
              if (x - w < at && x + w > at) found.push(`${words} at ${at}`);
              return write.call(this, words, ...rest);
            };
            for (let share = 0; share <= 100; share += 5) {
              document.getElementById('split').value = share;
              paintBoth();
            }
            context.fillText = write;
            return [seen.filter((words) => words.startsWith('kitchen')).length, found]; })()""")
        self.assertGreaterEqual(cut[0], 21, "the kitchen is named wherever the slider stands")
        self.assertEqual(cut[1], [])

    def test_every_width_holds_the_page_and_all_can_read_it(self):
        for name in EXAMPLE_NAMES:
            self.open(self.solve(name))
            for width, height, scale in ((1000, 900, 1), (360, 740, 2), (500, 450, 2)):  # 500: 200 % of 1000
                self.browser.size(width, height, scale)
                self.assertEqual(self.browser.value(CHECKS), [], (name, width))
        self.browser.size(1000, 900)
        self.browser.value("document.querySelector('h2').style.color = '#999'; document.images[0].alt = ''")
        self.assertEqual(len(self.browser.value(CHECKS)), 2, "the check of the page tells faults")

    def test_hostile_words_stay_words(self):
        quoted = json.dumps(HOSTILE, ensure_ascii=False)
        text = f"""quoin: 1
title: {json.dumps(HOSTILE + "w" * 9000, ensure_ascii=False)}
note: {"w" * 9000}
spaces:
  {json.dumps("room " + HOSTILE, ensure_ascii=False)}: {{is: inside, temperature: 18.5, humidity: 62}}
  yard: {{is: outside, temperature: 2}}
materials:
  {quoted}: {{like: common brick}}
section:
  wall: {{layers: [{{material: {quoted}, thickness: 225}}]}}
variants:
  as found: ~
  {json.dumps(HOSTILE + "w" * 700, ensure_ascii=False)}: {{materials: {{{quoted}: {{moisture: saturated}}}}}}
"""
        self.open(self.solve("hostile", text))
        self.assertEqual(self.browser.complaints(), [])
        self.assertEqual(self.browser.value("document.title"), HOSTILE + "w" * 9000)
        self.assertIn(f"in {HOSTILE} at", self.reading())
        self.assertEqual(self.browser.value("document.getElementById('variant').options[1].text"), HOSTILE + "w" * 700)
        self.browser.size(360, 740)
        self.assertEqual(self.browser.value(CHECKS), [])
        self.browser.size(1000, 900)

    def test_it_prints_on_a4_without_controls(self):
        self.open(self.solve("reveal"))
        self.browser.call("Emulation.setEmulatedMedia", media="print")
        self.assertEqual(self.browser.value("getComputedStyle(document.getElementById('thermocouple')).display"), "none")
        self.assertTrue(self.browser.value("[...document.images].every((image) => image.getClientRects().length)"))
        self.browser.call("Emulation.setEmulatedMedia", media="")
        path = os.path.join(self.folder.name, "report.pdf")
        self.browser.print(path)
        with open(path, "rb") as file:
            boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", file.read())
        self.assertGreater(len(boxes), 4)
        for width, height in boxes:  # points; a pixel is 0.75
            self.assertAlmostEqual(float(width), 595.3, delta=0.75)
            self.assertAlmostEqual(float(height), 841.9, delta=0.75)

    def test_without_script_the_pictures_stand(self):
        folder = self.solve("reveal")
        self.browser.call("Emulation.setScriptExecutionDisabled", value=True)
        try:
            self.browser.open(os.path.join(folder, "report.html"), scripted=False)
            self.assertTrue(self.browser.value("document.getElementById('thermocouple').hidden"))
            self.assertGreater(self.browser.value("document.images.length"), 5)
        finally:
            self.browser.call("Emulation.setScriptExecutionDisabled", value=False)

    def test_the_page_is_under_two_megabytes(self):
        for name in ("reveal", "corner"):
            self.assertLess(os.path.getsize(os.path.join(self.solve(name), "report.html")), 2_000_000)


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0], *sys.argv[4:]])
