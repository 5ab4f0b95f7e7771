# SPDX-License-Identifier: Apache-2.0
"""The board in a real Firefox: it opens, draws and finds what the program finds.

usage: test_firefox.py PROGRAM FIREFOX SOURCE BOARD.html [unittest options]
"""

import json
import os
import subprocess
import sys
import time
import unittest

from firefox import Firefox

PROGRAM, FIREFOX, SOURCE, PAGE = sys.argv[1:5]
EXAMPLES = os.path.join(SOURCE, "cases", "examples")


def case(name):
    path = os.path.join(EXAMPLES, name)
    with open(path, encoding="utf-8") as file:
        return path, file.read()


class InFirefox(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.browser = Firefox(FIREFOX)
        cls.browser.open(PAGE)

    @classmethod
    def tearDownClass(cls):
        cls.browser.__exit__()

    def solved(self, text):
        return json.loads(self.browser.value(f"window.quoin.solve({json.dumps(text)}).then((found) => JSON.stringify(found))"))

    def coldest(self, findings):
        return [(variant["name"], name, round(space["coldest"]["temperature_C"], 6))
                for variant in findings["variants"] for name, space in variant["surface"]["spaces"].items() if space.get("coldest")]

    def test_it_finds_what_the_program_finds(self):
        for name in ("lock_keepers_house_corner.yaml", "lock_keepers_house_reveal.yaml", "lock_keepers_house_lining.yaml"):
            with self.subTest(case=name):
                path, text = case(name)
                wanted = json.loads(subprocess.run([PROGRAM, "solve", "--json", path], check=True, capture_output=True).stdout)
                self.assertEqual(self.coldest(self.solved(text)), self.coldest(wanted))
                self.assertNotEqual(self.coldest(self.solved(text.replace("thickness: 225", "thickness: 226").replace("thickness: 330", "thickness: 331")
                                                             .replace("thickness: 15", "thickness: 16"))), self.coldest(wanted))

    def test_it_draws_and_judges(self):
        _, text = case("lock_keepers_house_corner.yaml")
        self.browser.value(f"window.quoin.open({json.dumps(text)})")
        self.assertGreater(self.browser.value("document.querySelectorAll('.plate.first > svg path').length"), 5)
        end = time.monotonic() + 120
        while not self.browser.value("Boolean(document.querySelector('.outcome [data-finding]'))"):
            self.assertLess(time.monotonic(), end, "no outcome is told")
            time.sleep(0.2)
        self.assertIn("°C", self.browser.value("document.querySelector('.outcome').textContent"))


if __name__ == "__main__":
    if not os.path.exists(PAGE):
        print("No board here: tools/board builds it")
        sys.exit(77)
    unittest.main(argv=[sys.argv[0], *sys.argv[5:]])
