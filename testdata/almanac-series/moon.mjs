// Cuts ELP/MPP02 fitted to DE405 (Chapront & Francou 2003, Astron. Astrophys.
// 404, 735) down to the terms that matter between 1950 and 2100 and writes
// them as Go tables.
//
//   npm install && node moon.mjs 0.12 0.15 0.6 > ../../compute/almanac/moon_series.go
//
// Arguments: the smallest amplitude kept in longitude (″), latitude (″) and
// distance (km). A term A·t^k is kept when A reaches it (|t| ≤ 1 century holds
// the range). Phases keep the powers of t up to the square: at one century the
// cube moves the greatest term by 0.006″. The report on standard error gives
// the largest deviation from the full series at 1000 moments of 1950 to 2100.
import { default as full } from 'astronomia/data/elpMppDeFull'
const [longitude, latitude, distance] = process.argv.slice(2).map(Number)

const powers = series => Object.keys(series).sort()
const cut = (series, least, degree) => powers(series).map(k => series[k]
  .filter(t => Math.abs(t[0]) >= least).map(t => t.slice(0, degree + 2)).sort((a, b) => Math.abs(b[0]) - Math.abs(a[0])))
const whole = series => powers(series).map(k => series[k])
const horner = (t, c) => c.reduceRight((s, x) => s * t + x, 0)
const sum = (series, t) => series.reduceRight((acc, terms) =>
  acc * t + terms.reduce((s, [a, ...phase]) => s + a * Math.sin(horner(t, phase)), 0), 0)

const names = { L: 'longitude', B: 'latitude', R: 'distance' }
const kept = { L: cut(full.L, longitude, 2), B: cut(full.B, latitude, 2), R: cut(full.R, distance, 2) }
for (const key of 'LBR') {
  while (kept[key].length && kept[key].at(-1).length === 0) kept[key].pop()
}
const worst = { L: 0, B: 0, R: 0 }
for (let i = 0; i < 1000; i++) {
  const t = -0.5 + 1.51 * i / 999
  for (const key of 'LBR') {
    worst[key] = Math.max(worst[key], Math.abs(sum(kept[key], t) - sum(whole(full[key]), t)))
  }
}
const terms = Object.values(kept).flat().reduce((n, s) => n + s.length, 0)
console.error(`moon: ${terms} terms (${'LBR'.split('').map(k => kept[k].map(s => s.length).join('+')).join(', ')}); ` +
  `worst ${worst.L.toFixed(2)}″ ${worst.B.toFixed(2)}″ ${worst.R.toFixed(2)} km`)
console.error('mean longitude', full.W1)

const row = ([a, p0, p1, p2]) => `\t\t\t{${a.toFixed(4)}, ${p0.toFixed(9)}, ${p1.toFixed(8)}, ${p2.toFixed(9)}},`
const lines = [
  'package almanac', '',
  `// moonSeries is ELP/MPP02 (DE405) cut at ${longitude}″, ${latitude}″ and ${distance} km (testdata/almanac-series):`,
  `// ${terms} terms, within ${worst.L.toFixed(1)}″ in longitude, ${worst.B.toFixed(1)}″ in latitude and ${worst.R.toFixed(1)} km of the full`,
  '// series from 1950 to 2100. Rows are A and the phase p0 + p1·t + p2·t² of A·sin(phase),',
  '// A in ″ or km, phase in radians, t in Julian centuries.',
  'var moonSeries = lunar{'
]
for (const key of 'LBR') {
  lines.push(`\t${names[key]}: [][]wave{`)
  kept[key].forEach(s => lines.push('\t\t{', ...s.map(row), '\t\t},'))
  lines.push('\t},')
}
lines.push('}')
console.log(lines.join('\n'))
