"""The sheet as one HTML page that needs no other file."""

from __future__ import annotations

from base64 import b64encode
from pathlib import Path

from panelproof.paper.dimensions import Disc, Drawing, Frame, Line, Word, dimensions
from panelproof.paper.facts import BYTES_HEAD, TYPE_HEAD, ScreenFacts, SheetFacts, Shot
from panelproof.picture.image import image, png

TEMPLATES = Path(__file__).parent / "templates"
GOOD_SHOT, GOOD_DRAWING, LETTER = 260, 980, 11.0


def page(facts: SheetFacts) -> str:
    """Return the page: pictures as data inside it, one picture pixel a panel pixel, enlarged without smoothing."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined  # noqa: PLC0415
    from markupsafe import Markup  # noqa: PLC0415

    panel = facts.material.layout.panel
    scale = max(1, min(8, GOOD_SHOT // panel.width))
    large = max(1, min(10, GOOD_DRAWING // panel.width))

    def source(shot: Shot) -> str:
        return "data:image/png;base64," + b64encode(png(image(shot.frame, panel))).decode()

    def drawing(screen: ScreenFacts) -> Markup:
        made = dimensions(screen.marks, (panel.width, panel.height), large, LETTER)
        return Markup(svg(made, source(screen.pictured), (panel.width, panel.height)))

    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return environment.get_template("sheet.html").render(
        facts=facts,
        type_head=TYPE_HEAD,
        bytes_head=BYTES_HEAD,
        width=panel.width * scale,
        height=panel.height * scale,
        source=source,
        drawing=drawing,
    )


def svg(drawing: Drawing, source: str, size: tuple[int, int]) -> str:
    """Return a drawing as SVG, the screen's picture inside it."""
    from xml.sax.saxutils import escape  # noqa: PLC0415

    wide, high = size[0] * drawing.scale, size[1] * drawing.scale
    lines = [
        f'<svg class="dimensions" viewBox="0 0 {drawing.width:g} {drawing.height:g}" width="{drawing.width:g}"'
        f' height="{drawing.height:g}" role="img">',
        f'<image href="{source}" x="{drawing.x:g}" y="{drawing.y:g}" width="{wide:g}" height="{high:g}"'
        ' preserveAspectRatio="none" style="image-rendering:pixelated"/>',
    ]
    for mark in drawing.marks:
        match mark:
            case Line():
                lines.append(
                    f'<line x1="{mark.x1:.2f}" y1="{mark.y1:.2f}" x2="{mark.x2:.2f}" y2="{mark.y2:.2f}"'
                    f' stroke="{mark.colour}" stroke-width="{mark.thick:.2f}"/>'
                )
            case Frame():
                dash = f' stroke-dasharray="{mark.dash:g}"' if mark.dash else ""
                lines.append(
                    f'<rect x="{mark.x:.2f}" y="{mark.y:.2f}" width="{mark.width:.2f}" height="{mark.height:.2f}"'
                    f' fill="none" stroke="{mark.colour}" stroke-width="1"{dash}/>'
                )
            case Word():
                anchor = {"left": "start", "centre": "middle", "right": "end"}[mark.align]
                turned = f' transform="rotate(-90 {mark.x:.2f} {mark.y:.2f})"' if mark.turned else ""
                lines.append(
                    f'<text x="{mark.x:.2f}" y="{mark.y:.2f}" font-size="{mark.size:g}" fill="{mark.colour}"'
                    f' text-anchor="{anchor}"{turned}>{escape(mark.text)}</text>'
                )
            case Disc():
                low, letters = mark.y + 0.38 * mark.radius, 1.2 * mark.radius
                lines.append(
                    f'<circle cx="{mark.x:.2f}" cy="{mark.y:.2f}" r="{mark.radius:g}" fill="{mark.colour}"'
                    ' stroke="#ffffff" stroke-width="0.7"/>'
                    f'<text x="{mark.x:.2f}" y="{low:.2f}" font-size="{letters:.2f}" font-weight="600" fill="#ffffff"'
                    f' text-anchor="middle">{escape(mark.text)}</text>'
                )
    return "\n".join([*lines, "</svg>"])
