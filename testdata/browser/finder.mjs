// Finder: words are looked up by keyboard on a page opened from a file. Every heading
// of the edition, typed, must lead to itself; other forms of a word must find the same
// places; and the keys do what the page says of them.

import { some } from './ledger.mjs';

const most = 24; // as many places as the finder shows

// Words that readers may ask for, each with a form that a page may print instead. They
// are words of the demo's lessons.
const forms = {
	en: [['shadows', 'shadow'], ['measured', 'measure'], ['telescopes', 'telescope'], ['launching', 'launch'], ['lens', 'lenses'], ['CAUTIONS', 'caution']],
	fr: [['ombres', 'ombre'], ['mesurée', 'mesurer'], ['planète', 'PLANETES'], ['cœur', 'coeur']],
};

export async function finder(context, edition, start, ledger) {
	const page = await context.newPage();
	const label = edition.label(start);
	const headings = edition.bound ? await headingsOfSections(page, edition.url(start)) : await headingsOfPages(page, edition);
	await page.goto(edition.url(start));
	ledger.check(label, 'finder keys', await keys(page, edition.url(start)));
	await page.goto(edition.url(start));
	await page.keyboard.press('Alt+w');
	await page.waitForFunction(() => document.querySelector('.finder').open && typeof noonbookConcordance !== 'undefined');
	const lost = [];
	let hidden = 0;
	for (const { text, target } of headings) {
		const { hrefs, total } = await page.evaluate(ask, text);
		if (hrefs.includes(target)) continue;
		if (total > most) hidden++; // "Questions" is a heading of every lesson
		else lost.push(`"${text}" does not lead to ${target}`);
	}
	ledger.check(label, 'finder finds headings', lost.length ? [some(lost)] : headings.length < 20 ? [`only ${headings.length} headings were looked up`] : []);
	if (hidden) ledger.note(`${label}: ${hidden} of ${headings.length} headings share their words with more than ${most} places`);
	const language = await page.evaluate(() => document.documentElement.lang);
	const apart = [];
	for (const pair of forms[language] ?? []) {
		// A space behind the word says that it is whole.
		const [one, other] = [await page.evaluate(ask, `${pair[0]} `), await page.evaluate(ask, `${pair[1]} `)];
		if (one.total === 0 || one.hrefs.join() !== other.hrefs.join()) apart.push(`${pair[0]} finds ${one.total} places, ${pair[1]} ${other.total}`);
	}
	const nothing = await page.evaluate(ask, 'zyzzyva');
	if (nothing.total !== 0 || !nothing.tally.includes('zyzzyva')) apart.push(`a word that stands nowhere finds ${nothing.total} places and says "${nothing.tally}"`);
	ledger.check(label, 'finder knows forms', apart);
	await page.close();
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
	await page.keyboard.type('shadow');
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
	return { tally, hrefs, total: Math.max(hrefs.length, Number(tally.match(/\d+/)?.[0] ?? 0)) };
}

async function headingsOfPages(page, edition) {
	const all = [];
	for (const name of edition.pages.filter((name) => name !== 'index.html')) {
		await page.goto(edition.url(name));
		const here = await page.evaluate(() => [...document.querySelectorAll('main :is(h1, h2[id], h3[id], h4[id])')].map((h) => [h.textContent, h.localName === 'h1' ? '' : `#${h.id}`]));
		all.push(...here.map(([text, anchor]) => ({ text, target: name + anchor })));
	}
	return all;
}

async function headingsOfSections(page, url) {
	await page.goto(url);
	return page.evaluate(() => [...document.querySelectorAll('.page:not(.cover) :is(h1, h2[id], h3[id], h4[id])')].map((h) => ({ text: h.textContent, target: `#${h.localName === 'h1' ? h.closest('.page').id : h.id}` })));
}
