"""The command that hands panels, pieces or the marking guide on: SVG, DXF, one large sheet, a projector."""

from __future__ import annotations

import argparse
from fractions import Fraction
from math import inf
from pathlib import Path

from workbench.cli.common import Commands, Refused, length, no_draft, read, refuse_project, write
from workbench.document import (
    NoDraftError,
    Picture,
    exported,
    marking_guides,
    picture_of,
    printed_marking,
)
from workbench.exchange import DXF_VERSIONS, ExportChoice, ExportError, Projector, format_of
from workbench.marking import ROUNDINGS, Rounding
from workbench.pieces import LAYERS, LayerName

_GUIDE = "guide"
_NAMED_SCALES = {"full": 1.0, "half": 0.5, "quarter": 0.25}
_EPILOG = """\
what is written goes by the ending of OUT:
  .svg   millimetres, a group for each piece, each kind of line on its own
  .dxf   millimetres, R2000 or R12, each kind of line on a layer of its own
  .pdf   one sheet with everything on it: for a copy shop, or with --projector for a projector;
         with --what guide, how to mark every piece by hand, one a page
Lengths such as 0.5in, 1.2cm or 12mm; a bare figure is mm."""


def add_export(commands: Commands) -> None:
    """Add the command."""
    parser = commands.add_parser(
        "export",
        help="write the pieces for other programs, a copy shop or a projector",
        epilog=_EPILOG,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a .bodice project")
    parser.add_argument("-o", dest="out", type=Path, required=True, metavar="OUT.(svg|dxf|pdf)")
    parser.add_argument("--what", choices=("panels", "pieces", _GUIDE), help="usually pieces")
    layers = f"of this layer, once for each or “all”: {', '.join(LAYERS)}; usually fashion"
    parser.add_argument("--layer", action="append", metavar="LAYER", help=layers)
    parser.add_argument("--scale", metavar="SCALE", help="full, half, quarter, or a figure such as 1/2")
    parser.add_argument("--dxf", choices=DXF_VERSIONS, help="version of a .dxf; usually R2000")
    parser.add_argument("--round", choices=tuple(ROUNDINGS), help="how finely a guide is rounded")
    _add_projector(parser)
    parser.set_defaults(run=_export)


def _add_projector(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--projector", action="store_true", help="a .pdf for a projector, with a grid")
    parser.add_argument("--line", metavar="LENGTH", help="width of its lines; usually 2mm")
    parser.add_argument("--contrast", metavar="PERCENT", help="between lines and ground; usually 100")
    parser.add_argument("--dark", action="store_true", help="light lines on a dark ground")
    parser.add_argument("--grid", metavar="LENGTH", help="side of the squares of its grid; usually 2in")


def _export(chosen: argparse.Namespace) -> int:
    # before anything is read or worked out for nothing
    try:
        kind = format_of(chosen.out.suffix)
    except ExportError as error:
        raise Refused(f"{chosen.out}: {error}") from error
    _refuse_strays(chosen)
    picture = picture_of(read(chosen.file))
    refuse_project(chosen)
    guided = chosen.what == _GUIDE
    try:
        data = _guide(picture, chosen) if guided else exported(picture, kind, _choice(chosen))
    except NoDraftError as error:
        raise no_draft(chosen.file, error) from error
    except ValueError as error:
        raise Refused(f"{chosen.file}: {error}") from error
    write(chosen.out, data)
    return 0


def _refuse_strays(chosen: argparse.Namespace) -> None:
    """Refused where an option was given that does nothing for what is asked for."""
    guided = chosen.what == _GUIDE
    strays = ("scale", "dxf", "projector") if guided else ("round",)
    for name in strays:
        if getattr(chosen, name):
            what = (
                "does nothing for a marking guide" if guided else "only for a marking guide; add --what guide"
            )
            raise Refused(f"--{name}: {what}")


def _guide(picture: Picture, chosen: argparse.Namespace) -> bytes:
    """The marking guide of the layers asked for, of all of them unless some are."""
    if chosen.out.suffix.lower() != ".pdf":
        raise Refused(f"{chosen.out}: a marking guide is a PDF; name a .pdf file")
    rounding: Rounding | None = None if chosen.round is None else ROUNDINGS[chosen.round]
    layers = None if chosen.layer is None else _layers(chosen.layer)
    return printed_marking(picture, marking_guides(picture, rounding, layers))


def _choice(chosen: argparse.Namespace) -> ExportChoice:
    return ExportChoice(
        what=chosen.what or "pieces",
        layers=("fashion",) if chosen.layer is None else _layers(chosen.layer),
        scale=1.0 if chosen.scale is None else _scale(chosen.scale),
        dxf=chosen.dxf or "R2000",
        projector=_projector(chosen),
    )


def _layers(names: list[str]) -> tuple[LayerName, ...]:
    wanted = {name.strip().lower().replace("-", "_").replace(" ", "_") for name in names}
    if "all" in wanted:
        return LAYERS
    for name in sorted(wanted):
        if name not in LAYERS:
            raise Refused(f"--layer: “{name}” is none of {', '.join(LAYERS)} or all")
    return tuple(name for name in LAYERS if name in wanted)


def _scale(text: str) -> float:
    if text.lower() in _NAMED_SCALES:
        return _NAMED_SCALES[text.lower()]
    try:
        return float(Fraction(text))
    except (ValueError, ZeroDivisionError, OverflowError) as error:
        raise Refused(f"--scale: “{text}” is none of full, half, quarter or a figure such as 1/2") from error


def _projector(chosen: argparse.Namespace) -> Projector | None:
    """The projector asked for; refused where only its options are."""
    given = [name for name in ("line", "contrast", "grid") if getattr(chosen, name) is not None]
    given += ["dark"] if chosen.dark else []
    if not chosen.projector:
        if given:
            raise Refused(f"--{given[0]}: only for a projector; add --projector")
        return None
    usual = Projector()
    return Projector(
        line_mm=usual.line_mm if chosen.line is None else length("--line", chosen.line),
        ground="dark" if chosen.dark else "light",
        contrast=usual.contrast if chosen.contrast is None else _percent(chosen.contrast) / 100,
        grid_mm=usual.grid_mm if chosen.grid is None else length("--grid", chosen.grid),
    )


def _percent(text: str) -> float:
    try:
        figure = float(text.strip().removesuffix("%"))
    except ValueError:
        figure = inf
    if not 0 <= figure <= 100:
        raise Refused(f"--contrast: “{text}” is no figure from 20 to 100")
    return figure
