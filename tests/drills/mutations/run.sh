#!/usr/bin/env bash
# Breaks the Domain in small ways, one at a time, and sees whether a test of its own notices: a report by subject and one verdict line.
#   bash tests/drills/mutations/run.sh [--save] [subject ...]      a subject is a folder of src/HairClinic.Domain, or a file in one; all folders without
# Works on a copy of the last commit; finding out which test touches what takes two minutes, the rest minutes for a subject (Wear and Replacement are the long ones).
set -uo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root=$(cd "$here/../../.." && pwd)
version=5.1.0
tool=$root/artifacts/tools/stryker-$version

save=
if [ "${1:-}" = --save ]; then save=1; shift; fi
subjects=("$@")
if [ ${#subjects[@]} -eq 0 ]; then mapfile -t subjects < <(cd "$root/src/HairClinic.Domain" && ls -d */ | tr -d / | grep -vxE 'bin|obj'); fi

[ -x "$tool/dotnet-stryker" ] || dotnet tool install dotnet-stryker --version "$version" --tool-path "$tool" || { echo "NOT TRIED: the tool is not to be had"; exit 2; }
copy=$(mktemp -d)
trap 'git -C "$root" worktree remove --force "$copy/tree" >/dev/null 2>&1; rm -rf "$copy"' EXIT
git -C "$root" worktree add --quiet --detach "$copy/tree" HEAD || exit 2

cd "$copy/tree"
# The tool reaches tests of this framework only where they run by themselves: through the other runner it breaks nothing, and all survives.
sed -i 's/xunit\.v3\.mtp-off/xunit.v3/' src/Directory.Packages.props tests/HairClinic.Domain.Tests/HairClinic.Domain.Tests.csproj
sed -i '/xunit\.runner\.visualstudio/d; /Microsoft\.NET\.Test\.Sdk/d' tests/HairClinic.Domain.Tests/HairClinic.Domain.Tests.csproj
cd tests/HairClinic.Domain.Tests
mutate=()
for subject in "${subjects[@]}"; do
  case $subject in
    *.cs) mutate+=(--mutate "**/$subject") ;;
    *) mutate+=(--mutate "**/$subject/**/*.cs") ;;
  esac
done
"$tool/dotnet-stryker" --project HairClinic.Domain.csproj "${mutate[@]}" --test-runner mtp --concurrency "$(nproc)" \
  --reporter json --reporter dots --output "$copy/all" --skip-version-check >"$copy/log" 2>&1 || {
  tail -n 25 "$copy/log"
  echo "NOT TRIED: the tool gave up"
  exit 2
}
day=$(date -u +%F)
python3 "$here/report.py" "$here" "$copy" "${subjects[@]}" | tee "$copy/report.txt"
verdict=${PIPESTATUS[0]}
if [ -n "$save" ]; then mkdir -p "$here/results"; cp "$copy/report.txt" "$here/results/$day.txt"; fi
exit "$verdict"
