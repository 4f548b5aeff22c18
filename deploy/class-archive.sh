#!/bin/sh
# Makes the class archive that a start reads its classes from instead of parsing and checking them again.
#   sh deploy/class-archive.sh [--if-needed] QUARKUS-APP-FOLDER
# Starts the application in that folder once, with an empty embedded database that is thrown away, and writes classes.jsa
# beside its jar. Run it where the application will stay: an archive holds for these very jars at this very place and for
# this Java; with any other it is ignored. The PostgreSQL build cannot start without its database and gets none.
set -eu

if_needed=false
if [ "${1:-}" = --if-needed ]; then
    if_needed=true
    shift
fi
[ $# -eq 1 ] && [ -f "$1/quarkus-run.jar" ] || {
    printf 'Usage: sh deploy/class-archive.sh [--if-needed] QUARKUS-APP-FOLDER\n' >&2
    exit 2
}
folder=$(CDPATH='' cd -- "$1" && pwd)
archive=$folder/classes.jsa
if [ "$if_needed" = true ] && [ -f "$archive" ] && [ ! "$folder/quarkus-run.jar" -nt "$archive" ]; then
    exit 0
fi

java=java
if [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/java" ]; then
    java=$JAVA_HOME/bin/java
fi
scratch=$(mktemp -d)
app=
trap 'if [ -n "$app" ]; then kill -9 "$app" 2>/dev/null || true; fi; rm -rf "$scratch"' EXIT
trap 'exit 130' INT TERM HUP

# Port 0: any free one. Nothing is asked of it, so nobody need know which.
rm -f "$archive"
: >"$scratch/log"
"$java" "@$(dirname -- "$0")/java.options" -XX:ArchiveClassesAtExit="$scratch/classes.jsa" -Xlog:cds=off \
    -Dquarkus.http.host=127.0.0.1 -Dquarkus.http.port=0 -Drootcast.data="$scratch" -Drootcast.mqtt.host= \
    -jar "$folder/quarkus-run.jar" >"$scratch/log" 2>&1 &
app=$!
tries=0
until grep -q 'Listening on' "$scratch/log"; do
    tries=$((tries + 1))
    if ! kill -0 "$app" 2>/dev/null || [ "$tries" -gt 600 ]; then
        printf 'class-archive.sh: the application did not start; it will do without an archive\n' >&2
        tail -n 5 "$scratch/log" >&2
        exit 0
    fi
    sleep 0.5
done
kill "$app"
wait "$app" || true
app=
if [ -f "$scratch/classes.jsa" ]; then
    mv "$scratch/classes.jsa" "$archive"
else
    printf 'class-archive.sh: this Java wrote no archive; the application will do without\n' >&2
fi
