"""Every caution, in the order in which a page shows them."""

from sitegen.cautions import (
    alone,
    battery,
    cold,
    driving,
    electrical,
    laser,
    machine,
    magnet,
    solvent,
    sun,
    water,
    weight,
    wildlife,
)
from sitegen.cautions.caution import Caution
from sitegen.diary.rig import CautionKind

CAUTIONS: tuple[Caution, ...] = (
    laser.CAUTION,
    sun.CAUTION,
    electrical.CAUTION,
    battery.CAUTION,
    weight.CAUTION,
    cold.CAUTION,
    alone.CAUTION,
    driving.CAUTION,
    solvent.CAUTION,
    magnet.CAUTION,
    water.CAUTION,
    wildlife.CAUTION,
    machine.CAUTION,
)


def caution_of(kind: CautionKind) -> Caution:
    return next(caution for caution in CAUTIONS if caution.name == kind)
