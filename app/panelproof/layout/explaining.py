"""What keeps a tree of plain values from being a layout, each thing in a sentence with its place.

msgspec decides whether a tree is a layout; this walks the same description of the types, in the order of the
file, to say what is wrong in a maker's words.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from msgspec import inspect

from panelproof.layout.document import Layout
from panelproof.layout.panel import COLOUR_PATTERN
from panelproof.layout.parts import NAME_PATTERN
from panelproof.layout.wording import described, hint, listed, one, quote, within
from panelproof.problem import Problem

_PATTERNS = {
    NAME_PATTERN: "is not a name: small letters, digits and hyphens, beginning with a letter, with no hyphen"
    " last or beside another",
    COLOUR_PATTERN: "is not a colour: `#` and six hexadecimal digits, such as `#ff8800`",
}
_NOUNS = {
    "TypeSpec": "type",
    "IconState": "icon state",
    "MeterLimit": "meter limit",
    "WholeRange": "whole range",
    "RealRange": "real range",
    "FreeText": "free text",
}


def noun(struct: type) -> str:
    """Return what a maker calls one of the layout's structs."""
    return _NOUNS.get(struct.__name__, struct.__name__.lower())


@lru_cache(maxsize=1)
def layout_type() -> inspect.Type:
    """Return msgspec's description of a layout."""
    return inspect.type_info(Layout)


def faults(value: object, kind: inspect.Type | None = None, place: str = "") -> Iterator[Problem]:
    """Yield everything that keeps `value` from being of `kind` (a whole layout by default)."""
    kind = layout_type() if kind is None else _bare(kind)
    match kind:
        case inspect.StructType():
            yield from _struct(value, kind, place)
        case inspect.UnionType():
            yield from _union(value, kind, place)
        case inspect.VarTupleType():
            if not isinstance(value, list | tuple):
                yield _wrong(kind, value, place)
                return
            yield from _size(len(value), kind, "entry", place)
            for number, entry in enumerate(value):
                yield from faults(entry, kind.item_type, within(place, number))
        case inspect.TupleType():
            if not isinstance(value, list | tuple) or len(value) != len(kind.item_types):
                yield _wrong(kind, value, place)
                return
            for number, (entry, entry_kind) in enumerate(zip(value, kind.item_types, strict=True)):
                yield from faults(entry, entry_kind, within(place, number))
        case inspect.DictType():
            if not isinstance(value, Mapping):
                yield _wrong(kind, value, place)
                return
            for key, entry in value.items():
                yield from faults(key, kind.key_type, within(place, key))
                yield from faults(entry, kind.value_type, within(place, key))
        case inspect.LiteralType():
            if not isinstance(value, str):
                yield _wrong(kind, value, place)
            elif value not in kind.values:
                known = [str(word) for word in kind.values]
                yield Problem(f"{quote(value)} is not one of {listed(known, 'or')}", place)
        case _:
            yield from _plain(value, kind, place)


def _struct(value: object, kind: inspect.StructType, place: str) -> Iterator[Problem]:
    if not isinstance(value, Mapping):
        yield _wrong(kind, value, place)
        return
    known = {entry.encode_name: entry for entry in kind.fields}
    for key in value:
        if key not in known and key != kind.tag_field:
            words = list(known) if kind.tag_field is None else [kind.tag_field, *known]
            yield Problem(
                f"{one(noun(kind.cls))} has no key {quote(key)}{hint(key, words)}", within(place, key)
            )
    for name, entry in known.items():
        if name in value:
            yield from faults(value[name], entry.type, within(place, name))
        elif entry.required:
            yield Problem(f"the key `{name}` is missing from this {noun(kind.cls)}", place)


def _bare(kind: inspect.Type) -> inspect.Type:
    """Return a type without the description that msgspec wraps around it."""
    while isinstance(kind, inspect.Metadata):
        kind = kind.type
    return kind


def _union(value: object, kind: inspect.UnionType, place: str) -> Iterator[Problem]:
    tagged = {
        member.tag: member for member in kind.types if isinstance(member, inspect.StructType) and member.tag
    }
    if tagged:
        yield from _tagged(value, tagged, place)
        return
    for member in kind.types:
        if _same_shape(value, member):
            yield from faults(value, member, place)
            return
    yield _wrong(kind, value, place)


