"""Can it be read? For each rule one made layout that has just that finding, and one a pixel or a shade away without."""

from __future__ import annotations

import itertools
import time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from panelproof.content.build import graph
from panelproof.content.spec import Choice, Content, FreeText, WholeRange
from panelproof.layout.checking import problems
from panelproof.layout.colour import parse, quantise, shown
from panelproof.layout.document import Ink, Layout, Screen, TypeSpec
from panelproof.layout.panel import Panel
from panelproof.layout.parts import Box, Field, Icon, IconState, Label, Meter, MeterLimit, Part, Rule
from panelproof.material import gather
from panelproof.proof.check import prove
from panelproof.proof.finding import Finding
from panelproof.proof.lookalike import Likeness, _standings, _texts
from panelproof.proof.measure import measures
from panelproof.proof.mending import changed
from panelproof.sight.luminance import contrast

PANEL = Panel(160, 80)
INKS = ("black #000000", "white #ffffff", "grey #767676", "fog #777777", "red #d02020", "leaf #208020")


def layout(*parts: Part, panel: Panel = PANEL, inks: tuple[str, ...] = INKS, **others: object) -> Layout:
    made = Layout(
        1,
        "tank",
        panel,
        (
            TypeSpec("plain", "SourceSansPro", 16),
            TypeSpec("large", "SourceSansPro", 40),
            TypeSpec("tiny", "SourceSansPro", 10),
        ),
        tuple(Ink(*one.split()) for one in inks),
        (Screen("main", "white", parts),),
    )
    return replace(made, **others) if others else made


def found(made: Layout) -> list[Finding]:
    assert problems(made) == []
    return list(prove(gather(made, Path())))


def only(made: Layout, rule: str) -> Finding:
    (finding,) = found(made)
    assert finding.rule == rule
    return finding


def mended(made: Layout) -> Layout:
    (finding,) = found(made)
    assert finding.remedy is not None
    assert finding.remedy.changes
    after = changed(made, finding.screen, finding.remedy.changes)
    assert found(after) == []
    return after


NAME = Label("name", "Tank", "plain", "black", 10, 40)
COUNT = Content("%d", (WholeRange(0, 99),), fault="--")
LEVEL = Field("level", COUNT, "plain", "black", 100, 40, "right", padding=(60, 20, 44, 26))
LAMP = ("..##..", ".####.", "######", "######", ".####.", "..##..")


def lamp(*states: tuple[str, str], **others: object) -> Icon:
    made = tuple(IconState(name, LAMP, ink=ink) for name, ink in states)
    return replace(Icon("lamp", 10, 10, "black", made), **others)


