"""How a header on disk differs from the one that its layout gives now, in sentences."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from panelproof.firmware.reading import Parsed, parsed
from panelproof.firmware.stock import ICONS

MOST_LISTED = 12


def differences(header_on_disk: str, header_now: str) -> list[str]:
    """Return one sentence for each thing that differs; none where both are the same text.

    "It" in them is the header on disk. They name constants with both values, characters that came or went,
    and glyphs that look otherwise, with another rasteriser as the reason; or say that only line ends or
    spaces differ.
    """
    if header_on_disk == header_now:
        return []
    old, new = parsed(header_on_disk), parsed(header_now)
    if new is None:
        raise ValueError("header_now is no header")
    if old is None:
        return ["it is not a whole header that Panelproof has written"]
    if old.facts["layout"] != new.facts["layout"]:
        return [f"it is of the layout `{old.facts['layout']}`, not of `{new.facts['layout']}`"]
    found = [*_origin(old, new), *_constants(old, new), *_types(old, new), *_glyphs(old, new)]
    found = found or list(_arrays(old, new))
    if found:
        return found
    if header_on_disk.split() == header_now.split():
        return ["only line ends or spaces differ"]
    return ["its functions or comments were changed by hand, or by another release of Panelproof"]


def _origin(old: Parsed, new: Parsed) -> Iterable[str]:
    if old.facts["made by"] != new.facts["made by"]:
        yield f"it was made by {old.facts['made by']}; this is {new.facts['made by']}"
    if old.facts["format"] != new.facts["format"]:
        yield f"it is of layout format {old.facts['format']}; the layout is of format {new.facts['format']}"
    if old.facts["digest"] != new.facts["digest"]:
        was, now = (one.facts["digest"].removeprefix("sha256 ")[:12] for one in (old, new))
        yield f"the layout has changed since the header was made (digest {was}..., now {now}...)"


def _constants(old: Parsed, new: Parsed) -> Iterable[str]:
    names = [*new.constants, *(name for name in old.constants if name not in new.constants)]
    changed = [
        name
        for name in names
        if old.constants.get(name) != new.constants.get(name) and not name.endswith("_LAYOUT_DIGEST")
    ]
    for name in changed[:MOST_LISTED]:
        was, now = old.constants.get(name), new.constants.get(name)
        if was is None:
            yield f"the constant `{name}` ({now}) is missing from it"
        elif now is None:
            yield f"the constant `{name}` ({was}) is in it, but no longer in the layout"
        else:
            yield f"the constant `{name}` is {was} in it and {now} in the layout"
    if len(changed) > MOST_LISTED:
        yield f"{len(changed) - MOST_LISTED} more constants differ"


def _types(old: Parsed, new: Parsed) -> Iterable[str]:
    for name, fact in new.types.items():
        was = old.types.get(name)
        if was is None:
            yield f"the type `{name}` is missing from it"
        elif was.title != fact.title:
            yield f"the type `{name}` was {was.title} and is now {fact.title}"
    for name in old.types.keys() - new.types.keys():
        yield f"the type `{name}` is in it, but no longer used in the layout"


def _glyphs(old: Parsed, new: Parsed) -> list[str]:
    found = []
    for name, now in new.glyphs.items():
        was = old.glyphs.get(name)
        if was is None:
            continue
        of = "the icons" if name == ICONS else f"the type `{name}`"
        noun = "state" if name == ICONS else "character"
        added, gone = [one for one in now if one not in was], [one for one in was if one not in now]
        changed = [one for one in now if one in was and now[one] != was[one]]
        reason = _reason(old, new, name)
        if added:
            found.append(f"it lacks the {_listed(noun, added)} of {of}")
        if gone:
            found.append(f"it holds the {_listed(noun, gone)} of {of}, no longer needed")
        if changed:
            verb = "look" if len(changed) > 1 else "looks"
            found.append(
                f"the {_listed(noun, changed)} of {of} {verb} otherwise now{reason and f': {reason}'}"
            )
        elif reason and not added and not gone:
            found.append(f"{of} looks the same, but {reason}")
    return found


def _reason(old: Parsed, new: Parsed, name: str) -> str:
    was, now = old.types.get(name), new.types.get(name)
    if was is None or now is None or was.rasteriser == now.rasteriser:
        return ""
    return f"it was drawn by {was.rasteriser} then, and is by {now.rasteriser} now"


def _listed(noun: str, titles: Sequence[str]) -> str:
    shown = [f"`{title[-1]}`" if title.startswith("U+") and " " in title else title for title in titles]
    more = f" and {len(titles) - MOST_LISTED} more" if len(titles) > MOST_LISTED else ""
    return f"{noun}{'s' if len(titles) > 1 else ''} {', '.join(shown[:MOST_LISTED])}{more}"


def _arrays(old: Parsed, new: Parsed) -> Iterable[str]:
    layout = new.facts["layout"].replace("-", "_")

    def sentence(name: str) -> str:
        picture = re.fullmatch(rf"{layout}_(?:dots|colours|areas)_(\w+)_", name)
        if picture is not None:
            part = f"{layout}_{picture[1]}".upper()
            return f"the picture of `{part}` looks otherwise now"
        words = {
            "pairs": "the kerning differs",
            "ramps": "the colours of antialiased texts differ",
            "limits": "the limits of level bars differ",
        }
        return words.get(name.rstrip("_").rpartition("_")[2], f"the data of `{name}` differ")

    names = dict.fromkeys([*new.arrays, *old.arrays])
    # Of a picture several arrays may differ.
    yield from dict.fromkeys(sentence(name) for name in names if old.arrays.get(name) != new.arrays.get(name))
