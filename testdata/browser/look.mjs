// Look: pictures of a few pages compared with stored ones, so that a change of look is
// seen. It needs a press of the demo.
//
// To store new pictures after a change that is meant:
//
//	node look.mjs FOLDER
//
// Fonts differ between machines, and with them the breaks of lines. Beside the pictures
// lies the width of a line of words in the page's two fonts, where they were taken. A
// machine with the same widths has the same fonts, and may differ only as smoothing
// does; on another machine only the coarse picture is compared.

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { decode } from './pixels.mjs';

const stored = fileURLToPath(new URL('../look/', import.meta.url));

// On the second lesson's day the script marks it. Half the size is enough to compare.
const pictures = {
	cover: { page: 'index.html', day: '2027-04-13T09:00:00' },
	lesson: { page: 'shadow-clock.html', scale: 1 }, // the README shows it
	phone: { page: 'paper-strip.html', width: 390, height: 844 },
	dark: { page: 'our-sky.html', colorScheme: 'dark' },
	sheet: { page: 'print-dial-face.html' },
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

export async function look(browser, edition, ledger, store = false) {
	if (!edition.pages.includes('shadow-clock.html')) return;
	const notes = path.join(stored, 'fonts.json');
	const known = existsSync(notes) ? JSON.parse(readFileSync(notes, 'utf8')) : {};
	let widths = null;
	for (const [name, { page: file, day, width = 1280, height = 900, scale = 0.5, colorScheme = 'light' }] of Object.entries(pictures)) {
		const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor: scale, colorScheme, offline: true, reducedMotion: 'reduce', timezoneId: 'UTC' });
		const page = await context.newPage();
		if (day) await page.clock.setFixedTime(new Date(day));
		else await page.clock.setFixedTime(new Date('2026-01-01T09:00:00'));
		await page.goto(edition.url(file));
		widths ??= await page.evaluate(measureFonts);
		const shot = await page.screenshot();
		await context.close();
		const target = path.join(stored, `${name}.png`);
		if (store) {
			mkdirSync(stored, { recursive: true });
			writeFileSync(target, shot);
			continue;
		}
		const same = JSON.stringify(widths) === JSON.stringify(known);
		ledger.check(edition.label(file), 'look', existsSync(target) ? compare(decode(readFileSync(target)), decode(shot), same) : [`testdata/look/${name}.png is missing`], name);
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
	return part <= share ? [] : [`${(100 * part).toFixed(2)} % of it changed, more than ${(100 * share).toFixed(2)} % (if that is meant: node look.mjs FOLDER)`];
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
	return Object.fromEntries(['--text', '--label'].map((name) => {
		const words = document.createElement('span');
		words.textContent = 'The quick shadow falls over 1234567890 lazy hours, Æ é';
		words.style.cssText = `position: absolute; white-space: nowrap; font: 100px ${getComputedStyle(document.documentElement).getPropertyValue(name)}`;
		document.body.append(words);
		const { width, height } = words.getBoundingClientRect();
		words.remove();
		return [name, [Math.round(width), Math.round(height)]];
	}));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const { chromium } = await import('playwright-core');
	const { Edition } = await import('./edition.mjs');
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
	await look(browser, new Edition(process.argv[2], 'handbook'), null, true);
	await browser.close();
}
