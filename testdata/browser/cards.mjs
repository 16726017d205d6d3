// Measures the cards for the strip where they are cut: the page is printed to PDF by
// the browser, drawn by pdftoppm (poppler) at 600 dots an inch, and the marks at the
// ends of the cuts are looked for on the paper.
//
//	node cards.mjs FOLDER [3x5|A6]
//
// FOLDER holds handbook-staff/ with print-strip-cards.html. A line is printed for each sheet
// that fails, then a summary. Exit 0: all is true to size; 1: it is not; 2: wrong use.

import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger } from './ledger.mjs';

// An index card is 3 × 5 inches of 25.4 mm; A6 is 105 × 148 mm (ISO 216). Cards lie
// across.
const sizes = { '3x5': { across: 127, down: 76.2 }, A6: { across: 148, down: 105 } };

// A dot is 0.04 mm, and so is half the width of a mark.
const within = 0.2;

const dots = 600;
const mm = 25.4 / dots;

// The marks begin at the border that printers leave free, 10 mm, and below the head of the
// sheet, 9 mm more; they are 3 mm long.
const border = 10, head = 9;
const reach = { row: border + head + 1.5, column: border + 1.5 };

// The check bar stands below the marks on the left: what is looked at ends above it.
const checkStrip = 24;

const page = 'print-strip-cards.html';
const [folder, name = '3x5'] = process.argv.slice(2);
if (!folder || !sizes[name]) fail('use: node cards.mjs FOLDER [3x5|A6]');
if (!existsSync(path.join(folder, 'handbook-staff', page))) fail(`${path.join(folder, 'handbook-staff', page)} is missing`);

const edition = new Edition(folder, 'handbook-staff');
const ledger = new Ledger();
const scratch = mkdtempSync(path.join(tmpdir(), 'noonbook-cards-'));
try {
	await print(path.join(scratch, 'cards.pdf'));
	execFileSync('pdftoppm', ['-r', dots, '-gray', path.join(scratch, 'cards.pdf'), path.join(scratch, 'sheet')]);
	for (const sheet of readdirSync(scratch).filter((file) => file.endsWith('.pgm')).sort()) {
		const picture = grey(readFileSync(path.join(scratch, sheet)));
		const { across, down } = sizes[name];
		ledger.check(`${edition.label(page)}, ${path.basename(sheet, '.pgm')}`, 'cuts down the sheet', wrongGaps(marks(picture, 'row'), across));
		ledger.check(`${edition.label(page)}, ${path.basename(sheet, '.pgm')}`, 'cuts across the sheet', wrongGaps(marks(picture, 'column'), down));
	}
} finally {
	rmSync(scratch, { recursive: true });
}
process.exitCode = ledger.close(['cuts down the sheet', 'cuts across the sheet']) ? 0 : 1;

async function print(file) {
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
	try {
		const context = await browser.newContext({ offline: true });
		const tab = await context.newPage();
		await tab.goto(edition.url(page));
		await tab.pdf({ path: file, preferCSSPageSize: true, width: '180mm', height: '180mm' });
	} finally {
		await browser.close();
	}
}

// grey reads a binary portable greymap.
function grey(bytes) {
	const head = bytes.subarray(0, 64).toString('latin1').match(/^P5\s+(\d+)\s+(\d+)\s+255\s/);
	if (!head) throw new Error('pdftoppm gave no greymap');
	return { width: Number(head[1]), height: Number(head[2]), dots: bytes.subarray(head[0].length) };
}

// marks gives the middles, in millimetres, of what is dark along one row or column of
// dots that runs through the marks.
function marks({ width, height, dots: all }, along) {
	const line = Math.round(reach[along] / mm);
	const end = along === 'row' ? width : height - Math.round(checkStrip / mm);
	const dark = (i) => all[along === 'row' ? line * width + i : i * width + line] < 128;
	const middles = [];
	const begin = along === 'row' ? 0 : Math.round((border + head) / mm);
	for (let i = begin, from = -1; i <= end; i++) {
		const on = i < end && dark(i);
		if (on && from < 0) from = i;
		if (!on && from >= 0) {
			middles.push(((from + i) / 2) * mm);
			from = -1;
		}
	}
	return middles;
}

function wrongGaps(places, want) {
	if (places.length < 2) return [`${places.length} marks`];
	return places
		.slice(1)
		.map((place, i) => place - places[i])
		.filter((gap) => Math.abs(gap - want) > within)
		.map((gap) => `${gap.toFixed(2)} mm from mark to mark, not ${want}`);
}

function fail(message) {
	console.error(message);
	process.exit(2);
}
