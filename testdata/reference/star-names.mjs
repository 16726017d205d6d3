// Writes star-names.csv: the stars of d3-celestial that bear a name or are brighter
// than 4.7, with designation, place and magnitude.
//
//   node star-names.mjs > star-names.csv
import { readFileSync } from "node:fs";

const data = new URL("node_modules/d3-celestial/data/", import.meta.url);
const read = (name) => JSON.parse(readFileSync(new URL(name, data), "utf8"));
const stars = read("starnames.json");

console.log("hip,name,bayer,flamsteed,constellation,ra_deg,dec_deg,magnitude");
for (const { id, properties, geometry } of read("stars.6.json").features) {
  const star = stars[id];
  if (!star || !(star.name || properties.mag <= 4.7)) continue;
  const [ra, dec] = geometry.coordinates; // degrees, −180 to 180
  console.log([id, star.name ?? "", star.bayer ?? "", star.flam ?? "", star.c ?? "",
    ((ra + 360) % 360).toFixed(4), dec.toFixed(4), properties.mag].join(","));
}
