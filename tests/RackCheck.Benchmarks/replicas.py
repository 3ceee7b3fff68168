#!/usr/bin/env python3
"""Checks a second and processor time a check of one and two replicas, with and without the load balancer.

usage: replicas.py [--seconds N] [--warm N]     (10 s after 20 s; needs wrk, haproxy, taskset and two cores)

Settings of the image, everything on; a sound rack of 9.4 KB. On two cores the callers and the load balancer take their part of both. Any answer but 200 voids
the run.
"""
import argparse, contextlib, os, pathlib, subprocess, tempfile

from servers import OPEN_TO_ALL, ROOT, Server, post, processor, require_free, wait_until_ready

PORT = 5190
options = argparse.ArgumentParser()
options.add_argument("--seconds", type=int, default=10)
options.add_argument("--warm", type=int, default=20)
options = options.parse_args()


def run(name, replicas, balanced, client):
    """replicas: the cores of each. A replica refuses what waits in a queue that never empties, so that each has eight callers."""
    connections = 8 * len(replicas)
    with tempfile.TemporaryDirectory() as scratch, contextlib.ExitStack() as ends:
        servers = []
        for i, cores in enumerate(replicas):
            servers.append(Server(scratch, name, "src/RackCheck.Api", PORT + 1 + i, "/v1/checks", cores, **OPEN_TO_ALL))
            ends.callback(servers[-1].stop)
        pids, port, balancer = [s.process.pid for s in servers], servers[0].port, None
        if balanced:
            require_free(PORT)
            backend = pathlib.Path(scratch, "replicas.cfg")
            backend.write_text("backend replicas\n    balance leastconn\n    option http-buffer-request\n" + "".join(
                f"    server r{i} 127.0.0.1:{s.port}\n" for i, s in enumerate(servers)))
            balancer = subprocess.Popen(
                ["taskset", "-c", client, "haproxy", "-q", "-db", "-f", ROOT / "deploy/haproxy/haproxy.cfg", "-f", backend],
                env=dict(os.environ, BIND=f"127.0.0.1:{PORT}"), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            ends.callback(balancer.kill)
            port = PORT
            wait_until_ready("balancer", port)
        post(scratch, name, port, "/v1/checks", client, connections, options.warm)
        before, before_balancer = [processor(p) for p in pids], balancer and processor(balancer.pid)
        count, rate, slowest = post(scratch, name, port, "/v1/checks", client, connections, options.seconds)
        spent = 1e6 * sum(processor(p) - b for p, b in zip(pids, before)) / count
        passed = f"{1e6 * (processor(balancer.pid) - before_balancer) / count:.0f}" if balancer else "-"
        resident = [int(pathlib.Path(f"/proc/{p}/statm").read_text().split()[1]) * os.sysconf("SC_PAGE_SIZE") >> 20 for p in pids]
        print(f"| {name} | {rate:.0f} | {slowest:.0f} | {spent:.0f} | {passed} | {spent / 3600:.2f} | {', '.join(map(str, resident))} |", flush=True)


print("| replicas | checks a second | p99, ms | processor a check, us | of the load balancer, us | core hours a million checks | memory, MB |")
print("| --- | --- | --- | --- | --- | --- | --- |")
run("one, one core", ["0"], False, "1")
run("one, one core, behind HAProxy", ["0"], True, "1")
run("two on one core, behind HAProxy", ["0", "0"], True, "1")
run("one, both cores, behind HAProxy", ["0,1"], True, "0,1")
run("two, a core each, behind HAProxy", ["0", "1"], True, "0,1")
