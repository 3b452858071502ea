"""What can be asked of a network: a fault current, the current in a device or branch, a share."""

from __future__ import annotations

from garboard.network.rest import Local, Question, Rest
from garboard.network.setting import Setting
from garboard.network.situation import Situation
from garboard.network.skeleton import Signed, Skeleton


def at_fault(skeleton: Skeleton, node: int, back_to: int) -> Question:
    """The current of a fault without resistance from a node to another."""
    core, path = skeleton.stem(node)
    back_core, back = skeleton.stem(back_to)
    if core == back_core:
        shared = 0
        while shared < min(len(path), len(back)) and path[shared] == back[shared]:
            shared += 1
        path, back = path[shared:], back[shared:]
    return Question(_live_rest(skeleton, core, back_core), path + _reversed(back))


def in_device(skeleton: Skeleton, device: int, fault: int, back_to: int, *,
              linked: bool) -> Question | None:
    """The current through a device for a fault at one of its ends, ``fault``; positive into it.

    ``linked``: the device is replaced by a link. ``None`` when nothing can flow: the device hangs
    in a dead tree on the far side of the fault.
    """
    if device not in skeleton.chain_of:
        question = at_fault(skeleton, fault, back_to)
        if all(element != device for element, _ in question.elements):
            return None
        kept = tuple(each for each in question.elements if not (linked and each[0] == device))
        return question._replace(elements=kept)
    start, end = skeleton.ends[device]
    far = end if fault == start else start
    elements = () if linked else ((device, 1 if far == start else -1),)
    return Question(_rest_of_device(skeleton, device, far, fault, back_to), elements)


def in_branch(skeleton: Skeleton, element: int, fault: tuple[int, int] | None = None,
              draw: tuple[int, int] | None = None) -> tuple[Question, int] | None:
    """The current in an element while a fault joins two nodes, or a load draws between two.

    The sign turns the question's direction into the element's own. ``None``: nothing flows.
    """
    key = ("setting", fault, draw)
    if key not in skeleton.kept:
        skeleton.kept[key] = Setting(skeleton, fault, draw)
    setting: Setting = skeleton.kept[key]
    return setting.in_element(element)


def _live_rest(skeleton: Skeleton, u: int, v: int) -> Rest | None:
    key = ("between", u, v)
    if key not in skeleton.kept:
        situation = Situation(skeleton)
        situation.cut(u)
        situation.cut(v)
        local = None
        if v == skeleton.reference:
            local = Local(*skeleton.inside.get(u, (-1, u)))
        skeleton.kept[key] = situation.rest(u, v, local=local)
    rest: Rest | None = skeleton.kept[key]
    return rest


def _rest_of_device(skeleton: Skeleton, device: int, far: int, fault: int,
                    back_to: int) -> Rest | None:
    key = ("beside", device, fault, back_to)
    if key not in skeleton.kept:
        situation = Situation(skeleton)
        situation.enliven(back_to)
        situation.take_out(device)
        situation.make_same(fault, back_to)
        local = None
        if back_to == skeleton.reference:
            local = Local(*skeleton.chain_of[device], fault)
        skeleton.kept[key] = situation.rest(far, back_to, local=local)
    rest: Rest | None = skeleton.kept[key]
    return rest


def _reversed(elements: tuple[Signed, ...]) -> tuple[Signed, ...]:
    return tuple((element, -sign) for element, sign in reversed(elements))
