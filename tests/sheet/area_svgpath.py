"""Areas and lengths of the groups of an SVG by Debian's python3-svg.path.

Reads an SVG from standard input and writes JSON: for each group with the
attribute data-pass, its id, the area by the signed sum over its paths (y runs
down) and the length of all lines. Curves are cut into chords twice, and the two
areas are extrapolated: the error of chords goes with the square of their length.
"""
import json
import sys
import xml.etree.ElementTree as tree

from svg.path import Arc, CubicBezier, parse_path


def swept(segment, chords):
    """Half the cross products along a segment: what it adds to the area."""
    points = [segment.point(i / chords) for i in range(chords + 1)]
    return sum((p.conjugate() * q).imag for p, q in zip(points, points[1:])) / 2


def area(segment):
    if isinstance(segment, (Arc, CubicBezier)):
        once, twice = swept(segment, 200), swept(segment, 400)
        return twice + (twice - once) / 3
    return (segment.start.conjugate() * segment.end).imag / 2


answer = {}
for group in tree.parse(sys.stdin).getroot().iter("{http://www.w3.org/2000/svg}g"):
    if "data-pass" not in group.attrib:
        continue
    paths = [parse_path(p.attrib["d"]) for p in group.iter("{http://www.w3.org/2000/svg}path")]
    answer[group.attrib["id"]] = {
        "area": -sum(area(s) for p in paths for s in p),
        "length": sum(p.length(error=1e-7) for p in paths),
    }
json.dump(answer, sys.stdout)
