"""The bodice on her body as the pane shows it, with bones and lacing as they were last looked up."""

from __future__ import annotations

from workbench.document import Picture
from workbench.draft import Outcome
from workbench.worn import NOTHING_INSIDE, Inside, Worn, inside_of, worn_of


class Dressed:
    """Follows the pictures of the desk.

    Bones and lacing take longer to work out than the time between two frames. While a value
    changes they stay at their places on the body, which move with the panels; when the hand
    rests they are looked up again.
    """

    def __init__(self) -> None:
        self.worn: Worn | None = None
        """None while there is no draft."""
        self._inside: Inside = NOTHING_INSIDE
        self._inside_of: Outcome | None = None

    def follow(self, picture: Picture) -> None:
        """Put on the bodice of a picture, or its last good one."""
        outcome = picture.good
        if outcome is None:
            self.worn = None
            return
        last = self._inside_of
        if last is not None and last.design.panel_count != outcome.design.panel_count:
            self._inside, self._inside_of = NOTHING_INSIDE, None
        self.worn = worn_of(outcome, picture.project.torso, self._inside)

    def is_whole(self, picture: Picture) -> bool:
        """Whether bones and lacing are those of this draft."""
        return self._inside_of is picture.good or not picture.current

    def look_inside(self, picture: Picture) -> None:
        """Look up bones and lacing; works the cutting out."""
        outcome, cutting = picture.good, picture.cutting if picture.current else None
        if outcome is None or cutting is None:
            return
        bones = tuple((bone.panel, bone.line) for bone in cutting.bones)
        eyelets = cutting.opening.walks if cutting.opening is not None else ()
        self._inside, self._inside_of = inside_of(outcome, bones, eyelets), outcome
        self.worn = worn_of(outcome, picture.project.torso, self._inside)
