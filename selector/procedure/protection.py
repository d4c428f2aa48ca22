"""What keeps the carbon in the skin while a part soaks in a furnace.

A flame holds a part at heat for seconds to minutes; what it takes is left on and ground off.
"""

from typing import Literal

from selector.option.skin import is_presumed_wrapped
from selector.procedure.doing import Doing

Protection = Literal["none", "foil", "coat", "pack", "bare"]


def protection(do: Doing) -> Protection:
    """Return what the skin of a part is kept from the furnace by.

    Parameters
    ----------
    do : Doing
        One option as it is done.

    Returns
    -------
    str
        "foil" of what hardens in air, "coat" of what goes into a liquid, "pack" of that where
        there is foil alone, "bare" where nothing keeps the carbon in, "none" where nothing
        takes it.
    """
    source, medium, set_up = do.work.source, do.work.medium, do.set_up
    if source is None or source.kind != "furnace" or medium is None or set_up is None:
        return "none"
    # What the workshop says it has for that; a hot soak is counted as wrapped anyhow.
    has: tuple[str, ...] = getattr(do.shop, "protect", ())
    if not has and not is_presumed_wrapped(do.work, do.shop):
        return "bare"
    # Through foil no liquid quenches: tool steel producers' sheets (from memory).
    if medium.severity_class == "air" and has != ("coat",):
        return "foil"
    return "pack" if has == ("foil",) else "coat"
