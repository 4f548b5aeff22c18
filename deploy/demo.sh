#!/bin/sh
# Builds Rootcast if needed and runs it on this machine only. Ctrl-C ends it.
set -eu

usage() {
    cat <<'END'
Usage: sh deploy/demo.sh [--port N] [--data DIR] [--empty] [--token T] [--mqtt HOST:PORT] [--help]

Runs Rootcast on http://127.0.0.1:N/ with an invented business and simulated sensors.

  --port N    port on the loopback address, 1 to 65535 (default 8080)
  --data DIR  folder of the database (default .rootcast/demo in the project, .rootcast/empty with --empty)
  --empty     no demo business, no simulator: starts empty, or with what DIR holds
  --token T   bearer token with every right, for scripts (or set ROOTCAST_TOKEN)
  --mqtt HOST:PORT
              takes readings from this MQTT broker, all topics that a sensor is set up for; the simulated
              sensors then send through it, too
  --help      this text

Needs Java 17 or newer; to build also Maven and Node.js 20 or newer. It builds when sources changed since the last build.
Extra options for the Java machine: ROOTCAST_JAVA_OPTS.
END
}

refuse() {
    printf 'demo.sh: %s\n' "$1" >&2
    printf 'Try: sh deploy/demo.sh --help\n' >&2
    exit 2
}

fail() {
    printf 'demo.sh: %s\n' "$1" >&2
    exit 1
}

port=8080
data=
empty=false
mqtt=

while [ $# -gt 0 ]; do
    option=$1
    case $option in
        --port=* | --data=* | --token=* | --mqtt=*)
            value=${option#*=}
            option=${option%%=*}
            shift
            ;;
        --port | --data | --token | --mqtt)
            [ $# -ge 2 ] || refuse "$option needs a value"
            value=$2
            shift 2
            ;;
        --empty)
            empty=true
            shift
            continue
            ;;
        --help | -h)
            usage
            exit 0
            ;;
        *) refuse "unknown argument '$option'" ;;
    esac
    [ -n "$value" ] || refuse "$option needs a value"
    case $option in
        --port)
            case $value in
                *[!0-9]* | ??????*) refuse "--port '$value' is not a number from 1 to 65535" ;;
            esac
            # A leading zero would be read as octal further on.
            port=$(expr "$value" + 0) || true
            [ "$port" -ge 1 ] && [ "$port" -le 65535 ] || refuse "--port '$value' is not a number from 1 to 65535"
            ;;
        --data)
            case $value in
                # The path becomes part of a database address, in which these mean something else.
                *[\;\"\$]*) refuse "--data '$value' must not hold a semicolon, a quote or a dollar sign" ;;
            esac
            data=$value
            ;;
        --mqtt)
            case $value in
                *[!A-Za-z0-9.:_-]* | *:*:* | :* | *:) refuse "--mqtt '$value' is not HOST:PORT" ;;
                *:*) mqtt=$value ;;
                *) refuse "--mqtt '$value' is not HOST:PORT" ;;
            esac
            case ${value##*:} in
                *[!0-9]* | ??????*) refuse "--mqtt '$value': the port is not a number from 1 to 65535" ;;
            esac
            ;;
        --token)
            case $value in
                *[!A-Za-z0-9._~+/=-]*) refuse "--token may hold letters, digits and . _ ~ + / = - only" ;;
            esac
            # In the environment, not in the arguments: those can be read by everyone on the machine.
            ROOTCAST_TOKEN=$value
            export ROOTCAST_TOKEN
            ;;
    esac
done

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
# The invented business is a build of its own; starting empty runs what production runs.
if [ "$empty" = true ]; then module=app; else module=demo; fi
folder=$root/backend/$module/target/quarkus-app
jar=$folder/quarkus-run.jar
built=$folder/built
archive=$folder/classes.jsa

