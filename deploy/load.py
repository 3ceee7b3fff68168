#!/usr/bin/env python3
"""Posts a document again and again from several callers, each on one connection, and counts what comes back.

usage: load.py URL FILE REQUESTS [STOP_FILE]     Goes on past REQUESTS until STOP_FILE exists, if one is given.

A connection that the server closes in good order is opened again before the next request, as every HTTP client does.
"""
import collections, http.client, os, sys, threading, time, urllib.parse

URL, FILE, REQUESTS = urllib.parse.urlsplit(sys.argv[1]), sys.argv[2], int(sys.argv[3])
STOP = sys.argv[4] if len(sys.argv) > 4 else None
CALLERS = 8
BODY = open(FILE, "rb").read()
counts, lock = collections.Counter(), threading.Lock()
slowest = [0.0]


def is_done():
    return sum(counts.values()) >= REQUESTS and (STOP is None or os.path.exists(STOP))


def call():
    connection = http.client.HTTPConnection(URL.hostname, URL.port, timeout=60)
    while not is_done():
        started = time.monotonic()
        try:
            connection.request("POST", URL.path, BODY, {"Content-Type": "application/json"})
            answer = connection.getresponse()
            answer.read()
            result = str(answer.status)
        except (OSError, http.client.HTTPException) as fault:
            connection.close()
            result = type(fault).__name__
        with lock:
            counts[result] += 1
            slowest[0] = max(slowest[0], time.monotonic() - started)


callers = [threading.Thread(target=call) for _ in range(CALLERS)]
for caller in callers:
    caller.start()
for caller in callers:
    caller.join()
total, good = sum(counts.values()), counts["200"]
print(f"{CALLERS} callers, slowest answer {slowest[0]:.2f} s, {dict(counts)}")
print(f"{good} passed, {total - good} failed")
sys.exit(0 if good == total else 1)