class TestContrast:
    def test_the_examples_of_the_standard_on_an_exact_panel(self) -> None:
        """WCAG 2.2: on white #767676 has 4.54 and passes, #777777 has 4.48 and does not."""
        exact = Panel(160, 80, "indexed", palette=tuple(one.split()[1] for one in INKS))
        assert found(layout(replace(NAME, ink="grey"), panel=exact)) == []
        finding = only(layout(replace(NAME, ink="fog"), panel=exact), "contrast")
        assert finding.level == "caution"
        assert "4.47:1" in finding.message
        assert "#777777" in finding.message
        assert "#ffffff" in finding.message
        assert "needs 4.5:1" in finding.message
        assert mended(layout(replace(NAME, ink="fog"), panel=exact)).screens[0].parts[0].ink == "grey"  # type: ignore[union-attr]

    def test_what_counts_is_the_colour_that_the_panel_shows(self) -> None:
        # Of 32 and 64 levels #767676 becomes #737573, #777777 becomes #737573 or #7b797b: nearest.
        for ink in ("grey", "fog"):
            colours = PANEL.colours
            colour = shown(quantise(parse({"grey": "#767676", "fog": "#777777"}[ink]), colours), colours)
            expected = contrast(colour, (255, 255, 255)) < 4.5
            assert bool(found(layout(replace(NAME, ink=ink)))) == expected

    def test_the_remedy_is_the_nearest_shade_that_reaches_it(self) -> None:
        made = layout(replace(NAME, ink="pale"), inks=(*INKS, "pale #6080ff"))
        only(made, "contrast")
        after = mended(made)
        colour = parse(next(ink.colour for ink in after.inks if ink.name == "pale"))
        colours = PANEL.colours
        assert contrast(shown(quantise(colour, colours), colours), (255, 255, 255)) >= 4.5
        assert colour[2] > colour[1] > colour[0], "the hue stays"
        step = min(colour[0] + 6, 255), min(colour[1] + 6, 255), min(colour[2] + 6, 255)
        assert contrast(shown(quantise(step, colours), colours), (255, 255, 255)) < 4.8, (
            "and no darker than needed"
        )

    def test_an_ink_that_serves_elsewhere_too_is_changed_so_that_it_serves_there(self) -> None:
        # A shade dark enough for white is too dark for the card: another ink is proposed.
        inks = (*INKS, "pale #6080ff", "slate #182030")
        card = Box("card", 60, 0, 100, 80, fill="slate")
        other = Label("other", "Tank", "plain", "pale", 70, 40)
        made = layout(replace(NAME, ink="pale"), card, other, inks=inks)
        after = mended(made)
        assert after.inks == made.inks
        assert after.screens[0].parts[1:] == made.screens[0].parts[1:]
        # On another screen likewise.
        far = replace(
            layout(replace(NAME, ink="pale"), inks=inks),
            screens=(layout(replace(NAME, ink="pale")).screens[0], Screen("night", "slate", (other,))),
        )
        assert mended(far).inks == made.inks

    def test_an_ink_that_is_also_a_ground_stays(self) -> None:
        card = Box("card", 60, 0, 100, 80, fill="pale")
        dark = Label("other", "Tank", "plain", "black", 70, 40)
        made = layout(card, dark, replace(NAME, ink="pale"), inks=(*INKS, "pale #6080ff"))
        assert mended(made).inks == made.inks

    def test_the_box_under_a_label_is_what_lies_behind_it(self) -> None:
        box = Box("card", 0, 0, 80, 80, fill="black")
        assert found(layout(NAME)) == []
        finding = only(layout(box, NAME), "contrast")
        assert "`black` behind it" in finding.message
        assert found(layout(box, replace(NAME, ink="white"))) == []

    def test_a_field_lies_on_the_ground_that_it_repaints(self) -> None:
        box = Box("card", 0, 0, 160, 80, fill="black")
        white = replace(LEVEL, ink="white", ground="black")
        assert found(layout(box, white)) == []
        assert [one.rule for one in found(layout(box, replace(LEVEL, ink="white")))] == ["erases", "contrast"]

    def test_large_text_needs_less_where_the_size_of_the_glass_is_known(self) -> None:
        # 40 px of 0.16 mm are 18.1 pt; of 0.158 mm 17.9 pt.
        big = Label("name", "Tank", "large", "mid", 10, 60)
        inks = (*INKS, "mid #a87878")
        assert 3 < contrast(parse("#a87878"), (255, 255, 255)) < 4.5
        glass = replace(PANEL, width_mm=160 * 0.16, height_mm=80 * 0.16)
        assert found(layout(big, panel=glass, inks=inks)) == []
        smaller = replace(PANEL, width_mm=160 * 0.158, height_mm=80 * 0.158)
        only(layout(big, panel=smaller, inks=inks), "contrast")
        only(layout(big, inks=inks), "contrast")

    def test_states_of_an_icon_and_inks_of_a_meter_need_three(self) -> None:
        inks = (*INKS, "sun #f0c020", "rust #c07840")
        finding = only(layout(lamp(("on", "sun")), inks=inks), "contrast")
        assert finding.texts == ("on",)
        assert "an icon needs 3:1" in finding.message
        assert found(layout(lamp(("on", "rust")), inks=inks)) == []
        bar = Meter("bar", 10, 10, 60, 10, 0, 100, "rust", limits=(MeterLimit(80, "sun", mark=False),))
        finding = only(layout(bar, inks=inks), "contrast")
        assert "`sun`" in finding.message
        mended(layout(bar, inks=inks))
        assert found(layout(replace(bar, limits=()), inks=inks)) == []

    def test_on_two_colours_an_existing_ink_is_proposed(self) -> None:
        mono = replace(PANEL, colour_format="mono")
        made = layout(replace(NAME, ink="pale"), panel=mono, inks=(*INKS, "pale #c0c0c0"))
        finding = only(made, "contrast")
        assert "1.00:1" in finding.message
        assert mended(made).inks == made.inks

    def test_a_line_must_only_be_seen(self) -> None:
        inks = (*INKS, "mist #f0f0f0", "snow #fefefe")
        line = Rule("line", 5, 5, 50, "mist")
        assert found(layout(line, inks=inks)) == []
        assert "cannot be seen" in only(layout(replace(line, ink="snow"), inks=inks), "contrast").message
        frame = Box("frame", 5, 5, 50, 20, outline="snow")
        only(layout(frame, inks=inks), "contrast")
        assert found(layout(replace(frame, outline="mist"), inks=inks)) == []
        assert found(layout(replace(frame, fill="mist"), inks=inks)) == []


