#!/usr/bin/env python3
"""Walks the tables of the program, so that a forgotten half fails: a section without a template, a
command without a transcript, a rule nobody has seen bite.
"""

import re
import subprocess
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent / "support"))
from report import ROOT, Report  # noqa: E402


def read_all(*patterns):
    """The text of all files below the root that match, one after the other."""
    files = sorted(file for pattern in patterns for file in ROOT.glob(pattern))
    return "\n".join(file.read_text(encoding="utf-8") for file in files)


def sections():
    """Ids of the rows of the sections table."""
    return re.findall(r'SectionRow\{\s*"([a-z-]+)"', read_all("src/report/sections.cc"))


def section_faults(ids, sources, templates, tests):
    faults = []
    for section in ids:
        teller = f"tell_{section.replace('-', '_')}"
        if f"{teller}(const" not in sources:
            faults.append(f"no file of src/report/sections/ has {teller}()")
        if f'<section id="{section}"' not in templates:
            faults.append(f"no template holds section {section}")
        shown = rf'\nout\| chapter {section}[,:]|<section id="{section}"/></template>'
        if not re.search(shown, tests) and teller not in tests:
            faults.append(f"no test in tests/report/ and no transcript tells section {section}")
    return faults


def unknown_section_faults(ids, templates):
    named = set(re.findall(r'<section id="([a-z-]+)"', templates))
    return [f"a template holds section {one}, which is none" for one in sorted(named - set(ids))]


def commands():
    """Names of the commands, as --help of the built program lists them: two spaces, a word."""
    program = ROOT / "build" / "winchbook"
    if not program.exists():
        return []
    said = subprocess.run([program, "--help"], capture_output=True, text=True)
    part = re.split(r"(?im)^(?:sub)?commands:$", said.stdout)
    return re.findall(r"(?m)^  ([a-z]+)(?:\s{2,}|,)", part[-1]) if len(part) > 1 else []


def command_faults(names, sources, transcripts):
    faults = []
    for name in names:
        if not re.search(rf'Row{{"{name}["\s]', re.sub(r"\{\s+", "{", sources)):
            faults.append(f"command {name} is no row of src/catalogue/catalogue.cc")
        if not re.search(rf"(?m)^\$ winchbook {name}\b", transcripts):
            faults.append(f"no transcript runs winchbook {name}")
    return faults


def rules():
    """Names of the rules in brackets behind a fault, as the sources give them to a diagnostic."""
    text = read_all("src/**/*.cc", "src/**/*.h")
    found = set(re.findall(r'kRule\w*\s*[={]\s*"([a-z]+(?:-[a-z]+)*)"', text))
    for call in re.finditer(r"\b(?:error|error_at|warning_at|fault|doubt)\s*\(", text):
        arguments = text[call.end() : end_of_call(text, call.end())]
        last = re.search(r'"([a-z]+(?:-[a-z]+)*)"\s*$', arguments)
        if last and "," in arguments:
            found.add(last.group(1))
    return sorted(found)


def end_of_call(text, at):
    """The place of the bracket that closes a call whose arguments begin at `at`."""
    depth, quoted = 1, False
    while depth and at < len(text):
        c = text[at]
        if c == '"' and text[at - 1] != "\\":
            quoted = not quoted
        elif not quoted:
            depth += {"(": 1, ")": -1}.get(c, 0)
        at += 1
    return at - 1


# rules that no file of a user can break: they name a fault of the program itself
FAULTS_OF_THE_PROGRAM = {"font-subset", "pdf-library", "pdf-link"}


def rule_faults(names, tests):
    return [f"no test and no transcript shows [{name}]" for name in names
            if name not in FAULTS_OF_THE_PROGRAM and not re.search(rf'[\["]{name}[\]"]', tests)]  # fmt: skip


def message_faults(sources, catalogue):
    """Messages that the sources say by a whole key and the first catalogue does not hold."""
    said = set(re.findall(r'\bsay\(\s*"([a-z][\w-]*(?:\.[\w-]+)+)"', sources))
    held = set(re.findall(r'<m key="([^"]+)"', catalogue))
    return [f'"{key}" is not in shared/words/en-GB.xml' for key in sorted(said - held)]


def answer_faults(sources, catalogue):
    """Answers say messages by whole keys, or by a stem and the word of a list: stems without a
    message, and messages that no answer says."""
    said = set(re.findall(r'"(answer(?:\.[a-z-]+)+)(?:\.(?:\{\})?)?"', sources))
    held = set(re.findall(r'<m key="(answer\.[^"]+)"', catalogue))
    stems = {key[:at] for key in held for at in range(len(key)) if key[at] == "."}
    faults = [f'"{key}" is not in shared/words/en-GB.xml' for key in sorted(said - held - stems)]
    return faults + [f'no answer says "{key}"' for key in sorted(held - said)
                     if key.rpartition(".")[0] not in said]


def main():
    report = Report()
    templates = read_all("report-templates/**/*.xml")
    sources = read_all("src/report/sections/*.cc")
    transcripts = read_all("tests/transcripts/*.transcript")
    tests = read_all("tests/**/*_test.cc") + "\n" + transcripts

    ids = sections()
    report.expect("there are sections", len(ids) > 3, f"{len(ids)} found")
    report.check("every section has its file, template and test",
                 section_faults(ids, sources, templates, tests))
    report.check("every section of a template is known", unknown_section_faults(ids, templates))
    report.expect("a section nobody wrote is missed",
                  len(section_faults(["no-such"], sources, templates, tests)) == 3)

    catalogue = read_all("shared/words/en-GB.xml")
    sayings = read_all("src/**/*.cc")
    report.check("every message that is said is in the catalogue", message_faults(sayings, catalogue))
    report.expect("a message nobody wrote is missed",
                  message_faults('say("no.such")', catalogue) and catalogue)
    answers = read_all("src/answers/*.cc")
    report.check("every message of an answer is said, and is in the catalogue",
                 answer_faults(answers, catalogue))
    report.expect("a message of an answer that nobody wrote, or says, is missed",
                  len(answer_faults('"answer.no.such"', '<m key="answer.no.other">')) == 2)

    names = commands()
    report.expect("the program lists its commands", len(names) > 2, f"{names} found")
    report.check("every command has its row and transcript",
                 command_faults(names, read_all("src/catalogue/catalogue.cc"), transcripts))
    report.expect("a command nobody wrote is missed",
                  len(command_faults(["nosuch"], "", transcripts)) == 2)

    named = rules()
    report.expect("faults carry names of rules", len(named) > 5, f"{named} found")
    report.check("every rule is seen to bite", rule_faults(named, tests))
    report.leave()


if __name__ == "__main__":
    main()
