"""The command `compare`."""

from __future__ import annotations

import json
from argparse import Namespace
from pathlib import Path

from panelproof.command import CLEAN, FAULTY
from panelproof.layout.document import Screen
from panelproof.layout.parts import Field, Icon, Meter
from panelproof.layout.wording import hint, quote
from panelproof.material import Material, shown_text
from panelproof.picture.moments import ShownMoment, moment
from panelproof.picture.values import Values
from panelproof.problem import Problem


def compare(options: Namespace) -> int:
    """Hold a capture or a photograph against a moment; 0: the same, 1: not."""
    from panelproof.outputs import check_apart, check_pixels, check_png  # noqa: PLC0415
    from panelproof.tasks import load  # noqa: PLC0415 - which knows this command

    if (options.photo or options.corners) and options.form:
        raise Problem("a photograph is a picture; leave --as out", "--as")
    check_png(options.output)
    check_apart(options.output, options.layout, options.capture)
    material = load(options.layout)
    try:
        shown = moment(material, options.moment)
    except Problem as problem:
        raise Problem(problem.message, f"{options.layout}: --moment") from None
    check_pixels(material.layout.panel, options.scale)
    screen = material.screen(shown.screen)
    values = _changed(screen, shown, options.shows or [])
    name = f"`{shown.screen}:{shown.name}`" if shown.automatic else f"`{shown.name}`"
    if options.photo or options.corners:
        return _photo(options, material, screen, values, name)
    from panelproof.device import telling  # noqa: PLC0415
    from panelproof.device.capture import read  # noqa: PLC0415
    from panelproof.device.outcome import compare as held_against  # noqa: PLC0415

    capture = read(options.capture, material.layout.panel, options.form)
    found = held_against(material, screen, values, capture)
    names = {
        "layout": str(options.layout),
        "screen": screen.name,
        "moment": shown.name,
        "capture": str(options.capture),
    }
    print(
        telling.as_json(names, found) if options.json else telling.as_text(name, str(options.capture), found)
    )
    if options.output:
        from panelproof.device.differences import differences, good_scale  # noqa: PLC0415

        panel = material.layout.panel
        _save(options.output, differences(found, panel, options.scale or good_scale(panel)), options.json)
    return CLEAN if found.same else FAULTY


def _save(path: Path, picture: object, quiet: bool) -> None:
    from PIL.Image import Image  # noqa: PLC0415

    from panelproof.layout.saving import save  # noqa: PLC0415
    from panelproof.picture.image import png  # noqa: PLC0415

    assert isinstance(picture, Image)
    save(path, png(picture))
    if not quiet:
        print(f"wrote {path} ({picture.width} × {picture.height})")


def _photo(options: Namespace, material: Material, screen: Screen, values: Values, name: str) -> int:
    from panelproof.device.photo import as_text, as_tree, pictured  # noqa: PLC0415
    from panelproof.device.photo import compare as looked_at  # noqa: PLC0415

    found = looked_at(material, screen, values, options.capture, options.corners)
    if options.json:
        names = {"layout": str(options.layout), "screen": screen.name, "photo": str(options.capture)}
        print(json.dumps(names | as_tree(found), ensure_ascii=False))
    else:
        print(as_text(name, str(options.capture), found))
    if options.output:
        panel = material.layout.panel
        _save(options.output, pictured(found, panel), options.json)
    return CLEAN if found.same else FAULTY


def _changed(screen: Screen, shown: ShownMoment, shows: list[str]) -> Values:
    """Return a moment's values with some of them set otherwise, each given as PART=VALUE."""
    texts, states, levels = dict(shown.values.texts), dict(shown.values.states), dict(shown.values.levels)
    parts = {part.name: part for part in screen.parts}
    for one in shows:
        name, sign, value = one.partition("=")
        part = parts.get(name)
        if not sign:
            raise Problem(f"{quote(one)} is no PART=VALUE", "--shows")
        if isinstance(part, Field):
            try:
                texts[name] = shown_text(part, value)
            except Problem as problem:
                raise Problem(problem.message, f"--shows {name}") from None
        elif isinstance(part, Icon):
            known = [state.name for state in part.states]
            if value not in known:
                raise Problem(f"the icon `{name}` has no state {quote(value)}{hint(value, known)}", "--shows")
            states[name] = value
        elif isinstance(part, Meter):
            levels[name] = _whole(name, value)
        else:
            known = [part.name for part in parts.values() if isinstance(part, Field | Icon | Meter)]
            raise Problem(
                f"nothing called {quote(name)} changes on that screen{hint(name, known)}", "--shows"
            )
    return Values(texts, states, levels)


def _whole(name: str, value: str) -> int:
    try:
        return int(value)
    except ValueError:
        raise Problem(f"{quote(value)} is no whole number for the meter `{name}`", "--shows") from None
