#!/bin/sh
# Measures sustained ingest by MQTT into PostgreSQL against raw batched inserts of the same rows in the same run.
# Needs a PostgreSQL and a broker; see --help.
set -eu

usage() {
    cat <<'END'
Usage: sh deploy/measure-ingest.sh --url http://127.0.0.1:8080 --broker HOST:PORT --db postgresql://user@host/db
                                   [--sensors 2000] [--readings 200000] [--token T]

Sets up 240 houses and the sensors in the running Rootcast, inserts --readings rows into a table like its own in plain
batches of 256, then sends as many readings through the broker and waits until all are stored. Prints both rates and their
ratio. The Rootcast under test must run on that database and take readings from that broker.
--token (or ROOTCAST_TOKEN) as the server was started with. Needs psql and Node.js 20.
END
}

url=http://127.0.0.1:8080
broker=127.0.0.1:1883
db=
sensors=2000
readings=200000
while [ $# -gt 0 ]; do
    case $1 in
        --help | -h) usage; exit 0 ;;
        --url) url=$2; shift 2 ;;
        --broker) broker=$2; shift 2 ;;
        --db) db=$2; shift 2 ;;
        --sensors) sensors=$2; shift 2 ;;
        --readings) readings=$2; shift 2 ;;
        --token) ROOTCAST_TOKEN=$2; export ROOTCAST_TOKEN; shift 2 ;;
        *) printf 'unknown argument %s\n' "$1" >&2; usage >&2; exit 2 ;;
    esac
done
[ -n "$db" ] || { usage >&2; exit 2; }
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
exec node "$here/measure-ingest.mjs" "$url" "$broker" "$db" "$sensors" "$readings"
