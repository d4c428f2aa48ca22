from ui import table


def test_each_demand_shows_its_own_rejected_ways(advised, advice):
    advised.switch_page("views/why_not.py").run()
    gate = list(table.gate_counts(advice.rejected))[1]
    advised.selectbox(key="why-not/gate").select_index(1).run()
    assert not advised.exception
    assert advised.table[0].value.equals(table.rejected(advice, gate))


def test_assumptions_are_all_there(advised, advice):
    advised.switch_page("views/why_not.py").run()
    listed = "\n".join(text.value for text in advised.markdown)
    assert listed.count("- ") >= len(advice.assumptions) > 0