class TestToldApart:
    def test_red_and_green_of_one_lightness(self) -> None:
        # Contrasts of #d02020 and #208020 to white: both above 3, to each other about 1.
        finding = only(layout(lamp(("stop", "red"), ("go", "leaf"))), "told-apart")
        assert finding.texts == ("stop", "go")
        assert "differ by colour alone" in finding.message
        assert found(layout(lamp(("stop", "leaf"), ("go", "black")))) == []
        # To protan sight red is so dark that black is near.
        assert "to protan sight" in only(layout(lamp(("stop", "red"), ("go", "black"))), "told-apart").message

    def test_another_shape_tells_them_apart(self) -> None:
        made = lamp(("stop", "red"), ("go", "leaf"))
        other = ("######", "######", "......", "......", "######", "######")
        made = replace(made, states=(made.states[0], replace(made.states[1], rows=other)))
        assert found(layout(made)) == []

    def test_a_pixel_is_not_another_shape(self) -> None:
        made = lamp(("stop", "red"), ("go", "leaf"))
        dotted = (".###..", *LAMP[1:])
        near = replace(made, states=(made.states[0], replace(made.states[1], rows=dotted)))
        assert "differ by 1 pixel of 25" in only(layout(near), "told-apart").message
        same_ink = replace(near, states=tuple(replace(state, ink=None) for state in near.states))
        assert found(layout(same_ink)) == [], "frames of one movement may be near"

    def test_the_sight_that_has_most_trouble_is_named(self) -> None:
        """To protan sight reds are dark: this pair is told apart in other sights only."""
        assert contrast(parse("#d02020"), (0, 0, 0)) > 3
        finding = only(layout(lamp(("stop", "red"), ("go", "black"))), "told-apart")
        assert "to protan sight" in finding.message

    def test_what_the_panel_shows_alike_is_alike(self) -> None:
        mono = replace(PANEL, colour_format="mono")
        made = lamp(("stop", "leaf"), ("go", "black"))
        assert found(layout(made)) == []
        assert "look the same" in only(layout(made, panel=mono), "told-apart").message
        assert "look the same" in only(layout(lamp(("stop", "red"), ("go", "red"))), "told-apart").message


