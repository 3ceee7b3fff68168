#!/usr/bin/env python3
"""Posts acceptance cases to a running service and compares its answers with what each case expects.

    run.py BASE_URL [FOLDER_OR_FILE ...]        without paths: cases/ beside this script

A case is a JSON file:
    about     what it shows, and where the expected numbers come from
    post      path to post to, "/v1/checks" when absent
    headers   further request headers
    request   the body
    argued    why the answer is not plainly what a practitioner would give; nothing is compared
    expect    any of
        status        200 when absent
        verdict       release | review | hold
        findings      [{rule, severity, pointer, actual, limit}]: some finding agrees with all that is given. The pointer is the start of one
                      of the finding's; actual and limit are [value, relative tolerance]
        noFinding     ids of rules, or "theme.*", that report nothing
        figures       {pointer into figures: [value, relative tolerance]}; a null value: the figure is absent
        notAssessed   ids of rules that say what they lack
        problem       [{pointer, code}]: some entry of the problem's errors agrees with all that is given
        remedyClears  ids of rules: after the patch of the first finding's first remedy that finding is gone and no new error is there
        proposal      of the first alternative of an answer with alternatives:
            cabinets      number of cabinets; 0 when there is a conflict
            cabinet       {heightU, widthMm, depthMm} of the first cabinet
            product       verdict on the product, the gravest of all racks
            at            {item id: [least, greatest]}: its lowest U position
            together      lists of item ids that are in one rack
            added, notAdded   part numbers that the added lines have or do not have
            noWarning     ids of rules, or "theme.*", without an open warning
            proven        names of proven objectives
            conflict      pointers that the requirements in conflict name
        basket        of an answer to a basket:
            adds, never   kinds of parts that are added or not: starts of part numbers, alternatives with |
            product       verdict on the product of the completed basket
            replace, excess   part number of the line that is exchanged or in excess; no other is
            racks         number of racks
            unknown       the part that an unknown one is taken for
        The completed basket, posted again, lacks nothing, and its verdict is the one announced.
        Whatever is expected of it, no alternative has an open error or an item without a place, and its own check says the same.

Says what is wrong with each case that fails, then "N passed, N failed". Exit code 1 when a case failed or there was none.
"""
import copy
import json
import sys
import urllib.error
import urllib.request
from pathlib import Path

ABSENT = object()


class Service:
    def __init__(self, base_url):
        self.base_url = base_url.rstrip("/")

    def post(self, path, body, headers):
        """The status and the answer read as JSON; None for an answer that is none."""
        request = urllib.request.Request(self.base_url + path, data=json.dumps(body).encode(), method="POST")
        for name, value in {"Content-Type": "application/json", **headers}.items():
            request.add_header(name, value)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                status, content = answer.status, answer.read()
        except urllib.error.HTTPError as error:
            status, content = error.code, error.read()
        try:
            return status, json.loads(content)
        except ValueError:
            return status, None


# JSON Pointer (RFC 6901) and JSON Patch (RFC 6902)

def steps(pointer):
    if pointer == "":
        return []
    if not pointer.startswith("/"):
        raise ValueError(f"no JSON pointer: {pointer}")
    return [step.replace("~1", "/").replace("~0", "~") for step in pointer[1:].split("/")]


def child(parent, step):
    if isinstance(parent, dict):
        return parent.get(step, ABSENT)
    if isinstance(parent, list) and step.isdigit() and int(step) < len(parent):
        return parent[int(step)]
    return ABSENT


def look_up(document, pointer):
    for step in steps(pointer):
        document = child(document, step)
        if document is ABSENT:
            break
    return document


def apply_patch(document, operations):
    document = copy.deepcopy(document)
    for operation in operations:
        kind, path = operation["op"], operation["path"]
        if kind in ("move", "copy"):
            value = copy.deepcopy(existing(document, operation["from"]))
            if kind == "move":
                remove(document, operation["from"])
            add(document, path, value)
        elif kind == "add":
            add(document, path, copy.deepcopy(operation["value"]))
        elif kind == "remove":
            remove(document, path)
        elif kind == "replace":
            remove(document, path)
            add(document, path, copy.deepcopy(operation["value"]))
        elif kind == "test":
            if existing(document, path) != operation["value"]:
                raise ValueError(f"patch tests {path} for {operation['value']!r} and finds another value")
        else:
            raise ValueError(f"no patch operation: {kind}")
    return document


