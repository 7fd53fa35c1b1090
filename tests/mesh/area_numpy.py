"""Prints facets and area of each STL file named, as JSON lines, by Debian's
python3-stl. The library's own areas are in single precision; the second figure
is taken from its corners in double precision."""
import json
import sys
import warnings

warnings.simplefilter("ignore")
import numpy
from stl import Mode, mesh

for file in sys.argv[1:]:
    text = ".ascii." in file or file.endswith("_text.stl")
    solids = list(mesh.Mesh.from_multi_file(file, mode=Mode.ASCII if text else Mode.AUTOMATIC))
    own = sum(float(numpy.sum(s.areas, dtype=numpy.float64)) for s in solids)
    corners = numpy.concatenate([s.vectors for s in solids]).astype(numpy.float64)
    crosses = numpy.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0])
    print(json.dumps({
        "file": file,
        "facets": len(corners),
        "area": float(numpy.linalg.norm(crosses, axis=1).sum() / 2),
        "own_area": own,
    }))
