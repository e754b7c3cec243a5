"""The two readers: a canvas that has its items for children, and one item.

Qt asks for them by pointer and keeps them as long as the canvas lives, so an item's reader is made
once for each key and looks up anew at every question what it stands for.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from operator import itemgetter
from weakref import ref

import shiboken6
from PySide6.QtCore import QObject, QPoint, QRect
from PySide6.QtGui import (
    QAccessible,
    QAccessibleActionInterface,
    QAccessibleInterface,
    QAccessibleValueInterface,
    QWindow,
)
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from workbench.ui.access.item import Amount, Item

Items = tuple[Item, ...]
_Role, _Text, _Face = QAccessible.Role, QAccessible.Text, QAccessible.InterfaceType
_ROLES = {
    "handle": _Role.Slider,
    "bar": _Role.Slider,
    "figure": _Role.SpinBox,
    "edge": _Role.SpinBox,
    "piece": _Role.ListItem,
    "line": _Role.Graphic,
}
_PRESS = QAccessibleActionInterface.pressAction()
_MORE, _LESS = QAccessibleActionInterface.increaseAction(), QAccessibleActionInterface.decreaseAction()

_NONE = shiboken6.wrapInstance(0, QAccessibleValueInterface)
"""What an interface that is not there has to be: Python's None arrives on the other side as the address
of None, and is called. Tried with PySide6 6.11.3."""


class ItemValue(QAccessibleValueInterface):
    """The figure of an item."""

    def __init__(self, amount: Callable[[], Amount | None]) -> None:
        super().__init__()
        self._amount = amount

    def currentValue(self) -> float:
        """In the user's unit."""
        amount = self._amount()
        return amount.now if amount else 0.0

    def minimumValue(self) -> float:
        """The least it can be."""
        amount = self._amount()
        return amount.least if amount else 0.0

    def maximumValue(self) -> float:
        """The most it can be."""
        amount = self._amount()
        return amount.most if amount else 0.0

    def minimumStepSize(self) -> float:
        """A mark of the ruler."""
        amount = self._amount()
        return amount.step if amount else 0.0

    def setCurrentValue(self, value: object) -> None:
        """Set it; what is no number is let be."""
        amount = self._amount()
        if amount is not None and isinstance(value, (int, float)):
            amount.put(amount.held(float(value)))


class ItemDeeds(QAccessibleActionInterface):
    """What can be done with an item."""

    def __init__(self, item: Callable[[], Item | None]) -> None:
        super().__init__()
        self._item = item

    def actionNames(self) -> list[str]:
        """Pick it, make it more or less, and what it can do of its own."""
        item = self._item()
        if item is None:
            return []
        names = [_PRESS] if item.pick is not None else []
        names += [_MORE, _LESS] if item.amount is not None else []
        return [*names, *(word for word, _ in item.deeds)]

    def doAction(self, word: str) -> None:
        """Do one of them."""
        item = self._item()
        if item is None:
            return
        if word == _PRESS and item.pick is not None:
            item.pick()
        elif word in (_MORE, _LESS) and item.amount is not None:
            step = item.amount.step if word == _MORE else -item.amount.step
            item.amount.put(item.amount.held(item.amount.now + step))
        else:
            dict(item.deeds).get(word, _nothing)()

    def keyBindingsForAction(self, word: str) -> list[str]:
        """None of its own: the canvas says its keys."""
        return []

    def localizedActionName(self, name: str) -> str:
        """As it is called here."""
        return name


def _nothing() -> None:
    """What an action that is unknown does."""