def existing(document, path):
    value = look_up(document, path)
    if value is ABSENT:
        raise ValueError(f"patch names {path}, which is not there")
    return value


def holder(document, path):
    *way, last = steps(path)
    for step in way:
        document = child(document, step)
    if not isinstance(document, (dict, list)):
        raise ValueError(f"patch names {path}, which has no parent")
    return document, last


def add(document, path, value):
    parent, last = holder(document, path)
    if isinstance(parent, dict):
        parent[last] = value
    else:
        index = len(parent) if last == "-" else int(last)
        if index > len(parent):
            raise ValueError(f"patch adds {path}, which is beyond the end")
        parent.insert(index, value)


def remove(document, path):
    existing(document, path)
    parent, last = holder(document, path)
    del parent[last if isinstance(parent, dict) else int(last)]


# What a case expects

def agrees(actual, expected):
    """Whether a number is within the relative tolerance of [value, tolerance]; a null value wants it absent."""
    value, tolerance = expected
    if value is None:
        return actual in (ABSENT, None)
    is_number = isinstance(actual, (int, float)) and not isinstance(actual, bool)
    return is_number and abs(actual - value) <= tolerance * abs(value)


def is_under(pointer, start):
    return pointer == start or pointer.startswith(start.rstrip("/") + "/")


def finding_agrees(finding, expected):
    return (
        finding.get("rule") == expected["rule"]
        and finding.get("severity") == expected.get("severity", finding.get("severity"))
        and ("pointer" not in expected or any(is_under(p, expected["pointer"]) for p in finding.get("pointers", [])))
        and all(agrees(look_up(finding, f"/{name}/value"), expected[name]) for name in ("actual", "limit") if name in expected)
    )


def racks_of(alternative):
    return alternative["racks"] if "racks" in alternative else [alternative]


def open_findings(report, severity):
    return [f for f in report["findings"] if f["severity"] == severity and "accepted" not in f and "signedOff" not in f]


def identity(finding):
    # The fingerprint outlives a patch that moves indices; pointers do not.
    return finding["rule"], finding.get("fingerprint") or tuple(finding.get("pointers", []))


def short(value, length=300):
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= length else text[:length] + "..."


