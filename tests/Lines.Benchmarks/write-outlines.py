"""Writes 21 closed outlines of 400 points with ezdxf, again and again, and prints the processor time of each time in ms."""
import io
import math
import sys
import time

import ezdxf


def outlines(count, points):
    return [
        [(1000 * k + (300 + k) * math.cos(2 * math.pi * i / points), 200 * math.sin(2 * math.pi * i / points)) for i in range(points)]
        for k in range(count)
    ]


def write(shapes):
    document = ezdxf.new("R2000", units=4)
    document.layers.add("cut", color=1)
    space = document.modelspace()
    for shape in shapes:
        space.add_lwpolyline(shape, close=True, dxfattribs={"layer": "cut"})
    text = io.StringIO()
    document.write(text)
    return text.getvalue()


shapes = outlines(21, 400)
for _ in range(int(sys.argv[1])):
    start = time.process_time()
    write(shapes)
    print(1000 * (time.process_time() - start))
