from tests.procedure import doing


def test_it_knows_zone_and_bath_of_the_dog():
    do = doing("42crmo4", "local-torch", "oil")
    assert do.is_local
    assert do.is_slender
    assert (do.zone_start_mm, do.zone_end_mm) == (0, sum_of_hard(do))
    assert do.thinnest_mm == min(section.size for section in do.part.section)
    assert do.surface_hrc[0] < do.surface_hrc[1]
    assert do.quenched_hrc > do.surface_hrc[1] - 3
    assert do.dip is None


def sum_of_hard(do):
    return sum(do.part.section[i].length for i in do.job.hard)


def test_what_is_not_quenched_has_no_hardness_as_quenched():
    assert doing("c45", "as-bought", None).quenched_hrc is None
