# SPDX-License-Identifier: MPL-2.0
"""The JSON Schema of the design file against a validator of its own and against plate.

usage: python3 schema_test.py PLATE SCHEMA EXAMPLES_FOLDER

Needs the package python3-jsonschema. Designs are TOML texts: tomllib reads them, the validator judges them, and plate
must judge them alike.
"""

import json
import pathlib
import subprocess
import sys
import tempfile
import tomllib

import jsonschema

PLATE, SCHEMA, EXAMPLES = sys.argv[1:4]
MATCH_SCHEMA = pathlib.Path(SCHEMA).with_name("match.schema.json")

OUTLINE = '[outline]\nkind = "rectangle"\nlength = 350\nwidth = 200\n'
THICKNESS = '[thickness]\nvalue = 2.5\n'
LAYUP = '[layup]\nsolid = "spruce"\n'
MESH = '[mesh]\nsize = 40\n'
PLAIN = OUTLINE + THICKNESS + LAYUP + MESH

# A plate of each kind of table and of each kind of value.
RIGHT = {
    "plain": PLAIN,
    "ellipse": PLAIN.replace("rectangle", "ellipse"),
    "title and whole numbers": 'title = "x"\n' + PLAIN,
    "arch": PLAIN + '[arching]\nkind = "biparabolic"\nheight = 10\n',
    "graduated": OUTLINE + LAYUP + MESH
    + '[thickness]\nkind = "graduated"\ncentre = 3\nbouts = 3\nchannel = 2.5\nedge = 4\n',
    "slot": PLAIN + '[[soundhole]]\nkind = "slot"\ncentre = [0, 60]\nlength = 60\nwidth = 6\nmirror = false\n',
    "support of the sides": PLAIN + '[support]\nedges = ["free", "clamped", "free", "rest"]\n',
    "built-in material changed": PLAIN + '[material.spruce]\ndensity = 420\n',
    "new material": OUTLINE + MESH + THICKNESS + '[layup]\nsolid = "my-wood"\ngrain = "follows"\n'
    + '[material.my-wood]\nE1 = 11\nE2 = 0.8\nG12 = 0.7\nnu12 = 0.37\ndensity = 400\nloss = [1, 2, 2, 2, 2, 2]\n',
    "plies": OUTLINE + MESH + '[layup]\nplies = [{ material = "carbon_ud", thickness = 1, angle = -45 }]\nscale = 2\n',
    "code": OUTLINE + MESH + '[layup]\ncode = "[0/90]s"\nply = { material = "carbon_ud", thickness = 0.25 }\n',
    "patch and mass": PLAIN + '[[patch]]\nshape = "polygon"\npoints = [[0, 0], [40, 0], [0, 40]]\n'
    + 'plies = [{ material = "flax_ud", thickness = 0.2 }]\n[[mass]]\nat = [40, 30]\ngrams = 5\n',
}

WRONG = {
    "unknown key": PLAIN + '[arching]\nkind = "flat"\nheigth = 10\n',
    "unknown table": PLAIN + '[outlines]\nlength = 350\n',
    "unknown key of a material": PLAIN + '[material.spruce]\ndensty = 420\n',
    "unknown key of a ply": OUTLINE + MESH + '[layup]\nplies = [{ material = "carbon_ud", thicknes = 1 }]\n',
    "text for a number": PLAIN.replace("350", '"350"'),
    "number for a text": PLAIN.replace('"spruce"', "3"),
    "empty text": 'title = ""\n' + PLAIN,
    "number for a flag": PLAIN + '[[soundhole]]\nkind = "f"\nmirror = 1\n',
    "flag for a number": PLAIN.replace("2.5", "true"),
    "table for a list of tables": PLAIN + '[soundhole]\nkind = "f"\n',
    "number for a table": 'arching = 3\n' + PLAIN,
    "word that is no choice": PLAIN.replace("rectangle", "square"),
    "too long": PLAIN.replace("350", "3500"),
    "zero thickness": PLAIN.replace("2.5", "0"),
    "negative angle of tilt": PLAIN + '[[soundhole]]\nkind = "f"\ntilt = -36\n',
    "list too short": PLAIN + '[material.spruce]\nloss = [1, 2, 2]\n',
    "list too long": PLAIN + '[[mass]]\nat = [1, 2, 3]\ngrams = 5\n',
    "wrong word in a list": PLAIN + '[support]\nedges = ["free", "glued", "free", "free"]\n',
    "two points for a polygon": PLAIN + '[[patch]]\nshape = "polygon"\npoints = [[0, 0], [40, 0]]\n'
    + 'plies = [{ material = "flax_ud", thickness = 0.2 }]\n',
    "key of another kind": PLAIN + "[[soundhole]]\nkind = \"slot\"\ncentre = [0, 60]\nlength = 60\nwidth = 6\nstem = 6\n",
    "key of another kind than the default": PLAIN.replace("value = 2.5", "value = 2.5\ncentre = 3"),
    "bouts of a rectangle": PLAIN.replace("width = 200", "width = 200\nlower_bout = 236"),
    "missing key": PLAIN.replace("width = 200\n", ""),
    "missing key of the default kind": PLAIN.replace("value = 2.5\n", ""),
    "missing kind": PLAIN.replace('kind = "rectangle"\n', ""),
    "missing key of a new material": PLAIN + '[material.my_wood]\nE1 = 11\n[bar]\nmaterial = "my_wood"\nlength = 200\n'
    + "width = 5\nheight = 10\noffset = 15\n",
    "missing layup": OUTLINE + THICKNESS + MESH,
    "name of a material with a space": PLAIN + '[material."my wood"]\nE1 = 11\nE2 = 1\nG12 = 1\nnu12 = 0.3\ndensity = 400\n',
}

