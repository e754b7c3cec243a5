"""Shapes of her own: one project file each, in a folder of hers, without a word about any client."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from workbench.document import (
    STYLE_NAME_MOST,
    SUFFIX,
    FileTrouble,
    Project,
    as_shape,
    free_stem,
    make_folder,
    plain_stem,
    read_project,
    write_project,
)
from workbench.styles.kept import KeptShape
from workbench.styles.reference import REFERENCE, REFERENCE_NAME

MOST_OWN = 100
"""Shapes of a folder that are read: more cannot be told apart in a chooser (own choice)."""
_NAMELESS = "shape"


class NameTakenError(ValueError):
    """There is a shape of that name already; ``shape`` is it."""

    def __init__(self, shape: KeptShape) -> None:
        super().__init__(f"There is a shape called “{shape.name}” already.")
        self.shape = shape


@dataclass(frozen=True)
class OwnShapes:
    """The shapes of a folder by name, and a sentence for each file that is none."""

    shapes: tuple[KeptShape, ...] = ()
    troubles: tuple[str, ...] = ()


def own_shapes(folder: Path) -> OwnShapes:
    """What is in her folder; nothing where there is none yet. Nothing is raised for a file that is none."""
    try:
        paths = sorted(path for path in folder.iterdir() if path.suffix == SUFFIX)
    except FileNotFoundError:
        return OwnShapes()
    except OSError as error:
        return OwnShapes(troubles=(f"{folder}: cannot be read: {error.strerror or error}.",))
    shapes, troubles = [], []
    for path in paths[:MOST_OWN]:
        try:
            shapes.append(_kept(read_project(path), path))
        except FileTrouble as trouble:
            troubles.append(str(trouble))
    if len(paths) > MOST_OWN:
        troubles.append(f"{folder}: there are {len(paths)} shapes; the first {MOST_OWN} are shown.")
    shapes.sort(key=lambda shape: shape.name.casefold())
    return OwnShapes(tuple(shapes), tuple(troubles))


def _kept(project: Project, path: Path) -> KeptShape:
    """Any project serves as a shape; notes about somebody who was not made up are not shown."""
    ours = project.client.invented and project.client.name == REFERENCE_NAME
    name = project.style_name if ours and project.style_name else path.stem[:STYLE_NAME_MOST]
    return KeptShape(name, project.client.notes if ours else "", project, path)


def save_shape(
    project: Project, name: str, purpose: str, folder: Path, *, replacing: bool = False
) -> KeptShape:
    """The shape of a project, kept in her folder under that name; the folder is made where it is missing.

    Nothing but design and making goes along, put on the invented body in proportion. ValueError for a
    name or text that cannot be kept, NameTakenError unless ``replacing``, FileTrouble where it cannot be
    written.
    """
    kept, _ = as_shape(project, name, purpose, REFERENCE, REFERENCE_NAME)
    make_folder(folder)
    taken = _named(own_shapes(folder), kept.style_name)
    if taken is not None and not replacing:
        raise NameTakenError(taken)
    if taken is not None and taken.path is not None:
        path = taken.path
    else:
        path = folder / f"{free_stem(folder, plain_stem(name, _NAMELESS), (SUFFIX,))}{SUFFIX}"
    write_project(kept, path)
    return _kept(kept, path)


def _named(own: OwnShapes, name: str) -> KeptShape | None:
    return next((shape for shape in own.shapes if shape.name.casefold() == name.casefold()), None)


def remove_shape(shape: KeptShape) -> None:
    """Take a shape of hers out of its folder; FileTrouble where that cannot be done.

    ValueError for one that comes with the program.
    """
    if shape.path is None:
        raise ValueError("A shape that comes with the program cannot be removed.")
    try:
        shape.path.unlink(missing_ok=True)
    except OSError as error:
        raise FileTrouble(shape.path, f"cannot be removed: {error.strerror or error}.") from error
