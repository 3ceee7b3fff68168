#!/usr/bin/env python3
"""Copies the acceptance cases that a running service is built for, so that a folder of cases can be ahead of it.

    select_cases.py BASE_URL FOLDER OUT_FOLDER

A case is copied when the service has its path, every rule and member of the report that the case asks about, and every theme whose figures it compares.
Prints a line for each case left out, with the reason, and a closing line. OUT_FOLDER is made, or must be empty.
"""
import json
import shutil
import sys
import urllib.request
from pathlib import Path

# The themes that work out each section of the figures.
THEMES_OF_FIGURES = {
    "space": {"layout", "depth"},
    "depth": {"layout", "depth"},
    "mass": {"load"},
    "power": {"power"},
    "cooling": {"cooling"},
    "earthing": {"earthing"},
    "cabling": {"cabling"},
    "delivery": {"delivery"},
}


def fetch(url):
    with urllib.request.urlopen(url, timeout=30) as answer:
        return json.load(answer)


def rule_of(name):
    """The rule of "id" or "id:severity"; of a theme as "depth.*" none."""
    return None if name.endswith("*") else name.partition(":")[0]


def missing(case, paths, members, rules, themes):
    """What the service does not serve yet and the case needs, in words."""
    expect = case["expect"]
    path = case.get("post", "/v1/checks")
    if path not in paths:
        yield f"no path {path}"
    wanted = {finding["rule"] for finding in expect.get("findings", [])}
    wanted.update(expect.get("notAssessed", []), expect.get("remedyClears", []), map(rule_of, expect.get("noFinding", [])))
    for rule in sorted(wanted - rules - {None}):
        yield f"no rule {rule}"
    for any_of in expect.get("found", []) + expect.get("foundOrAsked", []):
        if not set(any_of) & rules:
            yield f"none of the rules {', '.join(any_of)}"
    for member, needs in (("verdicts", "verdicts"), ("questions", "mostQuestions")):
        if needs in expect and member not in members:
            yield f"no {member} in a report"
    for section in sorted({pointer.split("/")[1] for pointer in expect.get("figures", {})}):
        if section not in THEMES_OF_FIGURES:
            yield f"figures of {section} belong to no known theme"
        for theme in sorted(THEMES_OF_FIGURES.get(section, set()) - themes):
            yield f"no theme {theme}, which figures of {section} need"


def main(arguments):
    if len(arguments) != 3:
        sys.exit(__doc__)
    base_url, folder, out_folder = arguments[0].rstrip("/"), Path(arguments[1]), Path(arguments[2])
    out_folder.mkdir(parents=True, exist_ok=True)
    if any(out_folder.iterdir()):
        sys.exit(f"{out_folder} is not empty")
    contract = fetch(base_url + "/openapi/v1.json")
    paths, members = contract["paths"], contract["components"]["schemas"]["CheckReport"]["properties"]
    listed = fetch(base_url + "/v1/rules")["rules"]
    rules, themes = {rule["id"] for rule in listed}, {rule["theme"] for rule in listed}

    files = sorted(folder.glob("*.json"))
    left_out = 0
    for file in files:
        reasons = list(missing(json.loads(file.read_text(encoding="utf-8")), paths, members, rules, themes))
        if reasons:
            left_out += 1
            print(f"left out {file.name}: {'; '.join(reasons)}")
        else:
            shutil.copyfile(file, out_folder / file.name)
    print(f"{len(files) - left_out} cases selected, {left_out} left out")


if __name__ == "__main__":
    main(sys.argv[1:])
