#!/usr/bin/env python3
"""Sends sixteen large racks at a time to a built service with little memory. It must not end, and must answer each with a report or a refusal.

usage: posts.py PATH_OF_RackCheck.Api.dll [ROUNDS] [HEAP_MB]     (10 rounds, 288 MB unless given)

The last line is "N passed, N failed".
"""
import collections, http.client, json, os, pathlib, socket, subprocess, sys, threading, time

DLL = pathlib.Path(sys.argv[1]).resolve()
ROUNDS = int(sys.argv[2]) if len(sys.argv) > 2 else 10
HEAP_MB = int(sys.argv[3]) if len(sys.argv) > 3 else 288
POSTS, BYTES = 16, 187_000
ids = [("x" * 58) + f"{i:04d}" for i in range(200)]
rack = {"cabinet": {"heightU": 42, "widthMm": 600, "depthMm": 600}, "items": [
    {"id": i, "heightU": 1, "position": {"u": n % 60 - 10}, "body": {"widthMm": 470, "heightMm": 100, "depthMm": 900}, "massKg": 90,
     "power": {"ratedW": 5000, "plugs": ["C14"] * 8}, "heatW": 5000, "cables": [{"diameterMm": 9, "count": 40}] * 12} for n, i in enumerate(ids)]}
body = json.dumps(rack)
body += " " * max(0, BYTES - len(body))

with socket.socket() as free:
    free.bind(("127.0.0.1", 0))
    port = free.getsockname()[1]
environment = dict(os.environ, ASPNETCORE_ENVIRONMENT="Development", DOTNET_GCHeapHardLimit=hex(HEAP_MB * 1024 * 1024), Serilog__MinimumLevel__Default="Fatal")
service = subprocess.Popen(["dotnet", str(DLL), "--urls", f"http://127.0.0.1:{port}"], cwd=DLL.parent, env=environment, stdout=subprocess.DEVNULL)
counts, slowest = collections.Counter(), [0.0]


def get(path):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    connection.request("GET", path)
    return connection.getresponse().status


def post():
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=300)
    try:
        connection.request("POST", "/v1/checks", body, {"Content-Type": "application/json"})
        answer = connection.getresponse()
        json.loads(answer.read())
        counts[str(answer.status)] += 1
    except (OSError, ValueError, http.client.HTTPException) as fault:
        counts[type(fault).__name__] += 1


def probe(stop):
    while not stop.wait(0.05):
        started = time.monotonic()
        get("/health/live")
        slowest[0] = max(slowest[0], time.monotonic() - started)


while service.poll() is None:
    try:
        if get("/health/ready") == 200:
            break
    except OSError:
        time.sleep(0.2)
stop = threading.Event()
prober = threading.Thread(target=probe, args=(stop,), daemon=True)
prober.start()
for _ in range(ROUNDS):
    posts = [threading.Thread(target=post) for _ in range(POSTS)]
    for thread in posts:
        thread.start()
    for thread in posts:
        thread.join()
stop.set()
prober.join(10)
resident = next(int(line.split()[1]) // 1024 for line in open(f"/proc/{service.pid}/status") if line.startswith("VmRSS")) if service.poll() is None else 0
ended = service.poll()
service.terminate()
service.wait(60)
good = counts["200"] + counts["503"] if ended is None else 0
print(f"{len(body)} bytes each, {dict(counts)}, slowest liveness {slowest[0]:.2f} s, {resident} MB resident, {'running' if ended is None else 'ended'}")
print(f"{good} passed, {ROUNDS * POSTS - good} failed")
sys.exit(0 if good == ROUNDS * POSTS else 1)
