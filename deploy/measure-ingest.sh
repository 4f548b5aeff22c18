#!/bin/sh
# Measures sustained ingest over HTTP and by MQTT against raw batched inserts of the same rows in the same run; see --help.
set -eu

usage() {
    cat <<'END'
Usage: sh deploy/measure-ingest.sh --url http://127.0.0.1:8080 [--broker HOST:PORT] [--db postgresql://user@host/db]
                                   [--sensors 2000] [--readings 200000] [--body 3000] [--token T]

Sets up 240 houses and the sensors in the running Rootcast. Then, of as many readings each:
  with --db      inserts rows into a table like its own, 256 to a statement (needs psql)
  always         posts them to /api/readings, --body rows to a request, one request after another
  with --broker  sends them through the broker and waits until all are stored
and prints the rates and their ratios. The Rootcast under test must run on that database and take readings from that broker.
Needs Node.js 20. Say the load of the machine with the figures.
END
}

url=http://127.0.0.1:8080
broker=
db=
sensors=2000
readings=200000
body=3000
token=
while [ $# -gt 0 ]; do
    case $1 in
        --help | -h) usage; exit 0 ;;
        --url) url=$2; shift 2 ;;
        --broker) broker=$2; shift 2 ;;
        --db) db=$2; shift 2 ;;
        --sensors) sensors=$2; shift 2 ;;
        --readings) readings=$2; shift 2 ;;
        --body) body=$2; shift 2 ;;
        --token) token=$2; shift 2 ;;
        *) printf 'unknown argument %s\n' "$1" >&2; usage >&2; exit 2 ;;
    esac
done
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
export ROOTCAST_TOKEN="$token"
exec node "$here/measure-ingest.mjs" "$url" "$sensors" "$readings" "$body" "$broker" "$db"
