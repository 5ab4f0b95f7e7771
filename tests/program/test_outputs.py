# SPDX-License-Identifier: Apache-2.0
"""The files that quoin solve writes, read by programs that are not ours: JSON schema, XML, CSV, PDF.

usage: test_outputs.py QUOIN SOURCE_FOLDER
"""

import copy
import csv
import html.parser
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import unicodedata
import xml.etree.ElementTree as xml

try:
    import jsonschema
except ImportError:
    print("python3-jsonschema is missing")
    sys.exit(77)

QUOIN, SOURCE = sys.argv[1], pathlib.Path(sys.argv[2])

HOSTILE = [
    "<script>alert(1)</script>",
    "\"'><svg onload=x>&amp;",
    "\U0001F525 on fire",
    "=cmd|' /C calc'!A0",
    "@SUM(A1:A9)",
    "|ls",
    "\uFF1D1+1",
    "../../etc/passwd",
    "]]>",
    "W" * 10000,
]


def solve(case, folder):
    run = subprocess.run([QUOIN, "solve", str(case), "-o", str(folder)], capture_output=True,
                         check=False)
    return run.returncode, run.stdout.decode("utf-8"), run.stderr.decode("utf-8")


def strict(schema):
    """The schema with keys that it does not name refused."""
    if isinstance(schema, list):
        return [strict(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    closed = {key: strict(value) for key, value in schema.items()}
    if isinstance(closed.get("properties"), dict) and closed.get("type") == "object":
        closed.setdefault("additionalProperties", False)
    return closed


def is_valid(findings, schema):
    return jsonschema.Draft202012Validator(schema).is_valid(findings)


def check_findings(schema, scratch):
    cases = sorted(SOURCE.glob("cases/examples/*.yaml"))
    cases += sorted(SOURCE.glob("cases/verification/*.yaml"))
    assert len(cases) > 8
    closed = strict(schema)
    for case in cases:
        folder = scratch / case.stem
        status, _, notes = solve(case, folder)
        assert status == 0, notes
        findings = json.loads((folder / "findings.json").read_text("utf-8"))
        for fault in jsonschema.Draft202012Validator(closed).iter_errors(findings):
            raise AssertionError(f"{case.name}: {fault.json_path}: {fault.message}")
        assert is_valid(findings, schema)
    # Findings that break the schema are told.
    broken = copy.deepcopy(findings)
    del broken["variants"][0]["surface"]
    assert not is_valid(broken, schema)
    broken = copy.deepcopy(findings)
    broken["input_sha256"] = "no checksum"
    assert not is_valid(broken, schema)
    broken = copy.deepcopy(findings)
    broken["variants"][0]["mesh"]["nodes"] = "many"
    assert not is_valid(broken, schema)
    broken = copy.deepcopy(findings)
    broken["variants"][0]["new"] = 1
    assert is_valid(broken, schema) and not is_valid(broken, closed)


def check_schema_command(schema):
    said = subprocess.run([QUOIN, "schema", "--findings"], capture_output=True, check=True).stdout
    assert json.loads(said) == schema
    jsonschema.Draft202012Validator.check_schema(schema)


def check_pdf(scratch):
    program = shutil.which("pdftotext")
    if program is None:
        print("no pdftotext: the text of report.pdf is not read")
        return
    pdf = scratch / "lock_keepers_house_reveal" / "report.pdf"
    text = subprocess.run([program, "-layout", str(pdf), "-"], capture_output=True,
                          check=True).stdout.decode("utf-8")
    pages = text.count("\f")
    for words in ["How it comes out", "the frame edge, is at 11.0", "All variants",
                  "wall brick", "Cautions", "Invented scenario", "page 1 of", "gets wet",
                  f"page {pages} of {pages}"]:
        assert words in text, words
    assert "no such words" not in text and "no verdict" not in text
    vapour = scratch / "lock_keepers_house_vapour" / "report.pdf"
    text = subprocess.run([program, "-layout", str(vapour), "-"], capture_output=True,
                          check=True).stdout.decode("utf-8")
    for words in ["Vapour within the section: no verdict", "Drying by diffusion alone",
                  "elastomeric paint", "EN 15026"]:
        assert words in text, words
    for name, words in [("lining", "What would be enough"),
                        ("joist_end", "At the joist end it is")]:
        pdf = scratch / f"lock_keepers_house_{name}" / "report.pdf"
        text = subprocess.run([program, "-layout", str(pdf), "-"], capture_output=True,
                              check=True).stdout.decode("utf-8")
        assert words in text, (name, words)


class Rows(html.parser.HTMLParser):
    """The rows of all tables of a page, each a list of texts; bars are pictures there."""

    def __init__(self):
        super().__init__()
        self.rows, self.cell = [], None

    def handle_starttag(self, tag, attributes):
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.cell = ""

    def handle_endtag(self, tag):
        if tag in ("td", "th"):
            self.rows[-1].append(self.cell)
            self.cell = None

    def handle_data(self, data):
        if self.cell is not None:
            self.cell += data


def squeezed(text):
    """Without blanks and breaks, ligatures as letters: how wide a column is makes no difference."""
    return re.sub(r"\s", "", unicodedata.normalize("NFKC", text))


def rows_missing(page, pdf_text):
    """Rows of tables on the page that the PDF does not show cell by cell. A table wider than a sheet
    is set in parts there, its first columns again: then each cell stands for itself."""
    reader = Rows()
    reader.feed(page)
    text = squeezed(pdf_text)
    missing = []
    for row in reader.rows:
        parts = ["".join(row)] if len(row) <= 12 else row
        missing += [part for part in parts if squeezed(part) not in text]
    return missing


def check_tables_of_pdf(scratch):
    """Tables are the same in the PDF, on the page and on the terminal."""
    program = shutil.which("pdftotext")
    if program is None:
        return
    for name in ("corner", "reveal", "foot", "vapour"):
        folder = scratch / f"lock_keepers_house_{name}"
        text = subprocess.run([program, "-raw", str(folder / "report.pdf"), "-"],
                              capture_output=True, check=True).stdout.decode("utf-8")
        page = (folder / "report.html").read_text("utf-8")
        assert rows_missing(page, text) == [], (name, rows_missing(page, text))
        # A figure told in another way is found.
        row = next(row for row in re.findall(r"<tr>.*?</tr>", page, re.S) if "</td>" in row)
        figure = re.search(r">(\d+\.\d+)<", row)[1]
        doctored = page.replace(row, row.replace(figure, figure + "7"))
        assert len(rows_missing(doctored, text)) == 1, name


def check_pages_of_pdf(scratch):
    """The report of the corner, six variants with all their tables, is read, not leafed through."""
    program = shutil.which("pdfinfo")
    if program is None:
        return
    told = subprocess.run([program, str(scratch / "lock_keepers_house_corner" / "report.pdf")],
                          capture_output=True, check=True).stdout.decode("utf-8")
    assert int(re.search(r"Pages:\s+(\d+)", told)[1]) <= 9, told
    assert re.search(r"Tagged:\s+yes", told), told


def hostile_case(name):
    title, name = name, name[:900]  # YAML has no longer keys
    other, stuff = name + " too", name + " stuff"
    return {
        "quoin": 1, "title": title, "note": title,
        "spaces": {name: {"is": "inside", "temperature": 18, "humidity": 62},
                   "yard": {"is": "outside", "temperature": 1}},
        "materials": {stuff: {"conductivity": 0.8, "density": 1700}},
        "section": {"corner": {"layers": [{"material": stuff, "thickness": 330}],
                               "inside": name, "outside": "yard"}},
        "probes": {name: [330, 600]},
        "variants": {other: {"spaces": {name: {"humidity": 50}}}},
    }


def check_hostile_files(name, folder):
    for path in folder.iterdir():
        assert re.fullmatch(r"[a-z0-9.-]+", path.name), path.name
        if path.suffix in (".svg", ".vtr", ".vtm"):
            root = xml.fromstring(path.read_bytes())
            tags = {element.tag.split("}")[-1] for element in root.iter()}
            assert "script" not in tags and "foreignObject" not in tags
            assert not any(key.startswith("on") for e in root.iter() for key in e.attrib)
    with open(folder / "surface.csv", newline="", encoding="utf-8") as stream:
        rows = list(csv.reader(stream))
    assert len(rows) > 10
    assert all(len(row) == len(rows[0]) for row in rows)
    for row in rows[1:]:
        for cell in row[:3]:
            assert not cell.strip().startswith(("=", "+", "-", "@", "|", "\uFF1D", "\uFF0B")), cell
            assert not any(unicodedata.category(c) == "Cc" for c in cell), cell
    findings = json.loads((folder / "findings.json").read_text("utf-8"))
    assert findings["title"] == name
    assert (folder / "report.pdf").read_bytes().startswith(b"%PDF-")


def width(line):
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF"
               else 1 for c in line)


def check_hostile_terminal(text):
    for line in text.splitlines():
        assert width(line) <= 80, line[:120]
        assert not any(unicodedata.category(c) == "Cc" for c in line), repr(line[:120])


def check_hostile_names(scratch):
    for number, name in enumerate(HOSTILE):
        case = scratch / f"hostile{number}.yaml"
        case.write_text(json.dumps(hostile_case(name), ensure_ascii=False), "utf-8")
        folder = scratch / f"hostile{number}"
        status, out, notes = solve(case, folder)
        assert status == 0, (name[:60], notes[:2000])
        check_hostile_files(name, folder)
        check_hostile_terminal(out.split("\nFiles: ")[0])
    # Letters that steer a terminal are refused, or at least not passed on.
    case = scratch / "steering.yaml"
    case.write_text(json.dumps(hostile_case("\x1b[31mred\x07")), "utf-8")
    _, out, notes = solve(case, scratch / "steering")
    assert "\x1b" not in out + notes and "\x07" not in out + notes
    # The checks themselves see what they look for.
    for bad in ["\x1b[31m", "W" * 81]:
        try:
            check_hostile_terminal(bad)
        except AssertionError:
            continue
        raise RuntimeError("a check that cannot fail")


def main():
    schema = json.loads((SOURCE / "tools/output/json/findings.schema.json").read_text("utf-8"))
    with tempfile.TemporaryDirectory(prefix="quoin-outputs-") as name:
        scratch = pathlib.Path(name)
        check_schema_command(schema)
        check_findings(schema, scratch)
        check_pdf(scratch)
        check_tables_of_pdf(scratch)
        check_pages_of_pdf(scratch)
        check_hostile_names(scratch)
    print("all outputs read")


if __name__ == "__main__":
    main()
