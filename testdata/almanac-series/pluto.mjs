// Cuts Meeus's series for Pluto (Astronomical Algorithms, 2nd ed. 1998, table
// 37.A, 1885 to 2099) to the terms of 0.00002° and more and writes them as Go.
//
//   npm install && node pluto.mjs > ../../compute/almanac/pluto_series.go
import { readFileSync } from 'node:fs'
const text = readFileSync(new URL('node_modules/astronomia/src/pluto.js', import.meta.url), 'utf8')
const all = [...text.matchAll(/new Pt\(([^)]*)\)/g)].map(m => m[1].split(',').map(Number))
const rows = all.filter(r => Math.max(...r.slice(3, 7).map(Math.abs)) >= 2e-5)
console.error(`pluto: ${rows.length} of ${all.length} terms`)
const cell = (x, i) => i < 3 ? String(x).padStart(2) : x.toFixed(i < 7 ? 6 : 7).padStart(i < 7 ? 10 : 10)
console.log([
  'package almanac', '',
  '// plutoSeries is table 37.A of Meeus down to 0.00002° (testdata/almanac-series):',
  '// multiples of J, S and P, then the coefficients of sine and cosine for longitude',
  '// and latitude in degrees and for the radius vector in au.',
  'var plutoSeries = [...]struct{ j, s, p, lonSin, lonCos, latSin, latCos, rSin, rCos float64 }{',
  ...rows.map(r => `\t{${r.map(cell).join(', ')}},`), '}'
].join('\n'))
