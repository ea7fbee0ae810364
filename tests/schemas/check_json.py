#!/usr/bin/env python3
"""Everything that --json prints keeps its JSON Schema in schemas/, by an independent validator."""

import copy
import json
import subprocess
import sys
from pathlib import Path

import jsonschema

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402

WINCHBOOK = ROOT / "build" / "winchbook"

# command: the schema of what it prints with --json
COMMANDS = {"grade": "grade.schema.json"}


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


def check_command(report, command, schema):
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    for reel in sorted((ROOT / "demo" / "reels").iterdir()):
        said = subprocess.run([WINCHBOOK, command, reel, "--json"], capture_output=True, text=True)
        try:
            value = json.loads(said.stdout)
        except json.JSONDecodeError as fault:
            report.check(f"{command} --json of {reel.name} is JSON", [f"{fault}: {said.stderr[:200]}"])
            continue
        report.check(f"{command} --json of {reel.name} keeps its schema", faults_of(validator, value))
        for what, spoilt in spoilt_copies(value):
            report.expect(f"{command} --json of {reel.name} with {what} would not",
                          faults_of(validator, spoilt))


def main():
    report = Report()
    for command, name in COMMANDS.items():
        path = ROOT / "schemas" / name
        if not path.exists():
            report.check(f"{command} --json has a schema", [f"schemas/{name} is missing"])
            continue
        check_command(report, command, json.loads(path.read_text(encoding="utf-8")))
    named = {p.name for p in (ROOT / "schemas").glob("*.json")}
    report.check("every JSON Schema is checked here",
                 [f"{n} is not" for n in sorted(named - set(COMMANDS.values()))])
    report.leave()


if __name__ == "__main__":
    main()
