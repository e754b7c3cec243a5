"""The project record: what is edited, undone and saved."""

from workbench.document.picture import Picture, picture_of
from workbench.document.project import Client, Paper, PaperName, Project, new_project
from workbench.document.session import Session, Step

__all__ = ["Client", "Paper", "PaperName", "Picture", "Project", "Session", "Step", "new_project", "picture_of"]
