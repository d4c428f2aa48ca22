import json

import jsonschema
import pytest

from selector.commands import cli as commands
from tests.dog import GONE, varied


@pytest.fixture
def schema(cli):
    def read(*args):
        done = cli.invoke(commands, ["schema", *args])
        assert done.exit_code == 0, done.output
        return json.loads(done.stdout)

    return read


def test_of_the_advice(schema):
    answer = schema()
    jsonschema.Draft202012Validator.check_schema(answer)
    for key in ("options", "rejected", "apart", "assumptions", "cautions", "verdict"):
        assert key in answer["required"]


@pytest.mark.parametrize(
    ("args", "keys"),
    [
        (("--temper",), {"rows", "wanted", "embrittlement", "origin", "assumed"}),
        (("--quench",), {"points", "depth_mm", "thickest_round_mm", "origin", "assumed"}),
        (("--flame",), {"verdict"}),
        (("--batch",), {"rows", "rack", "loads", "counts", "cautions"}),
    ],
)
def test_of_the_other_commands(schema, args, keys):
    answer = schema(*args)
    jsonschema.Draft202012Validator.check_schema(answer)
    assert keys <= set(answer["required"])


def test_of_the_requirement(schema):
    answer = schema("--requirement")
    jsonschema.Draft202012Validator.check_schema(answer)
    assert {"safety_use", "part", "zone", "load", "workshop"} == set(answer["required"])


def test_a_sound_requirement_keeps_to_its_schema(schema):
    answer = schema("--requirement")
    jsonschema.validate(varied({"priorities": {"points": {"cost": 3}}}), answer)
    for changes in (
        {"load.torque": 90},
        {"part.section.0.size": [25]},
        {"zone": GONE},
        {"part.quantity": 0},
    ):
        with pytest.raises(jsonschema.ValidationError, match=r"90|25|zone|0 is less"):
            jsonschema.validate(varied(changes), answer)


def test_an_unknown_key_breaks_the_requirement_schema(schema):
    answer = schema("--requirement")
    with pytest.raises(jsonschema.ValidationError, match="lode"):
        jsonschema.validate(varied({"lode": {}}), answer)
