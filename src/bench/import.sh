#!/usr/bin/env bash
# Measures import against the least that reading the same file can be, and against the sqlite3
# command line's own import. docs/performance.md says what is measured and why.
set -euo pipefail
cd "$(dirname "$0")/../.."

usage() {
    cat <<'TEXT'
Usage: bash src/bench/import.sh [--rows "N N …"] [--sheet N] [--rounds N] [--java "OPTIONS"]
  --rows "N …"      rows of the statements (default "100000 1000000"; ten million: 10000000)
  --sheet N         rows of the workbook, 0 for none (default 100000)
  --rounds N        rounds, in each of which all take their turn; medians are shown (default 3)
  --java "OPTIONS"  options for every java (default "-Xmx256m")
Needs: a JDK 17, Maven, and the Debian packages sqlite3 and time.
TEXT
}

sizes="100000 1000000"
sheet=100000
rounds=3
options="-Xmx256m"
while [ $# -gt 0 ]; do
    case "$1" in
        --rows) sizes="$2"; shift 2 ;;
        --sheet) sheet="$2"; shift 2 ;;
        --rounds) rounds="$2"; shift 2 ;;
        --java) options="$2"; shift 2 ;;
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

jar="${QUARTERFOLD_JAR:-target/quarterfold.jar}"
[ -f "$jar" ] || mvn -B -q package -DskipTests
work=target/bench/import
mkdir -p "$work/classes"
javac -proc:none -cp "$jar" -d "$work/classes" src/bench/java/{BareTokens,BareSheet,WorkbookMaker,StatementMaker}.java
path="$jar:$work/classes"
book="$work/book"
db="$work/peer.db"

statement() {
    local file="$work/statement-$1.csv"
    [ -f "$file" ] || { java -cp "$path" StatementMaker "$1" "$file.part"; mv "$file.part" "$file"; }
    echo "$file"
}

new_book() {
    rm -rf "$book"
    java -jar "$jar" --book "$book" new --name "Bench Ltd" --country GB --vat-number GB000471144 \
        --registered-from 2024-01-01 --period-ends 3,6,9,12 > /dev/null
}

# measure NAME COMMAND…: adds a line "NAME elapsed cpu peak-MB" to the figures.
measure() {
    local name="$1"; shift
    /usr/bin/time -o "$work/time.txt" -f "%e %U %S %M" "$@" > "$work/$name.out"
    awk -v n="$name" '{ printf "%s %.2f %.2f %.0f\n", n, $1, $2 + $3, $4 / 1024 }' "$work/time.txt" >> "$figures"
}

# The peer's table has the indexes of ours: the number of a row, and an index that takes only rows
# with what these have not. The other has three that a table of entries might well have had.
columns="$(head -1 "$(statement 100000)" | sed 's/[^,]*/"&" text/g')"
same="create table line ($columns); create index few on line (rowid_of) where \"Amount\" is null;"
same="${same/rowid_of/\"Line\"}"
three="$same create index by_order on line (\"Order\"); create index by_day on line (\"When\"); create index by_article on line (\"SKU\");"

median() {
    awk -v n="$1" -v c="$2" '$1 == n { print $c }' "$figures" | sort -n |
        awk '{ v[NR] = $1 } END { print NR % 2 ? v[(NR + 1) / 2] : (v[NR / 2] + v[NR / 2 + 1]) / 2 }'
}
peak() { awk -v n="$1" '$1 == n && $4 > m { m = $4 } END { print m }' "$figures"; }
line() { printf '%-44s %10s %10s %10s\n' "$2" "$(median "$1" 2)" "$(median "$1" 3)" "$(peak "$1")"; }
ratio() {
    awk -v e="$(median "$2" 2)" -v f="$(median "$3" 2)" -v c="$(median "$2" 3)" -v d="$(median "$3" 3)" -v t="$1" \
        'BEGIN { printf "%-44s %10.2f %10.2f\n", t, e / f, c / d }'
}

for rows in $sizes; do
    file="$(statement "$rows")"
    figures="$work/figures-$rows.txt"
    : > "$figures"
    for round in $(seq "$rounds"); do
        # shellcheck disable=SC2086 # the options are words
        measure tokens java $options -cp "$path" BareTokens "$file"
        new_book
        # shellcheck disable=SC2086
        measure import java $options -jar "$jar" --book "$book" import --json "$file"
        rm -f "$db"
        measure same sqlite3 -batch "$db" "$same" ".mode csv" ".import --skip 1 $file line"
        if [ "$rows" -le 1000000 ]; then
            rm -f "$db"
            measure three sqlite3 -batch "$db" "$three" ".mode csv" ".import --skip 1 $file line"
        fi
        echo "$rows rows: round $round of $rounds done" >&2
    done
    [ "$(sqlite3 -batch "$db" "select count(*) from line")" = "$rows" ] || { echo "the peer has other rows" >&2; exit 1; }
    grep -q "\"rows_read\":$rows," "$work/import.out" || { echo "import read other rows: $(cat "$work/import.out")" >&2; exit 1; }
    printf '\n%s rows, %s MB, %s rounds, %s processors, java %s\n\n' \
        "$rows" "$(($(stat -c %s "$file") / 1000000))" "$rounds" "$(nproc)" "$options"
    printf '%-44s %10s %10s %10s\n' "median (peak: highest)" "elapsed s" "cpu s" "peak MB"
    line tokens "bare tokenising"
    line import "import"
    line same "sqlite3 .import, the indexes of ours"
    [ "$rows" -gt 1000000 ] || line three "sqlite3 .import, three indexes more"
    ratio "import to bare tokenising" import tokens
    ratio "import to sqlite3 .import" import same
    [ "$rows" -gt 1000000 ] || ratio "import to sqlite3 .import, three indexes more" import three
done

if [ "$sheet" != 0 ]; then
    workbook="$work/statement-$sheet.xlsx"
    [ -f "$workbook" ] || java -cp "$path" WorkbookMaker "$(statement "$sheet")" "$workbook"
    figures="$work/figures-sheet.txt"
    : > "$figures"
    for round in $(seq "$rounds"); do
        # shellcheck disable=SC2086
        measure sheet java $options -cp "$path" BareSheet "$workbook"
        new_book
        # shellcheck disable=SC2086
        measure sheet-import java $options -jar "$jar" --book "$book" import --json "$workbook"
        echo "workbook: round $round of $rounds done" >&2
    done
    grep -q "\"rows_read\":$sheet," "$work/sheet-import.out" || { echo "import read other rows" >&2; exit 1; }
    printf '\nworkbook of %s rows, %s MB, %s rounds\n\n' "$sheet" "$(($(stat -c %s "$workbook") / 1000000))" "$rounds"
    printf '%-44s %10s %10s %10s\n' "median (peak: highest)" "elapsed s" "cpu s" "peak MB"
    line sheet "bare streaming read"
    line sheet-import "import"
    ratio "import to bare streaming read" sheet-import sheet
fi
