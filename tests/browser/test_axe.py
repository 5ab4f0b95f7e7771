# SPDX-License-Identifier: Apache-2.0
"""What axe-core, a checker of accessibility that is not ours, finds on the report page and on the
overview: nothing above minor, on a phone, a tablet and a screen, with a dark preference too. It
takes axe-core from Debian's node-axe-core or from the file that AXE_CORE names; without it the test
is skipped.

usage: test_axe.py PROGRAM CHROMIUM SOURCE [unittest options]
"""

import os
import subprocess
import sys
import tempfile
import unittest

from chromium import Chromium

PROGRAM, CHROMIUM, SOURCE = sys.argv[1:4]
EXAMPLES = os.path.join(SOURCE, "cases", "examples")
PLACES = [os.environ.get("AXE_CORE", ""), "/usr/share/nodejs/axe-core/axe.min.js",
          "/usr/lib/node_modules/axe-core/axe.min.js"]
AXE = next((place for place in PLACES if os.path.isfile(place)), None)
if AXE is None:
    print("axe-core is missing: accessibility is not checked by it")
    sys.exit(77)

FOUND = """axe.run(document, {resultTypes: ['violations']}).then(({violations}) => violations
    .filter(({impact}) => impact !== 'minor')
    .map(({impact, id, nodes}) => `${impact} ${id}: ${nodes[0].html.slice(0, 120)}`))"""


class Axe(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.browser = Chromium(CHROMIUM, patience=240)
        cls.folder = tempfile.TemporaryDirectory()
        cases = [os.path.join(EXAMPLES, f"lock_keepers_house_{name}.yaml")
                 for name in ("corner", "suspended_floor", "vapour")]
        subprocess.run([PROGRAM, "solve", *cases, "-o", cls.folder.name, "--quiet"], check=True,
                       stdout=subprocess.DEVNULL)
        with open(AXE, encoding="utf-8") as file:
            cls.axe = file.read()

    @classmethod
    def tearDownClass(cls):
        cls.browser.__exit__()
        cls.folder.cleanup()

    def found(self):
        self.browser.value(self.axe + "; 0")
        return self.browser.value(FOUND)

    def pages(self):
        yield os.path.join(self.folder.name, "overview.html")
        for name in sorted(os.listdir(self.folder.name)):
            if os.path.isdir(os.path.join(self.folder.name, name)):
                yield os.path.join(self.folder.name, name, "report.html")

    def test_nothing_above_minor_at_any_width(self):
        for page in self.pages():
            for width in (380, 768, 1280):
                for scheme in ("light", "dark"):
                    with self.subTest(page=page, width=width, scheme=scheme):
                        self.browser.size(width, 900)
                        self.browser.call("Emulation.setEmulatedMedia", features=[
                            {"name": "prefers-color-scheme", "value": scheme}])
                        self.browser.open(page)
                        self.assertEqual(self.found(), [])

    def test_what_is_wrong_is_found(self):
        self.browser.open(next(self.pages()))
        self.browser.value("""document.querySelector('td').style.color = '#dddddd';
            document.querySelector('main').append(document.createElement('button')); 0""")
        found = "\n".join(self.found())
        self.assertIn("color-contrast", found)
        self.assertIn("button-name", found)


if __name__ == "__main__":
    unittest.main(argv=[sys.argv[0], *sys.argv[4:]])
