#!/usr/bin/env python3
"""Sends one stream of checks to a built service: every line answered in order, memory flat, and nothing left behind by a client that leaves.

usage: stream.py PATH_OF_RackCheck.Api.dll [MB]     (1024 MB unless given)

Prints lines a second of the stream, and of single requests by as many callers as the stream has lines in work. The last line is "N passed, N failed".
"""
import http.client, json, os, pathlib, socket, subprocess, sys, threading, time

DLL = pathlib.Path(sys.argv[1]).resolve()
MB = int(sys.argv[2]) if len(sys.argv) > 2 else 1024
MOST_GROWTH_MB, SINGLES, BLOCK = 50, 4000, 64
rack = json.dumps(json.loads((pathlib.Path(__file__).parents[2] / "openapi/examples/rack-sound.json").read_text()), indent=1).replace("\n", " ").encode()
lines = MB * 1024 * 1024 // (len(rack) + 1)

with socket.socket() as free:
    free.bind(("127.0.0.1", 0))
    port = free.getsockname()[1]
environment = dict(os.environ, ASPNETCORE_ENVIRONMENT="Development", Serilog__MinimumLevel__Default="Fatal", RateLimit__PerMinute="0")
service = subprocess.Popen(["dotnet", str(DLL), "--urls", f"http://127.0.0.1:{port}"], cwd=DLL.parent, env=environment, stdout=subprocess.DEVNULL)
results = []


def judge(name, passed, detail=""):
    results.append(passed)
    print(("passed: " if passed else "FAILED: ") + name + (f" ({detail})" if detail else ""), flush=True)


def resident():
    return next(int(line.split()[1]) / 1024 for line in open(f"/proc/{service.pid}/status") if line.startswith("VmRSS"))


def head(path):
    return (f"POST {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n").encode()


def stream(count, path="/v1/checks/stream"):
    """Sends lines and reads the answers at the same time: their number and order, and the most memory."""
    connection = socket.create_connection(("127.0.0.1", port))

    def send():
        block = (rack + b"\n") * BLOCK
        connection.sendall(head(path))
        for left in range(count, 0, -BLOCK):
            part = block if left >= BLOCK else (rack + b"\n") * left
            connection.sendall(b"%x\r\n" % len(part) + part + b"\r\n")
        connection.sendall(b"0\r\n\r\n")

    sender = threading.Thread(target=send, daemon=True)
    sender.start()
    answer = http.client.HTTPResponse(connection, method="POST")
    answer.begin()
    seen, in_order, most = 0, answer.status == 200, 0.0
    for line in answer:
        seen += 1
        in_order = in_order and line.startswith(b'{"line":%d,"report":' % seen)
        if seen % 500 == 0:
            most = max(most, resident())
    sender.join(10)
    connection.close()
    return seen, in_order, most


def single(count):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
    for _ in range(count):
        connection.request("POST", "/v1/checks", rack, {"Content-Type": "application/json"})
        connection.getresponse().read()


while service.poll() is None:
    try:
        probe = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
        probe.request("GET", "/health/ready")
        if probe.getresponse().status == 200:
            break
    except OSError:
        time.sleep(0.2)

stream(2 * SINGLES + lines // 10)
before = resident()
started = time.monotonic()
seen, in_order, most = stream(lines)
took = time.monotonic() - started
judge(f"{lines} lines of {len(rack)} bytes answered in order", seen == lines and in_order, f"{seen} in {took:.0f} s, {seen / took:.0f}/s")
judge(f"memory grew by less than {MOST_GROWTH_MB} MB", most - before < MOST_GROWTH_MB, f"{before:.0f} MB before, {most:.0f} MB at most")

# Clients that leave in the middle of a line, with answers unread.
for _ in range(100):
    leaver = socket.create_connection(("127.0.0.1", port))
    part = (rack + b"\n") * 20 + rack[:50]
    leaver.sendall(head("/v1/checks/stream") + b"%x\r\n" % len(part) + part + b"\r\n")
    leaver.close()
time.sleep(2)
seen, in_order, _ = stream(100)
judge("a stream is taken after 100 that broke off", seen == 100 and in_order)
after = resident()
judge("they left nothing behind", after - most < MOST_GROWTH_MB, f"{after:.0f} MB after")

callers = [threading.Thread(target=single, args=(SINGLES // 8,)) for _ in range(8)]
started = time.monotonic()
for caller in callers:
    caller.start()
for caller in callers:
    caller.join()
alone = SINGLES / (time.monotonic() - started)
started = time.monotonic()
stream(SINGLES)
print(f"single requests by 8 callers in this script {alone:.0f}/s, a stream {SINGLES / (time.monotonic() - started):.0f}/s")
judge("still running", service.poll() is None)
service.kill()
print(f"{sum(results)} passed, {len(results) - sum(results)} failed")
sys.exit(0 if all(results) else 1)
