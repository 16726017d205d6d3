// The water clock's strips of marks, printed to PDF by the browser and measured there:
// each mark must be as far from the start as the table of the lesson says. Lines are read
// by pdftocairo (poppler).

import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { paths } from './paths.mjs';

export const kind = 'water clock at true size';
export const strips = 'print-water-clock.html';

// A fifth of a millimetre, as near as a strip can be stuck on (common practice, no source).
const withinMillimetres = 0.2;

const markLength = 11; // mm, as the strip is drawn

// water measures the strips of an edition that has them.
export async function water(context, edition, ledger) {
	const page = await context.newPage();
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-water-'));
	try {
		await page.goto(edition.url(strips));
		const file = path.join(folder, 'strips.pdf');
		await page.pdf({ path: file, preferCSSPageSize: true });
		ledger.check(edition.label(strips), kind, wrongMarks(folder, file, wanted(edition)));
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}

// wanted gives how far the marks are from the start by the table file, and last the hole.
function wanted(edition) {
	const table = edition.file('water-clock-marks.csv');
	if (!existsSync(table)) return [];
	const [head, ...rows] = readFileSync(table, 'utf8').replace('\ufeff', '').trim().split(/\r?\n/).map((line) => line.split(','));
	const below = head.indexOf('below_start_mm'), height = head.indexOf('height_mm');
	return [...rows.map((row) => Number(row[below])), Number(rows[0][height])];
}

function wrongMarks(folder, file, wanted) {
	if (wanted.length < 3) return ['the lesson has no table of marks'];
	const pages = Number(execFileSync('pdfinfo', [file], { encoding: 'utf8' }).match(/^Pages: +(\d+)/m)[1]);
	const findings = [];
	let measured = 0;
	for (let sheet = 1; sheet <= pages; sheet++) {
		for (const [row, marks] of rowsOf(paths(file, sheet, folder))) {
			measured++;
			const where = `sheet ${sheet}, strip at ${row} mm`;
			if (marks.length !== wanted.length) findings.push(`${where}: ${marks.length} lines, and the table has ${wanted.length} with the hole`);
			marks.forEach((at, i) => {
				const found = at - marks[0];
				if (!(Math.abs(found - wanted[i]) <= withinMillimetres)) findings.push(`${where}: line ${i + 1} is ${found.toFixed(2)} mm from the start, not ${wanted[i]}`);
			});
		}
	}
	if (measured === 0) findings.push('no strip is printed');
	return findings;
}

// rowsOf gives the lines of marks of each strip, from left to right, by how far down the
// sheet they begin.
function rowsOf(lines) {
	const rows = new Map();
	for (const { points, curved } of lines) {
		const across = points.map(([x]) => x), down = points.map(([, y]) => y);
		const width = Math.max(...across) - Math.min(...across), height = Math.max(...down) - Math.min(...down);
		if (curved || width > withinMillimetres || Math.abs(height - markLength) > withinMillimetres) continue;
		const row = Math.round(Math.min(...down));
		rows.set(row, [...(rows.get(row) ?? []), across[0]]);
	}
	for (const marks of rows.values()) marks.sort((a, b) => a - b);
	return rows;
}