java=java
if [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/java" ]; then
    java=$JAVA_HOME/bin/java
fi
command -v "$java" >/dev/null 2>&1 || fail "Java 17 or newer is needed and no 'java' was found"
# "17.0.15", "21" or, before 9, "1.8.0_402"
java_version=$("$java" -version 2>&1 | sed -n 's/.*version "\([0-9]*\)[^"]*".*/\1/p' | head -n 1)
[ "${java_version:-0}" -ge 17 ] || fail "Java 17 or newer is needed, this is $("$java" -version 2>&1 | head -n 1)"

# Prints a source that is newer than the last build; nothing if the build is up to date.
changed_source() {
    [ -f "$jar" ] || {
        printf 'not built yet\n'
        return
    }
    newest=$jar
    if [ -f "$built" ] && [ "$built" -nt "$jar" ]; then newest=$built; fi
    if [ "$empty" = true ]; then sources='backend/core backend/app frontend'; else sources='backend frontend seed'; fi
    (
        cd "$root"
        # shellcheck disable=SC2086  # several folders
        find pom.xml $sources \
            \( -name target -o -name node_modules -o -name dist -o -name test -o -name e2e \
            -o -name test-results -o -name playwright-report \) -prune \
            -o -type f -newer "$newest" -print 2>/dev/null | head -n 1
    )
}

build() {
    command -v mvn >/dev/null 2>&1 || fail "Maven (mvn) is needed to build and was not found"
    command -v node >/dev/null 2>&1 || fail "Node.js 20 or newer is needed to build and no 'node' was found"
    command -v npm >/dev/null 2>&1 || fail "npm is needed to build and was not found"
    node_version=$(node --version | sed 's/^v\([0-9]*\).*/\1/')
    [ "${node_version:-0}" -ge 20 ] || fail "Node.js 20 or newer is needed to build, this is $(node --version)"

    mkdir -p "$root/.rootcast"
    log=$root/.rootcast/build.log
    printf 'Building Rootcast (%s). The first build fetches libraries and takes some minutes.\n' "$1"
    (
        cd "$root"
        exec mvn -B -DskipTests package -pl "backend/$module" -am
    ) >"$log" 2>&1 &
    builder=$!
    trap 'kill "$builder" 2>/dev/null || true; wait "$builder" 2>/dev/null || true; printf "\nBuild interrupted.\n" >&2; exit 130' INT TERM HUP
    seconds=0
    while kill -0 "$builder" 2>/dev/null; do
        sleep 1
        seconds=$((seconds + 1))
        if [ $((seconds % 10)) -eq 0 ]; then
            step=$(sed -n 's/^\[INFO\] --- *\([^ ]*\).*@ *\([^ ]*\).*/\2: \1/p' "$log" | tail -n 1)
            printf '  %3d s  %s\n' "$seconds" "${step:-fetching}"
        fi
    done
    if ! wait "$builder"; then
        grep '^\[ERROR\]' "$log" | head -n 20 >&2 || true
        fail "the build failed; the whole log is in $log"
    fi
    trap - INT TERM HUP
    [ -f "$jar" ] || fail "the build made no $jar; the whole log is in $log"
    # The build also writes into source folders (npm's lock file, generated types), so its end counts and not its start.
    # A file of its own: the class archive holds only for a jar that stays untouched.
    touch "$built"
    printf 'Built in %s s.\n' "$seconds"
}

port_in_use() {
    if [ -r /proc/net/tcp ]; then
        # Column 2 is the local address and port in hexadecimal, column 4 the state: 0A listens.
        cat /proc/net/tcp /proc/net/tcp6 2>/dev/null |
            awk -v port=":$(printf '%04X' "$port")" '
                $4 == "0A" && substr($2, length($2) - 4) == port { found = 1 }
                END { exit !found }'
    elif command -v lsof >/dev/null 2>&1; then
        lsof -nP -iTCP:"$port" -sTCP:LISTEN >/dev/null 2>&1
    else
        return 1
    fi
}

if port_in_use; then
    fail "port $port is in use by another program; choose one with --port"
fi

changed=$(changed_source)
if [ -n "$changed" ]; then
    build "$changed"
fi

if [ -z "$data" ]; then
    if [ "$empty" = true ]; then data=$root/.rootcast/empty; else data=$root/.rootcast/demo; fi
fi
mkdir -p -- "$data" 2>/dev/null || fail "the data folder $data cannot be made"
data=$(CDPATH='' cd -- "$data" && pwd) || fail "the data folder cannot be entered"
[ -w "$data" ] || fail "the data folder $data cannot be written to"

if [ -n "$mqtt" ]; then
    ROOTCAST_MQTT_HOST=${mqtt%:*}
    ROOTCAST_MQTT_PORT=${mqtt##*:}
    export ROOTCAST_MQTT_HOST ROOTCAST_MQTT_PORT
fi

# Made by the build; a jar that was built or copied otherwise does without. Naming one that is missing would slow the start.
shared=
if [ -f "$archive" ] && [ ! "$jar" -nt "$archive" ]; then
    shared=-XX:SharedArchiveFile=$archive
fi

printf 'Rootcast starts on http://127.0.0.1:%s/  (data in %s, Ctrl-C ends it)\n' "$port" "$data"
# shellcheck disable=SC2086  # the options are meant to be split
exec "$java" -Xms64m -Xmx512m -XX:+UseSerialGC -XX:+ExitOnOutOfMemoryError ${shared:+"$shared"} -Dfile.encoding=UTF-8 \
    ${ROOTCAST_JAVA_OPTS:-} \
    -Dquarkus.http.host=127.0.0.1 \
    -Dquarkus.http.port="$port" \
    -Drootcast.data="$data" \
    -jar "$jar"
