"""Reads DXF files with ezdxf and prints, for each, the points of the closed paths on the layer "cut", flattened by ezdxf's own arcs."""
import json
import sys

import ezdxf
import ezdxf.path


def reading_of(name):
    document = ezdxf.readfile(name)
    paths = []
    for entity in document.modelspace():
        if entity.dxf.layer == "cut":
            path = ezdxf.path.make_path(entity)
            paths.append({"closed": path.is_closed, "points": [[p.x, p.y] for p in path.flattening(0.0005)]})
    return {
        "version": document.dxfversion,
        "units": document.header["$INSUNITS"],
        "errors": [e.message for e in document.audit().errors],
        "layers": sorted({entity.dxf.layer for entity in document.modelspace()}),
        "paths": paths,
    }


print(json.dumps([reading_of(name) for name in sys.argv[1:]]))
