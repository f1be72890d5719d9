# SPDX-License-Identifier: MIT
# Girder files of random girders, written by the test program, and those of the fuzzer's corpus against their schema; and
# the schema and the reader against each other: what the schema refuses, the reader refuses too.
#   python3 girder_schema.py TESTS READER OUT SCHEMA CORPUS
import copy
import json
import os
import random
import subprocess
import sys
from pathlib import Path

import jsonschema

tests, reader, out, schema_file, corpus = sys.argv[1:]
out = Path(out)
subprocess.run([tests, "--source-file=*/json_girder_file.cpp"], check=True, stdout=subprocess.DEVNULL,
               env={**os.environ, "BAYWORK_KEEP_JSON": str(out / "written")})
schema = json.loads(Path(schema_file).read_text(encoding="utf-8"))
validator = jsonschema.validators.validator_for(schema)
validator.check_schema(schema)
validate = validator(schema)


def places(value, path=()):
    yield path
    children = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, child in children:
        yield from places(child, path + (key,))


def at(document, path):
    for key in path:
        document = document[key]
    return document


files = sorted((out / "written").glob("*.json"))
assert len(files) > 20, f"only {len(files)} files were written"
sound = {}
for file in files + sorted(Path(corpus).glob("*.json")):
    try:
        document = json.loads(file.read_bytes().decode("utf-8"))
    except ValueError:
        continue  # the corpus has files that are wrong
    errors = list(validate.iter_errors(document))
    if errors and file.parent == out / "written":
        sys.exit(f"{file}: /{'/'.join(map(str, errors[0].absolute_path))}: {errors[0].message[:300]}")
    if not errors:
        sound[file.name] = document
to_change = ("actions.json", "layouts_ladder.json", "layouts.json", "splice_pin.json", "splice_plates.json", "splice_spigot.json",
             "welds_across.json")
assert {"open_ladder.json", *to_change} <= sound.keys(), "the corpus is of another version"


def keys_in(value, of_schema=False):
    found = set()
    if isinstance(value, dict):
        here = value.get("properties", {}) if of_schema else value
        found |= set(here)
    for child in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        found |= keys_in(child, of_schema)
    return found


# What no file of the corpus has, the fuzzer would have to find by itself.
in_corpus = set().union(*(keys_in(d) for name, d in sound.items() if (Path(corpus) / name).exists()))
missing = keys_in(schema, of_schema=True) - in_corpus
assert not missing, f"no sound file of the corpus has: {sorted(missing)}"

# One thing changed at a time, anywhere in a sound file.
random.seed(5)
wrong = out / "wrong"
wrong.mkdir(parents=True, exist_ok=True)
refused = 0
for name in to_change:
    document = sound[name]
    all_places = [p for p in places(document) if p]
    for i, path in enumerate(random.sample(all_places, min(150, len(all_places)))):
        changed = copy.deepcopy(document)
        where = at(changed, path[:-1])
        way = random.randrange(4)
        if way == 0:
            del where[path[-1]]
        elif way == 1:
            where[path[-1]] = random.choice([None, -1, "word", [], {}, True])
        elif way == 2 and isinstance(where, dict):
            where["more"] = 1
        else:
            where[path[-1]] = [where[path[-1]]]
        if not validate.is_valid(changed):
            refused += 1
            (wrong / f"{name}_{i}.json").write_text(json.dumps(changed), encoding="utf-8")
assert refused > 400, f"the schema refuses only {refused} changes"
said = subprocess.run([reader, str(wrong)], check=True, capture_output=True, text=True).stdout
assert f"{refused} files, 0 read" in said, f"{refused} files are refused by the schema; the reader says: {said}"
print(f"{len(files)} files meet the schema; {refused} changed ones are refused by it and by the reader")
