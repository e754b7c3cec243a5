#!/usr/bin/env bash
# Tries the README's commands where nothing is installed: a new Debian 12 in a folder, a clone of this
# repository in it, and nothing else. By hand, as root; takes debootstrap, some 3 GB and a quarter of an hour.
#
#     resources/packaging/bare_debian.sh FOLDER [MIRROR]
#
# What is said goes to FOLDER.log. The folder is left as it is, to look around in; nothing outside is changed.
set -euo pipefail
folder=${1:?a folder that is not there yet}
mirror=${2:-}
root=$(cd "$(dirname "$0")/../.." && pwd)
[ "$(id -u)" -eq 0 ] || { echo "debootstrap and chroot take root." >&2; exit 2; }
[ ! -e "$folder" ] || { echo "$folder is already there." >&2; exit 2; }
command -v debootstrap >/dev/null || { echo "debootstrap is missing: apt-get install debootstrap" >&2; exit 2; }
exec > >(tee "$folder.log") 2>&1

say() { echo "== $(date +%T) $*"; }

say "a bare Debian 12"
# shellcheck disable=SC2086  # no mirror is no argument
debootstrap --variant=minbase --include=ca-certificates bookworm "$folder" $mirror
folder=$(cd "$folder" && pwd)

say "this machine's way to the network, and a clone"
cp -L /etc/resolv.conf "$folder/etc/resolv.conf"
# a workshop may have an authority of its own for what it fetches
cp -L /etc/ssl/certs/ca-certificates.crt "$folder/etc/ssl/certs/ca-certificates.crt"
git clone -q --no-hardlinks "$root" "$folder/workbench"

inside() { chroot "$folder" /usr/bin/env HOME=/root LANG=C.UTF-8 PATH=/usr/sbin:/usr/bin:/sbin:/bin bash -c "cd /workbench && $1"; }
let_go() { umount "$folder/proc" "$folder/dev" 2>/dev/null || true; }
trap let_go EXIT
mount -t proc proc "$folder/proc"
mount --bind /dev "$folder/dev"

# the two commands, as the README has them
mapfile -t commands < <(sed -n 's/^    \(python3 -m venv .*\)/\1/p' "$root/README.md")
[ ${#commands[@]} -ge 2 ] || { echo "The README has no longer two commands." >&2; exit 1; }

demo=${commands[0]##* }
say "what .ci/run installs, and its checks: the second command is its heart"
inside ./.ci/run
say "the first command, on a screen"
# within two minutes, most of them for fetching, a window of the demo's name must stand there
cat >"$folder/first" <<END
rm -rf .venv
# timeout passes the end on to all that its command has started
timeout 200 Xvfb :9 -screen 0 1280x720x24 -noreset 2>/dev/null &
export DISPLAY=:9
timeout 180 bash -c '${commands[0]}' &
came=1
for _ in {1..120}; do
    xwininfo -root -tree 2>/dev/null | grep "${demo##*/}" && came=0 && break
    sleep 1
done
kill \$(jobs -p)
wait
exit \$came
END
inside "bash /first"
say "the second command"
inside "${commands[1]}"
say "done"
