#!/usr/bin/env python3
"""Runs a built service with little memory under racks that need much, beside callers with racks of their own and some that leave before the answer, and holds every answer to its caller.

usage: memory.py PATH_OF_RackCheck.Api.dll [ANSWERS] [HEAP_MB] [MINUTES]     (200,000 answers, 56 MB of heap, at most 30 minutes unless given)

When memory runs out, the service must end rather than go on; it is then started again, as an orchestrator would. Fails where an answer holds another
caller's reference, is not JSON, or has a status that nothing explains. The last line is "N passed, N failed".
"""
import http.client, json, os, pathlib, socket, subprocess, sys, threading, time

DLL = pathlib.Path(sys.argv[1]).resolve()
ANSWERS = int(sys.argv[2]) if len(sys.argv) > 2 else 200_000
HEAP_MB = int(sys.argv[3]) if len(sys.argv) > 3 else 56
END = time.monotonic() + 60 * (float(sys.argv[4]) if len(sys.argv) > 4 else 30)
CALLERS, HEAVY, LEAVING, BURST_S = 8, 6, 1, 5
CABINET = {"heightU": 42, "widthMm": 600, "depthMm": 600}
ids = [("x" * 58) + f"{i:04d}" for i in range(200)]
HEAP_OF_ITEMS = json.dumps({"cabinet": CABINET, "items": [
    {"id": i, "heightU": 1, "position": {"u": n % 60 - 10}, "body": {"widthMm": 470, "heightMm": 100, "depthMm": 900}, "massKg": 90,
     "power": {"ratedW": 5000, "plugs": ["C14"] * 8}, "heatW": 5000} for n, i in enumerate(ids)]})

with socket.socket() as free:
    free.bind(("127.0.0.1", 0))
    PORT = free.getsockname()[1]
wrong, lock, done, ends, left = [], threading.Lock(), [0], [0], [0]
stop = threading.Event()


def start():
    environment = dict(os.environ, ASPNETCORE_ENVIRONMENT="Development", DOTNET_GCHeapHardLimit=hex(HEAP_MB * 1024 * 1024), Serilog__MinimumLevel__Default="Fatal")
    return subprocess.Popen(["dotnet", str(DLL), "--urls", f"http://127.0.0.1:{PORT}"], cwd=DLL.parent, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)


def keep_running():
    service = start()
    while not stop.wait(0.1):
        if time.monotonic() > END:
            stop.set()
        if service.poll() is not None:
            ends[0] += 1
            service = start()
    service.terminate()
    service.wait(20)


def post(connection, body):
    connection.request("POST", "/v1/checks", body, {"Content-Type": "application/json"})
    answer = connection.getresponse()
    return answer.status, answer.read()


def own(caller):
    number = 0
    connection = http.client.HTTPConnection("127.0.0.1", PORT, timeout=60)
    while not stop.is_set():
        number += 1
        reference = f"caller-{caller}-{number}"
        try:
            status, body = post(connection, json.dumps({"reference": reference, "cabinet": CABINET, "items": [{"id": f"c{caller}", "heightU": 1, "position": {"u": 50}}]}))
        except (OSError, http.client.HTTPException):
            connection.close()
            time.sleep(0.05)
            continue
        try:
            document = json.loads(body)
            right = document.get("reference") == reference if status == 200 else status in (500, 503) and document.get("status") == status
        except ValueError:
            right = False
        with lock:
            done[0] += 1
            if not right:
                wrong.append(f"{reference}: {status} {body[:200]}")
            if done[0] >= ANSWERS or len(wrong) > 10:
                stop.set()


def heavy():
    """All at once every few seconds: together they need the most memory, and between them the other callers get most of the processor."""
    connection = http.client.HTTPConnection("127.0.0.1", PORT, timeout=60)
    while not stop.wait(BURST_S - time.monotonic() % BURST_S):
        try:
            post(connection, HEAP_OF_ITEMS)
        except (OSError, http.client.HTTPException):
            connection.close()
            time.sleep(0.2)


def leaving():
    """Asks what takes long and leaves before the answer, or while the request is sent: its computation is cancelled."""
    wait = 0
    while not stop.wait(0.2):
        wait = (wait + 7) % 50
        try:
            with socket.create_connection(("127.0.0.1", PORT), timeout=60) as connection:
                head = f"POST /v1/checks?apply=remedies HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\nContent-Length: {len(HEAP_OF_ITEMS)}\r\n\r\n"
                connection.sendall((head + HEAP_OF_ITEMS)[:None if wait % 3 else 5000].encode())
                time.sleep(wait / 1000)
            left[0] += 1
        except OSError:
            time.sleep(0.2)


threads = [threading.Thread(target=keep_running)] + [threading.Thread(target=own, args=(c,)) for c in range(CALLERS)] + [threading.Thread(target=heavy) for _ in range(HEAVY)] + [threading.Thread(target=leaving) for _ in range(LEAVING)]
for thread in threads:
    thread.start()
for thread in threads:
    thread.join()
print("\n".join(wrong))
print(f"{done[0]} answers to {CALLERS} callers beside {HEAVY} heavy ones; {left[0]} requests were left; the service ended {ends[0]} times for want of memory")
print(f"{done[0] - len(wrong)} passed, {len(wrong)} failed")
sys.exit(1 if wrong or not done[0] else 0)
