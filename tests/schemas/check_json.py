#!/usr/bin/env python3
"""Everything that --json prints keeps its JSON Schema in schemas/, by an independent validator."""

import copy
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

import jsonschema

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

WINCHBOOK = ROOT / "build" / "winchbook"

# command: the schema of what it prints with --json about each demo reel
COMMANDS = {"date": "date.schema.json", "grade": "grade.schema.json",
            "value": "value.schema.json", "advise": "advise.schema.json",
            "check": "check.schema.json", "tray": "tray.schema.json"}  # fmt: skip

# command: the schema, and the questions it is asked, for those that need no record
QUESTIONS = {
    "seat": ("seat.schema.json", [
        ["--bore", "23.7 mm", "--sleeve", "7 mm"],
        ["--bore", "23.7 mm", "--sleeve", "7 mm", "--depth", "8 mm", "--sunk", "2 mm",
         "--stack", "steel gear 0.9 mm, red fibre free 1.3 mm, steel sleeve 0.9 mm",
         "--stock", "demo/stock/washers.csv"],
    ]),
    "drag": ("drag.schema.json", [
        ["--outer", "24 mm", "--inner", "7 mm", "--faces", "3", "--friction", "0.2", "--force", "100 N"],
        ["--outer", "24 mm", "--inner", "7 mm", "--stack", "leather free, steel sleeve, leather free",
         "--material", "leather", "--greased", "--pressure", "0.2 MPa", "--gear", "3:1",
         "--spool-full", "60 mm", "--spool-empty", "25 mm", "--line", "20 lb"],
    ]),
    "lookup": ("lookup.schema.json", [
        ["us-patent", "2,l85,17O"],
        ["us-patent-date", "July 5, 1911"],
        ["material", "acetal"],
        ["mark", "Pat. Pending"],
        ["stamp", "PAT. 2,185,170 MADE IN U.S.A."],
    ]),
    "lookup care": ("care.schema.json", [
        ["hard rubber", "hot water"],
        ["moulded nylon", "blasting", "acid"],
        ["celluloid"],
    ]),
    "shelf": ("shelf.schema.json", [
        ["demo/reels"],
        ["demo/reels", "--fitted", "drag washer"],
    ]),
    "line": ("line.schema.json", [
        ["--holds", "200 m", "--of", "0.3 mm", "--diameter", "0.2 mm", "--length", "100 m",
         "--backing", "0.4 mm", "--spool-full", "45 mm", "--gear", "48:12"],
        ["--spool-full", "45 mm"],
    ]),
    "sales check": ("sales_check.schema.json", [["demo/sales/sales.csv"]]),
    "issue": ("issue.schema.json", [
        ["demo/reels/dunlin-2", "--date", "2026-06-19", "-o", "{written}/keepsake.pdf"],
    ]),
}  # fmt: skip

# what is refused, and the exit code: told by the command line, by a field, by a file, by a record
REFUSED = [
    (2, ["line", "--no-such-option"]),
    (2, ["line", "--holds", "200", "--of", "0,30 mm"]),
    (2, ["drag"]),
    (2, ["issue", "demo/reels/dunlin-2", "--dump", "words"]),
    (3, ["grade", "demo/reels/nowhere"]),
    (1, ["lookup", "mark", "no such mark at all"]),
    (1, ["tray", "tests/recordfile/records/no_visit.xml"]),
]  # fmt: skip

SNAKE_CASE = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*")


def faults_of(validator, value):
    return [f"{fault.json_path}: {fault.message}" for fault in validator.iter_errors(value)]


def spoilt_copies(value):
    """The value with one thing wrong at a time: a stranger among its keys, a key gone."""
    stranger = copy.deepcopy(value)
    stranger["no-such-key"] = 1
    yield "a stranger among its keys", stranger
    for key in value:
        less = copy.deepcopy(value)
        del less[key]
        yield f"no '{key}'", less


def objects_in(schema):
    """Every schema of an object below this one."""
    if isinstance(schema, list):
        for one in schema:
            yield from objects_in(one)
    elif isinstance(schema, dict):
        if "properties" in schema and schema.get("type") == "object":
            yield schema
        for one in schema.values():
            yield from objects_in(one)