class TestHeight:
    # 0.2 mm a pixel: the 10 px figures of the type are 2.0 mm high, and 16 minutes of arc from 429.7 mm.
    GLASS = replace(PANEL, width_mm=32.0, height_mm=16.0)

    def test_one_millimetre_too_far(self) -> None:
        made = layout(LEVEL, panel=self.GLASS)
        assert found(made) == [], "no distance is stated"
        assert found(replace(made, reading_distance_mm=429.0)) == []
        finding = only(replace(made, reading_distance_mm=430.0), "height")
        assert finding.level == "caution"
        assert "10 px = 2.00 mm high, 16.0 minutes" in finding.message

    def test_the_remedy_is_the_least_size_that_is_high_enough(self) -> None:
        made = replace(layout(LEVEL, panel=self.GLASS), reading_distance_mm=430.0)
        after = mended(made)
        size = next(spec.size for spec in after.types if spec.name == "plain")
        assert size is not None
        smaller = tuple(
            replace(spec, size=size - 1) if spec.name == "plain" else spec for spec in after.types
        )
        assert [one.rule for one in found(replace(after, types=smaller))] == ["height"]

    def test_paddings_grow_with_the_type(self) -> None:
        material = gather(layout(LEVEL), Path())
        tight = replace(LEVEL, padding=next(measures(material)).ink)
        after = mended(replace(layout(tight, panel=self.GLASS), reading_distance_mm=430.0))
        (part,) = after.screens[0].parts
        assert isinstance(part, Field)
        assert part.padding is not None
        assert tight.padding is not None
        assert part.padding[3] > tight.padding[3]

    def test_where_the_larger_type_does_not_fit_the_remedy_only_says_so(self) -> None:
        beside = Rule("line", 50, 10, 50, "black", "down")
        wide = replace(
            LEVEL, content=Content("%s", (Choice(("Overflowing",)),)), x=150, padding=(64, 24, 92, 24)
        )
        made = replace(layout(beside, wide, panel=self.GLASS), reading_distance_mm=1200.0)
        finding = only(made, "height")
        assert finding.remedy is not None
        assert not finding.remedy.changes
        assert "no room" in finding.remedy.sentence

    def test_bitmap_fonts_grow_to_their_next_file(self) -> None:
        types = (TypeSpec("plain", "pellucet-10"),)
        made = replace(layout(LEVEL, panel=self.GLASS), types=types, reading_distance_mm=302.0)
        finding = only(made, "height")
        assert finding.remedy is not None
        assert "pellucet-12" in finding.remedy.sentence
        mended(made)

    def test_too_large_is_worth_a_note(self) -> None:
        # The capital is 10 px = 2 mm high: 45 minutes of arc from 152.8 mm.
        made = layout(NAME, panel=self.GLASS)
        assert only(replace(made, reading_distance_mm=152.0), "height").level == "note"
        assert found(replace(made, reading_distance_mm=153.0)) == []
        number = layout(LEVEL, panel=self.GLASS)
        assert found(replace(number, reading_distance_mm=100.0)) == [], "a number is read from farther too"


class TestMatrix:
    def test_the_least_matrix_is_5_by_7(self) -> None:
        """ISO 9241-3. The figures of the outline type at 10 px have 5 × 6, at 11 px 5 × 7."""
        small = replace(LEVEL, type="tiny")
        finding = only(layout(small), "matrix")
        assert finding.level == "caution"
        assert "5 × 6" in finding.message
        grown = replace(layout(small), types=(TypeSpec("tiny", "SourceSansPro", 11), *layout().types[:2]))
        assert found(grown) == []

    def test_small_letters_and_signs_alone_are_not_judged(self) -> None:
        assert found(layout(replace(NAME, text="a - b", type="tiny"))) == []

    def test_long_text_wants_7_by_9(self) -> None:
        types = (TypeSpec("plain", "SourceSansPro", 12),)
        wide = replace(PANEL, width=400)
        words = "Switch the kiln off at the wall and wait for it"
        note = only(replace(layout(replace(NAME, text=words), panel=wide), types=types), "matrix")
        assert note.level == "note"
        assert "7 × 9" in note.message
        assert found(replace(layout(replace(NAME, text=words[:29]), panel=wide), types=types)) == []
        larger = (TypeSpec("plain", "SourceSansPro", 14),)
        assert found(replace(layout(replace(NAME, text=words), panel=wide), types=larger)) == []


