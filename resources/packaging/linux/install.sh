#!/bin/sh
# Puts the program into the menu and opens .bodice files with it, for the user who calls it; --remove takes that back.
# The folder stays where it is: run it again after moving the folder.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
data=${XDG_DATA_HOME:-$HOME/.local/share}
entry=$data/applications/corset-workbench.desktop

tell_the_desktop() {
    # each is there on some desktops only, and none is needed for the program itself
    if command -v update-mime-database >/dev/null; then update-mime-database "$data/mime"; fi
    if command -v update-desktop-database >/dev/null; then update-desktop-database -q "$data/applications"; fi
    if command -v gtk-update-icon-cache >/dev/null; then gtk-update-icon-cache -qtf "$data/icons/hicolor" || true; fi
}

if [ "${1:-}" = --remove ]; then
    rm -f "$entry" "$data/mime/packages/corset-workbench.xml"
    find "$data/icons/hicolor" \( -name corset-workbench.png -o -name corset-workbench-file.png \) -delete 2>/dev/null || true
    tell_the_desktop
    echo "The corset workbench is no longer in the menu. Your projects and settings are untouched."
    exit 0
fi

mkdir -p "$data/applications" "$data/mime/packages" "$data/icons/hicolor"
# quoted as the Desktop Entry Specification wants it, since the folder may have blanks in its name
program=$(printf %s "$here/corset-workbench" | sed -e 's/[\\"`$]/\\&/g' -e 's/\\/\\\\/g' -e 's/%/%%/g')
escaped=$(printf %s "$program" | sed -e 's/[\\&|]/\\&/g')
sed "s|^Exec=corset-workbench|Exec=\"$escaped\"|" "$here/share/corset-workbench.desktop" >"$entry"
cp "$here/share/corset-workbench.xml" "$data/mime/packages/"
cp -R "$here/share/icons/." "$data/icons/hicolor/"
tell_the_desktop
echo "The corset workbench is in the menu now, and opens .bodice files."
