"""A client without generated code: checks a rack, reads the findings, applies a remedy and checks again.

Arguments: address of the service, address of one whose product catalogue does not answer, folder of the examples.
Needs the standard library, and the package jsonpatch (Debian: python3-jsonpatch).
"""
import json
import pathlib
import sys
import urllib.error
import urllib.request

import jsonpatch

address, without_catalogue, examples = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3])


def check(rack, service=address):
    """Status, headers and document of a check."""
    request = urllib.request.Request(service + "/v1/checks", json.dumps(rack).encode(), {"Content-Type": "application/json"})
    try:
        with urllib.request.urlopen(request, timeout=30) as answer:
            return answer.status, answer.headers, json.load(answer)
    except urllib.error.HTTPError as refusal:
        return refusal.code, refusal.headers, json.load(refusal)


def expect(holds, what):
    if not holds:
        raise SystemExit(f"Not so: {what}.")


# Check, and read the findings.
rack = json.loads((examples / "rack-doors-do-not-close.json").read_text(encoding="utf-8"))
status, _, report = check(rack)
expect(status == 200 and report["verdict"] == "hold", "the order is held")
for one in report["findings"]:
    print(f"{one['severity']}: {one['message']}")

finding = next(f for f in report["findings"] if f["rule"] == "depth.cabinet-too-shallow")
expect(finding["actual"] == {"value": 800, "unit": "mm"}, "actual value and limit are numbers with a unit")
expect(finding["messageData"], "the values of the message are there by name")

# Apply the first remedy with a standard library, and check again.
changed = jsonpatch.apply_patch(rack, finding["remedies"][0]["patch"])
_, _, again = check(changed)
expect(all(f["fingerprint"] != finding["fingerprint"] for f in again["findings"]), "the remedy clears its finding")

# Every example is read, and its report.
for file in examples.glob("rack-*.json"):
    status, _, report = check(json.loads(file.read_text(encoding="utf-8")))
    expect(status == 200 and report["descriptionDigest"].startswith("sha-256:"), file.name)

# A description that is not valid: 422 with every fault.
cabinet = {"heightU": 42, "widthMm": 800, "depthMm": 1000}
status, _, refused = check({"cabinet": cabinet, "items": [{"id": "wave-pc", "heightU": 4}, {"id": "wave-pc", "heightU": 2}]})
expect(status == 422, "the description is refused")
expect(("/items/1/id", "duplicate-id") in [(e["pointer"], e["code"]) for e in refused["errors"]], "the fault has its pointer")

# A part number while the product catalogue does not answer: 503, to be repeated later.
status, headers, unavailable = check({"cabinet": {"partNumber": "QWL-CAB-42-8-10"}, "items": []}, without_catalogue)
expect(status == 503 and unavailable["type"] == "/docs/problems/unavailable", "the catalogue does not answer")
expect(int(headers["Retry-After"]) > 0, "Retry-After says when to repeat")
