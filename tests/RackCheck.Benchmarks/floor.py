#!/usr/bin/env python3
"""Compares a check with the floor: a bare web server that reads the same rack with the same serializer and answers as many bytes.

usage: floor.py [--rounds N] [--seconds N] [--warm N] [--at-least RATIO]     (5 rounds of 5 s; needs wrk, taskset and two cores)

Both have the settings of the image, run on one core in turn and are loaded from the other over 8 connections; any answer but 200 voids the run. Processor time
a request is read from /proc. Printed is the middle of the rounds, floor over service: 1 is as cheap as the floor. "in production" is with all that production has on, its log
written to a file; "quiet" is without request log. With --at-least the last line is "N passed, N failed".
"""
import argparse, http.client, json, os, pathlib, signal, statistics, subprocess, sys, tempfile, time

ROOT = pathlib.Path(__file__).resolve().parents[2]
RACK = ROOT / "openapi/examples/rack-sound.json"
# Until the compiler is done on a core that has nothing but load: the floor after 6 s, the service after 10.
SERVER_CORE, CLIENT_CORE, CONNECTIONS, WARM_S = "0", "1", 8, 20
# As in the Dockerfile.
OF_THE_IMAGE = dict(DOTNET_ENVIRONMENT="Production", ASPNETCORE_ENVIRONMENT="Production", DOTNET_GCgen0size="0x2000000")
TICKS = os.sysconf("SC_CLK_TCK")
options = argparse.ArgumentParser()
options.add_argument("--rounds", type=int, default=5)
options.add_argument("--seconds", type=int, default=5)
options.add_argument("--warm", type=int, default=WARM_S)
options.add_argument("--at-least", type=float)
options = options.parse_args()


class Server:
    def __init__(self, name, project, port, path, *arguments, **environment):
        self.name, self.port, self.path = name, port, path
        folder = ROOT / project
        self.log = open(os.path.join(scratch, name.replace(" ", "-") + ".log"), "wb")
        self.process = subprocess.Popen(
            ["taskset", "-c", SERVER_CORE, "dotnet", f"bin/Release/net10.0/{folder.name}.dll", "--urls", f"http://127.0.0.1:{port}", *arguments],
            cwd=folder, env=dict(os.environ, **OF_THE_IMAGE, **environment), stdout=self.log, stderr=self.log)
        for _ in range(600):
            try:
                if self.get("/health/ready") == 200:
                    return
            except OSError:
                pass
            time.sleep(0.1)
        sys.exit(f"{name} is not ready")

    def get(self, path):
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=5)
        connection.request("GET", path)
        return connection.getresponse().status

    def answer(self):
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=5)
        connection.request("POST", self.path, RACK.read_bytes(), {"Content-Type": "application/json"})
        response = connection.getresponse()
        body = response.read()
        if response.status != 200:
            sys.exit(f"{self.name} answers {response.status}")
        return len(body)

    def processor(self):
        fields = pathlib.Path(f"/proc/{self.process.pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / TICKS

    def load(self, seconds):
        """Processor time a request in us, and requests a second."""
        before = self.processor()
        out = subprocess.run(
            ["taskset", "-c", CLIENT_CORE, "wrk", "-t1", f"-c{CONNECTIONS}", f"-d{seconds}s", "-s", script, f"http://127.0.0.1:{self.port}{self.path}"],
            capture_output=True, text=True, check=True).stdout
        spent, count = self.processor() - before, int(out.split(" requests in")[0].split()[-1])
        if "Non-2xx" in out or "Socket errors" in out:
            sys.exit(f"{self.name}: not every answer was 200\n{out}")
        return 1e6 * spent / count, float(out.split("Requests/sec:")[1].split()[0])

    def stop(self):
        self.process.send_signal(signal.SIGTERM)
        self.process.wait(60)


with tempfile.TemporaryDirectory() as scratch:
    script = os.path.join(scratch, "post.lua")
    pathlib.Path(script).write_text(
        f'wrk.method = "POST"\nwrk.headers["Content-Type"] = "application/json"\nlocal file = io.open("{RACK}")\nwrk.body = file:read("*a")\n')
    open_to_all = dict(Access__Anonymous="true", RateLimit__PerMinute="0")
    ratios = {}
    for name, settings in (("in production", {}), ("quiet", {"Serilog__MinimumLevel__Default": "Warning"})):
        service = Server(name, "src/RackCheck.Api", 5097, "/v1/checks", **open_to_all, **settings)
        floor = Server("floor", "tests/RackCheck.Floor", 5098, "/floor", "--bytes", str(service.answer()))
        service.load(options.warm)
        floor.load(options.warm)
        rounds = [(floor.load(options.seconds), service.load(options.seconds)) for _ in range(options.rounds)]
        (floor_us, floor_rate), (service_us, service_rate) = (tuple(statistics.median(r[side][i] for r in rounds) for i in (0, 1)) for side in (0, 1))
        ratios[name] = statistics.median(f[0] / s[0] for f, s in rounds)
        print(f"{name}: floor {floor_us:.0f} us and {floor_rate:.0f}/s, check {service_us:.0f} us and {service_rate:.0f}/s; ratio {ratios[name]:.3f} of processor time, {service_rate / floor_rate:.3f} of throughput", flush=True)
        service.stop()
        floor.stop()

if options.at_least:
    fails = sum(r < options.at_least for r in ratios.values())
    print(f"{len(ratios) - fails} passed, {fails} failed")
    sys.exit(1 if fails else 0)
