"""The chooser of shapes, and how one of hers is kept."""

from workbench.ui.styles.chooser import StyleChooser
from workbench.ui.styles.questions import ShapeQuestions
from workbench.ui.styles.save import SaveShape

__all__ = ["SaveShape", "ShapeQuestions", "StyleChooser"]
