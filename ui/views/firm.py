"""How firm: shares over outcomes and weights, what to measure next, other methods on demand."""

import streamlit as st

from selector.wording import in_100
from ui import answer, cached
from ui.labels import plain, upper
from ui.option_name import beside, in_short
from ui.piece import bullets, e, markup

# So many options are told: beyond them hardly any is ever first.
TOLD = 8
requirement = answer.asked()
st.title("How firm is this?", anchor=False)
advice = answer.offered(requirement, "There is no order to be firm about.")
found = cached.firmness(requirement)
if found is None:
    st.stop()
st.markdown(f"**{plain(upper(found.sentence))}**")
by_id = {option.id: option for option in advice.options}
currency = advice.options[0].cost.currency
st.header("Who is first, how often", anchor=False)
rows = "".join(
    f"<tr><th scope='row'>{e(in_short(by_id[row.id]))}</th>"
    f"<td>{e(in_100(row.first))}</td><td>{e(in_100(row.first_by_outcome))}</td>"
    f"<td>{e(in_100(row.first_by_weights))}</td>"
    f"<td>{row.regret_money:.0f} {e(currency)}</td></tr>"
    for row in found.options[:TOLD]
    if row.id in by_id
)
heads = ("option", "both", "outcomes", "weights", "costs you on average")
markup(
    "<div class='tw-panel'><table class='tw-lines tw-firm'><thead><tr>",
    *(f"<th scope='col'>{e(head)}</th>" for head in heads),
    f"</tr></thead><tbody>{rows}</tbody></table></div>",
)
st.caption(
    "How often each is first while outcomes and weights vary together, outcomes alone, weights "
    "alone; and what taking it costs where another would have been better."
)
if found.measures:
    st.header("What to measure next", anchor=False)
    bullets(
        f"{upper(item.words)}: {100 * item.explains:.0f} in 100 of what lies between them. "
        + (upper(item.step) + "." if item.step else "Nothing narrows it beforehand.")
        for item in found.measures
    )
dearer = found.dearer
if dearer is not None and dearer.first_then in by_id:
    st.header("Where it turns", anchor=False)
    then = beside(by_id[dearer.first_then], advice.options[0])
    st.markdown(
        plain(
            f"The first stays first until a good one costs {dearer.at:.0f} {currency} "
            f"(now {dearer.now:.0f}); then {then}."
        )
    )
if found.against_shares:
    st.header("Why one that beats another stands behind it", anchor=False)
    bullets(found.against_shares)
st.header("Other ways to weigh it", anchor=False)
if st.toggle("Ask methods of other families too", key="firm/compare"):
    opinion = cached.opinions(requirement)
    if opinion is not None:
        st.markdown(plain(opinion.remark))
        bullets(
            f"{method.method}: {by_id[method.order[0]].spoken} first"
            + (", as here" if method.agrees_on_first else "")
            for method in opinion.methods
            if method.order and method.order[0] in by_id
        )
