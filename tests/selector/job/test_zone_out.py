"""The demand of a zone as plain data."""

from selector.job.zone_out import zone_out


def test_a_zone_is_counted_from_one_and_else_as_demanded(job):
    lead = job.leading
    plain = zone_out(lead)
    assert plain.zone == lead.zone + 1
    assert plain.model_dump(exclude={"zone"}) == {
        name: getattr(lead, name) for name in plain.model_dump(exclude={"zone"})
    }
