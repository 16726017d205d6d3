// Tables: how many of them scroll sideways on a phone. What is wider than the screen turns
// into cards there, a row each; grids by the clock or the calendar, which must stay grids,
// may scroll. At most a tenth of all may, over both editions.
//
//	node tables.mjs FOLDER
//
// FOLDER holds handbook/ and handbook-staff/. Exit 0: so few; 1: more, or a table that
// lost its meaning; 2: wrong use.

import { existsSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Edition } from './edition.mjs';
import { Ledger } from './ledger.mjs';

export const kinds = ['tables that scroll', 'cards are tables'];

const phone = { width: 390, height: 844 };
const most = 0.1;

// Tally counts over editions.
export class Tally {
	constructor() {
		this.all = 0;
		this.scrolling = [];
	}

	check(ledger) {
		console.log(`tables that scroll at ${phone.width} px: ${this.scrolling.length} of ${this.all}`);
		const share = this.scrolling.length / this.all;
		ledger.check('handbook', 'tables that scroll', share <= most ? [] : [`${this.scrolling.length} of ${this.all}: ${this.scrolling.join('; ')}`]);
	}
}

export async function tables(context, edition, tally, ledger) {
	const page = await context.newPage();
	await page.setViewportSize(phone);
	for (const name of edition.own) {
		if (/^(room|print)-/.test(name)) continue; // for a projector and for paper
		await page.goto(edition.url(name));
		const { all, scrolling, lost } = await page.evaluate(measured);
		tally.all += all;
		tally.scrolling.push(...scrolling.map((table) => `${edition.label(name)}: ${table}`));
		ledger.check(edition.label(name), 'cards are tables', lost);
	}
	await page.close();
}

// measured runs in the page. A table keeps its meaning for those who hear it where its
// parts are laid out as a table, or say by roles what they are.
function measured() {
	for (const details of document.querySelectorAll('details')) details.open = true;
	const roles = { TABLE: 'table', THEAD: 'rowgroup', TBODY: 'rowgroup', TR: 'row', TD: 'cell' };
	const found = { all: 0, scrolling: [], lost: [] };
	for (const table of document.querySelectorAll('main table')) {
		const frame = table.parentElement;
		if (frame.getClientRects().length === 0) continue;
		found.all++;
		const heading = [...table.querySelectorAll('caption, thead th')].slice(0, 3).map((cell) => cell.innerText).join(' | ');
		// Whoever is to write in a cell needs to see what.
		const blank = [...table.querySelectorAll('td[data-label]:empty')].find((cell) => getComputedStyle(cell).display === 'flex' && !getComputedStyle(cell, '::before').content.includes(cell.dataset.label));
		if (blank) found.lost.push(`${heading}: a blank cell does not say that it is for "${blank.dataset.label}"`);
		if (frame.scrollWidth > frame.clientWidth + 1) found.scrolling.push(`${heading} (${frame.scrollWidth})`);
		for (const part of [table, ...table.querySelectorAll('thead, tbody, tr, td, th')]) {
			const role = part.getAttribute('role');
			const wanted = part.localName === 'th' ? (part.scope === 'row' ? 'rowheader' : 'columnheader') : roles[part.nodeName];
			if (!getComputedStyle(part).display.startsWith('table') && role !== wanted) {
				found.lost.push(`${heading}: ${part.localName} is no ${wanted}`);
				break;
			}
		}
	}
	return found;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await alone(process.argv[2]);

async function alone(folder) {
	const names = ['handbook', 'handbook-staff'];
	if (!folder || !names.every((name) => existsSync(path.join(folder, name, 'index.html')))) {
		console.error('use: node tables.mjs FOLDER');
		process.exit(2);
	}
	const { chromium } = await import('playwright-core');
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'] });
	const ledger = new Ledger();
	const tally = new Tally();
	const [forClass, forStaff] = names.map((name) => new Edition(folder, name));
	forClass.share(forStaff);
	const context = await browser.newContext({ offline: true, bypassCSP: true });
	context.setDefaultTimeout(120_000);
	for (const edition of [forClass, forStaff]) await tables(context, edition, tally, ledger);
	tally.check(ledger);
	await browser.close();
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
