#!/usr/bin/env bash
# Starts a demo site of its own on this machine, signs in as its owner, and lets three drills at it: our fuzzer, wapiti and sqlmap
# (Debian: apt-get install wapiti sqlmap). Everything stays on loopback and is stopped and removed at the end.
#   deploy/security/drills/scan.sh [minutes for each drill, 3 by default] [folder for the findings]
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
here=$root/deploy/security/drills
minutes=${1:-3}
out=${2:-$root/artifacts/drills}
mkdir -p "$out"
data=$(mktemp -d /tmp/hairclinic-drill-XXXXXX)
chmod 755 "$data"
port=$(python3 -c 'import socket; s = socket.socket(); s.bind(("127.0.0.1", 0)); print(s.getsockname()[1])')
url=http://127.0.0.1:$port
site=

# As behind a proxy that ends TLS: cookies, headers and redirects are those a browser gets.
ask() { curl -s -H "X-Forwarded-Proto: https" "$@"; }
# The cookies of a jar as one header, and the token of a page's first form.
of() { awk '$0 !~ /^# / && NF >= 7 { printf "%s%s=%s", sep, $6, $7; sep = "; " }' "$1"; }
token_of() { sed -n 's/.*name="__RequestVerificationToken" value="\([^"]*\)".*/\1/p' | head -n 1; }

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
Proxy__Addresses=127.0.0.1 dotnet HairClinic.Web.dll serve --demo --data "$data" --urls "$url" >"$out/site.log" 2>&1 &
site=$!
# Filling the demo comes before listening.
for _ in $(seq 400); do curl -fs "$url/ready" >/dev/null && break; sleep 1; done
curl -fs "$url/ready" >/dev/null || { echo "The site did not start: $out/site.log"; exit 2; }
for _ in $(seq 120); do grep -q 'The password of each is' "$out/site.log" && break; sleep 1; done

name=$(sed -n 's/^  \(.*\) (.*, Owner)$/\1/p' "$out/site.log" | head -n 1)
password=$(sed -n 's/^The password of each is //p' "$out/site.log")
jar=$data/cookies
token=$(ask -c "$jar" "$url/sign-in" | token_of)
ask -o /dev/null -b "$jar" -c "$jar" --data-urlencode "__RequestVerificationToken=$token" --data-urlencode "_handler=sign-in" \
  --data-urlencode "Input.Name=$name" --data-urlencode "Input.Password=$password" "$url/sign-in"
cookie=$(of "$jar")
echo "The demo site runs at $url; signed in as ${name:-nobody}: $(ask -o /dev/null -w '%{http_code}' -b "$jar" "$url/due") at /due."

# A client of the demo, let in by a link of their own.
own=$data/own-cookies
card=$(ask -b "$jar" "$url/due" | grep -oE '/clients/[0-9a-f-]+/card' | head -n 1)
mail=$(ask -b "$jar" "$url$card" | sed -n 's/.*mailto:\([^"]*\)".*/\1/p' | head -n 1)
token=$(ask -c "$own" "$url/my-hair/ask-link" | token_of)
ask -o /dev/null -b "$own" -c "$own" --data-urlencode "__RequestVerificationToken=$token" --data-urlencode "_handler=ask-link" \
  --data-urlencode "Input.Email=$mail" "$url/my-hair/ask-link"
for _ in $(seq 20); do
  link=$(ask "$url/my-hair/demo-letters" | grep -oE '/my-hair/open-link\?token=[A-Za-z0-9_-]+' | head -n 1)
  [ -n "$link" ] && break
  sleep 1
done
page=$(ask -b "$own" -c "$own" "$url$link")
token=$(token_of <<<"$page")
handler=$(sed -n 's/.*name="_handler" value="\([^"]*\)".*/\1/p' <<<"$page" | head -n 1)
ask -o /dev/null -b "$own" -c "$own" --data-urlencode "__RequestVerificationToken=$token" --data-urlencode "_handler=$handler" \
  --data-urlencode "Token=${link#*token=}" "$url$link"
echo "A client is let in: $(ask -o /dev/null -w '%{http_code}' -b "$own" "$url/my-hair") at /my-hair."

