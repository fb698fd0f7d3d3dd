"""Reads a DXF file with ezdxf and prints its entities and audit as JSON."""
import json
import sys

import ezdxf

document = ezdxf.readfile(sys.argv[1])
audit = document.audit()
entities = []
for entity in document.modelspace():
    kind = entity.dxftype()
    if kind == "LINE":
        start, end = entity.dxf.start, entity.dxf.end
        vertices, closed = [[start.x, start.y, 0.0], [end.x, end.y, 0.0]], False
    elif kind == "LWPOLYLINE":
        vertices, closed = [[float(n) for n in p] for p in entity.get_points("xyb")], entity.closed
    else:
        vertices, closed = [], False
    entities.append({"type": kind, "layer": entity.dxf.layer, "closed": closed, "vertices": vertices})
layers = [
    {"name": layer.dxf.name, "color": layer.dxf.color, "linetype": layer.dxf.linetype, "lineweight": layer.dxf.lineweight}
    for layer in document.layers
]
print(json.dumps({
    "version": document.dxfversion,
    "units": document.header["$INSUNITS"],
    "errors": [e.message for e in audit.errors] + [e.message for e in audit.fixes],
    "layers": layers,
    "entities": entities,
}))
