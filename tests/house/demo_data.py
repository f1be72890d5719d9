# SPDX-License-Identifier: MIT
# The demo's results read by Python's own csv and json modules: both say the same, and the JSON meets its schema.
#   python3 demo_data.py PROGRAM OUT SCHEMAS
import copy
import csv
import json
import subprocess
import sys
from pathlib import Path

import jsonschema

program, out, schemas = sys.argv[1:]
subprocess.run([program, "--out", out], check=True, stdout=subprocess.DEVNULL)


def refuse_constant(text):
    raise SystemExit(f"a file has {text}, which JSON does not know")


def no_twice(pairs):
    keys = [k for k, _ in pairs]
    assert len(keys) == len(set(keys)), f"a key is given twice in {keys}"
    return dict(pairs)


def read(file):
    return json.loads(Path(file).read_text(encoding="utf-8"), parse_constant=refuse_constant, object_pairs_hook=no_twice)


def checked(kind):
    """A file of the demo and the validator of its schema, which it meets."""
    document, schema = read(Path(out) / f"{kind}.json"), read(Path(schemas) / f"{kind}.schema.json")
    validator = jsonschema.validators.validator_for(schema)
    validator.check_schema(schema)
    for error in validator(schema).iter_errors(document):
        sys.exit(f"{kind}.json: /{'/'.join(map(str, error.absolute_path))}: {error.message[:300]}")
    return document, validator(schema)


girder, _ = checked("girder")
results, validate = checked("results")
model = results["tables"]["model"][0]
assert model["bays"] == len(girder["girder"]["stations_m"]) - 1
assert [c["case"] for c in results["tables"]["cases"]] == [c["name"] for c in girder["load_cases"]]


# The schema refuses what it should: a missing column, one more, words for a number, an unknown table.
def refused(change):
    wrong = copy.deepcopy({**results, "tables": {k: v[:1] for k, v in results["tables"].items()}})
    change(wrong)
    assert not validate.is_valid(wrong), "the schema takes a wrong document"


for name, rows in results["tables"].items():
    for column in rows[0]:
        refused(lambda r: r["tables"][name][0].pop(column))
    refused(lambda r: r["tables"][name][0].update(more=1))
refused(lambda r: r["tables"]["cases"][0].update(load_x_N="5"))
refused(lambda r: r["tables"]["proof_rows"][0].update(utilisation=-1))
refused(lambda r: r["tables"].update(other=[]))
refused(lambda r: r.pop("version"))

# The CSV files hold the same cells in the same order.
cells = 0
for name, rows in results["tables"].items():
    with open(Path(out) / f"{name}.csv", newline="", encoding="utf-8") as file:
        lines = list(csv.reader(file, strict=True))
    assert lines[0] == list(rows[0]), f"{name}.csv has other columns"
    assert len(lines) == len(rows) + 1, f"{name}.csv has {len(lines) - 1} rows for {len(rows)}"
    for line, row in zip(lines[1:], rows):
        for cell, (column, value) in zip(line, row.items(), strict=True):
            cells += 1
            if value is None:
                same = cell == ""
            elif isinstance(value, bool):
                same = cell == str(value).lower()
            elif isinstance(value, (int, float)):
                same = float(cell) == value
            else:
                same = cell == ("inf" if value == "infinite" else value)
            assert same, f"{name}.csv, {column}: {cell!r} beside {value!r}"
print(f"{len(results['tables'])} tables, {cells} cells")
