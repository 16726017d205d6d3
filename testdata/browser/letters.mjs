// Letters of drawings, as the browser sets them: none is smaller than 11 px, on a phone and
// in windows of 1280 and 1440 px, and at no width does a label lie on another. Pages for
// paper and for the room have their own measures.
//
//	node letters.mjs FOLDER
//
// FOLDER holds handbook/ and handbook-staff/. check.mjs does the same among its other
// checks. Exit 0: all passed; 1: a check failed; 2: wrong use.

import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger } from './ledger.mjs';

export const kinds = ['letters of drawings', 'labels keep apart'];

const phone = { width: 390, height: 844 };
const desk = { width: 1280, height: 900 };
const wide = { width: 1440, height: 900 };
const leastPixels = 11; // our own bound
const slack = 0.05; // of a pixel: sizes are written with three decimals
const unseen = 1; // pixels of two labels that nobody sees lie on each other

export async function letters(context, edition, ledger) {
	const page = await context.newPage();
	let labels = 0;
	for (const viewport of [phone, desk, wide]) {
		await page.setViewportSize(viewport);
		for (const name of edition.own.filter((name) => !/^(print|room)-/.test(name))) {
			await page.goto(edition.url(name));
			const found = await page.evaluate(measured, unseen);
			if (found.length === 0) continue;
			labels += found.length;
			const setting = `${viewport.width} px`;
			const small = found.filter(({ size }) => size < leastPixels - slack).map(({ drawing, says, size }) => `${size.toFixed(2)} px: ${says} in ${drawing}`);
			ledger.check(edition.label(name), kinds[0], small.slice(0, 5), setting);
			ledger.check(edition.label(name), kinds[1], found.flatMap(({ drawing, says, on }) => on.map((other) => `${says} lies on ${other} in ${drawing}`)).slice(0, 5), setting);
		}
	}
	ledger.note(`${edition.name}: ${labels} labels of drawings measured`);
	await page.close();
}

// measured runs in the page. A label covers the length of its text, and in height what
// capitals and tails of letters do; all in pixels of the screen, turned where it is turned.
function measured(unseen) {
	const rise = 0.74, fall = 0.22;
	for (const details of document.querySelectorAll('details')) details.open = true;
	const all = [];
	for (const drawing of document.querySelectorAll('svg.drawing')) {
		const labels = [...drawing.querySelectorAll('text')].filter((text) => text.textContent.trim() !== '' && text.getClientRects().length > 0 && getComputedStyle(text).visibility === 'visible').map((text) => {
			const style = getComputedStyle(text), matrix = text.getScreenCTM(), size = parseFloat(style.fontSize);
			const wide = text.getComputedTextLength(), x = text.x.baseVal[0].value, y = text.y.baseVal[0].value;
			const left = x - { start: 0, middle: wide / 2, end: wide }[style.textAnchor];
			const low = y + (/[gjpqyçQÇ,;()[\]]/.test(text.textContent) ? fall * size : 0);
			const corners = [[left, y - rise * size], [left + wide, y - rise * size], [left + wide, low], [left, low]].map(([a, b]) => new DOMPoint(a, b).matrixTransform(matrix));
			const scale = Math.hypot(matrix.a, matrix.b);
			return { drawing: drawing.getAttribute('class'), says: text.textContent, size: size * scale, corners, ways: [[matrix.a / scale, matrix.b / scale], [-matrix.b / scale, matrix.a / scale]], on: [] };
		});
		labels.forEach((a, i) => labels.slice(i + 1).forEach((b) => {
			const deep = Math.min(...[...a.ways, ...b.ways].map(([u, v]) => {
				const span = ({ corners }) => corners.map(({ x, y }) => x * u + y * v);
				const [p, q] = [span(a), span(b)];
				return Math.min(Math.max(...p), Math.max(...q)) - Math.max(Math.min(...p), Math.min(...q));
			}));
			if (deep > unseen) a.on.push(b.says);
		}));
		all.push(...labels);
	}
	return all.map(({ drawing, says, size, on }) => ({ drawing, says, size, on }));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const [folder] = process.argv.slice(2);
	if (!folder || !existsSync(path.join(folder, 'handbook-staff', 'index.html'))) {
		console.error('use: node letters.mjs FOLDER, where FOLDER holds handbook/ and handbook-staff/');
		process.exit(2);
	}
	const ledger = new Ledger();
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
	try {
		const context = await browser.newContext({ offline: true, reducedMotion: 'reduce' });
		for (const name of ['handbook', 'handbook-staff']) await letters(context, new Edition(folder, name), ledger);
	} finally {
		await browser.close();
	}
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