def bdf(path: Path, glyphs: dict[str, tuple[str, ...]], size: int = 16) -> str:
    """Write a bitmap font of the given shapes, standing on the baseline, a pixel between them."""
    lines = [
        "STARTFONT 2.1", "FONT made", f"SIZE {size} 72 72", f"FONTBOUNDINGBOX {size} {size} 0 0",
        "STARTPROPERTIES 2", f"FONT_ASCENT {size}", "FONT_DESCENT 2", "ENDPROPERTIES", f"CHARS {len(glyphs)}",
    ]  # fmt: skip
    for char, rows in glyphs.items():
        width = len(rows[0])
        lines += [
            f"STARTCHAR u{ord(char):04X}", f"ENCODING {ord(char)}", "SWIDTH 500 0", f"DWIDTH {width + 1} 0",
            f"BBX {width} {len(rows)} 0 0", "BITMAP",
        ]  # fmt: skip
        digits = -(-width // 8) * 2
        for row in rows:
            bits = int(row.replace("#", "1").replace(".", "0").ljust(digits * 4, "0"), 2)
            lines.append(f"{bits:0{digits}X}")
        lines.append("ENDCHAR")
    path.write_text("\n".join([*lines, "ENDFONT", ""]))
    return str(path)


def pillar(width: int, height: int, stem: int) -> tuple[str, ...]:
    """An H of two stems."""
    beam = "#" * width
    stems = "#" * stem + "." * (width - 2 * stem) + "#" * stem
    middle = height // 2
    return (*[stems] * middle, *[beam] * 1, *[stems] * (height - middle - 1))


class TestStroke:
    def made(self, tmp_path: Path, rows: tuple[str, ...]) -> Layout:
        font = bdf(tmp_path / f"made{hash(rows)}.bdf", {"H": rows}, 32)
        label = Label("name", "HHH", "plain", "black", 10, 50)
        return replace(layout(label), types=(TypeSpec("plain", font),))

    def test_too_thin_and_just_thick_enough(self, tmp_path: Path) -> None:
        """DOD-HDBK-791(AM): about 1/6 dark on light; half of it are 2 px at 24 px of height."""
        finding = only(self.made(tmp_path, pillar(18, 24, 1)), "stroke")
        assert "too thin for text dark on light: at least 2 px" in finding.message
        assert found(self.made(tmp_path, pillar(18, 24, 2))) == []

    def test_too_thick_and_just_thin_enough(self, tmp_path: Path) -> None:
        finding = only(self.made(tmp_path, pillar(23, 24, 9)), "stroke")
        assert "too thick" in finding.message
        assert found(self.made(tmp_path, pillar(23, 24, 8))) == []

    def test_light_on_dark_spreads_and_so_bears_less(self, tmp_path: Path) -> None:
        made = self.made(tmp_path, pillar(23, 24, 8))
        dark = replace(
            made.screens[0], ground="black", parts=(replace(made.screens[0].parts[0], ink="white"),)
        )
        assert "too thick for text light on dark" in only(replace(made, screens=(dark,)), "stroke").message

    @pytest.mark.parametrize("stem", [1, 2])
    def test_one_pixel_is_never_too_thin_at_7_px(self, tmp_path: Path, stem: int) -> None:
        assert found(self.made(tmp_path, pillar(5, 7, stem))) == []

    def test_strokes_along_the_rows_do_not_count(self, tmp_path: Path) -> None:
        beam, stem = ("#" * 18,) * 5, ("####" + "." * 14,) * 4
        assert found(self.made(tmp_path, (*beam, *stem, *beam, *stem, *beam, "#" * 18))) == []


EIGHT = (".###.", "#...#", "#...#", ".###.", "#...#", "#...#", ".###.")
BEE = ("####.", "#...#", "#...#", "####.", "#...#", "#...#", "####.")
THREE = (".###.", "#...#", "....#", "..##.", "....#", "#...#", ".###.")


class TestLookalike:
    def field(self, tmp_path: Path, shapes: dict[str, tuple[str, ...]], *texts: str) -> Layout:
        font = bdf(tmp_path / f"made{hash(tuple(shapes.items()))}.bdf", shapes)
        content = Content("%s", (Choice(texts),))
        part = replace(LEVEL, content=content)
        return replace(layout(part), types=(TypeSpec("plain", font),))

    def test_corners_alone_do_not_tell_apart(self, tmp_path: Path) -> None:
        made = self.field(tmp_path, {"8": EIGHT, "B": BEE, "1": pillar(5, 7, 1)}, "18", "1B")
        finding = only(made, "lookalike")
        assert finding.texts == ("18", "1B")
        assert "`8` and `B`" in finding.message
        # Another pixel at one corner joins it: a spot of two.
        other = ("####.", "##..#", *BEE[2:])
        assert found(self.field(tmp_path, {"8": EIGHT, "B": other, "1": pillar(5, 7, 1)}, "18", "1B")) == []

    def test_figures_of_the_least_matrix_pass(self, tmp_path: Path) -> None:
        assert found(self.field(tmp_path, {"8": EIGHT, "3": THREE}, "8", "3")) == []

    def test_only_where_one_can_stand_for_the_other(self, tmp_path: Path) -> None:
        shapes = {"8": EIGHT, "B": BEE, "1": pillar(5, 7, 1)}
        assert found(self.field(tmp_path, shapes, "8B", "1B")) == []
        assert found(self.field(tmp_path, shapes, "81", "B8")) == []
        # Each stands where a 1 may stand, but neither where the other may.
        apart = {**shapes, "a": pillar(7, 7, 2), "b": ("#######",) * 7}
        assert found(self.field(tmp_path, apart, "8a", "1a", "Bb", "1b")) == []
        assert only(self.field(tmp_path, shapes, "8118", "B118", "1"), "lookalike").texts == ("8118", "B118")

    def test_characters_of_the_same_pixels(self, tmp_path: Path) -> None:
        bar = ("#",) * 7
        made = self.field(tmp_path, {"l": bar, "|": bar, "1": pillar(5, 7, 1)}, "1l", "1|")
        assert "are the same pixels" in only(made, "lookalike").message

    def test_free_text_is_worth_a_note_and_numbers_are_not_free(self) -> None:
        free = Content("%s", (FreeText(2, characters="Il0123"),), fault="-")
        made = layout(replace(LEVEL, content=free))
        assert only(made, "lookalike").level == "note"
        assert (
            found(layout(replace(LEVEL, content=replace(free, arguments=(FreeText(2, characters="I0123"),)))))
            == []
        )
        # At 10 px both are one bar.
        types = (TypeSpec("plain", "SourceSansPro", 10),)
        levels = {one.rule: one.level for one in found(replace(made, types=types))}
        assert levels["lookalike"] == "caution"

    def test_another_type_of_the_layout_is_the_remedy(self) -> None:
        words = Content("%s", (Choice(("Il", "ll")),))
        made = layout(replace(LEVEL, content=words), inks=INKS)
        types = (*made.types, TypeSpec("clear", "pellucet-16"))
        finding = only(replace(made, types=types), "lookalike")
        assert finding.remedy is not None
        assert "`clear`" in finding.remedy.sentence


WORDS = st.lists(
    st.text(st.sampled_from("Il1a8"), min_size=1, max_size=4), min_size=1, max_size=12, unique=True
)
CONTENTS = st.one_of(
    st.builds(lambda words: Content("%s", (Choice(tuple(words)),), fault="8"), WORDS),
    st.builds(lambda words, more: Content("%s%s", (Choice(tuple(words)), Choice(tuple(more)))), WORDS, WORDS),
    st.builds(lambda low, more: Content("%d", (WholeRange(low, low + more),)), st.integers(-30, 200), st.integers(0, 200)),
    st.builds(lambda longest: Content("a%s", (FreeText(longest, characters="Il1a"),)), st.integers(0, 4)),
)  # fmt: skip


@given(CONTENTS)
def test_characters_stand_in_for_each_other_as_counted_text_by_text(content: Content) -> None:
    graph_ = graph(content)
    texts = list(graph_.texts())
    expected = set()
    for one, other in itertools.combinations(texts, 2):
        if len(one) == len(other):
            differing = [pair for pair in zip(one, other, strict=True) if pair[0] != pair[1]]
            if len(differing) == 1:
                expected.add(tuple(sorted(differing[0])))
    assert set(_standings(graph_)) == expected
    for first, second in expected:
        one, other = _texts(graph_, Likeness(first, second, False))
        assert graph_.accepts(one)
        assert graph_.accepts(other)
        differing = [pair for pair in zip(one, other, strict=True) if pair[0] != pair[1]]
        assert (len(one), differing) == (len(other), [(first, second)])


def test_a_long_content_of_many_words_is_judged_without_listing_it() -> None:
    """Depth is no trouble: eight free texts of 256 characters one behind the other."""
    free = FreeText(256, ranges=(("0", "9"), ("A", "z")))
    long = graph(Content("-".join(["%s"] * 8), (free,) * 8))
    began = time.perf_counter()
    assert ("0", "O") in _standings(long)
    assert time.perf_counter() - began < 5


@pytest.mark.parametrize("text", ["°", " ", "-", "♨", "%%"])
def test_texts_without_letters_or_digits_are_no_trouble(text: str) -> None:
    field = replace(LEVEL, content=Content(text, fault=text))
    made = replace(
        layout(field), reading_distance_mm=400.0, panel=replace(PANEL, width_mm=32.0, height_mm=16.0)
    )
    assert {one.level for one in found(made)} <= {"fault"}
    empty = replace(field, content=Content("", fault=""))
    assert found(replace(made, screens=(Screen("main", "white", (empty,)),))) == []
