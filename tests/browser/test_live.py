# SPDX-License-Identifier: Apache-2.0
"""Every number that the report page shows live equals a solve of the same air: each example, twenty
airs at random, every variant. Stated temperatures of unheated spaces are drawn, too; those that
follow by b or a heat balance must follow, as must the humidity of a household.

usage: test_live.py PROGRAM CHROMIUM SOURCE FIRST STEP [unittest options]
"""

import json
import os
import random
import re
import subprocess
import sys
import tempfile
import unittest

from chromium import Chromium

PROGRAM, CHROMIUM, SOURCE, FIRST, STEP = sys.argv[1:6]
EXAMPLES = os.path.join(SOURCE, "cases", "examples")
NAMES = sorted(re.match(r"lock_keepers_house_(.+)\.yaml", name)[1]
               for name in os.listdir(EXAMPLES) if name.startswith("lock_keepers_house_"))
AIRS = 20
SPACE = re.compile(r"^  ([^:#]+): +\{(.*)\}")
RANGES = {"inside": (14.0, 25.0), "outside": (-10.0, 10.0), "unheated": (0.0, 14.0)}

LIVE = """((number, airs) => {
  const variant = page.variants[number], [first] = page.variants, changed = {};
  for (const [name, air] of Object.entries(airs)) {
    const own = variant.spaces.find((space) => space.name === name);
    const base = first.spaces.find((space) => space.name === name);
    if (!own || !base) continue;
    const same = (key) => air[key] !== undefined && own[key === 'temperature' ? 'temperature_C' : key] ===
        base[key === 'temperature' ? 'temperature_C' : key];
    changed[name] = {...(same('temperature') && {temperature: air.temperature}),
                     ...(same('humidity') && !own.household && {humidity: air.humidity})};
  }
  const state = new State(variant, changed);
  return roomsOf(variant).map((room) => {
    const spot = state.coldest(room);
    return {room: variant.spaces[room.air].name, temperature: spot.temperature, factor: spot.factor,
            humidity: spot.humidity, words: outcomeOf(variant, spot).words};
  });
})"""


def text_of(name):
    with open(os.path.join(EXAMPLES, f"lock_keepers_house_{name}.yaml"), encoding="utf-8") as file:
        return file.read()


def in_other_air(text, pick):
    """The case with the temperatures and humidities of its spaces drawn anew, and what was drawn."""
    lines, airs, among = text.splitlines(), {}, False
    for k, line in enumerate(lines):
        if re.match(r"\S", line):
            among = line.startswith("spaces:")
        space = SPACE.match(line) if among else None
        kind = space and re.search(r"is: (\w+)", space[2])
        if not kind:
            continue
        air = airs[space[1].strip()] = {}
        if "temperature:" in line:
            air["temperature"] = round(pick.uniform(*RANGES[kind[1]]), 1)
            line = re.sub(r"temperature: [-\d.]+", f"temperature: {air['temperature']}", line)
        if kind[1] == "inside" and " humidity:" in line:
            air["humidity"] = round(pick.uniform(0.3, 0.75), 2)
            line = re.sub(r" humidity: [\d.]+", f" humidity: {100 * air['humidity']:.0f}", line)
        lines[k] = line
    return "\n".join(lines) + "\n", airs


def faults(live, solved):
    """Where what the page says live of a variant is not what the solve says."""
    found = []
    rooms, outcomes = solved["surface"]["spaces"], {each["space"]: each for each in solved["outcomes"]}
    for spot in live:
        coldest, outcome = rooms[spot["room"]]["coldest"], outcomes[spot["room"]]
        if abs(spot["temperature"] - coldest["temperature_C"]) > 0.05:
            found.append(f"{solved['name']}: {spot['temperature']:.3f} for {coldest['temperature_C']:.3f} °C")
        humidity = coldest.get("surface_humidity_percent")
        if (humidity is None) != (spot.get("humidity") is None):
            found.append(f"{solved['name']}: humidity {spot.get('humidity')} for {humidity}")
        elif humidity is not None and abs(100 * spot["humidity"] - humidity) > 0.5:
            found.append(f"{solved['name']}: {100 * spot['humidity']:.2f} for {humidity:.2f} %")
        close = outcome.get("unit") and abs(outcome["margin"]) < outcome["band"] + (0.005 if outcome["unit"] == "1" else 0.5)
        kind = spot["words"].split(" fRsi")[0]
        holds = outcome["outcome"] in ("safe", "marginal")
        same = kind in ("holds", "marginal") if holds else kind.split(" ")[0] == outcome["outcome"].split(" ")[0]
        if not close and not same:
            found.append(f"{solved['name']}: '{spot['words']}' for '{outcome['outcome']}'")
    return found


class Live(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory(prefix="quoin-live-")
        cls.browser = Chromium(CHROMIUM).__enter__()
        cls.browser.size(1000, 900)

    @classmethod
    def tearDownClass(cls):
        cls.browser.__exit__()
        cls.folder.cleanup()

    def path(self, name):
        return os.path.join(self.folder.name, name)

    def solved_in_other_airs(self, name):
        """The findings of the example in each air, and the airs."""
        pick, paths, airs = random.Random(name), [], []
        for number in range(AIRS):
            text, air = in_other_air(text_of(name), pick)
            paths.append(self.path(f"{name}-{number}.yaml"))
            airs.append(air)
            with open(paths[-1], "w", encoding="utf-8") as file:
                file.write(text)
        run = subprocess.run([PROGRAM, "solve", *paths, "--json", "--quiet"], check=True, capture_output=True)
        return [json.loads(line) for line in run.stdout.splitlines()], airs

    def faults_of(self, name):
        example = os.path.join(EXAMPLES, f"lock_keepers_house_{name}.yaml")
        subprocess.run([PROGRAM, "solve", example, "-o", self.path(name), "--quiet"], check=True,
                       stdout=subprocess.DEVNULL)
        self.browser.open(os.path.join(self.path(name), "report.html"))
        found = []
        findings, airs = self.solved_in_other_airs(name)
        self.assertEqual(len(findings), AIRS)
        for solved, air in zip(findings, airs):
            for number, variant in enumerate(solved["variants"]):
                live = self.browser.value(f"{LIVE}({number}, {json.dumps(air)})")
                found += [f"{name} {air}: {fault}" for fault in faults(live, variant)]
        return found

    def test_every_live_number_is_that_of_a_solve_in_the_same_air(self):
        for name in NAMES[int(FIRST)::int(STEP)]:
            self.assertEqual(self.faults_of(name), [], name)

    def test_a_number_that_is_off_is_found(self):
        solved = {"name": "as found", "surface": {"spaces": {"hall": {"coldest": {
            "temperature_C": 12.0, "surface_humidity_percent": 70.0}}}},
            "outcomes": [{"space": "hall", "outcome": "safe", "unit": "%RH", "margin": 10.0, "band": 0.1}]}
        live = {"room": "hall", "temperature": 12.04, "humidity": 0.704, "words": "holds"}
        self.assertEqual(faults([live], solved), [])
        for wrong in ({"temperature": 12.06}, {"humidity": 0.706}, {"humidity": None}, {"words": "mould"}):
            self.assertEqual(len(faults([{**live, **wrong}], solved)), 1, wrong)


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0], *sys.argv[6:]])
