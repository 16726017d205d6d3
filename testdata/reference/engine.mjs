// Answers questions about the sky with astronomy-engine: one JSON array a line
// in, one JSON value a line out. Instants are days from 2000-01-01 12:00 UTC.
// The argument is TT − UTC in seconds, in place of the library's own delta T.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import * as Astronomy from "astronomy-engine";

const manifest = new URL("node_modules/astronomy-engine/package.json", import.meta.url);
const version = JSON.parse(readFileSync(manifest, "utf8")).version;
const ttMinusUtc = Number(process.argv[2]);
Astronomy.SetDeltaTFunction(() => ttMinusUtc);

const named = (body) => Astronomy.Body[body[0].toUpperCase() + body.slice(1)];
const radians = Math.PI / 180;

const answers = {
  version: () => version,
  apparent(body, d) {
    const time = Astronomy.MakeTime(d);
    const j2000 = Astronomy.GeoVector(named(body), time, true);
    const ofDate = Astronomy.RotateVector(Astronomy.Rotation_EQJ_EQD(time), j2000);
    const equator = Astronomy.EquatorFromVector(ofDate);
    return [equator.ra * 15 * radians, equator.dec * radians, equator.dist];
  },
  sidereal: (d) => Astronomy.SiderealTime(Astronomy.MakeTime(d)) * 15 * radians,
  horizontal(body, d, latitude, longitude, elevation) {
    const time = Astronomy.MakeTime(d);
    const observer = new Astronomy.Observer(latitude, longitude, elevation);
    const equator = Astronomy.Equator(named(body), time, observer, true, true);
    const seen = Astronomy.Horizon(time, observer, equator.ra, equator.dec);
    return [seen.azimuth, seen.altitude];
  },
  aspect(body, d) {
    const time = Astronomy.MakeTime(d);
    const light = Astronomy.Illumination(named(body), time);
    return [Astronomy.AngleFromSun(named(body), time), light.phase_angle, light.phase_fraction, light.mag, null];
  },
  heliocentric(body, d) {
    const time = Astronomy.MakeTime(d);
    const ofJ2000 = Astronomy.RotateVector(Astronomy.Rotation_EQJ_ECL(), Astronomy.HelioVector(named(body), time));
    const place = Astronomy.SphereFromVector(ofJ2000);
    return [place.lon, place.lat, place.dist];
  },
  // How the Moon turns to somebody, null for the Earth's centre: longitude and latitude
  // of the middle of its disc and of where the Sun is overhead, and the position angle
  // of its axis, by the library's rotation axis of the Moon.
  moonFace(d, place) {
    const time = Astronomy.MakeTime(d);
    const sight = (body) => {
      const v = Astronomy.GeoVector(body, time, true);
      if (!place) return [v.x, v.y, v.z];
      const o = Astronomy.ObserverVector(time, new Astronomy.Observer(...place), false);
      return [v.x - o.x, v.y - o.y, v.z - o.z];
    };
    const axis = Astronomy.RotationAxis(Astronomy.Body.Moon, time);
    const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    const z = [axis.north.x, axis.north.y, axis.north.z];
    const node = [-Math.sin(axis.ra * 15 * radians), Math.cos(axis.ra * 15 * radians), 0];
    const beyond = cross(z, node);
    const x = node.map((n, i) => n * Math.cos(axis.spin * radians) + beyond[i] * Math.sin(axis.spin * radians));
    const y = cross(z, x);
    const over = (v) => [Math.atan2(dot(v, y), dot(v, x)) / radians, Math.atan2(dot(v, z), Math.hypot(dot(v, x), dot(v, y))) / radians];
    const moon = sight(Astronomy.Body.Moon), sun = sight(Astronomy.Body.Sun);
    const ofDate = (v) => {
      const turned = Astronomy.RotateVector(Astronomy.Rotation_EQJ_EQD(time), new Astronomy.Vector(...v, time));
      return [turned.x, turned.y, turned.z];
    };
    const u = ofDate(moon), pole = ofDate(z);
    const east = cross([0, 0, 1], u), north = cross(u, east);
    const position = Math.atan2(dot(pole, east) / Math.hypot(...east), dot(pole, north) / Math.hypot(...north));
    return [...over(moon.map((m) => -m)), ...over(sun.map((s, i) => s - moon[i])), (position / radians + 360) % 360];
  },
  solarEclipse(d) {
    const eclipse = Astronomy.SearchGlobalSolarEclipse(Astronomy.MakeTime(d));
    return [eclipse.peak.ut, eclipse.kind, eclipse.distance, eclipse.latitude ?? null, eclipse.longitude ?? null];
  },
  lunarEclipse(d) {
    const eclipse = Astronomy.SearchLunarEclipse(Astronomy.MakeTime(d));
    return [eclipse.peak.ut, eclipse.kind, eclipse.sd_penum, eclipse.sd_partial, eclipse.sd_total];
  },
  localSolarEclipse(d, latitude, longitude, elevation) {
    const observer = new Astronomy.Observer(latitude, longitude, elevation);
    const eclipse = Astronomy.SearchLocalSolarEclipse(Astronomy.MakeTime(d), observer);
    const contacts = [eclipse.partial_begin, eclipse.total_begin, eclipse.peak, eclipse.total_end, eclipse.partial_end];
    return [eclipse.kind, eclipse.obscuration, ...contacts.map((event) => event?.time.ut ?? null)];
  },
};

createInterface({ input: process.stdin }).on("line", (line) => {
  const [question, ...values] = JSON.parse(line);
  console.log(JSON.stringify(answers[question](...values)));
});
