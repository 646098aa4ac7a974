"""Counts what was noticed, by subject, and names what was not where it could hurt."""
import fnmatch
import json
import pathlib
import re
import sys

GOAL = 80

here, reports, subjects = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2]), sys.argv[3:]


def lines(name):
    return [l for l in (here / name).read_text().splitlines() if l and not l.startswith("#")]


careful = lines("careful.txt")
# path:line kind | why nothing that anybody can see depends on it
equal = {l.split("|")[0].strip() for l in lines("equal.txt")}
total, wrong = [0, 0], []
# What a row read from the database writes over before anybody sees it.
INITIAL = re.compile(r"\{ get; (private )?set; \} = \"\";")
report = json.loads((reports / "all" / "reports" / "mutation-report.json").read_text())
for subject in subjects:
    noticed, missed = 0, []
    for path, file in report["files"].items():
        path = path.split("HairClinic.Domain/")[-1]
        if path != subject and not path.startswith(subject + "/"):
            continue
        for mutant in file["mutants"]:
            line = file["source"].split("\n")[mutant["location"]["start"]["line"] - 1]
            where = f"{path}:{mutant['location']['start']['line']} {mutant['mutatorName']}"
            if mutant["status"] in ("Killed", "Timeout"):
                noticed += 1
            elif mutant["status"] in ("Survived", "NoCoverage") and where not in equal and not INITIAL.search(line):
                missed.append((where, mutant.get("replacement", "").split("\n")[0][:90], path))
    of = noticed + len(missed)
    total = [total[0] + noticed, total[1] + of]
    print(f"{subject:30} {noticed:5} of {of:5} noticed" + (f", {100 * noticed / of:3.0f} %" if of else ""))
    for where, became, path in missed:
        hurts = any(fnmatch.fnmatch(path, pattern) for pattern in careful)
        print(f"  {'!' if hurts else ' '} {where}: {became}")
        if hurts:
            wrong.append(where)
share = 100 * total[0] / total[1] if total[1] else 0
good = share >= GOAL and not wrong
print(f"{'PASS' if good else 'FAIL'}: {total[0]} of {total[1]} noticed, {share:.0f} % (goal {GOAL} %); {len(wrong)} unnoticed where a cure, a block, a lot or a date hangs on it")
sys.exit(0 if good else 1)
