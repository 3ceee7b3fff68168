#!/usr/bin/env bash
# Starts a product service on this machine, and the rack check service with it in place of the catalogue file.
# Usage: product-service.sh [PORT OF THE PRODUCT SERVICE] [PORT OF THE RACK CHECK SERVICE]; default 5081 and 5080. Ctrl+C ends both.
#
#   curl -H 'Content-Type: application/json' --data '{"partNumbers":["QWL-CAB-42-8-10"]}' http://localhost:5081/v1/products/look-up
#   curl -H 'Content-Type: application/json' --data '{"cabinet":{"partNumber":"QWL-CAB-42-8-10"},"items":[]}' http://localhost:5080/v1/checks
#
# The product service can be made to fail; the second call then shows what the rack check service makes of it, and /metrics counts it:
#
#   curl -X PUT --data '{"kind":"slow","delayMs":3000}' http://localhost:5081/faults
#   curl -X PUT --data '{"kind":"busy","retryAfterS":30,"times":2}' http://localhost:5081/faults
#   curl -X PUT --data '{"kind":"none"}' http://localhost:5081/faults
#
# Any other kind is refused with a list of those that there are. What was looked up before is served from memory, also when it is out of date:
# set Catalogue__CacheSeconds=0 and Catalogue__StaleSeconds=0 to see the faults themselves. All Catalogue__* settings reach the service.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
products=${1:-5081}
checks=${2:-5080}

dotnet build tests/RackCheck.ProductService --nologo --verbosity quiet

dotnet tests/RackCheck.ProductService/bin/Debug/net10.0/RackCheck.ProductService.dll --urls "http://localhost:$products" &
service=$!
trap 'kill "$service" 2>/dev/null || true' EXIT

# The log and the docs page come from the project's folder.
cd src/RackCheck.Api
ASPNETCORE_ENVIRONMENT=Development Catalogue__BaseUrl="http://localhost:$products" \
  dotnet bin/Debug/net10.0/RackCheck.Api.dll --urls "http://localhost:$checks"
