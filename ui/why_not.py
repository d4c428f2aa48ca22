"""Why not this one: any steel or route by its place, or by the demand that stops it."""

import streamlit as st

from selector import Requirement
from selector.advice.why import why
from selector.errors import SelectorError
from selector.wording import in_100
from ui import cached, steel_name
from ui.labels import plain, upper

_KEY = "why-not/name"


def show(requirement: Requirement) -> None:
    """Ask for a steel by any name, and say how each way to use it stands.

    Parameters
    ----------
    requirement : Requirement
        What is asked.
    """
    st.header("Why not …?", anchor=False)
    name = steel_name.ask("A steel, by any name, or a route", _KEY)
    if not name:
        return
    routes = {route.name.casefold(): slug for slug, route in cached.catalog().routes.items()}
    try:
        ways = why(cached.weighed(requirement), routes.get(name.casefold(), name))
    except SelectorError:
        steel_name.unknown(name, _KEY, "No steel and no route")
        return
    if not ways:
        st.markdown(plain(f"{name} was not looked at: the workshop has no way to use it."))
    for way in ways:
        stands = f"Place {way.place}" if way.place else "Out"
        chance = f" (right {in_100(way.share)})" if way.place else ""
        st.markdown(f"- **{stands}.** {plain(upper(way.treatment))}{chance}: {plain(way.text)}")
