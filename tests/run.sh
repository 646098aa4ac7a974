#!/usr/bin/env bash
# Runs every test project and ends with one line: N passed, N failed. The exit code is 0 only when all passed.
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/deploy/setup.sh"
cd "$root"

projects=(HairClinic.Domain.Tests HairClinic.Web.Tests HairClinic.Browser.Tests)
results=$root/artifacts/test-results
passed=0 failed=0 skipped=0

finish() {
  local line="$passed passed, $failed failed"
  if [ "$skipped" -gt 0 ]; then line="$line, $skipped skipped"; fi
  say "$line"
  [ "$failed" -eq 0 ]
  exit
}

need_chromium() {
  command -v chromium >/dev/null && return
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    say "Chromium: installing Debian's."
    apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium >/dev/null && return
  fi
  say "Chromium is missing, so the browser tests will fail. Install it: apt-get install chromium"
}

# The number an attribute of the results' summary line holds.
counter() { sed -n "s/.*<Counters [^>]*\b$2=\"\([0-9]*\)\".*/\1/p" "$1" | head -n 1; }

run() {
  local project=$1 trx=$results/$1.trx status=0 total ran good
  say "== $project"
  dotnet test "tests/$project/$project.csproj" --configuration Release --no-build \
    --logger "trx;LogFileName=$trx" --logger "console;verbosity=minimal" || status=$?
  if [ -f "$trx" ]; then
    total=$(counter "$trx" total) ran=$(counter "$trx" executed) good=$(counter "$trx" passed)
  fi
  # No result, or no test at all, is a failure: silence proves nothing.
  if [ "${total:-0}" -eq 0 ]; then
    say "$project ran no test (exit code $status)."
    failed=$((failed + 1))
    return
  fi
  passed=$((passed + good)) failed=$((failed + ran - good)) skipped=$((skipped + total - ran))
  if [ "$status" -ne 0 ] && [ "$ran" -eq "$good" ]; then
    say "$project ended with exit code $status although no test failed."
    failed=$((failed + 1))
  fi
}

need_dotnet
need_postgres /nowhere
need_chromium
rm -rf "$results"
if ! dotnet build HairClinic.sln --configuration Release --verbosity quiet; then
  say "The build failed: no test was run."
  failed=${#projects[@]}
  finish
fi
bash "$root/deploy/security/sbom.sh"
for project in "${projects[@]}"; do run "$project"; done
finish
