"""The program's icon and that of its files, from their drawings to what each system wants.

Windows wants one ``.ico``, macOS one ``.icns``, the other desktops a PNG of every size.
"""

from __future__ import annotations

from pathlib import Path

from PIL import Image
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

HERE = Path(__file__).resolve().parent
DRAWINGS = {
    "corset-workbench": HERE.parent / "icons" / "program.svg",
    "corset-workbench-file": HERE / "file_icon.svg",
}
"""By the name that a desktop looks them up by."""
SIZES = (16, 24, 32, 48, 64, 128, 256, 512)
_ICO_SIZES = [(side, side) for side in (16, 24, 32, 48, 64, 128, 256)]
"""An .ico holds none above 256."""


def picture(drawing: Path, side: int) -> Image.Image:
    """The drawing, so many pixels wide and high, on nothing."""
    image = QImage(side, side, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(0)
    painter = QPainter(image)
    QSvgRenderer(str(drawing)).render(painter, QRectF(0, 0, side, side))
    painter.end()
    plain = image.convertToFormat(QImage.Format.Format_RGBA8888)
    return Image.frombytes("RGBA", (side, side), bytes(plain.constBits()))


def write_pngs(folder: Path) -> None:
    """``SIZExSIZE/apps`` and ``/mimetypes`` with a PNG each, as the icon theme of a desktop has them."""
    for name, drawing in DRAWINGS.items():
        kind = "mimetypes" if name.endswith("-file") else "apps"
        for side in SIZES:
            path = folder / f"{side}x{side}" / kind / f"{name}.png"
            path.parent.mkdir(parents=True, exist_ok=True)
            picture(drawing, side).save(path)


def write_one_file(path: Path, name: str = "corset-workbench") -> Path:
    """The path, where an ``.ico`` or ``.icns`` by its suffix now lies with every size in it."""
    path.parent.mkdir(parents=True, exist_ok=True)
    drawing = DRAWINGS[name]
    largest = picture(drawing, 1024 if path.suffix == ".icns" else 256)
    if path.suffix == ".icns":
        largest.save(path)
    else:
        # drawn at every size: shrunk from the largest, thin lines would go
        others = [picture(drawing, side) for side, _ in _ICO_SIZES[:-1]]
        largest.save(path, sizes=_ICO_SIZES, append_images=others)
    return path
