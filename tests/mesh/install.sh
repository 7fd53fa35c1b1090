#!/usr/bin/env bash
# Installs the models and the three other readers that the mesh tests need, as
# data outside the repository:
#
#   npm      stl-models 0.12.0 (MIT), three 0.187.0 (MIT), bunny 1.0.1 (public domain)
#   Debian   assimp-testmodels (BSD), assimp-utils, python3-stl
#
# The folder is $FILMBUILD_MESH_DATA, or mesh-models in the user's cache. What
# is there already is not fetched again.
set -euo pipefail

data="${FILMBUILD_MESH_DATA:-${XDG_CACHE_HOME:-$HOME/.cache}/filmbuild/mesh-models}"
stamp="$data/.installed"
[ -e "$stamp" ] && { echo "mesh models are in $data"; exit 0; }
mkdir -p "$data"

missing=()
command -v node >/dev/null 2>&1 || missing+=(nodejs)
command -v npm >/dev/null 2>&1 || missing+=(npm)
command -v assimp >/dev/null 2>&1 || missing+=(assimp-utils)
[ -d /usr/share/assimp/models ] || missing+=(assimp-testmodels)
/usr/bin/python3 -W ignore -c 'import stl.mesh' >/dev/null 2>&1 || missing+=(python3-stl)
if [ "${#missing[@]}" -gt 0 ]; then
  if ! command -v apt-get >/dev/null 2>&1 || [ "$(id -u)" != 0 ]; then
    echo "missing: ${missing[*]} (Debian packages). Install them and run again." >&2
    exit 1
  fi
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
fi

npm install --prefix "$data" --no-audit --no-fund --no-save --ignore-scripts --loglevel=error \
  stl-models@0.12.0 three@0.187.0 bunny@1.0.1 >/dev/null

# The models are copied under names of our own where an exporter is named.
rm -rf "$data/assimp"
mkdir -p "$data/assimp"
cp -rL /usr/share/assimp/models/{STL,OBJ,PLY,OFF,invalid} "$data/assimp/" 2>/dev/null || true
for export in "$data"/assimp/STL/*.STL; do mv "$export" "$data/assimp/STL/upper_case_export.STL"; done
[ -e "$data/assimp/PLY/cube_binary.ply" ] || { echo "the test models of Debian are not complete" >&2; exit 1; }

# The bunny of npm is a program text: positions and cells. As OBJ:
node -e '
  const { positions, cells } = require(process.argv[1])
  const text = [...positions.map(p => "v " + p.join(" ")), ...cells.map(c => "f " + c.map(i => i + 1).join(" "))]
  require("fs").writeFileSync(process.argv[2], text.join("\n") + "\n")
' "$data/node_modules/bunny" "$data/bunny.obj"

touch "$stamp"
echo "mesh models are in $data"
