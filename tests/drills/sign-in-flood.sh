#!/usr/bin/env bash
# A hundred passwords at once against a demo site of its own on this machine, while somebody works in it. One line says whether the day's
# pages stayed quick. Everything is stopped and removed at the end.
#   tests/drills/sign-in-flood.sh [seconds, 20 by default, 60 at most]
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
data=$(mktemp -d /tmp/hairclinic-drill-XXXXXX)
chmod 755 "$data"
port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
url=http://127.0.0.1:$port
site=
stop() {
  if [ -n "$site" ]; then kill -TERM "$site" 2>/dev/null; wait "$site" 2>/dev/null; fi
  rm -rf "$data"
}
trap stop EXIT
trap 'exit 130' INT TERM

if [ -z "${HAIRCLINIC_PUBLISHED:-}" ]; then
  HAIRCLINIC_PUBLISHED=$root/artifacts/site
  dotnet publish "$root/src/HairClinic.Web" -c Release -o "$HAIRCLINIC_PUBLISHED" -v quiet || exit 2
fi
cd "$HAIRCLINIC_PUBLISHED" || exit 2
Proxy__Addresses=127.0.0.1 dotnet HairClinic.Web.dll serve --demo --data "$data" --urls "$url" >"$data/site.log" 2>&1 &
site=$!
# Filling the demo comes before listening.
for _ in $(seq 400); do curl -fs "$url/ready" >/dev/null && break; sleep 1; done
curl -fs "$url/ready" >/dev/null || { cat "$data/site.log"; echo "FAIL: the site did not start."; exit 2; }
name=$(sed -n 's/^  \(.*\) (.*, Owner)$/\1/p' "$data/site.log" | head -n 1)
password=$(sed -n 's/^The password of each is //p' "$data/site.log")
dotnet run "$root/tests/drills/sign-in-flood.cs" -- --site "$url" --name "$name" --password "$password" --seconds "${1:-20}"
