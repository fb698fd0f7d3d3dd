"""Reads DXF files with ezdxf, those named on each line, and answers on one with the entities and audit of each as JSON."""
import json
import sys
import traceback

import ezdxf


def entity_of(entity):
    kind = entity.dxftype()
    if kind == "LINE":
        start, end = entity.dxf.start, entity.dxf.end
        vertices, closed = [[start.x, start.y, 0.0], [end.x, end.y, 0.0]], False
    elif kind == "LWPOLYLINE":
        vertices, closed = [[float(n) for n in p] for p in entity.get_points("xyb")], entity.closed
    elif kind == "POLYLINE":
        points = [(v.dxf.location, v.dxf.get("bulge", 0.0)) for v in entity.vertices]
        vertices, closed = [[p.x, p.y, float(b)] for p, b in points], entity.is_closed
    elif kind == "CIRCLE":
        center = entity.dxf.center
        vertices, closed = [[center.x, center.y, entity.dxf.radius]], True
    else:
        vertices, closed = [], False
    return {"type": kind, "layer": entity.dxf.layer, "closed": closed, "vertices": vertices}


def reading_of(path):
    document = ezdxf.readfile(path)
    audit = document.audit()
    layers = [
        {"name": layer.dxf.name, "color": layer.dxf.color, "linetype": layer.dxf.linetype, "lineweight": layer.dxf.lineweight}
        for layer in document.layers
    ]
    return {
        "version": document.dxfversion,
        "units": document.header.get("$INSUNITS", 0),
        "errors": [e.message for e in audit.errors] + [e.message for e in audit.fixes],
        "layers": layers,
        "entities": [entity_of(e) for e in document.modelspace()],
    }


def answer_to(line):
    try:
        return {"readings": [reading_of(path) for path in json.loads(line)]}
    except Exception:
        return {"failure": traceback.format_exc()}


for line in sys.stdin:
    print(json.dumps(answer_to(line)), flush=True)
