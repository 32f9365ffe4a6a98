"""Validates the demo plans and the corpus of bad ones against the published schema.

Of the files in tests/corpus/plan, form_* break the schema, sense_* and good_* do not; the others are
no JSON or are of no concern here. The C++ tests hold the reader to the same files.
"""

import json
import pathlib
import sys

import jsonschema

root = pathlib.Path(sys.argv[1])
schema = json.loads((root / "src/plan/plan.schema.json").read_text(encoding="utf-8"))
jsonschema.Draft202012Validator.check_schema(schema)
validator = jsonschema.Draft202012Validator(schema)


def first_error(path):
    plan = json.loads(path.read_text(encoding="utf-8"))
    error = next(validator.iter_errors(plan), None)
    return error and f"{error.json_path}: {error.message[:200]}"


corpus = root / "tests/corpus/plan"
valid = [*root.glob("demo/*.json"), *corpus.glob("good_*.json"), *corpus.glob("sense_*.json")]
invalid = list(corpus.glob("form_*.json"))
faults = [f"{path}: {fault}" for path in valid if (fault := first_error(path))]
faults += [f"{path}: the schema accepts it" for path in invalid if not first_error(path)]
print("\n".join(faults) or f"{len(valid)} valid, {len(invalid)} refused")
sys.exit(1 if faults or len(valid) < 20 or len(invalid) < 20 else 0)