class Case:
    def __init__(self, document):
        self.request = document["request"]
        self.expect = document["expect"]
        self.path = document.get("post", "/v1/checks")
        self.headers = document.get("headers", {})

    def complaints(self, service):
        status, answer = service.post(self.path, self.request, self.headers)
        expected_status = self.expect.get("status", 200)
        if status != expected_status:
            yield f"status is {status}, not {expected_status}: {short(answer)}"
        else:
            # An answer that is no JSON object holds nothing: enough for a case that asks for its status only.
            answer = answer if isinstance(answer, dict) else {}
            report = answer.get("report", answer)
            yield from self.about_problem(answer)
            yield from self.about_findings(report)
            yield from self.about_figures(report)
            yield from self.about_remedies(service, report)
            if "alternatives" in answer:
                yield from self.about_alternatives(service, answer)
                yield from self.about_proposal(answer, self.expect.get("proposal", {}))
            if "completedBasket" in answer:
                yield from self.about_basket(service, answer, self.expect.get("basket", {}))

    def about_basket(self, service, answer, expected):
        added = [line["partNumber"] for line in answer["missingLines"]]

        def has(part):
            return any(number.startswith("QWL-" + start) for number in added for start in part.split("|"))

        for part in expected.get("adds", []):
            if not has(part):
                yield f"{part} is not added: {added}"
        for part in expected.get("never", []):
            if has(part):
                yield f"{part} is added: {added}"
        if "product" in expected and answer["completedVerdicts"]["product"] != expected["product"]:
            reasons = [r for r in answer.get("completedReport", {}).get("verdictReasons", []) if r["concern"] == "product"]
            yield f"the completed product is {answer['completedVerdicts']['product']}, not {expected['product']}: {short(reasons)} {short(answer['unmet'])}"
        if len(answer["racks"]) != expected.get("racks", len(answer["racks"])):
            yield f"{len(answer['racks'])} racks, not {expected['racks']}"
        lines = self.request["lines"]
        replaced = [lines[int(line["line"].split("/")[2])]["partNumber"] for line in answer["replaceLines"]]
        if replaced != [expected["replace"]] if "replace" in expected else replaced:
            yield f"exchanged are {replaced}"
        excess = [line["partNumber"] for line in answer["excessLines"]]
        if excess != ([expected["excess"]] if "excess" in expected else []):
            yield f"in excess are {excess}"
        guesses = [line.get("didYouMean") for line in answer["lineStatus"] if line["status"] == "unknown"]
        if guesses != ([expected["unknown"]] if "unknown" in expected else []):
            yield f"unknown parts are taken for {guesses}"
        for finding in answer["findingLines"]:
            if ("clearedBy" in finding) == ("stays" in finding):
                yield f"{finding['rule']} neither stays nor is cleared, or both"
        status, again = service.post(self.path, answer["completedBasket"], self.headers)
        if status != 200:
            yield f"the completed basket gets {status}: {short(again)}"
            return
        for member in ("missingLines", "replaceLines", "excessLines"):
            if again[member]:
                yield f"the completed basket has {member}: {short(again[member])}"
        if again["verdicts"] != answer["completedVerdicts"]:
            yield f"the completed basket gets {again['verdicts']}, announced were {answer['completedVerdicts']}"

    def about_alternatives(self, service, answer):
        if bool(answer["alternatives"]) == ("conflict" in answer):
            yield "there are neither alternatives nor a conflict, or both"
        for number, alternative in enumerate(answer["alternatives"]):
            racks = racks_of(alternative)
            placed = [item["id"] for rack in racks for item in rack["rack"]["items"] if "position" in item or "onShelf" in item]
            for item in self.request["items"]:
                if placed.count(item["id"]) != 1:
                    yield f"alternative {number}: {item['id']} has {placed.count(item['id'])} places"
            for rack in racks:
                status, report = service.post("/v1/checks", rack["rack"], self.headers)
                if status != 200 or report["descriptionDigest"] != rack["report"]["descriptionDigest"]:
                    yield f"alternative {number}: its rack, checked again, gives {status} {short(report)}"
                    continue
                for finding in open_findings(report, "error"):
                    yield f"alternative {number} has an error: {finding['rule']}: {finding['message']}"

    def about_proposal(self, answer, expected):
        conflict = [p for r in answer.get("conflict", {}).get("requirements", []) for p in r["pointers"]]
        for pointer in expected.get("conflict", []):
            if pointer not in conflict:
                yield f"no requirement in conflict names {pointer}: {conflict}"
        if not answer["alternatives"]:
            if expected.get("cabinets", 0) != 0:
                yield f"conflict: {short(answer['conflict'])}"
            return
        first = answer["alternatives"][0]
        racks = racks_of(first)
        if len(racks) != expected.get("cabinets", len(racks)):
            yield f"{len(racks)} cabinets, not {expected['cabinets']}"
        cabinet = racks[0]["rack"]["cabinet"]
        resolved = {**cabinet, "heightU": racks[0]["report"]["figures"]["space"]["unitsTotal"]}
        for name, value in expected.get("cabinet", {}).items():
            if resolved.get(name) != value:
                yield f"{name} of the cabinet is {resolved.get(name)}, not {value}"
        verdicts = [rack["report"]["verdicts"]["product"] for rack in racks]
        if "product" in expected and max(verdicts, key=["release", "review", "hold"].index) != expected["product"]:
            yield f"verdicts on the product are {verdicts}, not {expected['product']}"
        place = {item["id"]: (number, item) for number, rack in enumerate(racks) for item in rack["rack"]["items"]}
        for item, (least, greatest) in expected.get("at", {}).items():
            u = place[item][1].get("position", {}).get("u", 0)
            if not least <= u <= greatest:
                yield f"{item} is at U{u}, not U{least} to U{greatest}"
        for group in expected.get("together", []):
            if len({place[item][0] for item in group}) != 1:
                yield f"{group} are not in one rack"
        added = [line["partNumber"] for line in first["addedLines"]]
        for part in expected.get("added", []):
            if part not in added:
                yield f"{part} is not among the added lines {added}"
        for part in expected.get("notAdded", []):
            if part in added:
                yield f"{part} is among the added lines"
        for rack in racks:
            for finding in open_findings(rack["report"], "warning"):
                if any(finding["rule"] == rule or (rule.endswith(".*") and finding["rule"].startswith(rule[:-1])) for rule in expected.get("noWarning", [])):
                    yield f"warning of {finding['rule']}: {finding['message']}"
        proven = [entry["name"] for entry in first["objective"] if entry["proven"]]
        for name in expected.get("proven", []):
            if name not in proven:
                yield f"{name} is not proven: {short(first['objective'], 600)}"

    def about_problem(self, answer):
        for expected in self.expect.get("problem", []):
            errors = answer.get("errors", [])
            if not any(all(error.get(name) == value for name, value in expected.items()) for error in errors):
                yield f"no error {short(expected)} among {short(errors)}"

    def about_findings(self, report):
        findings = report.get("findings", [])
        verdict = self.expect.get("verdict", report.get("verdict"))
        if report.get("verdict") != verdict:
            yield f"verdict is {report.get('verdict')}, not {verdict}"
        for expected in self.expect.get("findings", []):
            if not any(finding_agrees(finding, expected) for finding in findings):
                shown = ("rule", "severity", "pointers", "actual", "limit")
                others = [{name: f.get(name) for name in shown} for f in findings if f.get("rule") == expected["rule"]]
                yield f"no finding {short(expected)}; that rule found {short(others)}"
        for unwanted in self.expect.get("noFinding", []):
            for finding in findings:
                rule = finding.get("rule", "")
                if rule == unwanted or (unwanted.endswith(".*") and rule.startswith(unwanted[:-1])):
                    yield f"unexpected finding of {rule}: {finding.get('message')}"
        silent = {entry.get("rule") for entry in report.get("notAssessed", [])}
        for rule in self.expect.get("notAssessed", []):
            if rule not in silent:
                yield f"{rule} is not among notAssessed: {sorted(silent, key=str)}"

    def about_figures(self, report):
        for pointer, expected in self.expect.get("figures", {}).items():
            actual = look_up(report.get("figures", {}), pointer)
            if not agrees(actual, expected):
                shown = "absent" if actual is ABSENT else short(actual)
                yield f"figure {pointer} is {shown}, not {short(expected[0])} within {expected[1]}"

    def about_remedies(self, service, before):
        for rule in self.expect.get("remedyClears", []):
            finding = next((f for f in before.get("findings", []) if f.get("rule") == rule), None)
            if finding is None or not finding.get("remedies"):
                yield f"{rule} has no {'finding' if finding is None else 'remedy'}"
                continue
            patched = apply_patch(self.request, finding["remedies"][0]["patch"])
            status, answer = service.post(self.path, patched, self.headers)
            if status != 200:
                yield f"{rule}: the rack with its remedy is refused: {status} {short(answer)}"
                continue
            after = answer.get("report", answer)["findings"]
            if any(identity(f) == identity(finding) for f in after):
                yield f"{rule}: its remedy does not clear it"
            known = {identity(f) for f in before["findings"] if f["severity"] == "error"}
            for new in (f for f in after if f["severity"] == "error" and identity(f) not in known):
                yield f"{rule}: its remedy brings {new['rule']}: {new.get('message')}"


def complaints_about(file, service):
    try:
        return list(Case(json.loads(file.read_text(encoding="utf-8"))).complaints(service))
    except Exception as error:  # A case that can't be run is a failed case; the others still count.
        return [f"{type(error).__name__}: {error}"]


def main(arguments):
    if not arguments:
        sys.exit(__doc__)
    service = Service(arguments[0])
    places = [Path(place) for place in arguments[1:]] or [Path(__file__).resolve().parent / "cases"]
    files = [file for place in places for file in (sorted(place.glob("*.json")) if place.is_dir() else [place])]
    failed = 0
    for file in files:
        complaints = complaints_about(file, service)
        failed += bool(complaints)
        for complaint in complaints:
            print(f"{file.name}: {complaint}")
    print(f"{len(files) - failed} passed, {failed} failed")
    return 1 if failed or not files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
