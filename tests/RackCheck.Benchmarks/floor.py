#!/usr/bin/env python3
"""Compares a check with the floor: a bare web server that reads the same rack with the same serializer and answers as many bytes.

usage: floor.py [--rounds N] [--seconds N] [--warm N] [--at-least RATIO]     (5 rounds of 5 s; needs wrk, taskset and two cores)

Both have the settings of the image, run on one core in turn and are loaded from the other over 8 connections; any answer but 200 voids the run. Processor time
a request is read from /proc. Printed is the middle of the rounds, floor over service: 1 is as cheap as the floor. "in production" is with all that production has on, its log
written to a file; "quiet" is without request log. With --at-least the last line is "N passed, N failed".
"""
import argparse, statistics, sys, tempfile

from servers import OPEN_TO_ALL, Server

# Until the compiler is done on a core that has nothing but load: the floor after 6 s, the service after 10.
SERVER_CORE, CLIENT_CORE, CONNECTIONS, WARM_S = "0", "1", 8, 20
options = argparse.ArgumentParser()
options.add_argument("--rounds", type=int, default=5)
options.add_argument("--seconds", type=int, default=5)
options.add_argument("--warm", type=int, default=WARM_S)
options.add_argument("--at-least", type=float)
options = options.parse_args()


with tempfile.TemporaryDirectory() as scratch:
    ratios = {}
    for name, settings in (("in production", {}), ("quiet", {"Serilog__MinimumLevel__Default": "Warning"})):
        service = Server(scratch, name, "src/RackCheck.Api", 5097, "/v1/checks", SERVER_CORE, **OPEN_TO_ALL, **settings)
        floor = Server(scratch, "floor", "tests/RackCheck.Floor", 5098, "/floor", SERVER_CORE, "--bytes", str(service.answer()))
        service.load(options.warm, CLIENT_CORE, CONNECTIONS)
        floor.load(options.warm, CLIENT_CORE, CONNECTIONS)
        rounds = [
            tuple(server.load(options.seconds, CLIENT_CORE, CONNECTIONS) for server in (floor, service)) for _ in range(options.rounds)]
        (floor_us, floor_rate), (service_us, service_rate) = (tuple(statistics.median(r[side][i] for r in rounds) for i in (0, 1)) for side in (0, 1))
        ratios[name] = statistics.median(f[0] / s[0] for f, s in rounds)
        print(f"{name}: floor {floor_us:.0f} us and {floor_rate:.0f}/s, check {service_us:.0f} us and {service_rate:.0f}/s; ratio {ratios[name]:.3f} of processor time, {service_rate / floor_rate:.3f} of throughput", flush=True)
        service.stop()
        floor.stop()

if options.at_least:
    fails = sum(r < options.at_least for r in ratios.values())
    print(f"{len(ratios) - fails} passed, {fails} failed")
    sys.exit(1 if fails else 0)
