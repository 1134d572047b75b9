"""Names in C: made of the layout's own names, never used twice, never a word of the language."""

from __future__ import annotations

from panelproof.problem import Problem

# Words that no structure's member may be called: C17 6.4.1, C++20 5.11 (alternative tokens included), and
# what widespread headers and compilers define as macros in lower case.
_WORDS = """
alignas alignof and and_eq asm auto bitand bitor bool break case catch char char8_t char16_t char32_t
class co_await co_return co_yield compl concept const const_cast consteval constexpr constinit continue
decltype default delete do double dynamic_cast else enum errno explicit export extern false far final
float for friend goto huge i386 if import inline int interface linux long module mutable namespace near
new noexcept noreturn not not_eq nullptr operator or or_eq override private protected public register
reinterpret_cast requires restrict return short signals signed sizeof slots small static static_assert
static_cast stderr stdin stdout struct switch template this thread_local throw true try typedef typeid
typename typeof union unix unsigned using virtual void volatile wchar_t while xor xor_eq
"""
RESERVED = frozenset(_WORDS.split())


def lower(*names: str) -> str:
    """Return names of the layout joined as a C function is called: ``kiln_readings_time_left``."""
    return "_".join(names).replace("-", "_")


def upper(*names: str) -> str:
    """Return names of the layout joined as a C macro is called: ``KILN_READINGS_TIME_LEFT``."""
    return lower(*names).upper()


def member(name: str) -> str:
    """Return a part's name as the member of a structure; a word of C or C++ gets an underscore at its end."""
    made = lower(name)
    return f"{made}_" if made in RESERVED else made


def word(text: str) -> str:
    """Return a text as the end of a macro's name; empty where it holds no ASCII letter or digit."""
    kept = "".join(char if char.isascii() and char.isalnum() else " " for char in text)
    return "_".join(kept.upper().split())[:40].rstrip("_")


class Names:
    """Every public name of one header, and what each stands for.

    Names of the drawing code itself end with an underscore, which no name made of a layout's can, so only
    public names can meet.
    """

    def __init__(self) -> None:
        self._owners: dict[str, str] = {}

    def claim(self, name: str, owner: str) -> str:
        """Take a name for `owner` (a phrase such as "the part `b` of the screen `a`") and return it.

        Raises Problem where the name is taken already.
        """
        other = self._owners.get(name)
        if other is not None:
            raise Problem(
                f"{other} and {owner} would both be called `{name}` in the C header; rename one of them"
            )
        self._owners[name] = owner
        return name
