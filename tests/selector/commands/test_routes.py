import json

from selector.commands import cli as commands


def test_every_route_is_listed_with_what_it_needs(cli, catalog):
    done = cli.invoke(commands, ["routes"])
    assert done.exit_code == 0
    for route in catalog.routes.values():
        assert route.slug in done.stdout
    assert "needs one of: " in done.stdout


def test_json_holds_the_same_routes(cli, catalog):
    answer = json.loads(cli.invoke(commands, ["routes", "--json"]).stdout)
    assert [route["slug"] for route in answer] == list(catalog.routes)
