// Finder: words are looked up by keyboard on a page opened from a file. Every heading
// of the edition, typed, must lead to itself; other forms of a word must find the same
// places; and the keys do what the page says of them. A place shows the line in which the
// word stands, and a word that is spelt wrong finds the one that was meant.
//
//	node finder.mjs FOLDER
//
// checks the finder alone: FOLDER holds handbook/ and handbook-staff/, and each in one
// file beside it.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger, some } from './ledger.mjs';
import { OneFile } from './single.mjs';

export const kinds = ['finder keys', 'finder finds headings', 'finder knows forms', 'finder shows lines', 'finder forgives', 'finder on touch', 'finder is quick'];

const most = 24; // as many places as the finder shows

// Words that readers may ask for, each with a form that a page may print instead. They
// are words of the demo's lessons.
const forms = {
	en: [['shadows', 'shadow'], ['measured', 'measure'], ['telescopes', 'telescope'], ['launching', 'launch'], ['lens', 'lenses'], ['CAUTIONS', 'caution']],
	fr: [['ombres', 'ombre'], ['mesurée', 'mesurer'], ['planète', 'PLANETES'], ['cœur', 'coeur']],
};

// Words spelt wrong, each with what was meant: two letters swapped, one wrong, one too
// much, one missing, and one that is still being written.
const slips = {
	en: [['telescpoe', 'telescope'], ['gnomen', 'gnomon'], ['shaddow', 'shadow'], ['telscope', 'telescope'], ['telsc', 'telescope']],
	fr: [['gnomno', 'gnomon'], ['onbre', 'ombre'], ['soleli', 'soleil']],
};

// Other names of words in the glossaries of the demo and of the unit in French.
const names = { en: [['eyepiece', 'eye lens'], ['pointer', 'gnomon'], ['sundial', 'dial']], fr: [['variation', 'déclinaison magnétique']] };

export async function finder(context, edition, start, ledger) {
	const page = await context.newPage();
	const label = edition.label(start);
	const headings = edition.bound ? await headingsOfSections(page, edition.url(start)) : await headingsOfPages(page, edition);
	await page.goto(edition.url(start));
	ledger.check(label, 'finder keys', await keys(page, edition.url(start)));
	await page.goto(edition.url(start));
	await page.keyboard.press('Alt+w');
	await page.waitForFunction(() => document.querySelector('.finder').open && typeof noonbookConcordance !== 'undefined');
	const language = await page.evaluate(() => document.documentElement.lang);
	const lost = [];
	let hidden = 0;
	// The one file has the same list and the same script: a quarter tells whether it leads.
	const asked = headings.filter((_, i) => !edition.bound || i % 4 === 0);
	for (const { text, target } of asked) {
		const { hrefs, total } = await page.evaluate(ask, text);
		if (hrefs.includes(target)) continue;
		if (total > most) hidden++; // "Questions" is a heading of every lesson
		else lost.push(`"${text}" does not lead to ${target}`);
	}
	ledger.check(label, 'finder finds headings', lost.length ? [some(lost)] : asked.length < 20 && language === 'en' ? [`only ${asked.length} headings were looked up`] : []);
	if (hidden) ledger.note(`${label}: ${hidden} of ${asked.length} headings share their words with more than ${most} places`);
	const apart = [];
	for (const pair of forms[language] ?? []) {
		// A space behind the word says that it is whole.
		const [one, other] = [await page.evaluate(ask, `${pair[0]} `), await page.evaluate(ask, `${pair[1]} `)];
		if (one.total === 0 || one.hrefs.join() !== other.hrefs.join()) apart.push(`${pair[0]} finds ${one.total} places, ${pair[1]} ${other.total}`);
	}
	const nothing = await page.evaluate(ask, 'zyzzyva');
	if (nothing.total !== 0 || !nothing.tally.includes('zyzzyva')) apart.push(`a word that stands nowhere finds ${nothing.total} places and says "${nothing.tally}"`);
	ledger.check(label, 'finder knows forms', apart);
	if (!edition.bound) await page.waitForFunction(() => typeof noonbookLines !== 'undefined');
	ledger.check(label, 'finder shows lines', await lines(page, language, edition));
	ledger.check(label, 'finder forgives', await forgives(page, language));
	const times = await page.evaluate(typed, language === 'fr' ? 'gnomon' : 'telescope');
	ledger.most('key press in the finder, ms', Math.max(...times));
	// Some milliseconds on a machine that has nothing else to do; a busy one is given more.
	const middle = times.sort((a, b) => a - b)[times.length >> 1];
	ledger.check(label, 'finder is quick', middle < 50 ? [] : [`half of the key presses take ${middle.toFixed(0)} ms or more`]);
	await page.close();
	ledger.check(label, 'finder on touch', await onTouch(context.browser(), edition.url(start)));
}

