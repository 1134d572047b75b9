"""Random changes of a layout, as a person at work might make them, for tests of whole sequences."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from msgspec.structs import replace

from panelproof.content.spec import Choice, Content, RealRange, WholeRange
from panelproof.editor import edits
from panelproof.layout.document import Ink, Layout, TypeSpec
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Meter, MeterLimit, Part, Picture, Rule
from panelproof.material import Material
from panelproof.picture.values import Values
from panelproof.proof.finding import Change

CONTENTS = (
    Content("%d", (WholeRange(-5, 99),)),
    Content("%.1f", (RealRange(-40.0, 125.0),), fault="---", first="..."),
    Content("%s", (Choice(("filling", "resting")),)),
    Content("%5d l/h", (WholeRange(0, 40000, 10),), fault="no flow"),
    Content("on", also=("off",)),
    Content("%d:%d", (WholeRange(0, 23), WholeRange(0, 59)), fault="--:--"),
)
EDGES: tuple[edits.Edge, ...] = ("left", "centre", "right", "top", "middle", "bottom", "baseline")


def another(rng: Random, layout: Layout, material: Material) -> tuple[str, Layout]:
    """Return the title of a random change and the layout after it (perhaps the same); may raise Problem."""
    screen = rng.choice(layout.screens).name if layout.screens else ""
    parts = next((one.parts for one in layout.screens if one.name == screen), ())
    names = {part.name for part in parts if rng.random() < 0.4}
    choices: list[Callable[[], tuple[str, Layout]]] = [lambda: of_entries(rng, layout, screen)]
    if screen:
        choices += [lambda: of_parts(rng, layout, material, screen, names)] * 3
    if parts:
        part = rng.choice(parts)
        choices += [lambda: of_part(rng, layout, screen, part)] * 4
    return rng.choice(choices)()


def of_parts(
    rng: Random, layout: Layout, material: Material, screen: str, names: set[str]
) -> tuple[str, Layout]:
    step = rng.randint(-12, 12), rng.randint(-12, 12)
    at = rng.randint(-10, layout.panel.width + 10), rng.randint(-10, layout.panel.height + 10)

    def pasted() -> Layout:
        copied = edits.parts_to_clipboard(layout, screen, names)
        target = rng.choice(layout.screens).name
        return edits.from_clipboard(layout, target, copied, *step)[0]

    kind = rng.choice(edits.KINDS)
    few = set(sorted(names)[:2])
    return rng.choice(
        (
            lambda: ("move", edits.move_parts(layout, screen, names, *step)),
            lambda: ("move far", edits.move_parts(layout, screen, names, 5000 * step[0], 900 * step[1])),
            lambda: (f"add {kind}", edits.add_part(layout, material, screen, kind, at)[0]),
            lambda: ("delete", edits.delete_parts(layout, screen, few)),
            lambda: ("duplicate", edits.duplicate_parts(layout, screen, few)[0]),
            lambda: ("align", edits.align(layout, material, screen, names, rng.choice(EDGES))),
            lambda: ("across", edits.distribute(layout, material, screen, names, "across")),
            lambda: ("down", edits.distribute(layout, material, screen, names, "down")),
            lambda: ("paste", pasted()),
        )
    )()


def of_part(rng: Random, layout: Layout, screen: str, part: Part) -> tuple[str, Layout]:
    area = rng.randint(-5, 90), rng.randint(-5, 60), rng.randint(-3, 70), rng.randint(-3, 40)
    name = part.name
    return rng.choice(
        (
            lambda: ("order", edits.reorder(layout, screen, name, rng.randint(0, 12))),
            lambda: ("size", edits.resize(layout, screen, name, area)),
            lambda: ("rename", edits.rename_part(layout, screen, name, rng.choice(("a", "b-2", name)))),
            lambda: ("change", edits.set_part(layout, screen, name, changed(rng, layout, part))),
            lambda: ("change", edits.set_part(layout, screen, name, changed(rng, layout, part))),
            lambda: ("remedy", edits.apply_changes(layout, screen, [Change(name, "x", rng.randint(-9, 99))])),
        )
    )()


def changed(rng: Random, layout: Layout, part: Part) -> Part:
    """Return a part with another property."""
    ink = rng.choice(layout.inks).name
    match part:
        case Label():
            return rng.choice((replace(part, ink=ink), replace(part, text=rng.choice(("Flow", "Tank 2")))))
        case Field():
            more = part.padding or (1, 1, 30, 20)
            return rng.choice(
                (
                    replace(part, content=rng.choice(CONTENTS)),
                    replace(part, type=rng.choice(layout.types).name),
                    replace(part, align=rng.choice(("left", "centre", "right"))),
                    replace(part, ground=ink, clearing=rng.choice(("none", "cell"))),
                    replace(part, clearing=rng.choice(("pad", "box")), padding=more),
                )
            )
        case Icon():
            added = IconState(edits.free_name("new", [one.name for one in part.states]), ("#.#", ".#."))
            return rng.choice(
                (
                    replace(part, states=(*part.states, added)),
                    replace(part, states=part.states[1:] or part.states),
                    replace(part, states=(replace(part.states[0], name="first-one"), *part.states[1:2])),
                )
            )
        case Rule():
            return replace(part, direction=rng.choice(("across", "down")), thickness=rng.randint(1, 4))
        case Meter():
            limit = MeterLimit(rng.randint(part.least, part.greatest), rng.choice((None, ink)))
            return rng.choice(
                (
                    replace(part, limits=(limit,)),
                    replace(part, limits=(), greatest=part.least + rng.randint(1, 5000)),
                    replace(part, direction=rng.choice(("right", "left", "up", "down")), ground=ink),
                )
            )
        case Picture():
            return replace(part, x=part.x + 1)
        case Box():
            return rng.choice((replace(part, fill=ink), replace(part, x=part.x + 1, width=part.width + 2)))


def of_entries(rng: Random, layout: Layout, screen: str) -> tuple[str, Layout]:
    ink, new = rng.choice(layout.inks), rng.choice(("one", "two", "three-3"))
    panel = layout.panel
    choices: list[Callable[[], tuple[str, Layout]]] = [
        lambda: ("panel", edits.set_panel(layout, replace(panel, width=rng.randint(90, 130)))),
        lambda: ("panel", edits.set_panel(layout, replace(panel, shape=rng.choice(("rounded", "round"))))),
        lambda: ("panel", edits.set_panel(layout, replace(panel, colour_format="mono"))),
        lambda: ("panel", edits.set_panel(layout, replace(panel, colour_format="grey4"))),
        lambda: ("panel", edits.set_panel(layout, replace(panel, colour_format="indexed"))),
        lambda: ("panel", edits.set_panel(layout, replace(panel, colour_format="rgb565", refresh="whole"))),
        lambda: ("layout", edits.rename_layout(layout, new)),
        lambda: ("add screen", edits.add_screen(layout, new)[0]),
        lambda: ("add ink", edits.add_ink(layout, Ink(new, "#204060"))[0]),
        lambda: ("ink", edits.set_ink(layout, ink.name, replace(ink, colour="#a0f0c0"))),
        lambda: ("rename ink", edits.rename_ink(layout, ink.name, new)),
        lambda: ("delete ink", edits.delete_ink(layout, ink.name, None)),
        lambda: ("delete ink", edits.delete_ink(layout, ink.name, layout.inks[0].name)),
        lambda: ("add type", edits.add_type(layout, TypeSpec(new, "SourceSansPro", 11))[0]),
    ]
    if layout.types:
        spec = rng.choice(layout.types)
        choices += [
            lambda: ("type", edits.set_type(layout, spec.name, replace(spec, size=rng.randint(9, 20)))),
            lambda: (
                "type",
                edits.set_type(layout, spec.name, replace(spec, name=new, rendering="antialiased")),
            ),
            lambda: ("delete type", edits.delete_type(layout, spec.name)),
            lambda: ("delete type", edits.delete_type(layout, spec.name, layout.types[-1].name)),
        ]
    if screen:
        values = Values() if rng.random() < 0.5 else None
        choices += [
            lambda: ("screen", edits.rename_screen(layout, screen, new)),
            lambda: ("copy screen", edits.duplicate_screen(layout, screen)[0]),
            lambda: ("screens", edits.reorder_screen(layout, screen, rng.randint(0, 3))),
            lambda: ("moment", edits.add_moment(layout, screen, new, values)[0]),
        ]
    # Now and then the last screen goes too, but most sequences have something to work on.
    if len(layout.screens) > 2 or rng.random() < 0.02:
        choices.append(lambda: ("delete screen", edits.delete_screen(layout, screen) if screen else layout))
    if layout.moments:
        moment = rng.choice(layout.moments)
        choices += [
            lambda: ("moment", edits.rename_moment(layout, moment.name, new)),
            lambda: ("copy moment", edits.duplicate_moment(layout, moment.name)[0]),
            lambda: ("delete moment", edits.delete_moment(layout, moment.name)),
        ]
    return rng.choice(choices)()
