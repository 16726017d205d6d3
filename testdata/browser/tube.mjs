// Cutting strips: the strips of a telescope's tubes, printed to PDF by the browser
// and measured there. Outlines are read by pdftocairo (poppler).

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { paths } from './paths.mjs';

// A fifth of a millimetre, as near as a tube can be marked with a sharp pencil
// (common practice, no source).
const withinMillimetres = 0.2;

const checkBar = 100; // mm, the bar at the foot of every sheet

// tube measures every page of cutting strips that the edition has.
export async function tube(context, edition, ledger) {
	const names = edition.pages.filter((name) => /^print-tube-plan(-\d+)?\.html$/.test(name));
	if (names.length === 0) return;
	const page = await context.newPage();
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-tube-'));
	try {
		for (const name of names) {
			await page.goto(edition.url(name));
			const drawn = await page.evaluate(drawnStrips);
			const file = path.join(folder, 'strips.pdf');
			await page.pdf({ path: file, preferCSSPageSize: true });
			ledger.check(edition.label(name), 'cutting strips', wrongStrips(folder, file, drawn));
		}
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}

function wrongStrips(folder, file, drawn) {
	const findings = [];
	if (drawn.length === 0) findings.push('no strip is drawn');
	const sheets = sheetsOf(folder, file);
	for (const [i, boxes] of sheets.entries()) {
		if (!boxes.some((box) => near(box.width, checkBar) && box.height < 0.5)) findings.push(`sheet ${i + 1} has no bar of ${checkBar} mm`);
	}
	const lengths = new Map(); // said in the label → drawn, over all parts of a strip
	for (const { label, width, height } of drawn) {
		const strip = label.match(/^.*?\d+\s*mm/)?.[0];
		if (strip) lengths.set(strip, (lengths.get(strip) ?? 0) + width);
		if (!sheets.flat().some((box) => near(box.width, width) && near(box.height, height))) {
			findings.push(`${label}: no outline of ${width} × ${height} mm is printed`);
		}
	}
	for (const [strip, length] of lengths) {
		// "Outer tube: 270 mm": the words and the drawing must agree, to the label's rounding.
		if (Math.abs(Number(strip.match(/(\d+)\s*mm/)[1]) - length) > 0.5) findings.push(`${strip}: drawn ${length} mm long`);
	}
	return findings;
}

function near(a, b) {
	return Math.abs(a - b) <= withinMillimetres;
}

// sheetsOf gives the extents, in millimetres, of every line with straight sides on
// each page.
function sheetsOf(folder, file) {
	const pages = Number(execFileSync('pdfinfo', [file], { encoding: 'utf8' }).match(/^Pages: +(\d+)/m)[1]);
	return Array.from({ length: pages }, (_, i) => paths(file, i + 1, folder).filter(({ curved }) => !curved).map(extent));
}

function extent({ points }) {
	const across = points.map(([x]) => x), down = points.map(([, y]) => y);
	return { width: Math.max(...across) - Math.min(...across), height: Math.max(...down) - Math.min(...down) };
}

// drawnStrips runs in the page: the strips of the first sheet and their labels, in
// the drawing's own millimetres.
function drawnStrips() {
	const first = document.querySelector('.paper-sheet .tube-strip');
	if (!first) return [];
	const labels = [...first.querySelectorAll('.strong')].map((text) => text.textContent);
	return [...first.querySelectorAll('path.piece')].map((strip, i) => {
		const { width, height } = strip.getBBox();
		return { label: labels[i] ?? '', width, height };
	});
}
