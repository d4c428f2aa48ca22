"""The procedure of one treatment of the dog, at its first temper worth choosing."""

from catalog import load_catalog
from selector.decision.set_up_out import set_up_out
from selector.job.job import resolved
from selector.job.tempers import temper_ceilings
from selector.option.prediction import predict
from selector.option.preparation import cooled_points, prepare
from selector.option.temper_choice import choices
from selector.procedure.doing import Doing
from selector.procedure.steps import procedure
from tests.dog import asked, work

SOURCES = {"through-furnace": "kiln", "marquench": "kiln", "pack-carburise": "kiln",
           "age-harden": "kiln", "normalise": "kiln", "anneal": "kiln",
           "austemper": "kiln", "through-furnace-cold": "kiln", "marquench-oil": "kiln",
           }  # fmt: skip


def doing(steel, route, medium, changes=None, condition=None, means=None, source=None):
    """Return one treatment of the dog as it is done, tempered by some means if one is named."""
    job = resolved(asked(changes), load_catalog())
    local = route.startswith("subcontract") or route in {
        "as-bought", "prehard-bar", "buy-hard-element"
    }  # fmt: skip
    source = None if local else source or SOURCES.get(route, "oxy-propane")
    treatment = work(steel, route, medium, source, condition)
    ready = prepare(treatment, job)
    ceilings = temper_ceilings(job.asked.workshop, job.bench.sources)
    once = prepare(treatment, job.middle())
    found = choices(once, ceilings, cooled_points(treatment, job.middle()))
    fit = [c for c in found if means in {None, c.temper.means}]
    choice = next((c for c in fit if c.temper.temperature_c >= 200.0), found[0])
    return Doing(job, predict(ready, choice.temper), choice, set_up_out(job, treatment))


def steps_of(steel, route, medium, changes=None, condition=None):
    """Return the steps of one treatment of the dog."""
    do = doing(steel, route, medium, changes, condition)
    return procedure(do.job, do.prediction, do.choice, do.set_up)


def at(steps, stage):
    """Return the steps of one stage."""
    return [step for step in steps if step.stage == stage]


KILN = {"workshop.heat": [{"source": "kiln"}, {"source": "kitchen-oven"}]}