MATCH = 'reference = "a.toml"\nstart = "b.toml"\n[available]\nmaterials = ["carbon_ud"]\n'
WRONG_MATCHES = [
    MATCH + 'angels = [0]\n',
    MATCH + 'angles = "some"\n',
    MATCH + 'angles = []\n',
    MATCH + 'thickness = { carbon_ud = [0] }\n',
    'measured = "c.csv"\n' + MATCH,
    MATCH.replace('reference = "a.toml"\n', ''),
]

failures = []


def fail(what):
    failures.append(what)
    print("FAILED:", what)


def faults(validator, text):
    return [error.message for error in validator.iter_errors(tomllib.loads(text))]


def plate_refuses(folder, text):
    path = pathlib.Path(folder, "design.toml")
    path.write_text(text, encoding="utf-8")
    run = subprocess.run([PLATE, "modes", path, "--count", "1"], capture_output=True, text=True, check=False)
    if run.returncode not in (0, 2):
        fail(f"plate ended with {run.returncode}: {run.stderr}")
    return run.returncode == 2


def starters():
    for family in ("violin", "viola", "cello"):
        for make in ("wood", "laminate"):
            run = subprocess.run([PLATE, "start", "--family", family, "--make", make, "--json"], capture_output=True,
                                 text=True, check=True)
            yield f"starter {family} {make}", json.loads(run.stdout)["design"]


def check_right(validator, name, text):
    found = faults(validator, text)
    if found:
        fail(f"{name}: the schema refuses it: {found[0]}")


def main():
    schema = json.loads(pathlib.Path(SCHEMA).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    match_schema = json.loads(pathlib.Path(MATCH_SCHEMA).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(match_schema)
    match_validator = jsonschema.Draft202012Validator(match_schema)
    check_right(match_validator, "the match problem that wrong ones are made from", MATCH)
    for text in WRONG_MATCHES:
        if not faults(match_validator, text):
            fail(f"the schema of match problems lets pass: {text}")
    examples = sorted(pathlib.Path(EXAMPLES).rglob("*.toml"))
    if not examples:
        fail("no examples found")
    for path in examples:
        text = path.read_text(encoding="utf-8")
        is_match = "available" in tomllib.loads(text)
        check_right(match_validator if is_match else validator, path.name, text)
        wanted = MATCH_SCHEMA if is_match else SCHEMA
        named = [line.split(maxsplit=1)[1] for line in text.splitlines() if line.startswith("#:schema ")]
        if [(path.parent / name).resolve() for name in named] != [pathlib.Path(wanted).resolve()]:
            fail(f"{path.name}: its line #:schema must lead to {wanted}")
    for name, text in starters():
        check_right(validator, name, text)
        if not text.startswith("#:schema "):
            fail(f"{name}: does not name its schema")
    with tempfile.TemporaryDirectory() as folder:
        for name, text in RIGHT.items():
            check_right(validator, name, text)
            if plate_refuses(folder, text):
                fail(f"{name}: plate refuses it")
        for name, text in WRONG.items():
            if not faults(validator, text):
                fail(f"{name}: the schema lets it pass")
            if not plate_refuses(folder, text):
                fail(f"{name}: plate lets it pass")
    print(f"{len(examples)} examples, 6 starters, {len(RIGHT)} right and {len(WRONG)} wrong designs")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
