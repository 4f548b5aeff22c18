#!/bin/sh
# Starts two applications in turn, each with an empty embedded database on a free port, and prints how the second compares
# with the first: time until ready, processor time until then, resident memory three seconds later.
#   sh deploy/measure-start.sh [--times N] BEFORE/quarkus-app AFTER/quarkus-app
# Each starts as its own service would start it: with its class archive if it has one. BEFORE_OPTS and AFTER_OPTS are options
# of the Java machine. On a shared machine read the ratios, and of those the one of processor time first.
set -eu

times=5
if [ "${1:-}" = --times ]; then
    times=$2
    shift 2
fi
[ $# -eq 2 ] && [ -f "$1/quarkus-run.jar" ] && [ -f "$2/quarkus-run.jar" ] || {
    printf 'Usage: sh deploy/measure-start.sh [--times N] BEFORE/quarkus-app AFTER/quarkus-app\n' >&2
    exit 2
}
BEFORE_OPTS=${BEFORE_OPTS:--Xmx512m -XX:+UseSerialGC}
AFTER_OPTS=${AFTER_OPTS:-@$(dirname -- "$0")/java.options}
results=$(mktemp -d)
app=
trap 'if [ -n "$app" ]; then kill -9 "$app" 2>/dev/null || true; fi; rm -rf "$results"' EXIT
trap 'exit 130' INT TERM HUP

millis() { expr "$(date +%s%N)" / 1000000; }

# start NAME FOLDER OPTIONS: one line "ready-ms cpu-ms resident-kB" to the file of that name
start() {
    data=$results/data
    rm -rf "$data" && mkdir "$data"
    archive=
    if [ -f "$2/classes.jsa" ]; then archive=-XX:SharedArchiveFile=$2/classes.jsa; fi
    began=$(millis)
    # shellcheck disable=SC2086  # the options are meant to be split
    java $3 $archive -Dquarkus.http.host=127.0.0.1 -Dquarkus.http.port=0 -Drootcast.data="$data" \
        -jar "$2/quarkus-run.jar" >"$results/log" 2>&1 &
    app=$!
    until grep -q 'Listening on' "$results/log"; do
        kill -0 "$app" 2>/dev/null || {
            cat "$results/log" >&2
            exit 1
        }
        sleep 0.05
    done
    url=$(sed -n 's/.*Listening on: \(http[^ ]*\).*/\1/p' "$results/log" | head -n 1)
    until curl -fs -o /dev/null "$url/q/health/ready"; do sleep 0.05; done
    ready=$(expr "$(millis)" - "$began")
    processor=$(awk '{ print ($14 + $15) * 10 }' "/proc/$app/stat")
    sleep 3
    resident=$(ps -o rss= -p "$app" | tr -d ' ')
    kill "$app"
    wait "$app" 2>/dev/null || true
    app=
    printf '%s %s %s\n' "$ready" "$processor" "$resident" | tee -a "$results/$1" | sed "s/^/$1: /"
}

# median FILE COLUMN
median() {
    awk -v column="$2" '{ print $column }' "$results/$1" | sort -n |
        awk '{ value[NR] = $1 } END { print NR % 2 ? value[(NR + 1) / 2] : (value[NR / 2] + value[NR / 2 + 1]) / 2 }'
}

printf 'ready ms, processor ms, resident kB\n'
turn=0
while [ "$turn" -lt "$times" ]; do
    start before "$1" "$BEFORE_OPTS"
    start after "$2" "$AFTER_OPTS"
    turn=$((turn + 1))
done
column=1
for what in 'ready ms' 'processor ms' 'resident kB'; do
    before=$(median before "$column")
    after=$(median after "$column")
    awk -v what="$what" -v before="$before" -v after="$after" \
        'BEGIN { printf "%-13s before %8d  after %8d  ratio %.2f\n", what, before, after, after / before }'
    column=$((column + 1))
done
