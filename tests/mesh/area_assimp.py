"""Prints facets and area of each mesh file named, as JSON lines, by the program
assimp: it reads the file and writes what it read as a binary STL, of which the
corners are taken here."""
import json
import math
import os
import struct
import subprocess
import sys
import tempfile

for file in sys.argv[1:]:
    with tempfile.TemporaryDirectory() as folder:
        out = os.path.join(folder, "out.stl")
        done = subprocess.run(["assimp", "export", file, out, "-fstlb"], capture_output=True, text=True)
        if not os.path.exists(out):
            print(json.dumps({"file": file, "error": (done.stdout + done.stderr).strip()[-200:]}))
            continue
        with open(out, "rb") as handle:
            data = handle.read()
    (facets,) = struct.unpack_from("<I", data, 80)
    parts = []
    for i in range(facets):
        a, b, c = (struct.unpack_from("<3f", data, 84 + 50 * i + 12 * k) for k in (1, 2, 3))
        u = [b[k] - a[k] for k in range(3)]
        v = [c[k] - a[k] for k in range(3)]
        parts.append(math.sqrt((u[1] * v[2] - u[2] * v[1]) ** 2 + (u[2] * v[0] - u[0] * v[2]) ** 2 + (u[0] * v[1] - u[1] * v[0]) ** 2) / 2)
    print(json.dumps({"file": file, "facets": facets, "area": math.fsum(parts)}))
