#!/usr/bin/env bash
# Writes what the program is made of (CycloneDX, JSON) to artifacts/sbom/. Says so and goes on when it cannot: it needs the package registry.
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$root" || exit 0
out=$root/artifacts/sbom
mkdir -p "$out"
if dotnet tool restore >/dev/null && timeout 300 dotnet tool run dotnet-CycloneDX src/HairClinic.Web/HairClinic.Web.csproj \
  --output "$out" --filename hairclinic.cdx.json --output-format Json --disable-package-restore >"$out/log.txt" 2>&1; then
  echo "SBOM: artifacts/sbom/hairclinic.cdx.json, $(grep -c '"purl"' "$out/hairclinic.cdx.json") components."
else
  echo "SBOM: not made; artifacts/sbom/log.txt says why. The run goes on."
fi
exit 0
