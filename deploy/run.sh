#!/usr/bin/env bash
# Brings the site up on this machine, for trying it or for one practice. See deploy/README.md for servers.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
. "$root/deploy/setup.sh"

usage() {
  cat <<'TEXT'
Usage: bash deploy/run.sh [--empty] [--port N] [--data FOLDER]
  (nothing)       opens the site with an invented demo practice, in a folder of its own
  --empty         opens the site without demo data: a guide sets up your practice
  --port N        listens on http://127.0.0.1:N instead of 5080
  --data FOLDER   keeps the data in FOLDER
An outside PostgreSQL is used when ConnectionStrings__Program and ConnectionStrings__Migrator are set.
TEXT
}

start=--demo port=5080 data=
while [ $# -gt 0 ]; do
  case $1 in
    --empty) start=--empty ;;
    --port) port=${2:?--port needs a number}; shift ;;
    --data) data=${2:?--data needs a folder}; shift ;;
    -h | --help) usage; exit 0 ;;
    *) usage >&2; fail "Unknown option: $1" ;;
  esac
  shift
done
[[ $port =~ ^[0-9]+$ ]] || fail "--port needs a number, not '$port'."
# The demo never shares a folder with a real practice.
if [ -z "$data" ]; then
  data=$data_home/hairclinic
  if [ "$start" = --demo ]; then data=$data_home/hairclinic-demo; fi
fi
data=$(realpath -m "$data")

if (: <"/dev/tcp/127.0.0.1/$port") 2>/dev/null; then
  fail "Something already listens on port $port. Stop it, or choose another: --port N"
fi
need_dotnet
if [ -n "${ConnectionStrings__Program:-}" ]; then
  say "PostgreSQL: using the server that ConnectionStrings__Program names."
else
  need_postgres "$data"
fi

say "Building the site (the first time takes a minute or two)."
site=$root/artifacts/site
dotnet publish "$root/src/HairClinic.Web/HairClinic.Web.csproj" --configuration Release --output "$site" --verbosity quiet \
  || fail "The build failed; the messages above say why."

say "Data folder: $data"
say "Starting. Open http://127.0.0.1:$port in a browser; Ctrl-C stops the site and its database."
# The site finds its pages' files in the folder it is started from.
cd "$site"
exec dotnet HairClinic.Web.dll serve --data "$data" --urls "http://127.0.0.1:$port" "$start"
