// Long pages and wide screens. The page of keys and the glossary have a row of links that
// stays at their head: it may be at most so many screens long, each link must lead to a
// thing that is then seen below the row, and what is folded must open where a link leads
// to it, and on paper. On wide screens letters and pages grow. The limits are ours.
//
//	node long.mjs FOLDER
//
// checks this alone: FOLDER holds handbook/ and handbook-staff/.

import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger, some } from './ledger.mjs';

export const kinds = ['screens of a long page', 'index stays', 'index leads', 'folded opens', 'folded prints', 'grows with the room'];

const screen = { width: 1440, height: 900 };
const most = { 'reference.html': 18, 'glossary.html': 8 }; // 114 and 8.5 before they had an index

export async function long(context, edition, ledger) {
	const page = await context.newPage();
	for (const name of Object.keys(most).filter((name) => edition.pages.includes(name))) {
		const label = edition.label(name);
		await page.setViewportSize(screen);
		await page.emulateMedia({ media: 'screen' });
		await page.goto(edition.url(name));
		const screens = (await page.evaluate(() => document.documentElement.scrollHeight)) / screen.height;
		ledger.most(`screens of ${name}`, screens);
		ledger.check(label, 'screens of a long page', screens <= most[name] ? [] : [`${screens.toFixed(1)} screens, more than ${most[name]}`]);
		for (const width of [screen.width, 390]) {
			await page.setViewportSize({ width, height: 800 });
			ledger.check(label, 'index stays', await page.evaluate(stays), `at ${width} px`);
			ledger.check(label, 'index leads', await leads(page), `at ${width} px`);
		}
		if (name !== 'reference.html') continue;
		await page.setViewportSize(screen);
		ledger.check(label, 'folded opens', await opens(page, edition.url(name)));
		await page.goto(edition.url(name));
		await page.emulateMedia({ media: 'print' });
		// The browser unfolds with the next picture that it draws.
		await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
		ledger.check(label, 'folded prints', await page.evaluate(hidden));
	}
	await page.emulateMedia({ media: 'screen' });
	ledger.check(edition.label('glossary.html'), 'grows with the room', await grows(page, edition));
	await page.close();
}

// stays runs in the page: in the middle of it the row is at the head of the window.
function stays() {
	scrollTo(0, document.documentElement.scrollHeight / 2);
	const row = document.querySelector('.index-row');
	const { top, height } = row.getBoundingClientRect();
	const small = [...row.querySelectorAll('a')].filter((a) => Math.min(a.getBoundingClientRect().width, a.getBoundingClientRect().height) < 24); // WCAG 2.2, 2.5.8
	return [
		...(top < -1 || top > 1 ? [`it is at ${top.toFixed(0)} px`] : []),
		...(height > 80 ? [`it is ${height.toFixed(0)} px high`] : []),
		...small.map((a) => `${a.textContent} is smaller than 24 px`),
	];
}

async function leads(page) {
	const found = [];
	for (const href of await page.evaluate(() => [...document.querySelectorAll('.index-row a')].map((a) => a.getAttribute('href')))) {
		await page.evaluate((to) => document.querySelector(`.index-row a[href="${to}"]`).click(), href);
		const wrong = await page.evaluate((to) => {
			const target = document.getElementById(to.slice(1));
			if (!target) return 'leads nowhere';
			const below = target.getBoundingClientRect().top - document.querySelector('.index-row').getBoundingClientRect().bottom;
			const isEnd = scrollY + innerHeight >= document.documentElement.scrollHeight - 2;
			return below < -1 ? 'leads to what is behind the row' : below > innerHeight / 2 && !isEnd ? `leads ${below.toFixed(0)} px too high` : '';
		}, href);
		if (wrong) found.push(`${href} ${wrong}`);
	}
	return found.length ? [some(found)] : [];
}

// opens follows a link to a thing that is folded.
async function opens(page, url) {
	const found = [];
	for (const id of ['nb-dial-face', 'nb-school']) {
		await page.goto('about:blank');
		await page.goto(`${url}#${id}`);
		const open = () => page.evaluate((name) => document.getElementById(name).closest('details').open, id);
		if (!(await open())) found.push(`#${id} stays folded`);
		await page.goto(url);
		if (await open()) found.push(`#${id} is open before anybody asks`);
		await page.evaluate((name) => { location.hash = name; }, id);
		await page.waitForFunction((name) => document.getElementById(name).closest('details').open, id, { timeout: 5000 }).catch(() => found.push(`#${id} stays folded on its page`));
	}
	return found;
}

// hidden runs in the page: on paper all that is folded has a height.
function hidden() {
	const flat = [...document.querySelectorAll('main details > dl')].filter((dl) => !dl.checkVisibility({ contentVisibilityAuto: true }) || dl.getBoundingClientRect().height < 10);
	return flat.length ? [`${flat.length} lists are not printed`] : [];
}

// grows compares a wide window with one of 1440 px: letters become larger, and the page
// fills as large a share of the window.
async function grows(page, edition) {
	const found = [];
	const lesson = edition.pages.find((name) => edition.pages.includes(`pupil-${name}`)) ?? 'glossary.html';
	let before = { letters: 0, share: 0.72 };
	for (const [width, height] of [[1440, 900], [1920, 1080], [2560, 1440], [3840, 2160]]) {
		await page.setViewportSize({ width, height });
		await page.goto(edition.url(lesson));
		const now = await page.evaluate(() => {
			const main = document.querySelector('main').getBoundingClientRect();
			return { letters: parseFloat(getComputedStyle(document.querySelector('main')).fontSize), share: main.width / innerWidth, wide: document.documentElement.scrollWidth > innerWidth };
		});
		if (now.letters <= before.letters) found.push(`at ${width} px letters have ${now.letters.toFixed(1)} px, no more than before`);
		if (now.share < 0.72) found.push(`at ${width} px the page fills ${(now.share * 100).toFixed(0)} % of the window`);
		if (now.wide) found.push(`at ${width} px the page is wider than the window`);
		before = now;
	}
	return found;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const ledger = new Ledger();
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-quic'] });
	for (const name of ['handbook', 'handbook-staff']) {
		const context = await browser.newContext({ viewport: screen, offline: true, reducedMotion: 'reduce' });
		context.setDefaultTimeout(120_000);
		await long(context, new Edition(process.argv[2], name), ledger);
		await context.close();
	}
	await browser.close();
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
