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

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
# shellcheck source=deploy/build.sh
. "$root/deploy/build.sh"

port=8080
data=
empty=false

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
            read_port "$value" || refuse "--port '$value' is not a number from 1 to 65535"
            ;;
        --data)
            case $value in
                # The path becomes part of a database address, in which these mean something else.
                *[\;\"\$]*) refuse "--data '$value' must not hold a semicolon, a quote or a dollar sign" ;;
            esac
            data=$value
            ;;
        --mqtt)
            read_broker "$value" || refuse "--mqtt '$value' is not HOST:PORT"
            ;;
        --token)
            read_token "$value" || refuse "--token may hold letters, digits and . _ ~ + / = - only"
            ;;
    esac
done

# The invented business is a build of its own; starting empty runs what production runs.
if [ "$empty" = true ]; then module=app; else module=demo; fi
folder=$root/backend/$module/target/quarkus-app
jar=$folder/quarkus-run.jar
archive=$folder/classes.jsa
build_options="-pl backend/$module -am -DskipPostgresql"

find_java

if port_in_use; then
    fail "port $port is in use by another program; choose one with --port"
fi

build_if_changed

if [ -z "$data" ]; then
    if [ "$empty" = true ]; then data=$root/.rootcast/empty; else data=$root/.rootcast/demo; fi
fi
mkdir -p -- "$data" 2>/dev/null || fail "the data folder $data cannot be made"
data=$(CDPATH='' cd -- "$data" && pwd) || fail "the data folder cannot be entered"
[ -w "$data" ] || fail "the data folder $data cannot be written to"

printf 'Rootcast starts on http://127.0.0.1:%s/  (data in %s, Ctrl-C ends it)\n' "$port" "$data"
# shellcheck disable=SC2086  # the options are meant to be split
exec "$java" "@$root/deploy/java.options" $(class_archive) ${ROOTCAST_JAVA_OPTS:-} \
    -Dquarkus.http.host=127.0.0.1 \
    -Dquarkus.http.port="$port" \
    -Drootcast.data="$data" \
    -jar "$jar"
