// Writes magnetic-values.csv: the field of the World Magnetic Model 2025.
//   noaa    the official test values of NOAA/NCEI, as the npm package geomagnetism carries them
//   magvar  computed by the npm package magvar, which rounds to 0.1 nT and 0.01°
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { magneticField } from "magvar";

const require = createRequire(import.meta.url);
const official = require.resolve("geomagnetism").replace(/index\.js$/, "test/values.csv");

console.log("source,year,elevation_km,latitude_deg,longitude_deg,north_nt,east_nt,down_nt,horizontal_nt,total_nt,inclination_deg,declination_deg");
for (const line of readFileSync(official, "utf8").split(/\r?\n/)) {
  if (!/^202[5-9]/.test(line)) continue;
  const v = line.split(",").map(Number);
  console.log(["noaa", v[0], ...v.slice(1, 4), ...v.slice(4, 9).map((x) => x.toFixed(3)), v[9].toFixed(2), v[10].toFixed(2)].join(","));
}

const places = [
  [46.09, -64.77, 0.02], [-45.87, 170.5, 0], [-0.2, -78.5, 2.8], [1.4, 103.8, 0], [69.6, 18.9, 0],
  [54.8, -1.6, 0.1], [27.7, 85.3, 1.4], [-17.8, -179.9, 0], [-17.8, 179.9, 0], [89.99, 0, 0],
  [-89.99, 45, 2.8], [76, -68, 0], [85.7, 139.3, 0], [-64, 136, 0], [31.5, 35.5, -0.43], [0, 0, 850],
];
for (const [lat, lon, height] of places) {
  for (const year of [2025, 2026.25, 2027.5, 2029.99]) {
    const f = magneticField(lat, lon, height, year);
    const n = (x, d) => x.toFixed(d);
    console.log(["magvar", year, height, lat, lon, n(f.x, 1), n(f.y, 1), n(f.z, 1), n(f.h, 1), n(f.f, 1), n(f.inclination, 2), n(f.declination, 2)].join(","));
  }
}