class ItemReader(QAccessibleInterface):
    """One item of a canvas."""

    def __init__(self, canvas: CanvasReader, key: Hashable) -> None:
        super().__init__()
        self._canvas, self._key = canvas, key
        self._value, self._deeds = ItemValue(self.amount), ItemDeeds(self.item)

    def item(self) -> Item | None:
        """What it stands for; None where that is there no more."""
        return self._canvas.item(self._key)

    def amount(self) -> Amount | None:
        """Its figure."""
        item = self.item()
        return item.amount if item is not None else None

    def isValid(self) -> bool:
        """Whether it is there."""
        return self.item() is not None

    def object(self) -> QObject:
        """It is no object of Qt's."""
        return None  # type: ignore[return-value]  # as Qt means it; the stub leaves it out

    def window(self) -> QWindow:
        """The window it is seen in."""
        return self._canvas.window()

    def parent(self) -> QAccessibleInterface:
        """The canvas."""
        return self._canvas

    def child(self, index: int) -> QAccessibleInterface:
        """It has none."""
        return None  # type: ignore[return-value]  # as Qt means it; the stub leaves it out

    def childAt(self, x: int, y: int) -> QAccessibleInterface:
        """It has none."""
        return None  # type: ignore[return-value]  # as Qt means it; the stub leaves it out

    def childCount(self) -> int:
        """It has none."""
        return 0

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """It has none."""
        return -1

    def role(self) -> QAccessible.Role:
        """What kind of control it is most like."""
        item = self.item()
        return _ROLES[item.kind] if item is not None else _Role.NoRole

    def state(self) -> QAccessible.State:
        """Whether it is picked, and can be."""
        state, item = QAccessible.State(), self.item()
        if item is None:
            state.invalid = True
            return state
        picks, widget = item.pick is not None, self._canvas.canvas
        state.focusable = state.selectable = picks
        state.selected = item.picked
        state.focused = item.picked and widget is not None and widget.hasFocus()
        state.readOnly = item.amount is None
        return state

    def text(self, kind: QAccessible.Text) -> str:
        """Its name, and its value in words, which is read as its description too."""
        item = self.item()
        if item is None:
            return ""
        if kind == _Text.Name:
            return item.name
        return item.said if kind in (_Text.Value, _Text.Description) else ""

    def setText(self, kind: QAccessible.Text, text: str) -> None:
        """Nothing is set by its words."""

    def rect(self) -> QRect:
        """Where it is on the screen, cut off at the edge of the canvas."""
        item, widget = self.item(), self._canvas.canvas
        if item is None or widget is None:
            return QRect()
        seen = item.box.toAlignedRect() & widget.rect()
        return QRect(widget.mapToGlobal(seen.topLeft()), seen.size()) if not seen.isEmpty() else QRect()

    def interface_cast(self, face: QAccessible.InterfaceType) -> int:
        """Its figure where it has one, and what can be done with it."""
        item, found = self.item(), _NONE
        if item is not None and face == _Face.ValueInterface and item.amount is not None:
            found = self._value
        elif item is not None and face == _Face.ActionInterface:
            found = self._deeds
        return found  # type: ignore[return-value]  # handed over as a pointer, which the stub calls a number


class CanvasReader(QAccessibleWidget):
    """A canvas and what lies on it; widgets that lie on it come first."""

    def __init__(
        self,
        canvas: QWidget,
        items_of: Callable[[QWidget], Items],
        shown_by: Callable[[QWidget], object] | None = None,
    ) -> None:
        """``shown_by`` says what the items hang on; without it they are worked out at every question."""
        super().__init__(canvas, _Role.Canvas)
        self._canvas, self._items_of, self._shown_by = ref(canvas), items_of, shown_by
        self._kept: tuple[object, Items] | None = None
        self._known: dict[Hashable, ItemReader] = {}
        self.told: Item | None = None
        """What was said last to be picked."""

    @property
    def canvas(self) -> QWidget | None:
        """The canvas; None once it is gone."""
        canvas = self._canvas()
        return canvas if canvas is not None and shiboken6.isValid(canvas) else None

    def items(self) -> Items:
        """What lies on the canvas now; nothing once that is gone."""
        canvas = self.canvas
        if canvas is None:
            return ()
        if self._shown_by is None:
            return self._items_of(canvas)
        shown = self._shown_by(canvas)
        if self._kept is None or self._kept[0] != shown:
            self._kept = shown, self._items_of(canvas)
        return self._kept[1]

    def item(self, key: Hashable) -> Item | None:
        """One of them."""
        return next((item for item in self.items() if item.key == key), None)

    def picked(self) -> Item | None:
        """The one that is picked."""
        return next((item for item in self.items() if item.picked), None)

    def reader(self, key: Hashable) -> ItemReader:
        """The reader of an item, the same each time."""
        if key not in self._known:
            self._known[key] = ItemReader(self, key)
            QAccessible.registerAccessibleInterface(self._known[key])
        return self._known[key]

    def forget_items(self) -> None:
        """Have Qt delete the readers of its items: the canvas is gone."""
        for reader in self._known.values():
            if shiboken6.isValid(reader):
                QAccessible.deleteAccessibleInterface(QAccessible.uniqueId(reader))
        self._known.clear()
        self._kept = None

    def childCount(self) -> int:
        """Widgets and items."""
        return super().childCount() + len(self.items())

    def child(self, index: int) -> QAccessibleInterface:
        """A widget or an item."""
        before, items = super().childCount(), self.items()
        if before <= index < before + len(items):
            return self.reader(items[index - before].key)
        return super().child(index)

    def indexOfChild(self, child: QAccessibleInterface) -> int:
        """Its number; -1 for what does not lie here."""
        for number, item in enumerate(self.items()):
            if self._known.get(item.key) is child:
                return super().childCount() + number
        return super().indexOfChild(child)

    def childAt(self, x: int, y: int) -> QAccessibleInterface:
        """What lies under a point of the screen: of several the smallest, else any widget."""
        point = QPoint(x, y)
        readers = [self.reader(item.key) for item in self.items()]
        under = [
            (rect.width() * rect.height(), reader)
            for reader in readers
            if (rect := reader.rect()).contains(point)
        ]
        return min(under, key=itemgetter(0))[1] if under else super().childAt(x, y)

    def focusChild(self) -> QAccessibleInterface:
        """What the keys act on."""
        canvas, picked = self.canvas, self.picked()
        if canvas is not None and picked is not None and canvas.hasFocus():
            return self.reader(picked.key)
        return super().focusChild()
