#!/usr/bin/env bash
# Kills imports at random instants, and proves after each that the book is whole: DEVELOPERS.md, "Tests".
set -euo pipefail
cd "$(dirname "$0")/../.."

usage() {
    cat <<'TEXT'
Usage: bash src/bench/kill.sh [--kills N] [--rows N] [--signal KILL|INT|TERM] [--seed N]
  --kills N       how many imports to kill (default 200)
  --rows N        rows of each of the two files (default 25000)
  --signal NAME   how to end them (default KILL)
  --seed N        of the random instants (default 2026)
QUARTERFOLD_JAR names another jar than target/quarterfold.jar.
Needs: a JDK 17, Maven, and the Debian package sqlite3.
TEXT
}

kills=200
rows=25000
signal=KILL
RANDOM=2026
while [ $# -gt 0 ]; do
    case "$1" in
        --kills) kills="$2"; shift 2 ;;
        --rows) rows="$2"; shift 2 ;;
        --signal) signal="$2"; shift 2 ;;
        --seed) RANDOM="$2"; shift 2 ;;
        --help) usage; exit 0 ;;
        *) usage >&2; exit 2 ;;
    esac
done
case "$signal" in
    KILL) ended=137 ;;
    INT) ended=130 ;;
    TERM) ended=143 ;;
    *) usage >&2; exit 2 ;;
esac
command -v sqlite3 > /dev/null || { echo "sqlite3 is missing: install it with: sudo apt-get install sqlite3" >&2; exit 1; }

jar="${QUARTERFOLD_JAR:-target/quarterfold.jar}"
[ -f "$jar" ] || mvn -B -q package -DskipTests
work=target/bench/kill
rm -rf "$work"
mkdir -p "$work"
files=()
for more in 0 1000; do
    file="$work/statement-$((rows + more)).csv"
    java src/bench/java/StatementMaker.java "$((rows + more))" "$file"
    files+=("$file")
done

quarterfold() { java -Xmx256m -jar "$jar" "$@"; }

new_book() {
    rm -rf "$1"
    quarterfold --book "$1" new --name "Bench Ltd" --country GB --vat-number GB000471144 \
        --registered-from 2024-01-01 --period-ends 3,6,9,12 > /dev/null
}

fail() { echo "FAILED after $done_kills kills: $*; the book is kept in $book" >&2; exit 1; }

# Every entry as the ledger has it, without the program.
entries() {
    sqlite3 -batch "$1/ledger.sqlite" \
        "select e.*, p.*, i.* from entry e join profile p on p.id = e.profile
             left join item i on i.id = e.item order by e.number" | sha256sum | cut -d' ' -f1
}

# Copies in the archive that no source of the ledger has, and what is half made.
strays() {
    local known found
    known="$(sqlite3 -batch "$1/ledger.sqlite" "select substr(sha256, 1, 12) from source" | sort)"
    found="$(find "$1/sources" -type f -printf '%f\n' | cut -c1-12 | sort)"
    comm -13 <(printf '%s\n' "$known") <(printf '%s\n' "$found") | grep -c . || true
}

done_kills=0
book="$work/undisturbed"
new_book "$book"
before="$(date +%s%N)"
quarterfold --book "$book" import "${files[@]}" > /dev/null
span="$((($(date +%s%N) - before) / 1000000))"
expected="$(entries "$book")"
quarterfold --book "$book" ledger --json | sha256sum > "$work/expected.txt"
echo "an import that is left alone takes $span ms" >&2

# Whole files only: every source has all its entries and its copy, and numbers have no gap.
check() {
    [ "$(sqlite3 -batch "$book/ledger.sqlite" "pragma integrity_check")" = ok ] || fail "integrity_check"
    quarterfold --book "$book" decisions --json > "$work/said.txt" 2>&1 || fail "it does not open: $(cat "$work/said.txt")"
    local part copies
    part="$(sqlite3 -batch "$book/ledger.sqlite" \
        "select count(*) from source s where s.entries <> (select count(*) from entry e
             where e.number between s.first_entry and s.first_entry + s.entries - 1)")"
    [ "$part" = 0 ] || fail "$part files in part"
    [ "$(sqlite3 -batch "$book/ledger.sqlite" \
        "select (select count(*) from entry) - (select coalesce(sum(entries), 0) from source)")" = 0 ] \
        || fail "entries of no file"
    for copy in $(sqlite3 -batch "$book/ledger.sqlite" "select sha256 from source"); do
        copies="$(find "$book/sources" -name "${copy:0:12}-*")"
        [ "$(sha256sum "$copies" | cut -d' ' -f1)" = "$copy" ] || fail "a copy is not whole"
    done
}