// lines looks at what is shown of each place.
async function lines(page, language, edition) {
	const found = [];
	for (const [word] of forms[language] ?? []) {
		const places = await page.evaluate(shown, word);
		const marked = places.filter(({ marks }) => marks.length);
		if (marked.length * 2 < places.length) found.push(`${word} is marked in ${marked.length} of ${places.length} lines`);
		const long = places.find(({ line }) => line.length > 250);
		if (long) found.push(`a line of ${long.line.length} letters: ${long.line.slice(0, 60)}`);
		const after = places.map(({ href }) => (/(^#?)(reference|room-|pupil-|card-|day-)/.exec(href) ? (/reference/.test(href) ? 2 : 1) : 0));
		if (after.some((rank, i) => rank < after[i - 1])) found.push(`${word}: sheets come before lessons, or what is for editing before others`);
	}
	// A line says what its place says, whether it comes from the list or from the page.
	for (const { href, line } of await page.evaluate(shown, forms[language]?.[0][1] ?? '')) {
		const bare = line.replace(/^… | …$/g, '').split(/ ?· ?/).sort((a, b) => b.length - a.length)[0]; // a cell, or all of it
		const [file, at] = edition.bound ? [start(edition), href.slice(1)] : href.split('#');
		const there = await words(page, edition, file, at);
		if (!there.includes(bare.replace(/\s+/g, ' '))) found.push(`${href} does not say "${bare.slice(0, 60)}"`);
	}
	return found;
}

const start = (edition) => edition.pages[0];

// words gives the words of a page, or in the one file of the page that an address leads to.
const pages = new Map();
async function words(page, edition, file, at) {
	const key = edition.bound ? `${edition.url(file)}#${at.split('/')[0]}` : edition.url(file);
	if (!pages.has(key)) {
		const other = await page.context().newPage();
		await other.goto(edition.url(file));
		pages.set(key, await other.evaluate((id) => (id ? document.getElementById(id) : document.querySelector('main')).textContent.replace(/\s+/g, ' '), edition.bound ? decodeURIComponent(at.split('/')[0]) : ''));
		await other.close();
	}
	return pages.get(key);
}

async function forgives(page, language) {
	const found = [];
	for (const [slip, meant] of slips[language] ?? []) {
		const [wrong, right] = [await page.evaluate(ask, slip), await page.evaluate(ask, meant)];
		if (wrong.total === 0 || wrong.hrefs[0] !== right.hrefs[0]) found.push(`${slip} finds ${wrong.hrefs[0]}, ${meant} ${right.hrefs[0]}`);
		if (slip !== 'telsc' && !(wrong.tally.includes(slip) && wrong.tally.includes(meant))) found.push(`${slip}: it says "${wrong.tally}"`);
	}
	for (const [name, term] of names[language] ?? []) {
		const [first] = await page.evaluate(shown, name);
		if (first?.text !== term || !/nb-term-/.test(first.href)) found.push(`${name} leads to ${first?.href} ${first?.text}, not to ${term}`);
	}
	if (language === 'en') {
		const suggested = await page.evaluate(ask, 'planetarium');
		if (suggested.total !== 0 || !suggested.words.includes('planet')) found.push(`for planetarium it suggests ${suggested.words.join(', ')}`);
		await page.fill('.finder input', 'planetarium');
		await page.keyboard.press('ArrowDown');
		await page.keyboard.press('Enter');
		const taken = await page.evaluate(() => document.querySelector('.finder input').value);
		if (!suggested.words.includes(taken)) found.push(`what is suggested, chosen by the keyboard, gives "${taken}"`);
		const common = await page.evaluate(ask, 'the ');
		if (common.total === 0 || !common.tally.includes('the')) found.push(`of a word on most pages it says "${common.tally}"`);
	}
	return found;
}

// onTouch looks whether a key is named where there are none.
async function onTouch(browser, url) {
	const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, offline: true });
	const page = await context.newPage();
	await page.goto(url);
	const { seen, hover, height } = await page.evaluate(() => ({
		seen: document.querySelector('.finder kbd').getClientRects().length > 0,
		hover: matchMedia('(hover: hover)').matches,
		height: document.querySelector('.finder summary').getBoundingClientRect().height,
	}));
	await context.close();
	return [...(hover ? ['the page thinks that there is a mouse'] : []), ...(seen ? ['it names a key'] : []), ...(height < 24 ? [`it is opened at ${height} px`] : [])];
}

// typed runs in the page: it writes a word letter by letter, and gives the time of each.
function typed(word) {
	const field = document.querySelector('.finder input');
	return [...word].map((_, i) => {
		const from = performance.now();
		field.value = word.slice(0, i + 1);
		field.dispatchEvent(new Event('input'));
		return performance.now() - from;
	});
}

// shown runs in the page: of each place its link, its line and what is marked in it.
function shown(text) {
	const field = document.querySelector('.finder input');
	field.value = text;
	field.dispatchEvent(new Event('input'));
	return [...document.querySelectorAll('.results li')].filter((item) => item.querySelector('a')).map((item) => ({
		href: item.querySelector('a').getAttribute('href'),
		text: item.querySelector('a').textContent,
		line: item.querySelector('p')?.textContent ?? '',
		marks: [...item.querySelectorAll('mark')].map((mark) => mark.textContent),
	}));
}

// keys walks through the finder as the page says: the key from anywhere, arrows,
// Escape back, Enter to the first place.
async function keys(page, url) {
	const found = [];
	const expect = (what, is) => is || found.push(what);
	const has = (selector) => page.evaluate((s) => document.activeElement?.matches(s), selector);
	// What follows a key may come late on a busy machine; ten seconds only end the wait.
	const comes = (selector) => page.waitForFunction((s) => document.activeElement?.matches(s), selector, { timeout: 10_000 }).then(() => true, () => false);
	await page.keyboard.press('Alt+w');
	expect('the key does not lead to the field', await comes('.finder input'));
	await page.keyboard.type((await page.evaluate(() => document.documentElement.lang)) === 'fr' ? 'ombre' : 'shadow');
	await page.waitForFunction(() => document.querySelectorAll('.results a').length > 1);
	await page.keyboard.press('ArrowDown');
	expect('an arrow does not lead to the first place', await has('.results li:first-child a'));
	await page.keyboard.press('ArrowDown');
	expect('an arrow does not lead to the second place', await has('.results li:nth-child(2) a'));
	await page.keyboard.press('ArrowUp');
	await page.keyboard.press('ArrowUp');
	expect('arrows do not lead back to the field', await has('.finder input'));
	await page.keyboard.press('Escape');
	expect('Escape does not close it and go back to where it is opened', (await has('.finder summary')) && !(await page.evaluate(() => document.querySelector('.finder').open)));
	await page.keyboard.press('Enter');
	expect('Enter does not open it again', await comes('.finder input'));
	const first = await page.evaluate(() => document.querySelector('.results a').href);
	await page.keyboard.press('Enter');
	await page.waitForURL(first);
	expect(`Enter on the field leads to ${page.url()}`, page.url() === first && first !== url);
	return found;
}

// ask runs in the page: it types and reads what is found.
function ask(text) {
	const finder = document.querySelector('.finder');
	const field = finder.querySelector('input');
	field.value = text;
	field.dispatchEvent(new Event('input'));
	const tally = finder.querySelector('.result-count').textContent;
	const hrefs = [...finder.querySelectorAll('.results a')].map((link) => link.getAttribute('href'));
	const words = [...finder.querySelectorAll('.results button')].map((button) => button.textContent);
	return { tally, hrefs, words, total: Math.max(hrefs.length, Number(tally.match(/\d+/)?.[0] ?? 0)) };
}

async function headingsOfPages(page, edition) {
	const all = [];
	for (const name of edition.pages.filter((name) => name !== 'index.html')) {
		const here = await page.evaluate((text) => [...new DOMParser().parseFromString(text, 'text/html').querySelectorAll('main :is(h1, h2[id], h3[id], h4[id])')].map((h) => [h.textContent, h.localName === 'h1' ? '' : `#${h.id}`]), readFileSync(edition.file(name), 'utf8'));
		all.push(...here.map(([text, anchor]) => ({ text, target: name + anchor })));
	}
	return all;
}

async function headingsOfSections(page, url) {
	await page.goto(url);
	return page.evaluate(() => [...document.querySelectorAll('.page:not(.cover) :is(h1, h2[id], h3[id], h4[id])')].map((h) => ({ text: h.textContent, target: `#${h.localName === 'h1' ? h.closest('.page').id : h.id}` })));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const ledger = new Ledger();
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-quic'] });
	for (const name of ['handbook', 'handbook-staff']) {
		const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, offline: true, reducedMotion: 'reduce' });
		context.setDefaultTimeout(120_000);
		const one = new OneFile(process.argv[2], `${name}.html`);
		for (const [place, page] of [[new Edition(process.argv[2], name), 'index.html'], [one, one.name]]) await finder(context, place, page, ledger);
		await context.close();
	}
	await browser.close();
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
