#!/bin/sh
# Builds Rootcast for PostgreSQL if needed and runs one node of it. Ctrl-C ends it.
set -eu

usage() {
    cat <<'END'
Usage: sh deploy/node.sh --port N --database JDBC-URL --user U --password-file F [--token T] [--mqtt HOST:PORT]
                         [--host ADDRESS] [--help]

Runs one node of Rootcast on http://127.0.0.1:N/ over a PostgreSQL. Start as many as you like over the same database, each
with a port of its own.

  --port N           port, 1 to 65535
  --database URL     of the database, for example jdbc:postgresql://127.0.0.1:5432/rootcast; tables are made at start
  --user U           user of the database
  --password-file F  file that holds the user's password and nothing else; keep it at mode 0600
  --token T          bearer token with every right, for scripts (or set ROOTCAST_TOKEN)
  --mqtt HOST:PORT   takes readings from this MQTT broker. Give it to every node: one of them listens, another takes over
  --host ADDRESS     address to listen on (default 127.0.0.1; a proxy carries the rest)
  --help             this text

Needs Java 17 or newer; to build also Maven and Node.js 20 or newer. It builds when sources changed since the last build,
into backend/app/target/quarkus-app-postgresql, beside the embedded build of demo.sh.
Extra options for the Java machine: ROOTCAST_JAVA_OPTS.
END
}

refuse() {
    printf 'node.sh: %s\n' "$1" >&2
    printf 'Try: sh deploy/node.sh --help\n' >&2
    exit 2
}

fail() {
    printf 'node.sh: %s\n' "$1" >&2
    exit 1
}

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
jar=$root/backend/app/target/quarkus-app-postgresql/quarkus-run.jar
archive=$root/backend/app/target/quarkus-app-postgresql/classes.jsa
build_options='-pl backend/app -am -DskipEmbedded'
# shellcheck source=deploy/build.sh
. "$root/deploy/build.sh"

port=
database=
user=
password_file=
host=127.0.0.1

while [ $# -gt 0 ]; do
    option=$1
    case $option in
        --port=* | --database=* | --user=* | --password-file=* | --token=* | --mqtt=* | --host=*)
            value=${option#*=}
            option=${option%%=*}
            shift
            ;;
        --port | --database | --user | --password-file | --token | --mqtt | --host)
            [ $# -ge 2 ] || refuse "$option needs a value"
            value=$2
            shift 2
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
        --database)
            case $value in
                *password=*) refuse "--database must not hold the password, which every user of the machine could read: use --password-file" ;;
                jdbc:postgresql:*) database=$value ;;
                *) refuse "--database '$value' is not an address such as jdbc:postgresql://127.0.0.1:5432/rootcast" ;;
            esac
            ;;
        --user) user=$value ;;
        --password-file) password_file=$value ;;
        --host) host=$value ;;
        --mqtt)
            read_broker "$value" || refuse "--mqtt '$value' is not HOST:PORT"
            ;;
        --token)
            read_token "$value" || refuse "--token may hold letters, digits and . _ ~ + / = - only"
            ;;
    esac
done

[ -n "$port" ] || refuse "--port is missing: each node needs one of its own"
[ -n "$database" ] || refuse "--database is missing: the address of a PostgreSQL that all nodes share"
[ -n "$user" ] || refuse "--user is missing: the user of the database"
[ -n "$password_file" ] || refuse "--password-file is missing: a file that holds the password of '$user'"
[ -f "$password_file" ] || fail "the password file $password_file is not there"
[ -r "$password_file" ] || fail "the password file $password_file cannot be read"
# The shell drops line ends at the end of the file.
password=$(cat -- "$password_file")
[ -n "$password" ] || fail "the password file $password_file is empty"

find_java

if port_in_use; then
    fail "port $port is in use by another program; choose another with --port"
fi

build_if_changed

# In the environment, which only this user can read, and not in the arguments, which everyone can.
QUARKUS_DATASOURCE_JDBC_URL=$database
QUARKUS_DATASOURCE_USERNAME=$user
QUARKUS_DATASOURCE_PASSWORD=$password
export QUARKUS_DATASOURCE_JDBC_URL QUARKUS_DATASOURCE_USERNAME QUARKUS_DATASOURCE_PASSWORD

printf 'A node of Rootcast starts on http://%s:%s/  (database %s, Ctrl-C ends it)\n' "$host" "$port" "$database"
# shellcheck disable=SC2086  # the options are meant to be split
exec "$java" "@$root/deploy/java.options" $(class_archive) ${ROOTCAST_JAVA_OPTS:-} \
    -Dquarkus.http.host="$host" \
    -Dquarkus.http.port="$port" \
    -jar "$jar"
