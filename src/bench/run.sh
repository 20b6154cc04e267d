#!/usr/bin/env bash
# Measures importing a settlement statement and drafting its return against the sqlite3 command line,
# on the same file, in the same run. docs/performance.md says what is measured and why.
set -euo pipefail
cd "$(dirname "$0")/../.."

usage() {
    cat <<'TEXT'
Usage: bash src/bench/run.sh [--rows N] [--rounds N] [--java "OPTIONS"] [--no-peer]
  --rows N          rows of the statement (default 1000000)
  --rounds N        rounds, of which the medians are shown (default 3)
  --java "OPTIONS"  options for the java that runs quarterfold, such as "-Xmx256m" (default none)
  --no-peer         leave the sqlite3 command line out: for memory at 10 million rows
Needs: a JDK 17, Maven, and the Debian packages sqlite3 and time.
TEXT
}

rows=1000000
rounds=3
options=""
peer=yes
while [ $# -gt 0 ]; do
    case "$1" in
        --rows) rows="$2"; shift 2 ;;
        --rounds) rounds="$2"; shift 2 ;;
        --java) options="$2"; shift 2 ;;
        --no-peer) peer=no; shift ;;
        --help) usage; exit 0 ;;
        *) usage >&2; exit 2 ;;
    esac
done

need() {
    command -v "$1" > /dev/null || { echo "$1 is missing: install it with: sudo apt-get install $2" >&2; exit 1; }
}
need sqlite3 sqlite3
need java openjdk-17-jdk-headless
[ -x /usr/bin/time ] || { echo "/usr/bin/time is missing: install it with: sudo apt-get install time" >&2; exit 1; }

jar=target/quarterfold.jar
[ -f "$jar" ] || mvn -B -q package -DskipTests
work=target/bench
mkdir -p "$work"
file="$work/statement-$rows.csv"
[ -f "$file" ] || { java src/bench/java/StatementMaker.java "$rows" "$file.part"; mv "$file.part" "$file"; }

book="$work/book"
db="$work/peer.db"
figures="$work/figures.txt"
: > "$figures"

# measure NAME COMMAND…: adds a line "NAME elapsed cpu peak-MB" to the figures; keeps what was printed.
measure() {
    local name="$1"; shift
    /usr/bin/time -o "$work/time.txt" -f "%e %U %S %M" "$@" > "$work/$name.out"
    awk -v n="$name" '{ printf "%s %.2f %.2f %.0f\n", n, $1, $2 + $3, $4 / 1024 }' "$work/time.txt" >> "$figures"
}

new_book() {
    rm -rf "$book"
    java -jar "$jar" --book "$book" new --name "Bench Ltd" --country GB --vat-number GB000471144 \
        --registered-from 2024-01-01 --period-ends 3,6,9,12 > /dev/null
}

sum="select Type, Part, count(*), sum(cast(round(Amount * 100) as integer)) from line group by Type, Part"

for round in $(seq "$rounds"); do
    new_book
    # shellcheck disable=SC2086 # the options are words
    measure import java $options -jar "$jar" --book "$book" import --json "$file"
    # shellcheck disable=SC2086
    measure return java $options -jar "$jar" --book "$book" return 2026-09 --json
    if [ "$peer" = yes ]; then
        rm -f "$db"
        measure peer sqlite3 -batch "$db" ".mode csv" ".import $file line" "$sum"
    fi
    echo "round $round of $rounds done" >&2
done

# Both must have the same money: pennies by kind of sale, ledger against the peer's table.
check() {
    sqlite3 -batch "$book/ledger.sqlite" \
        "select sum(case p.kind when 'sale-refund' then -e.gross when 'delivery-refund' then -e.gross
             when 'discount' then -e.gross else e.gross end) / 100
         from entry e join profile p on p.id = e.profile
         where p.kind in ('sale', 'delivery', 'discount', 'sale-refund', 'delivery-refund', 'discount-reversed')"
}
if [ "$peer" = yes ]; then
    ours="$(check)"
    theirs="$(sqlite3 -batch "$db" "select sum(cast(round(Amount * 100) as integer)) from line where Type in ('Sale', 'Return')")"
    # VAT to four decimals in each sale at home, as the book's rounding has it; then the box to the penny.
    vat="$(sqlite3 -batch "$db" "with sale as (select cast(round(Amount * 10000) as integer) as a from line
               where Type in ('Sale', 'Return') and \"Ships to\" in ('GB', 'XI'))
           select printf('%.2f', round(sum(case when a < 0 then -((-a * 2 + 6) / 12) else (a * 2 + 6) / 12 end) / 100.0) / 100) from sale")"
    box1="$(sed 's/.*"1":"\([^"]*\)".*/\1/' "$work/return.out")"
    [ "$ours" = "$theirs" ] || { echo "the money differs: ledger $ours pennies, peer $theirs pennies" >&2; exit 1; }
    [ "$box1" = "$vat" ] || { echo "box 1 differs: $box1, by SQL over the file $vat" >&2; exit 1; }
    echo "sales of $ours pennies in both; box 1 is $box1 in both"
fi

median() {
    awk -v n="$1" -v c="$2" '$1 == n { print $c }' "$figures" | sort -n |
        awk '{ v[NR] = $1 } END { print NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2 }'
}
peak() {
    awk -v n="$1" '$1 == n && $4 > m { m = $4 } END { print m }' "$figures"
}

printf '\n%s rows, %s MB, %s rounds, %s processors, java options: %s\n\n' \
    "$rows" "$(($(stat -c %s "$file") / 1000000))" "$rounds" "$(nproc)" "${options:-none}"
printf '%-34s %10s %10s %10s\n' "median (peak: highest)" "elapsed s" "cpu s" "peak MB"
steps="import return"
[ "$peer" = yes ] && steps="$steps peer"
for step in $steps; do
    printf '%-34s %10s %10s %10s\n' "$step" "$(median "$step" 2)" "$(median "$step" 3)" "$(peak "$step")"
done
if [ "$peer" = yes ]; then
    awk -v e="$(median import 2)" -v r="$(median return 2)" -v p="$(median peer 2)" \
        -v ec="$(median import 3)" -v rc="$(median return 3)" -v pc="$(median peer 3)" \
        'BEGIN { printf "\nimport + return to the peer: %.2f elapsed, %.2f cpu\n", (e + r) / p, (ec + rc) / pc }'
fi
