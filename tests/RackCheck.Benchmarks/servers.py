"""Servers on chosen cores with the settings of the image, and the load that is put on them: for floor.py and replicas.py."""
import http.client, os, pathlib, signal, socket, subprocess, sys, time

ROOT = pathlib.Path(__file__).resolve().parents[2]
RACK = ROOT / "openapi/examples/rack-sound.json"
# As in the Dockerfile.
OF_THE_IMAGE = dict(DOTNET_ENVIRONMENT="Production", ASPNETCORE_ENVIRONMENT="Production", DOTNET_GCgen0size="0x2000000")
OPEN_TO_ALL = dict(Access__Anonymous="true", RateLimit__PerMinute="0")
TICKS = os.sysconf("SC_CLK_TCK")


def processor(pid):
    """Processor time of a process, s."""
    fields = pathlib.Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / TICKS


def wait_until_ready(name, port):
    for _ in range(600):
        try:
            if status(port, "/health/ready") == 200:
                return
        except OSError:
            pass
        time.sleep(0.1)
    sys.exit(f"{name} is not ready")


def require_free(port):
    """A server of an earlier run that still listens would answer in place of the new one, and be measured."""
    with socket.socket() as probe:
        if probe.connect_ex(("127.0.0.1", port)) == 0:
            sys.exit(f"something listens on port {port} already")


def status(port, path):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=5)
    connection.request("GET", path)
    return connection.getresponse().status


def post(scratch, name, port, path, cores, connections, seconds):
    """Posts a sound rack again and again. Returns the number of answers, answers a second, and the 99th percentile of their times, ms."""
    script = pathlib.Path(scratch, "post.lua")
    script.write_text(f'wrk.method = "POST"\nwrk.headers["Content-Type"] = "application/json"\nlocal file = io.open("{RACK}")\nwrk.body = file:read("*a")\n')
    out = subprocess.run(
        ["taskset", "-c", cores, "wrk", "-t1", f"-c{connections}", f"-d{seconds}s", "--latency", "-s", script, f"http://127.0.0.1:{port}{path}"],
        capture_output=True, text=True, check=True).stdout
    if "Non-2xx" in out or "Socket errors" in out:
        sys.exit(f"{name}: not every answer was 200\n{out}")
    slowest = next(line.split()[1] for line in out.splitlines() if line.split()[:1] == ["99%"])
    unit = 0.001 if slowest.endswith("us") else 1 if slowest.endswith("ms") else 1000
    return int(out.split(" requests in")[0].split()[-1]), float(out.split("Requests/sec:")[1].split()[0]), float(slowest.rstrip("msu")) * unit


class Server:
    """A server of this repository on some cores."""

    def __init__(self, scratch, name, project, port, path, cores, *arguments, **environment):
        self.scratch, self.name, self.port, self.path = scratch, name, port, path
        folder = ROOT / project
        require_free(port)
        self.log = open(os.path.join(scratch, f"{name}-{port}.log".replace(" ", "-")), "wb")
        self.process = subprocess.Popen(
            ["taskset", "-c", cores, "dotnet", f"bin/Release/net10.0/{folder.name}.dll", "--urls", f"http://127.0.0.1:{port}", *arguments],
            cwd=folder, env=dict(os.environ, **OF_THE_IMAGE, **environment), stdout=self.log, stderr=self.log)
        wait_until_ready(name, port)

    def answer(self):
        """Length of the answer, bytes."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=5)
        connection.request("POST", self.path, RACK.read_bytes(), {"Content-Type": "application/json"})
        response = connection.getresponse()
        body = response.read()
        if response.status != 200:
            sys.exit(f"{self.name} answers {response.status}")
        return len(body)

    def load(self, seconds, cores, connections):
        """Processor time a request in us, and requests a second."""
        before = processor(self.process.pid)
        count, rate, _ = post(self.scratch, self.name, self.port, self.path, cores, connections, seconds)
        return 1e6 * (processor(self.process.pid) - before) / count, rate

    def stop(self):
        self.process.send_signal(signal.SIGTERM)
        self.process.wait(60)
