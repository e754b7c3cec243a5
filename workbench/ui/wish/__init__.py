"""The pictures of the wish: looked at beside the panels, or laid behind them."""

from workbench.ui.wish.pane import WishPane

__all__ = ["WishPane"]