def _tagged(value: object, members: Mapping[str | int, inspect.StructType], place: str) -> Iterator[Problem]:
    if not isinstance(value, Mapping):
        yield _wrong(next(iter(members.values())), value, place)
        return
    kinds = [str(tag) for tag in members]
    if "kind" not in value:
        yield Problem(f"the key `kind` is missing; it is one of {listed(kinds, 'or')}", place)
        return
    said = value["kind"]
    if not isinstance(said, str):
        yield Problem(f"a kind is one of {listed(kinds, 'or')}, not {described(said)}", within(place, "kind"))
    elif said not in members:
        yield Problem(
            f"there is no kind {quote(said)}; it is one of {listed(kinds, 'or')}", within(place, "kind")
        )
    else:
        yield from _struct(value, members[said], place)


def _same_shape(value: object, kind: inspect.Type) -> bool:
    match _bare(kind):
        case inspect.NoneType():
            return value is None
        case inspect.BoolType():
            return isinstance(value, bool)
        case inspect.StrType() | inspect.LiteralType():
            return isinstance(value, str)
        case inspect.IntType():
            return isinstance(value, int) and not isinstance(value, bool)
        case inspect.FloatType():
            return isinstance(value, int | float) and not isinstance(value, bool)
        case inspect.StructType() | inspect.DictType():
            return isinstance(value, Mapping)
        case _:
            return isinstance(value, list | tuple)


def _plain(value: object, kind: inspect.Type, place: str) -> Iterator[Problem]:
    if not _same_shape(value, kind):
        yield _wrong(kind, value, place)
    elif isinstance(kind, inspect.StrType) and isinstance(value, str):
        yield from _size(len(value), kind, "character", place)
        if kind.pattern is not None and not _matches(kind.pattern, value):
            said = quote(value) if value else "an empty text"
            yield Problem(f"{said} {_PATTERNS.get(kind.pattern, 'is not written as it must be here')}", place)
    elif isinstance(kind, inspect.IntType | inspect.FloatType) and isinstance(value, int | float):
        for limit, outside, words in (
            (kind.ge, kind.ge is not None and value < kind.ge, "at least"),
            (kind.gt, kind.gt is not None and value <= kind.gt, "more than"),
            (kind.le, kind.le is not None and value > kind.le, "at most"),
            (kind.lt, kind.lt is not None and value >= kind.lt, "less than"),
        ):
            if outside:
                yield Problem(f"{described(value)} is outside its limits: it must be {words} {limit}", place)


def _matches(pattern: str, text: str) -> bool:
    import re  # noqa: PLC0415

    return re.search(pattern, text) is not None


def _size(
    size: int, kind: inspect.StrType | inspect.VarTupleType, one_of_it: str, place: str
) -> Iterator[Problem]:
    if kind.max_length is not None and size > kind.max_length:
        plural = "entries" if one_of_it == "entry" else f"{one_of_it}s"
        yield Problem(f"{size} {plural} are too many; there can be {kind.max_length} at most", place)
    if kind.min_length is not None and size < kind.min_length:
        # No list or text of a layout has a least length above one.
        what = "list" if isinstance(kind, inspect.VarTupleType) else "text"
        yield Problem(f"this {what} is empty; it needs at least one {one_of_it}", place)


def _wrong(kind: inspect.Type, value: object, place: str) -> Problem:
    if isinstance(kind, inspect.TupleType) and isinstance(value, list | tuple):
        return Problem(f"{_expected(kind)} is expected here, not one of {len(value)}", place)
    return Problem(f"{_expected(kind)} is expected here, not {described(value)}", place)


def _told(kind: inspect.UnionType) -> list[inspect.Type]:
    """Return the members that a sentence names: not null, and no whole number where any number will do."""
    members = [_bare(member) for member in kind.types]
    any_number = any(isinstance(member, inspect.FloatType) for member in members)
    left_out = (inspect.NoneType, inspect.IntType) if any_number else (inspect.NoneType,)
    return [member for member in members if not isinstance(member, left_out)]


def _expected(kind: inspect.Type) -> str:
    kind = _bare(kind)
    match kind:
        case inspect.StructType():
            return "an object { }"
        case inspect.DictType():
            return "an object { } of names and values"
        case inspect.VarTupleType():
            return "a list [ ]"
        case inspect.TupleType():
            numbers = all(isinstance(_bare(item), inspect.IntType) for item in kind.item_types)
            return f"a list [ ] of {len(kind.item_types)} {'whole numbers' if numbers else 'texts'}"
        case inspect.UnionType():
            return " or ".join(dict.fromkeys(_expected(member) for member in _told(kind)))
        case inspect.StrType():
            return "a text in double quotes"
        case inspect.LiteralType():
            return f"one of {listed([str(word) for word in kind.values], 'or')}"
        case inspect.IntType():
            return "a whole number"
        case inspect.FloatType():
            return "a number"
        case _:
            return "true or false"