# Without ssrf, xxe and wapp: they ask a server outside. Without buster, nikto and brute_login_form: they only make noise.
# Debian's wapiti 3.0.4 trips over its own exclusions on Python 3.11, so that one function is mended on the way; and it asks for an
# encoding it cannot read, sees a page without links and stops there, so it is made to ask for none.
scan() {
  local report=$1 cookie=$2 start=$3
  shift 3
  timeout $((minutes * 60 + 120)) /usr/bin/python3 -c '
import fnmatch, re, sys
import wapitiCore.net.crawler as crawler
crawler.wildcard_translate = lambda pattern: re.compile(fnmatch.translate(pattern))
begin = crawler.Crawler.__init__
def plain(self, *args, **options):
    begin(self, *args, **options)
    self._session.headers["Accept-Encoding"] = "identity"
crawler.Crawler.__init__ = plain
from wapitiCore.main.wapiti import wapiti_main
sys.argv[0] = "wapiti"
wapiti_main()
' -u "$url$start" --scope domain -H "Cookie: $cookie" -H "X-Forwarded-Proto: https" --no-bugreport --flush-session --max-links-per-page 40 \
    -m backup,blindsql,cookieflags,crlf,csp,csrf,exec,file,htaccess,http_headers,methods,permanentxss,redirect,shellshock,sql,xss \
    -x "$url/sign-out" -x "$url/my-hair/sign-out" -x "$url/_framework/*" "$@" \
    --max-scan-time "$((minutes * 20))" --max-attack-time "$((minutes * 6 + 5))" \
    --store-session "$data/wapiti" --store-config "$data/wapiti-config" -v 1 -f json -o "$out/$report.json" >"$out/$report.log" 2>&1
  grep -a 'URLs and forms' "$out/$report.log"
  python3 - "$out/$report.json" <<'PY'
import json, sys
try:
    report = json.load(open(sys.argv[1]))
except OSError:
    sys.exit(print("wapiti wrote no report"))
for kind in ("vulnerabilities", "anomalies"):
    for name, rows in report[kind].items():
        for row in rows:
            print(f"{kind}: {name}: {row['method']} {row['path']} {row.get('parameter') or ''} {row['info']}")
PY
}

if command -v wapiti >/dev/null; then
  echo "== wapiti as owner, $minutes min"
  scan wapiti "$cookie" /due -s "$url/practice/overview" -s "$url/day" -s "$url/my-sign-in" -s "$url/find?q=a"
  echo "== wapiti as a client, $minutes min"
  scan wapiti-client "$(of "$own")" /my-hair -s "$url/my-hair/preferences" -s "$url/my-hair/choose-a-time"
fi

if command -v sqlmap >/dev/null; then
  echo "== sqlmap, $minutes min"
  timeout $((minutes * 60)) sqlmap -u "$url/find?q=a" --cookie="$cookie" --headers="X-Forwarded-Proto: https" --forms --crawl=2 --crawl-exclude="sign-out" --level=2 --risk=1 --batch \
    --csrf-token=__RequestVerificationToken --csrf-url="$url/change-password" --timeout=10 --retries=0 --threads=1 --flush-session --dbms=PostgreSQL \
    --output-dir="$data/sqlmap" >"$out/sqlmap.log" 2>&1
  grep -aE "is vulnerable|injectable|identified the following|all tested parameters do not appear" "$out/sqlmap.log" | sort | uniq -c
  echo "sqlmap: $(grep -ac 'testing URL\|testing form\|GET http\|POST http' "$out/sqlmap.log") targets looked at"
fi

# Last: it signs in again and again, which ends the sign-ins above.
echo "== fuzz, $minutes min"
(cd "$here" && timeout $((minutes * 60 + 180)) dotnet run fuzz.cs -- --site "$url" --minutes "$minutes" --seed "${SEED:-1}" --name "$name" --password "$password" --out "$out/fuzz.txt")

echo "== what the site itself wrote while this went on"
grep -cE '(fail|crit):' "$out/site.log" | sed 's/$/ errors in site.log/'
kill -0 "$site" 2>/dev/null && echo "The site is still up."
