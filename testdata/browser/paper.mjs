// Paper: every page printed to PDF by the browser, on the size that its own style
// sheet asks for. Sizes are read by pdfinfo and words by pdftotext (poppler).

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

// In points, 72 to the inch. Letter is 8.5 × 11 inches (ANSI/ASME Y14.1, size A);
// A4 is 210 × 297 mm (ISO 216).
export const sizes = {
	letter: [612, 792],
	a4: [595.28, 841.89],
};

// Half a point, 0.18 mm: the browser lays out in whole CSS pixels of 0.75 points,
// and rounds a page to them.
const within = 0.5;

// The probe is a pair of marks 100 mm apart on the first sheet. The browser shrinks a
// page that is too wide for its sheet, and the marks with it.
const probe = { left: 'nbprobeleft', right: 'nbproberight', mm: 100 };

// A quarter of a millimetre in 100: half the width of a pencil line (common practice,
// no source).
const withinMillimetres = 0.25;

export async function paper(context, edition, size, ledger) {
	const sheets = new Map(); // page → how many; for one that the editions do not have alike, its label
	const page = await context.newPage();
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-paper-'));
	try {
		for (const name of edition.own) {
			await page.goto(edition.url(name));
			await page.emulateMedia({ media: 'print' });
			const running = await page.evaluate(runningLine);
			await page.evaluate(addProbe, probe);
			const file = path.join(folder, 'page.pdf');
			// The size given here is neither of ours: a page whose style sheet names none
			// comes out on it and fails.
			await page.pdf({ path: file, preferCSSPageSize: true, width: '180mm', height: '180mm' });
			const label = edition.label(name);
			ledger.check(label, 'paper size', wrongSizes(file, sizes[size]), size);
			const pages = Number(execFileSync('pdfinfo', [file], { encoding: 'utf8' }).match(/^Pages: +(\d+)/m)[1]);
			sheets.set(edition.alike.includes(name) ? name : label, pages);
			ledger.check(label, 'paper scale', wrongScale(file));
			ledger.check(label, 'paper words', emptyPages(file, running));
		}
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
	return sheets;
}

// wrongSizes lets a sheet lie on its side: the printer turns it.
function wrongSizes(file, [width, height]) {
	const info = execFileSync('pdfinfo', ['-f', '1', '-l', '-1', file], { encoding: 'utf8' });
	const found = [...info.matchAll(/^Page +(\d+) size: +([\d.]+) x ([\d.]+) pts/gm)];
	if (found.length === 0) return ['pdfinfo names no page size'];
	const near = (a, b) => Math.abs(a - b) <= within;
	return found
		.filter(([, , w, h]) => !(near(w, width) && near(h, height)) && !(near(w, height) && near(h, width)))
		.map(([, number, w, h]) => `page ${number} is ${w} × ${h} pt, not ${width} × ${height}`);
}

function wrongScale(file) {
	const words = execFileSync('pdftotext', ['-bbox', '-l', '1', file, '-'], { encoding: 'utf8' });
	const place = (word) => Number(words.match(new RegExp(`xMin="([\\d.]+)"[^>]*>${word}<`))?.[1]);
	const apart = ((place(probe.right) - place(probe.left)) * 25.4) / 72;
	if (Number.isNaN(apart)) return ['the marks of the probe are not on the first sheet'];
	if (Math.abs(apart - probe.mm) <= withinMillimetres) return [];
	return [`${probe.mm} mm are printed as ${apart.toFixed(1)} mm: something is wider than the sheet`];
}

// emptyPages names the pages that hold nothing but the running line and the page
// number, which stand on every sheet.
function emptyPages(file, running) {
	const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
	if (pages.length === 0) return ['no page was printed'];
	const found = [];
	pages.forEach((text, index) => {
		// The page's number is the last line; a drawing may hold nothing but numbers too.
		const own = words(text.replace(/(^|\s)\d+ \/ \d+\s*$/, ''))
			.replace(probe.left, '')
			.replace(probe.right, '')
			.replace(running, '');
		if (!own) found.push(`page ${index + 1} of ${pages.length} is empty`);
	});
	return found;
}

function words(text) {
	return text.replace(/\s+/g, '');
}

// addProbe runs in the page. It sets the two marks in small print, clear of the flow.
function addProbe({ left, right, mm }) {
	[left, right].forEach((word, i) => {
		const mark = document.createElement('span');
		mark.textContent = word;
		mark.style = `position: absolute; top: 0; left: ${i * mm}mm; font: 4pt sans-serif; white-space: nowrap`;
		document.body.append(mark);
	});
}

// runningLine runs in the page: the words of the line that is repeated on every
// sheet, without spaces, as far as print shows it.
function runningLine() {
	const line = document.querySelector('header > .running-head');
	if (!line) return '';
	return [...line.children]
		.filter((part) => getComputedStyle(part).display !== 'none')
		.map((part) => part.textContent)
		.join('')
		.replace(/\s+/g, '');
}
