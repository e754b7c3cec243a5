"""The project record: what is edited, undone and saved."""

from workbench.document.edits import (
    quarter_of,
    set_allowance,
    set_client,
    set_front_share,
    set_limit,
    set_measurement,
    set_opening,
    set_panels,
    set_paper,
    set_reduction,
    set_rule,
    set_style,
    set_unit,
    take_the_most,
)
from workbench.document.file import SUFFIX, read_project, to_bytes, write_project
from workbench.document.line_edits import (
    add_point,
    move_point,
    place_of,
    remove_point,
    style_line_again,
    toggle_smooth,
)
from workbench.document.paper import choice_of, heading_of, printed
from workbench.document.picture import Picture, picture_of
from workbench.document.project import (
    LARGEST_NUMBER,
    MOST_POINTS,
    TEXT_LENGTHS,
    Client,
    Paper,
    PaperName,
    Project,
    new_project,
)
from workbench.document.report import NoDraftError, report
from workbench.document.report_text import report_text
from workbench.document.schema import json_schema
from workbench.document.seam_edits import (
    set_left_part,
    set_level_weight,
    set_pin,
    set_seam_place,
    set_through_bust_point,
    set_weight,
    share_evenly,
)
from workbench.document.session import Session, Step
from workbench.document.storage import FileTrouble, write_whole
from workbench.document.words import RULE_WORDS, STYLE_WORDS

__all__ = [
    "LARGEST_NUMBER",
    "MOST_POINTS",
    "RULE_WORDS",
    "STYLE_WORDS",
    "SUFFIX",
    "TEXT_LENGTHS",
    "Client",
    "FileTrouble",
    "NoDraftError",
    "Paper",
    "PaperName",
    "Picture",
    "Project",
    "Session",
    "Step",
    "add_point",
    "choice_of",
    "heading_of",
    "json_schema",
    "move_point",
    "new_project",
    "picture_of",
    "place_of",
    "printed",
    "quarter_of",
    "read_project",
    "remove_point",
    "report",
    "report_text",
    "set_allowance",
    "set_client",
    "set_front_share",
    "set_left_part",
    "set_level_weight",
    "set_limit",
    "set_measurement",
    "set_opening",
    "set_panels",
    "set_paper",
    "set_pin",
    "set_reduction",
    "set_rule",
    "set_seam_place",
    "set_style",
    "set_through_bust_point",
    "set_unit",
    "set_weight",
    "share_evenly",
    "style_line_again",
    "take_the_most",
    "to_bytes",
    "toggle_smooth",
    "write_project",
    "write_whole",
]
