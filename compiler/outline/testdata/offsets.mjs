// Makes offsets.json: polygons in hundredths of a millimetre, and what two general
// libraries of geometry make of them when every edge is moved out by one width with
// mitred corners: clipper2-ts (a port of Clipper2) and jsts (a port of JTS).
//   npm install clipper2-ts@2.0.1 jsts@2.12.1 && node offsets.mjs >offsets.json
import { inflatePaths, JoinType, EndType } from "clipper2-ts";
import GeometryFactory from "jsts/org/locationtech/jts/geom/GeometryFactory.js";
import Coordinate from "jsts/org/locationtech/jts/geom/Coordinate.js";
import BufferOp from "jsts/org/locationtech/jts/operation/buffer/BufferOp.js";
import BufferParameters from "jsts/org/locationtech/jts/operation/buffer/BufferParameters.js";

const shapes = {
  rectangle: [[0, 0], [300, 0], [300, 200], [0, 200]],
  trapezium: [[40, 0], [260, 0], [300, 500], [0, 500]],
  bodice: [[0, 60], [70, 0], [150, 30], [140, 120], [180, 210], [170, 420], [0, 430]],
  "with a step": [[0, 0], [120, 0], [120, 150], [200, 150], [200, 320], [0, 320]],
  "with a dart": [[0, 0], [100, 0], [120, 120], [150, 5], [260, 20], [280, 400], [0, 400]],
  "a hollow too narrow for the width": [[0, 0], [95, 0], [95, 14], [105, 14], [105, 0], [200, 0], [200, 200], [0, 200]],
};
let seed = 20;
const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
for (let k = 0; k < 20; k++) {
  const n = 5 + (k % 6), ring = [];
  for (let i = 0; i < n; i++) {
    const a = (2 * Math.PI * i) / n, r = 150 + 150 * random();
    ring.push([Math.round(300 + r * Math.cos(a)), Math.round(300 + r * Math.sin(a))]);
  }
  shapes["random " + k] = ring;
}

const clipper = (ring, w) => inflatePaths([ring.map(([x, y]) => ({ x: x * 100, y: y * 100 }))], w * 100, JoinType.Miter, EndType.Polygon, 4)
  .map((p) => p.map((q) => [Number(q.x), Number(q.y)]));
const jts = (ring, w) => {
  const at = (p) => new Coordinate(p[0] * 100, p[1] * 100);
  const polygon = new GeometryFactory().createPolygon([...ring, ring[0]].map(at));
  const how = new BufferParameters(8, BufferParameters.CAP_FLAT, BufferParameters.JOIN_MITRE, 4);
  const out = BufferOp.bufferOp(polygon, w * 100, how);
  return out.getExteriorRing().getCoordinates().slice(0, -1).map((c) => [c.x, c.y]);
};
const area = (r) => Math.abs(r.reduce((s, p, i) => s + (p[0] * r[(i + 1) % r.length][1] - p[1] * r[(i + 1) % r.length][0]) / 2, 0));

const rows = [];
for (const [name, ring] of Object.entries(shapes))
  for (const w of [6, 15])
    rows.push(JSON.stringify({ name, width: w, ring, clipper2: clipper(ring, w)[0], jtsArea: Math.round(area(jts(ring, w))) }));
console.log("[\n" + rows.join(",\n") + "\n]");
