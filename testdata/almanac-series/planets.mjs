// Cuts VSOP87D (Bretagnon & Francou 1988, Astron. Astrophys. 202, 309) down to
// the terms that matter between 1950 and 2100 and writes them as Go tables.
//
//   npm install && node planets.mjs earth 1.5e-7 1e-6 > ../../compute/almanac/earth_series.go
//
// Arguments: the planet, the smallest amplitude kept in longitude and latitude
// (radians), the smallest kept in the radius vector (au). A term A·τ^k is kept
// when A·0.1^k reaches that amplitude, for |τ| ≤ 0.1 thousand years of J2000
// holds the whole range. The report on standard error gives the largest
// deviation from the full series at 3000 moments of 1950 to 2100.
const [planet, angular, radial] = [process.argv[2], Number(process.argv[3]), Number(process.argv[4])]
const { default: full } = await import(`astronomia/data/vsop87D${planet}`)
// Four rows of the package's Uranus and Neptune are not numbers. They stand
// among terms of 1e-9 rad times τ³ and τ⁴, far below what is kept.
for (const key of 'LBR') {
  for (const k of Object.keys(full[key])) full[key][k] = full[key][k].filter(t => t.every(Number.isFinite))
}

const cut = (series, least) => Object.keys(series).sort().map(k =>
  series[k].filter(t => Math.abs(t[0]) * 0.1 ** Number(k) >= least).sort((a, b) => Math.abs(b[0]) - Math.abs(a[0])))
const whole = series => Object.keys(series).sort().map(k => series[k])
const sum = (series, tau) => series.reduceRight((acc, terms) =>
  acc * tau + terms.reduce((s, [a, b, c]) => s + a * Math.cos(b + c * tau), 0), 0)

const names = { L: 'longitude', B: 'latitude', R: 'radius' }
const kept = { L: cut(full.L, angular), B: cut(full.B, angular), R: cut(full.R, radial) }
for (const key of 'LBR') {
  while (kept[key].length && kept[key].at(-1).length === 0) kept[key].pop()
}

const worst = { L: 0, B: 0, R: 0 }
for (let i = 0; i < 3000; i++) {
  const tau = -0.05 + 0.151 * i / 2999
  for (const key of 'LBR') {
    worst[key] = Math.max(worst[key], Math.abs(sum(kept[key], tau) - sum(whole(full[key]), tau)))
  }
}
const terms = Object.values(kept).flat().reduce((n, s) => n + s.length, 0)
const arc = x => (x * 180 * 3600 / Math.PI).toFixed(3)
console.error(`${planet}: ${terms} terms; worst ${arc(worst.L)}″ ${arc(worst.B)}″ ${(worst.R * 1e6).toFixed(3)}e-6 au`)

const row = ([a, b, c]) => `\t\t\t{${a.toFixed(11)}, ${b.toFixed(11)}, ${c.toFixed(10)}},`
const lines = [
  'package almanac', '',
  `// ${planet}Series is VSOP87D cut at ${process.argv[3]} rad and ${process.argv[4]} au (testdata/almanac-series):`,
  `// ${terms} terms, within ${arc(worst.L)}″ in longitude, ${arc(worst.B)}″ in latitude and ${(worst.R * 1e6).toFixed(3)}e-6 au`,
  '// of the full series from 1950 to 2100. Rows are A, B, C of A·cos(B + C·τ).',
  `var ${planet}Series = orbit{`
]
for (const key of 'LBR') {
  lines.push(`\t${names[key]}: []series{`)
  kept[key].forEach(s => lines.push(s.length ? '\t\t{' : '\t\t{},', ...(s.length ? [...s.map(row), '\t\t},'] : [])))
  lines.push('\t},')
}
lines.push('}')
console.log(lines.join('\n'))
