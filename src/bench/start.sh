#!/usr/bin/env bash
# Measures how long --help takes against a bare picocli program on the same class path, and what a
# class-data archive saves. Usage: bash src/bench/start.sh [ROUNDS]
set -euo pipefail
cd "$(dirname "$0")/../.."
rounds="${1:-15}"
[ -x /usr/bin/time ] || { echo "/usr/bin/time is missing: install it with: sudo apt-get install time" >&2; exit 1; }
jar=target/quarterfold.jar
[ -f "$jar" ] || mvn -B -q package -DskipTests
work=target/bench
mkdir -p "$work/bare"
javac -proc:none -cp "$jar" -d "$work/bare" src/bench/java/BareProgram.java
path="$jar:$work/bare"
archive="$work/quarterfold.jsa"
rm -f "$archive"
java -XX:ArchiveClassesAtExit="$archive" -jar "$jar" --help > /dev/null 2>&1
figures="$work/start.txt"
: > "$figures"

# Nanoseconds by the clock, and the processor time.
measure() {
    local name="$1" before after; shift
    before="$(date +%s%N)"
    /usr/bin/time -o "$work/time.txt" -f "%U %S" "$@" > /dev/null
    after="$(date +%s%N)"
    awk -v n="$name" -v ns="$((after - before))" '{ printf "%s %d %d\n", n, ns / 1000000, ($1 + $2) * 1000 }' \
        "$work/time.txt" >> "$figures"
}

for _ in $(seq "$rounds"); do
    measure bare java -cp "$path" BareProgram --help
    measure help java -jar "$jar" --help
    measure archive java -XX:SharedArchiveFile="$archive" -jar "$jar" --help
done

median() {
    awk -v n="$1" -v c="$2" '$1 == n { print $c }' "$figures" | sort -n | awk '{ v[NR] = $1 } END { print v[int((NR + 1) / 2)] }'
}
printf '%s rounds, %s processors\n\n%-44s %10s %8s\n' "$rounds" "$(nproc)" "median" "elapsed ms" "cpu ms"
printf '%-44s %10s %8s\n' "a bare picocli program --help" "$(median bare 2)" "$(median bare 3)"
printf '%-44s %10s %8s\n' "quarterfold --help" "$(median help 2)" "$(median help 3)"
printf '%-44s %10s %8s\n' "quarterfold --help, class-data archive" "$(median archive 2)" "$(median archive 3)"
awk -v h="$(median help 2)" -v b="$(median bare 2)" -v a="$(median archive 2)" -v hc="$(median help 3)" -v bc="$(median bare 3)" \
    'BEGIN { printf "\nto the bare program: %.2f elapsed, %.2f cpu; with an archive %.2f elapsed\n", h / b, hc / bc, a / b }'
