"""Reads a DXF file with ezdxf and prints the points of the closed paths on the layer "cut", flattened by ezdxf's own arcs."""
import json
import sys

import ezdxf
import ezdxf.path

document = ezdxf.readfile(sys.argv[1])
paths = []
for entity in document.modelspace():
    if entity.dxf.layer == "cut":
        path = ezdxf.path.make_path(entity)
        paths.append({"closed": path.is_closed, "points": [[p.x, p.y] for p in path.flattening(0.0005)]})
print(json.dumps({
    "version": document.dxfversion,
    "units": document.header["$INSUNITS"],
    "errors": [e.message for e in document.audit().errors],
    "layers": sorted({entity.dxf.layer for entity in document.modelspace()}),
    "paths": paths,
}))
