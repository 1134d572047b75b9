"""From a content to its word graph, and from arguments to the text that C prints."""

from __future__ import annotations

from functools import lru_cache

from panelproof.content import real, whole, words
from panelproof.content.builder import Builder, TooLargeError
from panelproof.content.format import Conversion, Kind, conversions, pieces
from panelproof.content.graph import Graph
from panelproof.content.sentence import check_drawable
from panelproof.content.spec import Argument, Choice, Content, FreeText, RealRange, WholeRange
from panelproof.problem import Problem

FITTING: dict[Kind, tuple[type[Argument], ...]] = {
    "whole": (WholeRange,),
    "real": (RealRange, WholeRange),
    "text": (Choice, FreeText),
    "character": (Choice, WholeRange),
}
UNFIT: dict[Kind, str] = {
    "whole": "prints whole numbers: give a whole range, or use `%f` for a real range and `%s` for texts",
    "real": "prints numbers: give a real or a whole range, or use `%s` for texts",
    "text": "prints texts: give a choice or free text, or use `%d` for whole and `%.1f` for real numbers",
    "character": "prints one character: give a choice of single characters or a whole range of codes,"
    " or use `%s` for texts",
}


def graph(content: Content) -> Graph:
    """Return the word graph of every text that the content can show.

    These are what C prints of the format, the fault text, the first text and those of `also`. Raises
    Problem, with a place inside the content such as ``arguments[0]`` or ``format``, where the content cannot
    be used.
    """
    built = _built(content)
    if isinstance(built, Problem):
        raise Problem(built.message, built.place)
    return built


def text(content: Content, arguments: tuple[str | int | float, ...]) -> str:
    """Return what C prints for these arguments, one for each conversion.

    Raises Problem as `graph` does, and with the place ``arguments[i]`` for a value of the wrong kind, outside
    its range or off its step.
    """
    graph(content)
    if len(arguments) != len(content.arguments):
        raise Problem(
            f"the format takes {_count(len(content.arguments), 'argument')}, not {len(arguments)}:"
            " give one for each conversion, in order",
            "arguments",
        )
    printed: list[str] = []
    index = 0
    for piece in pieces(content.format):
        if isinstance(piece, str):
            printed.append(piece)
            continue
        try:
            printed.append(_printed(piece, content.arguments[index], arguments[index]))
        except Problem as problem:
            raise Problem(problem.message, f"arguments[{index}]") from None
        index += 1
    return "".join(printed)


@lru_cache(maxsize=512)
def _built(content: Content) -> Graph | Problem:
    """Return the graph, or the problem that there is: both are worth remembering."""
    try:
        _check(content)
        return _build(content)
    except Problem as problem:
        return Problem(problem.message, problem.place)


def _check(content: Content) -> None:
    """Raise Problem for the first thing in the content that cannot be used."""
    taken = conversions(content.format)
    check_drawable(content.format, "format")
    if len(taken) != len(content.arguments):
        raise Problem(_miscounted(taken, len(content.arguments)), "arguments")
    for index, (conversion, argument) in enumerate(zip(taken, content.arguments, strict=True)):
        if not isinstance(argument, FITTING[conversion.kind]):
            raise Problem(f"`{conversion.source}` {UNFIT[conversion.kind]}", f"arguments[{index}]")
        try:
            _check_argument(conversion, argument)
        except Problem as problem:
            raise problem.within(f"arguments[{index}]") from None
    for key, outside in (("fault", content.fault), ("first", content.first)):
        check_drawable(outside or "", key)
    for index, outside in enumerate(content.also):
        check_drawable(outside, f"also[{index}]")


def _miscounted(taken: tuple[Conversion, ...], given: int) -> str:
    counts = f"the format has {_count(len(taken), 'conversion')}, and {_count(given, 'argument')}"
    counts += " is given" if given == 1 else " are given"
    if given < len(taken):
        return f"{counts}: add one for `{taken[given].source}`, or write `%%` where a percent sign is meant"
    return f"{counts}: take arguments out, or add conversions"


def _count(number: int, noun: str) -> str:
    return f"{number or 'no'} {noun}{'' if number == 1 else 's'}"


def _check_argument(conversion: Conversion, argument: Argument) -> None:
    if isinstance(argument, RealRange) or conversion.kind == "real":
        assert isinstance(argument, RealRange | WholeRange)
        real.check(conversion, argument)
    elif isinstance(argument, WholeRange) and conversion.kind == "whole":
        whole.check(conversion, argument)
    else:
        words.check(conversion, argument)


def _build(content: Content) -> Graph:
    builder = Builder()
    follow = builder.end
    index = len(content.arguments)
    place = "format"
    try:
        for piece in reversed(pieces(content.format)):
            if isinstance(piece, str):
                follow = builder.literal(piece, follow)
            else:
                index -= 1
                place = f"arguments[{index}]"
                follow = _build_argument(builder, piece, content.arguments[index], follow)
        place = "also"
        outside = [text for text in (content.fault, content.first, *content.also) if text is not None]
        if outside:
            follow = builder.union((follow, builder.choice(outside, builder.end)))
        return builder.graph(follow)
    except TooLargeError:
        sentence = "use fewer or shorter texts"
        if place.startswith("arguments"):
            sentence = _too_large(content.arguments[index])
        raise Problem(f"too many texts of too many shapes to prove: {sentence}", place) from None


def _too_large(argument: Argument) -> str:
    apart = "put a fixed character between this argument and the next"
    if isinstance(argument, WholeRange) and argument.step > 1:
        return f"a step of {argument.step} needs a shorter range, or a rounder step such as 5, 10 or 100"
    if isinstance(argument, FreeText):
        return f"let `longest` be less, lessen the width, or {apart}"
    if isinstance(argument, Choice):
        return f"use fewer or shorter texts, or {apart}"
    return f"narrow the range, lessen the width, or {apart}"


def _build_argument(builder: Builder, conversion: Conversion, argument: Argument, follow: int) -> int:
    if isinstance(argument, RealRange) or conversion.kind == "real":
        assert isinstance(argument, RealRange | WholeRange)
        return real.build(builder, conversion, argument, follow)
    if isinstance(argument, WholeRange) and conversion.kind == "whole":
        return whole.build(builder, conversion, argument, follow)
    return words.build(builder, conversion, argument, follow)


def _printed(conversion: Conversion, argument: Argument, value: object) -> str:
    if isinstance(argument, RealRange) or conversion.kind == "real":
        assert isinstance(argument, RealRange | WholeRange)
        return real.printed(conversion, argument, value)
    if isinstance(argument, WholeRange):
        return whole.printed(conversion, argument, value)
    return words.printed(conversion, argument, value)