# What an interrupted import says of itself is so. One that is hit before it has begun says nothing.
check_told() {
    grep -q "^Interrupted: " "$work/err.txt" || return 0
    told=$((told + 1))
    if grep -q "^Interrupted: nothing was entered[.]$" "$work/err.txt"; then
        [ "$after" = "$before" ] || fail "it said that nothing was entered"
    else
        [ "$after" -gt "$before" ] || fail "it said that a file was entered"
    fi
    [ "$(strays "$book")" = 0 ] || untidy=$((untidy + 1))
}

# The files once more, by an import left alone: the same ledger, and nothing left over.
finish() {
    quarterfold --book "$book" import "${files[@]}" > /dev/null || fail "the import that follows"
    [ "$(entries "$book")" = "$expected" ] || fail "another ledger than that of the undisturbed book"
    [ "$(strays "$book")" = 0 ] || fail "left-overs in sources"
    books=$((books + 1))
}

set -m # each import a job of its own, and with the signal as it is by default: else an interrupt is ignored
book="$work/book"
new_book "$book"
books=0
early=0
with_none=0
with_one=0
with_both=0
left=0
told=0
untidy=0
tenths=(0 0 0 0 0 0 0 0 0 0)
sources() { sqlite3 -batch "$book/ledger.sqlite" "select count(*) from source"; }
while [ "$done_kills" -lt "$kills" ]; do
    before="$(sources)"
    env --default-signal=INT java -Xmx256m -jar "$jar" --book "$book" import "${files[@]}" \
        > /dev/null 2> "$work/err.txt" &
    job=$!
    wait_ms=$(((RANDOM * 32768 + RANDOM) % (span * 11 / 10)))
    sleep "$((wait_ms / 1000)).$(printf '%03d' $((wait_ms % 1000)))"
    kill -s "$signal" "$job" 2> /dev/null || true
    code=0
    wait "$job" 2> /dev/null || code=$?
    done_kills=$((done_kills + 1))
    case "$code" in
        0) early=$((early + 1)) ;;
        "$ended")
            tenth=$((wait_ms * 10 / span))
            tenth=$((tenth > 9 ? 9 : tenth))
            tenths[tenth]=$((tenths[tenth] + 1))
            ;;
        *) fail "exit code $code: $(cat "$work/err.txt")" ;;
    esac
    check
    after="$(sources)"
    check_told
    [ "$(strays "$book")" = 0 ] || left=$((left + 1))
    case "$after" in
        0) with_none=$((with_none + 1)) ;;
        1) with_one=$((with_one + 1)) ;;
        *) with_both=$((with_both + 1)); finish; new_book "$book" ;;
    esac
    [ $((done_kills % 20)) != 0 ] || echo "$done_kills kills, all whole" >&2
done
finish
quarterfold --book "$book" verify > "$work/said.txt" || fail "verify: $(cat "$work/said.txt")"
quarterfold --book "$book" ledger --json | sha256sum | cmp -s - "$work/expected.txt" || fail "another ledger --json"

cat <<TEXT

$kills imports of two files, $rows and $((rows + 1000)) rows, ended by SIG$signal at random instants of $((span * 11 / 10)) ms:
  $((kills - early)) were at work still and ended with exit code $ended; by tenths of the run they were hit in: ${tenths[*]}
  the book opened after each, with whole files alone: none of the two $with_none times, one $with_one times, both $with_both times
  a copy or a lock was left over $left times, and gone after the import that followed
  $told said that they were interrupted and what the book holds, which was so; $untidy of these had no time to put all away
  $books books filled by an import left alone, each with the entries of the undisturbed one
TEXT
