// Times astronomy-engine at the work that the benchmarks of compute/almanac do.
//
//   node astronomy-engine.mjs            one JSON object with the median of nine rounds of each task
//   node astronomy-engine.mjs --ask      reads task names, one a line, and answers one JSON object a
//                                        line for one round of each, so that another program can take
//                                        turns with this one
//
// Tasks:
//   sun-year     every rise, transit and set of the Sun in 2027 at 46.09 N 64.77 W
//   moon-year    the same for the Moon
//   phases-year  the principal phases of the Moon in 2027
//
// "check" is the number of events found, so that both sides can be seen to do the same work.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { performance } from "node:perf_hooks";
import * as Astronomy from "astronomy-engine";

const manifest = new URL("node_modules/astronomy-engine/package.json", import.meta.url);
const library = { library: "astronomy-engine", version: JSON.parse(readFileSync(manifest, "utf8")).version, node: process.version };
const school = new Astronomy.Observer(46.09, -64.77, 20);
const zone = 4 / 24; // the local days of UTC−4
const begin = Astronomy.MakeTime(new Date(Date.UTC(2027, 0, 1))).AddDays(zone);
const end = begin.AddDays(365);

function yearOf(body) {
  let events = 0;
  for (let day = 0; day < 365; day++) {
    const midnight = begin.AddDays(day);
    if (Astronomy.SearchRiseSet(body, school, +1, midnight, 1)) events++;
    if (Astronomy.SearchRiseSet(body, school, -1, midnight, 1)) events++;
    const transit = Astronomy.SearchHourAngle(body, school, 0, midnight, +1);
    if (transit.time.ut < midnight.ut + 1) events++;
  }
  return events;
}

function phases() {
  let events = 0;
  for (let quarter = Astronomy.SearchMoonQuarter(begin); quarter.time.ut < end.ut; quarter = Astronomy.NextMoonQuarter(quarter)) events++;
  return events;
}

const tasks = {
  "sun-year": () => yearOf(Astronomy.Body.Sun),
  "moon-year": () => yearOf(Astronomy.Body.Moon),
  "phases-year": phases,
};

function round(name) {
  const started = performance.now();
  const check = tasks[name]();
  return { task: name, ms: performance.now() - started, check };
}

for (const name of Object.keys(tasks)) for (let i = 0; i < 3; i++) round(name); // let the compiler warm up

if (process.argv.includes("--ask")) {
  createInterface({ input: process.stdin }).on("line", (name) => {
    console.log(JSON.stringify(Object.hasOwn(tasks, name) ? { ...library, ...round(name) } : { error: `no task ${name}` }));
  });
} else {
  const median = (name) => Array.from({ length: 9 }, () => round(name)).sort((a, b) => a.ms - b.ms)[4];
  console.log(JSON.stringify({ ...library, tasks: Object.keys(tasks).map(median) }, null, 2));
}
