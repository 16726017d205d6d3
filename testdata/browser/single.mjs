// The handbook in one file: it opens from a disk like the folder does, shows one page
// at a time, asks for nothing, and prints as a whole. The pages for a projector are not
// in it.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { some } from './ledger.mjs';
import { broken, policy } from './policy.mjs';
import { moved } from './swift.mjs';

export const kinds = ['one file opens', 'one file shows a page', 'one file leads', 'one file prints'];

const most = 4_000_000; // bytes; that much goes by mail everywhere (from memory)

// One stands in for an edition where a check asks for a page of it.
export class OneFile {
	bound = true;

	constructor(folder, name) {
		this.path = path.join(folder, name);
		this.name = name;
		this.pages = [name];
	}

	url() {
		return pathToFileURL(this.path).href;
	}

	file() {
		return this.path;
	}

	label() {
		return this.name;
	}
}

export async function single(context, one, edition, hasScripts, ledger) {
	const page = await context.newPage();
	const seen = [];
	page.on('console', (message) => message.type() === 'error' && seen.push(message.text()));
	page.on('pageerror', (error) => seen.push(String(error)));
	page.on('request', (request) => request.url().startsWith(one.url()) || request.url().startsWith('data:') || seen.push(`asks for ${request.url()}`));
	// The one file is painted before its script runs. On the day of a lesson that prints a
	// great deal its first screen may then grow; what is held here is a day before the
	// unit, whatever day it is.
	await page.clock.setFixedTime(new Date('2026-01-01T09:00:00'));
	await page.goto(one.url(), { waitUntil: 'load' });
	const setting = hasScripts ? 'scripts on' : 'scripts off';
	const size = statSync(one.path).size;
	if (size > most) seen.push(`it has ${size} bytes`);
	ledger.check(one.name, 'one file opens', [...seen, ...(await policy(page)), ...(hasScripts ? await moved(page) : [])], setting);

	const { sections, loose } = await page.evaluate(shape);
	const wanted = bound(edition).map((name) => name.replace(/\.html$/, ''));
	const missing = wanted.filter((name) => !sections.includes(name));
	ledger.check(one.name, 'one file leads', [...loose, ...missing.map((name) => `${name} is not in it`)], setting);
	const wrong = [];
	for (const name of sections) {
		await page.evaluate((to) => (location.hash = to), name);
		const shown = await page.evaluate(() => [...document.querySelectorAll('.page')].filter((section) => section.checkVisibility()).map((section) => section.id));
		if (shown.join() !== name) wrong.push(`#${name} shows ${some(shown)}`);
	}
	ledger.check(one.name, 'one file shows a page', wrong, setting);
	if (hasScripts) ledger.check(one.name, 'policy', await broken(page));
	await page.close();
}

function bound(edition) {
	return edition.pages.filter((name) => !name.startsWith('room-'));
}

// shape runs in the page.
function shape() {
	const names = [...document.querySelectorAll('[id]')].map((e) => e.id);
	const known = new Set(names);
	const loose = names.filter((name, i) => names.indexOf(name) !== i).map((name) => `two places are named ${name}`);
	for (const link of document.querySelectorAll('[href], [src]')) {
		const target = link.getAttribute('href') ?? link.getAttribute('src');
		if (/^(data|https?|mailto):/.test(target)) continue;
		if (!target.startsWith('#') || !known.has(target.slice(1))) loose.push(`"${target}" leads nowhere`);
	}
	return { sections: [...document.querySelectorAll('.page')].map((section) => section.id), loose };
}

// prints holds the run of the whole against the pages printed one by one: as many
// sheets and one of contents, each printable with its bar, each page under its title.
export async function prints(context, one, edition, sheets, ledger) {
	const page = await context.newPage();
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-single-'));
	try {
		await page.goto(one.url());
		const titles = await page.evaluate(() => [...document.querySelectorAll('.page')].filter((section) => !section.matches('.printable')).map((section) => [...section.querySelector('h1').childNodes].filter((node) => !node.matches?.('.sheet-kind')).map((node) => node.textContent).join(''))); // the head of a sheet says its kind
		const bars = await page.evaluate(() => document.querySelectorAll('.paper-sheet').length);
		const file = path.join(folder, 'whole.pdf');
		await page.pdf({ path: file, preferCSSPageSize: true, width: '180mm', height: '180mm' });
		const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
		const squeezed = text.replace(/\s+/g, '');
		const count = text.split('\f').length - 1;
		const sheetsOf = (name) => sheets.get(edition.label(name)) ?? sheets.get(name) ?? NaN;
		const contents = 1; // behind the cover
		const want = contents + bound(edition).reduce((sum, name) => sum + sheetsOf(name), 0);
		const found = titles.filter((title) => !squeezed.includes(title.replace(/\s+/g, ''))).map((title) => `"${title}" is not printed`);
		if (count !== want) found.push(`${count} sheets, and the contents and the pages one by one have ${want}`);
		const printed = squeezed.match(/100mm/g)?.length ?? 0;
		if (printed < bars) found.push(`${printed} bars of 100 mm on ${bars} printables`);
		await page.goto(`${one.url()}#${edition.pages.find((name) => name !== 'index.html').replace(/\.html$/, '')}`);
		await page.pdf({ path: file, preferCSSPageSize: true, width: '180mm', height: '180mm' });
		const alone = execFileSync('pdfinfo', [file], { encoding: 'utf8' }).match(/^Pages: +(\d+)/m)[1];
		const own = sheetsOf(edition.pages.find((name) => name !== 'index.html'));
		if (Number(alone) !== own) found.push(`a page printed from it has ${alone} sheets, and ${own} from the folder`);
		ledger.check(one.name, 'one file prints', found);
		ledger.note(`${one.name} prints on ${count} sheets, ${bars} of them printables`);
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}
