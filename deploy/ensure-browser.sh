#!/bin/sh
# Makes sure that /usr/bin/chromium is there for the browser tests. Installs Debian's package only if it is missing.
set -eu

browser=/usr/bin/chromium

if [ -x "$browser" ]; then
    printf '%s is there.\n' "$browser"
    exit 0
fi

if ! command -v apt-get >/dev/null 2>&1; then
    printf 'ensure-browser.sh: %s is missing and there is no apt-get to install it; install Chromium by hand.\n' "$browser" >&2
    exit 1
fi

if [ "$(id -u)" -eq 0 ]; then
    as_root=
elif command -v sudo >/dev/null 2>&1; then
    as_root=sudo
else
    printf 'ensure-browser.sh: %s is missing; run this as root, or install the package chromium.\n' "$browser" >&2
    exit 1
fi

printf 'Installing chromium ...\n'
$as_root apt-get update -qq
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >/dev/null

if [ ! -x "$browser" ]; then
    printf 'ensure-browser.sh: the package chromium was installed but %s is still missing.\n' "$browser" >&2
    exit 1
fi
printf '%s is there.\n' "$browser"
