"""The project record: what is edited, undone and saved."""

from typing import TYPE_CHECKING

from workbench.document.file import SUFFIX, read_project, to_bytes, write_project
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
from workbench.document.session import Session, Step
from workbench.document.storage import FileTrouble, write_whole
from workbench.document.usual_cloths import usual_cloths
from workbench.doors import when_asked

if TYPE_CHECKING:
    from workbench.document.clients_csv import BadRow, ClientRow, Fault, opened_clients
    from workbench.document.cloth_edits import (
        BY_HAND,
        add_cloth,
        drop_plan,
        keep_plan,
        pin_piece,
        place_by_hand,
        remove_cloth,
        set_cloth,
        set_cloth_layers,
    )
    from workbench.document.cloth_table import CLOTH_ROWS, CLOTH_TABLE, ClothRow, cloth_span_words
    from workbench.document.done_edits import set_done
    from workbench.document.edits import (
        quarter_of,
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
    from workbench.document.exporting import exported, marking_guides, printed_marking
    from workbench.document.fresh_files import free_stem, make_folder, plain_stem
    from workbench.document.laying import better_lay
    from workbench.document.lays import Lay, PlanState
    from workbench.document.line_edits import (
        add_point,
        move_point,
        place_of,
        remove_point,
        style_line_again,
        toggle_smooth,
    )
    from workbench.document.making_edits import (
        BONE_PLACES,
        EDGE_NAMES,
        set_allowance_of,
        set_bone_place,
        set_boning,
        set_busk,
        set_front,
        set_lacing,
        set_layer_made,
        set_layer_panel,
        set_making,
        set_marks,
        set_net,
        set_own_allowance,
        set_turn,
    )
    from workbench.document.making_table import MAKING_ROWS, MAKING_TABLE, MakingRow
    from workbench.document.paper import (
        choice_of,
        heading_of,
        printed,
        printed_card,
        printed_lays,
        printed_order,
    )
    from workbench.document.quote_edits import (
        set_all_hours,
        set_bought,
        set_currency,
        set_hours,
        set_price,
        set_price_row,
        set_quoting,
    )
    from workbench.document.recutting import RowDone, recut
    from workbench.document.report_cloth import lay_data
    from workbench.document.report_data import NoDraftError, cut_out, finding_data, report
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
    from workbench.document.style_carry import CARRIED, Reckoning, Shape, carried, shape_of
    from workbench.document.style_edits import PURPOSE_MOST, as_shape, in_shape
    from workbench.document.taken import Taken
    from workbench.document.taken_compare import NOTABLE_MM, MeasureChange, measure_changes
    from workbench.document.taken_edits import measure_anew, remove_taken, set_taken, take_back, taken_now
    from workbench.document.text_lay import lay_text
    from workbench.document.text_report import report_text
    from workbench.document.wish import Behind, WishPicture
    from workbench.document.wish_checks import LEAST_SCALE, MOST_PICTURES, MOST_SCALE
    from workbench.document.wish_edits import (
        add_wish,
        lay_behind,
        move_behind,
        remove_wish,
        scale_behind,
        scale_between,
        set_behind,
        set_wish_note,
        take_away_behind,
        wish_named,
    )
    from workbench.document.wish_file import PictureTrouble, read_wish, wish_of
    from workbench.document.words import RULE_WORDS, STYLE_WORDS
else:
    __getattr__ = when_asked(
        __name__,
        {
            "clients_csv": "BadRow ClientRow Fault opened_clients",
            "cloth_edits": "BY_HAND add_cloth drop_plan keep_plan pin_piece "
            "place_by_hand remove_cloth set_cloth set_cloth_layers",
            "cloth_table": "CLOTH_ROWS CLOTH_TABLE ClothRow cloth_span_words",
            "done_edits": "set_done",
            "edits": "quarter_of set_client set_front_share set_limit set_measurement set_opening set_panels "
            "set_paper set_reduction set_rule set_style set_unit take_the_most",
            "exporting": "exported marking_guides printed_marking",
            "fresh_files": "free_stem make_folder plain_stem",
            "laying": "better_lay",
            "lays": "Lay PlanState",
            "line_edits": "add_point move_point place_of remove_point style_line_again toggle_smooth",
            "making_edits": "BONE_PLACES EDGE_NAMES set_allowance_of set_bone_place set_boning "
            "set_busk set_front set_lacing set_layer_made "
            "set_layer_panel set_making set_marks set_net set_own_allowance set_turn",
            "making_table": "MAKING_ROWS MAKING_TABLE MakingRow",
            "paper": "choice_of heading_of printed printed_card printed_lays printed_order",
            "quote_edits": "set_all_hours set_bought set_currency set_hours "
            "set_price set_price_row set_quoting",
            "recutting": "RowDone recut",
            "report_cloth": "lay_data",
            "report_data": "NoDraftError cut_out finding_data report",
            "schema": "json_schema",
            "seam_edits": "set_left_part set_level_weight set_pin set_seam_place "
            "set_through_bust_point set_weight share_evenly",
            "style_carry": "CARRIED Reckoning Shape carried shape_of",
            "style_edits": "PURPOSE_MOST as_shape in_shape",
            "taken": "Taken",
            "taken_compare": "NOTABLE_MM MeasureChange measure_changes",
            "taken_edits": "measure_anew remove_taken set_taken take_back taken_now",
            "text_lay": "lay_text",
            "text_report": "report_text",
            "wish": "Behind WishPicture",
            "wish_checks": "LEAST_SCALE MOST_PICTURES MOST_SCALE",
            "wish_edits": "add_wish lay_behind move_behind remove_wish scale_behind scale_between "
            "set_behind set_wish_note take_away_behind wish_named",
            "wish_file": "PictureTrouble read_wish wish_of",
            "words": "RULE_WORDS STYLE_WORDS",
        },
    )

__all__ = [
    "BONE_PLACES",
    "BY_HAND",
    "CARRIED",
    "CLOTH_ROWS",
    "CLOTH_TABLE",
    "EDGE_NAMES",
    "LARGEST_NUMBER",
    "LEAST_SCALE",
    "MAKING_ROWS",
    "MAKING_TABLE",
    "MOST_PICTURES",
    "MOST_POINTS",
    "MOST_SCALE",
    "NOTABLE_MM",
    "PURPOSE_MOST",
    "RULE_WORDS",
    "STYLE_WORDS",
    "SUFFIX",
    "TEXT_LENGTHS",
    "BadRow",
    "Behind",
    "Client",
    "ClientRow",
    "ClothRow",
    "Fault",
    "FileTrouble",
    "Lay",
    "MakingRow",
    "MeasureChange",
    "NoDraftError",
    "Paper",
    "PaperName",
    "Picture",
    "PictureTrouble",
    "PlanState",
    "Project",
    "Reckoning",
    "RowDone",
    "Session",
    "Shape",
    "Step",
    "Taken",
    "WishPicture",
    "add_cloth",
    "add_point",
    "add_wish",
    "as_shape",
    "better_lay",
    "carried",
    "choice_of",
    "cloth_span_words",
    "cut_out",
    "drop_plan",
    "exported",
    "finding_data",
    "free_stem",
    "heading_of",
    "in_shape",
    "json_schema",
    "keep_plan",
    "lay_behind",
    "lay_data",
    "lay_text",
    "make_folder",
    "marking_guides",
    "measure_anew",
    "measure_changes",
    "move_behind",
    "move_point",
    "new_project",
    "opened_clients",
    "picture_of",
    "pin_piece",
    "place_by_hand",
    "place_of",
    "plain_stem",
    "printed",
    "printed_card",
    "printed_lays",
    "printed_marking",
    "printed_order",
    "quarter_of",
    "read_project",
    "read_wish",
    "recut",
    "remove_cloth",
    "remove_point",
    "remove_taken",
    "remove_wish",
    "report",
    "report_text",
    "scale_behind",
    "scale_between",
    "set_all_hours",
    "set_allowance_of",
    "set_behind",
    "set_bone_place",
    "set_boning",
    "set_bought",
    "set_busk",
    "set_client",
    "set_cloth",
    "set_cloth_layers",
    "set_currency",
    "set_done",
    "set_front",
    "set_front_share",
    "set_hours",
    "set_lacing",
    "set_layer_made",
    "set_layer_panel",
    "set_left_part",
    "set_level_weight",
    "set_limit",
    "set_making",
    "set_marks",
    "set_measurement",
    "set_net",
    "set_opening",
    "set_own_allowance",
    "set_panels",
    "set_paper",
    "set_pin",
    "set_price",
    "set_price_row",
    "set_quoting",
    "set_reduction",
    "set_rule",
    "set_seam_place",
    "set_style",
    "set_taken",
    "set_through_bust_point",
    "set_turn",
    "set_unit",
    "set_weight",
    "set_wish_note",
    "shape_of",
    "share_evenly",
    "style_line_again",
    "take_away_behind",
    "take_back",
    "take_the_most",
    "taken_now",
    "to_bytes",
    "toggle_smooth",
    "usual_cloths",
    "wish_named",
    "wish_of",
    "write_project",
    "write_whole",
]
