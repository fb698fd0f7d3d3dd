// Reads DXF files with npm's dxf-parser, those named on each line, and answers on one with the entities of each as JSON.
const fs = require('fs');
const DxfParser = require('dxf-parser').default ?? require('dxf-parser');

function readingOf(path) {
  const document = new DxfParser().parseSync(fs.readFileSync(path, 'utf8'));
  const entities = document.entities.map(e => ({
    type: e.type,
    layer: e.layer,
    closed: e.type === 'CIRCLE' || e.shape === true,
    vertices: e.type === 'CIRCLE' ? [[e.center.x, e.center.y, e.radius]] : e.vertices.map(v => [v.x, v.y, v.bulge ?? 0]),
  }));
  return {
    version: document.header.$ACADVER,
    units: document.header.$INSUNITS ?? 0,
    errors: [],
    layers: Object.values(document.tables.layer.layers).map(l => ({ name: l.name, color: l.colorIndex ?? 0, linetype: '', lineweight: 0 })),
    entities,
  };
}

function answerTo(line) {
  try {
    return { readings: JSON.parse(line).map(readingOf) };
  } catch (fault) {
    return { failure: fault.stack };
  }
}

require('readline').createInterface({ input: process.stdin }).on('line', line => console.log(JSON.stringify(answerTo(line))));
