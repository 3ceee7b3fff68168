"""Runs the sample code of the documentation as the pages of a running service show it.

Usage: samples.py ADDRESS EXAMPLES FOLDER
"""
import html
import json
import pathlib
import re
import socket
import subprocess
import sys
import time
from urllib.request import Request, urlopen

address, examples, folder = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
SAMPLE = re.compile(r'<pre data-copy="(\w+)"(?: data-base="([^"]*)")?><code>(.*?)</code>', re.S)


def samples(page: str) -> dict[str, str]:
    """The samples of a page by language, with the address of the service as its script puts it in."""
    text = urlopen(f"{address}/{page}").read().decode()
    return {language: html.unescape(code).replace(base or "\0", address + "/") for language, base, code in SAMPLE.findall(text)}


def run(name: str, code: str, *command: str) -> str:
    """Runs a program in the folder, and returns what it prints."""
    (folder / name).write_text(code)
    return subprocess.run([*command, name], cwd=folder, check=True, capture_output=True, text=True, timeout=180).stdout


quick = samples("docs")
assert set(quick) == {"json", "shell", "csharp", "typescript", "python"}, quick.keys()
shell = json.loads(run("quick.sh", quick["shell"], "bash", "-e"))
lines = [shell["verdict"], *(f"{f['severity']} {f['rule']}: {f['message']}" for f in shell["findings"])]
assert len(lines) > 2 and lines[0] == "hold", lines
for language, printed in {
    "csharp": run("quick.cs", quick["csharp"], "dotnet", "run"),
    "typescript": run("quick.mjs", quick["typescript"], "node"),
    "python": run("quick.py", quick["python"], "python3"),
}.items():
    assert printed.replace(":", "").splitlines() == [line.replace(":", "") for line in lines], (language, printed)
    print(f"{language}: {len(lines)} lines")

# The page for shops: what its code shows of each line.
basket = (examples / "basket-incomplete.json").read_text()
shop = f"""
const service = "{address}/";
const basket = {basket};
const show = (line, status, message, didYouMean, missing) => console.log(line.partNumber, status, missing.length);
{samples("docs/shop")["typescript"]}
"""
shown = run("shop.mjs", shop, "node").splitlines()
assert len(shown) == len(json.loads(basket)["lines"]) and any(not line.endswith(" 0") for line in shown), shown
print(f"shop: {len(shown)} lines")

# The mock: another service would not know its port, so the sample gets a free one.
with socket.socket() as free:
    free.bind(("127.0.0.1", 0))
    port = free.getsockname()[1]
code = samples("docs/reference/testing")["python"]
assert '"127.0.0.1", 5081' in code, code
(folder / "mock.py").write_text(code.replace("5081", str(port)))
mock = subprocess.Popen(["python3", "mock.py"], cwd=folder, stderr=subprocess.DEVNULL)
try:
    for _ in range(100):
        try:
            answer = urlopen(Request(f"http://127.0.0.1:{port}/v1/checks", b"{}", {"Content-Type": "application/json"}), timeout=5)
            break
        except OSError:
            time.sleep(0.1)
    else:
        raise SystemExit("the mock does not answer")
    assert answer.status == 200 and json.load(answer)["verdict"] in ("release", "review", "hold")
    print("mock answers")
finally:
    mock.kill()
