#!/usr/bin/env bash
# Installs axe-core 4.14.1 (MPL-2.0), the checker of accessibility that the
# tests put into the page, outside the repository: into $FILMBUILD_AXE_DATA, or
# axe-core in the user's cache. What is there already is not fetched again.
set -euo pipefail

data="${FILMBUILD_AXE_DATA:-${XDG_CACHE_HOME:-$HOME/.cache}/filmbuild/axe-core-4.14.1}"
[ -e "$data/axe.min.js" ] && { echo "axe-core is in $data"; exit 0; }
command -v npm >/dev/null 2>&1 || {
  command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" = 0 ] || { echo "missing: npm. Install it and run again." >&2; exit 1; }
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends nodejs npm >/dev/null
}
mkdir -p "$data"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
(cd "$work" && npm pack --silent axe-core@4.14.1 >/dev/null && tar -xzf axe-core-4.14.1.tgz)
cp "$work/package/axe.min.js" "$data/axe.min.js"
echo "axe-core is in $data"