def faults_of_schema(name, schema):
    """What every schema of the house keeps: its own name as a constant, closed objects, snake_case."""
    faults = []
    own = f"urn:winchbook:{name.removesuffix('.schema.json')}:1"
    if schema.get("$id") != own:
        faults.append(f"$id is not {own}")
    if schema.get("properties", {}).get("schema") != {"const": own}:
        faults.append(f"'schema' is not the constant {own}")
    for one in objects_in(schema):
        members = one["properties"]
        if one.get("additionalProperties") is not False:
            faults.append(f"an object with {sorted(members)} lets strangers in")
        faults += [f"{m} is not in snake_case" for m in members if not SNAKE_CASE.fullmatch(m)]
        faults += [f"{m} can be left out" for m in members if m not in one.get("required", [])]
    return faults


def ask(arguments):
    return subprocess.run([WINCHBOOK, *arguments, "--json"], capture_output=True, text=True, cwd=ROOT)


def check_command(report, command, schema, questions):
    """`questions`: the name of each and its arguments."""
    validator = jsonschema.Draft202012Validator(schema)
    for name, arguments in questions:
        said = ask([*command.split(), *arguments])
        try:
            value = json.loads(said.stdout)
        except json.JSONDecodeError as fault:
            report.check(f"{command} --json of {name} is JSON", [f"{fault}: {said.stderr[:200]}"])
            continue
        report.check(f"{command} --json of {name} keeps its schema", faults_of(validator, value))
        for what, spoilt in spoilt_copies(value):
            report.expect(f"{command} --json of {name} with {what} would not",
                          faults_of(validator, spoilt))


def check_refusals(report, schema):
    validator = jsonschema.Draft202012Validator(schema)
    for code, arguments in REFUSED:
        said = ask(arguments)
        name = f"{' '.join(arguments)} --json is refused in JSON alone"
        try:
            value = json.loads(said.stdout)
        except json.JSONDecodeError as fault:
            report.check(name, [f"{fault}: {said.stdout[:200]}{said.stderr[:200]}"])
            continue
        faults = faults_of(validator, value)
        if said.returncode != code:
            faults.append(f"exit {said.returncode}, not {code}")
        if said.stderr:
            faults.append(f"on stderr: {said.stderr[:200]}")
        report.check(name, faults)


def all_commands(written):
    """Each command with its schema's name and its questions; files are written into `written`."""
    reels = [(reel.name, [reel]) for reel in sorted((ROOT / "demo" / "reels").iterdir())]
    for command, schema in COMMANDS.items():
        yield command, schema, reels
    for command, (schema, questions) in QUESTIONS.items():
        yield command, schema, [(f"question {n}", [word.format(written=written) for word in asked])
                                for n, asked in enumerate(questions, 1)]  # fmt: skip


def main():
    report = Report()
    schemas = {path.name: json.loads(path.read_text(encoding="utf-8"))
               for path in sorted((ROOT / "schemas").glob("*.json"))}  # fmt: skip
    for name, schema in schemas.items():
        jsonschema.Draft202012Validator.check_schema(schema)
        report.check(f"{name} is as every schema here", faults_of_schema(name, schema))
    report.expect("a schema under another's name would not be",
                  faults_of_schema("line.schema.json", schemas["drag.schema.json"]))
    told = [schema["$defs"]["fault"] for schema in schemas.values() if "fault" in schema.get("$defs", {})]
    report.expect("a fault is told alike wherever it is told", all(one == told[0] for one in told))
    checked = {"faults.schema.json"}
    check_refusals(report, schemas["faults.schema.json"])
    with tempfile.TemporaryDirectory() as written:
        for command, name, questions in all_commands(written):
            checked.add(name)
            if name not in schemas:
                report.check(f"{command} --json has a schema", [f"schemas/{name} is missing"])
                continue
            check_command(report, command, schemas[name], questions)
    report.check("every JSON Schema is checked here",
                 [f"{n} is not" for n in sorted(set(schemas) - checked)])
    report.leave()


if __name__ == "__main__":
    main()
