#!/usr/bin/env bash
# Loads the built service with wrk and compares with its liveness endpoint, which does nothing but answer.
# Usage: load.sh [SECONDS]. Needs wrk; only ever talks to this machine.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
seconds=${1:-10}
port=5097
dotnet build src/RackCheck.Api -c Release -v quiet --nologo
(cd src/RackCheck.Api && Serilog__MinimumLevel__Default=Warning RateLimit__PerMinute=0 exec dotnet bin/Release/net10.0/RackCheck.Api.dll --urls "http://127.0.0.1:$port") &
service=$!
scratch=$(mktemp -d)
trap 'kill "$service" 2>/dev/null || true; rm -rf "$scratch"' EXIT
until curl --silent --fail --output /dev/null "http://127.0.0.1:$port/health/ready"; do sleep 0.2; done

cat >"$scratch/check.lua" <<'LUA'
wrk.method = "POST"
wrk.headers["Content-Type"] = "application/json"
local file = io.open(os.getenv("RACK"))
wrk.body = file:read("*a")
LUA

rate() { wrk --threads 1 --connections 16 --duration "${seconds}s" "$@" | tee "$scratch/out" >&2; awk '/Requests\/sec/ { print $2 }' "$scratch/out"; }

export RACK=openapi/examples/rack-sound.json
# The compiler optimizes while the service is loaded; on a busy core that takes a while.
seconds=15 rate --script "$scratch/check.lua" "http://127.0.0.1:$port/v1/checks" >/dev/null
bare=$(rate "http://127.0.0.1:$port/health/live")
check=$(rate --script "$scratch/check.lua" "http://127.0.0.1:$port/v1/checks")
awk -v bare="$bare" -v check="$check" 'BEGIN { printf "bare %.0f/s, check %.0f/s, ratio %.2f\n", bare, check, check / bare }'
