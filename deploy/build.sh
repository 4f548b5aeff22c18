# Sourced by demo.sh and node.sh, which set: root, jar (what is built), archive (its classes), build_options (for Maven), port; and define fail.

find_java() {
    java=java
    if [ -n "${JAVA_HOME:-}" ] && [ -x "$JAVA_HOME/bin/java" ]; then
        java=$JAVA_HOME/bin/java
    fi
    command -v "$java" >/dev/null 2>&1 || fail "Java 17 or newer is needed and no 'java' was found"
    # "17.0.15", "21" or, before 9, "1.8.0_402"
    java_version=$("$java" -version 2>&1 | sed -n 's/.*version "\([0-9]*\)[^"]*".*/\1/p' | head -n 1)
    [ "${java_version:-0}" -ge 17 ] || fail "Java 17 or newer is needed, this is $("$java" -version 2>&1 | head -n 1)"
}

# Prints a source that is newer than the last build; nothing if the build is up to date.
changed_source() {
    [ -f "$jar" ] || {
        printf 'not built yet\n'
        return
    }
    newest=$jar
    if [ -f "$jar.built" ] && [ "$jar.built" -nt "$jar" ]; then newest=$jar.built; fi
    (
        cd "$root"
        find pom.xml backend frontend seed \
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
        # shellcheck disable=SC2086  # the options are meant to be split
        exec mvn -B -DskipTests package $build_options
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
    touch "$jar.built"
    printf 'Built in %s s.\n' "$seconds"
}

# Made by the build; a jar that was built or copied otherwise does without. Naming one that is missing would slow the start.
class_archive() {
    if [ -f "$archive" ] && [ ! "$jar" -nt "$archive" ]; then
        printf '%s' "-XX:SharedArchiveFile=$archive"
    fi
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

# One build at a time: two nodes that are started together must not write over each other's.
build_if_changed() {
    [ -n "$(changed_source)" ] || return 0
    building=$root/.rootcast/building
    mkdir -p "$root/.rootcast"
    until mkdir "$building" 2>/dev/null; do
        owner=$(cat "$building/pid" 2>/dev/null || true)
        if [ -n "$owner" ] && ! kill -0 "$owner" 2>/dev/null; then
            rm -rf "$building" # its owner was killed
        else
            sleep 1
        fi
    done
    printf '%s\n' $$ >"$building/pid"
    trap 'rm -rf "$building"' EXIT
    changed=$(changed_source)
    if [ -n "$changed" ]; then
        build "$changed"
    fi
    rm -rf "$building"
    trap - EXIT
}

# A number from 1 to 65535, without a leading zero, which would be read as octal further on.
read_port() {
    case $1 in
        '' | *[!0-9]* | ??????*) return 1 ;;
    esac
    port=$(expr "$1" + 0) || true
    [ "$port" -ge 1 ] && [ "$port" -le 65535 ]
}

# HOST:PORT of a broker, into the environment.
read_broker() {
    case $1 in
        *[!A-Za-z0-9.:_-]* | *:*:* | :* | *:) return 1 ;;
        *:*) ;;
        *) return 1 ;;
    esac
    case ${1##*:} in
        *[!0-9]* | ??????*) return 1 ;;
    esac
    ROOTCAST_MQTT_HOST=${1%:*}
    ROOTCAST_MQTT_PORT=${1##*:}
    export ROOTCAST_MQTT_HOST ROOTCAST_MQTT_PORT
}

# In the environment, not in the arguments: those can be read by everyone on the machine.
read_token() {
    case $1 in
        *[!A-Za-z0-9._~+/=-]*) return 1 ;;
    esac
    ROOTCAST_TOKEN=$1
    export ROOTCAST_TOKEN
}
