#!/usr/bin/env bash
# Imports into books on disks that fill up, a little later each time, and proves that the book stays whole.
set -euo pipefail
cd "$(dirname "$0")/../.."

usage() {
    cat <<'TEXT'
Usage: bash src/bench/full-disk.sh [--rows N] [--step KB]
  --rows N   rows of the statement (default 20000)
  --step KB  how much larger each disk is than the one before (default 256)
Needs: a JDK 17, Maven, the Debian packages sqlite3 and util-linux, and a system that lets you
mount a tmpfs, as root or in a user namespace of your own.
TEXT
}

rows=20000
step=256
while [ $# -gt 0 ]; do
    case "$1" in
        --rows) rows="$2"; shift 2 ;;
        --step) step="$2"; shift 2 ;;
        --help) usage; exit 0 ;;
        *) usage >&2; exit 2 ;;
    esac
done
command -v sqlite3 > /dev/null || { echo "sqlite3 is missing: install it with: sudo apt-get install sqlite3" >&2; exit 1; }
if [ -z "${FULL_DISK_MOUNTS:-}" ]; then
    FULL_DISK_MOUNTS=own exec unshare -rm bash "$0" --rows "$rows" --step "$step"
fi

jar=target/quarterfold.jar
[ -f "$jar" ] || mvn -B -q package -DskipTests
work=target/bench/full-disk
rm -rf "$work"
mkdir -p "$work/disk"
file="$work/statement.csv"
java src/bench/java/StatementMaker.java "$rows" "$file"
book="$work/disk/book"

quarterfold() { java -Xmx256m -jar "$jar" "$@"; }
fail() { echo "FAILED on a disk of $size KB: $*" >&2; exit 1; }

filled=0
refused=0
mute=0
size=0
whole=no
while [ "$whole" = no ]; do
    size=$((size + step))
    mount -t tmpfs -o "size=${size}k" none "$work/disk"
    if ! quarterfold --book "$book" new --name "Bench Ltd" --country GB --vat-number GB000471144 \
        --registered-from 2024-01-01 --period-ends 3,6,9,12 > "$work/out.txt" 2> "$work/err.txt"; then
        [ ! -e "$book/book.yaml" ] || fail "a book half made"
        refused=$((refused + 1))
        printf '%6d KB: no book: %s\n' "$size" "$(tail -1 "$work/err.txt")"
        umount "$work/disk"
        continue
    fi
    code=0
    quarterfold --book "$book" import "$file" > "$work/out.txt" 2> "$work/err.txt" || code=$?
    if [ "$code" = 0 ]; then
        whole=yes
        printf '%6d KB: entered\n' "$size"
    else
        filled=$((filled + 1))
        printf '%6d KB: exit %s: %s\n' "$size" "$code" "$(tail -1 "$work/err.txt")"
        [ "$code" = 74 ] || fail "exit $code: $(cat "$work/err.txt")"
        grep -qE "disk is full|No space left on device|could not be read or written" "$work/err.txt" || fail "$(cat "$work/err.txt")"
        quarterfold --book "$book" decisions --json > /dev/null 2> "$work/err.txt" || {
            mute=$((mute + 1))
            grep -qE "disk is full|No space left on device|could not be read or written" "$work/err.txt" || fail "$(cat "$work/err.txt")"
        }
        mount -o "remount,size=$((size + 65536))k" "$work/disk" # room again
        [ "$(sqlite3 -batch "$book/ledger.sqlite" "pragma integrity_check")" = ok ] || fail "integrity_check"
        [ "$(sqlite3 -batch "$book/ledger.sqlite" \
            "select (select count(*) from entry) + (select count(*) from source)")" = 0 ] || fail "part of a file"
        quarterfold --book "$book" import "$file" > /dev/null || fail "the import that follows"
    fi
    [ "$(sqlite3 -batch "$book/ledger.sqlite" "select count(*) from source")" = 1 ] || fail "no source"
    [ "$(find "$book/sources" -type f | wc -l)" = 1 ] || fail "left-overs in sources"
    quarterfold --book "$book" verify > "$work/out.txt" || fail "verify: $(cat "$work/out.txt")"
    umount "$work/disk"
done

cat <<TEXT

$rows rows onto disks of $step KB and more: $refused too small for a new book, $filled filled up by the import;
each time exit 74 with the reason, nothing entered, and the same file entered whole once there was room.
On $mute of them the full disk kept even reading from opening the ledger.
TEXT
