// Look: pictures of a few pages compared with stored ones, so that a change of look is
// seen. The pages are those of testdata/look/unit, whose lessons do not change with the
// demo's.
//
//	node look.mjs FOLDER          compare
//	node look.mjs FOLDER store    store new pictures, after a change that is meant
//
// FOLDER holds handbook/, pressed from that unit. Exit 0: as stored, or stored anew;
// 1: changed; 2: wrong use.
//
// Fonts differ between machines, and with them the breaks of lines. Beside the pictures
// lies the width of a line of words in the page's two fonts, where they were taken. A
// machine with the same widths has the same fonts, and may differ only as smoothing
// does; on another machine only the coarse picture is compared.

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger } from './ledger.mjs';
import { decode } from './pixels.mjs';

const stored = fileURLToPath(new URL('../look/', import.meta.url));

// On the day of a lesson the script marks it. Half the size is enough to compare.
const pictures = {
	cover: { page: 'index.html', day: '2027-05-04T09:00:00' },
	lesson: { page: 'lines.html' },
	charts: { page: 'curves.html', colorScheme: 'dark' },
	phone: { page: 'lines.html', width: 390, height: 844 },
	sheet: { page: 'sheets.html' },
};

// With the same fonts: a five-hundredth of the picture may differ by more than a tenth
// of the scale. That is a few words of the first screen, less than a line; a figure that
// is computed otherwise passes, a colour, a rule or a size does not. (Our own bound.)
const fine = { levels: 25, share: 1 / 500 };

// With other fonts: the picture is laid out in squares of 20 pixels, a line or two
// high. Ink in other places changes few squares much, so a sixth of them may differ by a
// tenth of the scale; a drawing that is gone, a ground of another colour, a margin moved
// changes more. (Our own bound, tried with another font.)
const coarse = { square: 20, levels: 25, share: 1 / 6 };

async function look(browser, edition, ledger, store) {
	const notes = path.join(stored, 'fonts.json');
	const known = existsSync(notes) ? JSON.parse(readFileSync(notes, 'utf8')) : {};
	let widths = null;
	for (const [name, { page: file, day = '2026-01-01T09:00:00', width = 1280, height = 900, colorScheme = 'light' }] of Object.entries(pictures)) {
		const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor: 0.5, colorScheme, offline: true, reducedMotion: 'reduce', timezoneId: 'UTC' });
		const page = await context.newPage();
		await page.clock.setFixedTime(new Date(day));
		await page.goto(edition.url(file));
		const shot = await page.screenshot();
		widths ??= await page.evaluate(measureFonts);
		await context.close();
		const target = path.join(stored, `${name}.png`);
		if (store) {
			mkdirSync(stored, { recursive: true });
			writeFileSync(target, shot);
			continue;
		}
		const same = JSON.stringify(widths) === JSON.stringify(known);
		ledger.check(name, 'look', existsSync(target) ? compare(decode(readFileSync(target)), decode(shot), same) : ['there is no stored picture']);
		if (!same) ledger.note('fonts here are not those of the stored pictures, which are compared coarsely');
	}
	if (store) writeFileSync(notes, `${JSON.stringify(widths)}\n`);
}

function compare(one, two, sameFonts) {
	if (one.width !== two.width || one.height !== two.height) return [`${two.width} × ${two.height} pixels, not ${one.width} × ${one.height}`];
	const { square = 1, levels, share } = sameFonts ? fine : coarse;
	const [a, b] = [squares(one, square), squares(two, square)];
	let changed = 0;
	for (let i = 0; i < a.length; i += 3) {
		if ([0, 1, 2].some((s) => Math.abs(a[i + s] - b[i + s]) > levels)) changed++;
	}
	const part = changed / (a.length / 3);
	return part <= share ? [] : [`${(100 * part).toFixed(2)} % of it changed, more than ${(100 * share).toFixed(2)} % (if that is meant: node look.mjs FOLDER store)`];
}

// squares gives the mean red, green and blue of each square of a picture.
function squares({ width, height, samples, bytes }, square) {
	const across = Math.ceil(width / square);
	const sums = new Float64Array(3 * across * Math.ceil(height / square));
	const counts = new Float64Array(sums.length / 3);
	for (let y = 0; y < height; y++) {
		for (let x = 0; x < width; x++) {
			const at = Math.floor(y / square) * across + Math.floor(x / square);
			counts[at]++;
			for (let s = 0; s < 3; s++) sums[3 * at + s] += bytes[(y * width + x) * samples + s];
		}
	}
	return sums.map((sum, i) => sum / counts[Math.floor(i / 3)]);
}

// measureFonts runs in the page.
function measureFonts() {
	return Object.fromEntries(['--text-font', '--label-font'].map((name) => {
		const words = document.createElement('span');
		words.textContent = 'The quick shadow falls over 1234567890 lazy hours, Æ é';
		words.style.cssText = `position: absolute; white-space: nowrap; font: 100px ${getComputedStyle(document.documentElement).getPropertyValue(name)}`;
		document.body.append(words);
		const { width, height } = words.getBoundingClientRect();
		words.remove();
		return [name, [Math.round(width), Math.round(height)]];
	}));
}

const [folder, task = 'compare'] = process.argv.slice(2);
if (!folder || !existsSync(path.join(folder, 'handbook', 'lines.html')) || !['compare', 'store'].includes(task)) {
	console.error('use: node look.mjs FOLDER [store], where FOLDER/handbook was pressed from testdata/look/unit');
	process.exit(2);
}
const ledger = new Ledger();
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
try {
	await look(browser, new Edition(folder, 'handbook'), ledger, task === 'store');
} finally {
	await browser.close();
}
if (task === 'compare') process.exitCode = ledger.close(['look']) ? 0 : 1;
