// Walks: drawings on which one chooses. Each is walked through by the keyboard alone, with a
// pointer and with a finger, without scripts, in the handbook in one file, and looked at on
// paper.
//
//	node walk.mjs FOLDER
//
// runs these checks alone; FOLDER is as for check.mjs.

import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger, some } from './ledger.mjs';
import { OneFile } from './single.mjs';

export const kinds = ['walk by keyboard', 'walk by arrows', 'walk by pointer', 'walk by finger', 'walk targets', 'walk without scripts', 'walk in one file', 'walk on paper'];

const desk = { width: 1440, height: 900 };
const phone = { width: 360, height: 740 };
const target = 24; // CSS px across (WCAG 2.2, 2.5.8)

const hasWalk = (edition, name) => edition.own.includes(name) && readFileSync(edition.file(name), 'utf8').includes('<div class="walk');

// walk looks at the walks of an edition. Where the other edition has the page's walk too,
// with the same drawing, one clicks on and touches the even stops and the other the odd ones.
export async function walk(browser, edition, other, one, ledger) {
	for (const name of edition.own.filter((page) => hasWalk(edition, page))) {
		const check = (kind, findings) => ledger.check(edition.label(name), kind, findings.length ? [some(findings, 6)] : []);
		const mine = (count, most = count) => [...Array(Math.min(count, most)).keys()].filter((i) => !hasWalk(other, name) || i % 2 === Number(edition.name > other.name));
		await inContext(browser, { viewport: desk }, async (page) => {
			await page.goto(edition.url(name));
			const walks = await page.locator('.walk').count();
			for (let i = 0; i < walks; i++) {
				await page.goto(edition.url(name));
				check('walk by keyboard', await byKeyboard(page, page.locator('.walk').nth(i)));
				await page.goto(edition.url(name));
				check('walk by arrows', await byArrows(page.locator('.walk').nth(i)));
				check('walk by pointer', await byPointer(page, page.locator('.walk').nth(i), mine));
			}
			await page.emulateMedia({ media: 'print' });
			check('walk on paper', await page.evaluate(onPaper));
		});
		await inContext(browser, { viewport: phone, hasTouch: true, isMobile: true }, async (page) => {
			await page.goto(edition.url(name));
			check('walk targets', await page.evaluate(targets, target));
			check('walk by finger', await byFinger(page, page.locator('.walk').first(), mine));
		});
		await inContext(browser, { viewport: desk, javaScriptEnabled: false }, async (page) => {
			await page.goto(edition.url(name));
			check('walk without scripts', await withoutScripts(page, page.locator('.walk').first()));
		});
		await inContext(browser, { viewport: desk }, async (page) => {
			await page.goto(`${one.url()}#${name.replace(/\.html$/, '')}`);
			check('walk in one file', await byPointer(page, page.locator('.page:target .walk, .page:has(:target) .walk').first(), (count) => mine(count, 6)));
		});
	}
}

async function inContext(browser, options, work) {
	const context = await browser.newContext({ offline: true, reducedMotion: 'reduce', ...options });
	context.setDefaultTimeout(120_000);
	try {
		const page = await context.newPage();
		const errors = [];
		page.on('pageerror', (error) => errors.push(String(error)));
		await work(page);
		if (errors.length) throw new Error(errors.join('\n'));
	} finally {
		await context.close();
	}
}

// state says what a walk shows: the stop with the focus, the one that is ringed, the cards
// that are open, and what a screen reader hears.
const state = (walk) => walk.evaluate((root) => {
	const stops = [...root.querySelectorAll('.stops a')];
	const of = (test) => stops.findIndex(test);
	const open = [...root.querySelectorAll('.walk-cards li')].filter((card) => card.querySelector('.walk-on').checkVisibility());
	const box = open[0]?.getBoundingClientRect();
	return {
		stops: stops.length,
		focus: of((stop) => stop === document.activeElement),
		ringed: of((stop) => stop.getAttribute('aria-current') === 'true'),
		tabbed: stops.filter((stop) => stop.tabIndex === 0).length,
		open: open.map((card) => of((stop) => decodeURIComponent(stop.getAttribute('href').slice(1)) === card.id)),
		onScreen: box !== undefined && box.top < innerHeight - 40 && box.bottom > 0,
		told: root.querySelector('[role="status"]')?.textContent ?? '',
		title: open[0]?.querySelector('.stop-name').textContent ?? '',
		on: document.activeElement.closest?.('.walk-on') && root.contains(document.activeElement) ? document.activeElement.rel : '',
		scroll: scrollY,
	};
});

// chose compares the state with what choosing a stop should lead to.
function chose(now, wanted, what) {
	const found = [];
	if (now.open.length !== 1 || now.open[0] !== wanted) found.push(`${what}: the cards ${now.open} are open, not ${wanted}`);
	if (now.ringed !== wanted) found.push(`${what}: ${now.ringed} is ringed, not ${wanted}`);
	if (!now.title || !now.told.startsWith(now.title)) found.push(`${what}: a screen reader hears "${now.told.slice(0, 40)}" of ${now.title}`);
	if (!now.onScreen) found.push(`${what}: the card is off the screen`);
	return found;
}

// byKeyboard goes from the head of the page by Tab to the drawing, along it, into cards, from
// card to card, back and out again, and looks each time where it is.
async function byKeyboard(page, walk) {
	const press = async (...keys) => {
		for (const key of keys) await page.keyboard.press(key);
		return state(walk);
	};
	let now = await state(walk);
	for (let steps = 0; now.focus < 0; steps++) {
		if (steps > 600) return ['Tab does not lead to the drawing'];
		now = await press('Tab');
	}
	const found = [];
	if (now.tabbed !== 1) found.push(`${now.tabbed} stops are in the order of the Tab key`);
	const [first, last] = [await press('Home'), await press('End')];
	if (first.focus !== 0 || last.focus !== last.stops - 1) found.push(`Home and End lead to ${first.focus} and ${last.focus}`);
	const led = new Set();
	for (const key of ['ArrowRight', 'ArrowLeft', 'ArrowDown', 'ArrowUp']) led.add((await press('Home', key)).focus);
	if (led.size < 2) found.push('no arrow leads away from the first stop');
	await press('Home');
	const before = await press('PageDown');
	if (before.focus !== 1) found.push(`Page Down leads to ${before.focus}`);
	now = await press('Enter');
	found.push(...chose(now, 1, 'Enter'));
	if (now.focus !== 1) found.push(`after Enter the focus is at ${now.focus}`);
	if (Math.abs(now.scroll - before.scroll) > 1) found.push(`Enter moves the page by ${now.scroll - before.scroll} px`);
	// From the drawing Tab leads into the card, past the ways back to the one onward.
	for (let steps = 0; now.on !== 'next'; steps++) {
		if (steps > 6) return [...found, 'Tab does not lead from the drawing to the next card'];
		now = await press('Tab');
	}
	for (const wanted of [2, 3]) {
		now = await press('Enter');
		found.push(...chose(now, wanted, 'next'));
		if (now.on !== 'next') found.push('the focus is not on the way onward');
	}
	await page.goBack();
	found.push(...chose(await state(walk), 2, 'the back button'));
	now = await press('Escape');
	if (now.open.length || now.ringed >= 0 || now.focus !== 2) found.push(`Escape leaves ${now.open} open, the focus at ${now.focus}`);
	now = await press('Escape');
	if (now.focus >= 0) found.push('Escape does not leave the drawing');
	return found;
}

// byArrows presses each arrow at each stop that arrows lead to: the focus goes that way or
// stays, and every stop is reached. The page sends itself the keys, hundreds of them, which
// byKeyboard has shown to arrive.
const byArrows = (walk) => walk.evaluate((root) => {
	const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
	const stops = [...root.querySelectorAll('.stops a')];
	const at = stops.map((stop) => stop.querySelector('circle')).map((ring) => [ring.cx.baseVal.value, ring.cy.baseVal.value]);
	const found = [];
	const reached = new Set([0]);
	for (const from of reached) {
		for (const [key, [right, down]] of Object.entries(ways)) {
			stops[from].focus();
			stops[from].dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
			const to = stops.indexOf(document.activeElement);
			if (to === from) continue;
			const ahead = to < 0 ? -1 : (at[to][0] - at[from][0]) * right + (at[to][1] - at[from][1]) * down;
			if (ahead <= 0) found.push(`${key} at ${from} leads to ${to}`);
			else reached.add(to);
		}
	}
	if (reached.size < stops.length) found.push(`arrows reach ${reached.size} of ${stops.length} stops`);
	return found;
});

// byPointer clicks in the middle of some of the stops.
async function byPointer(page, walk, some) {
	const found = [];
	const stops = walk.locator('.stops a');
	for (const i of some(await stops.count())) {
		const at = await middle(stops.nth(i));
		await page.mouse.click(at.x, at.y);
		found.push(...chose(await state(walk), i, `a click on ${i}`));
	}
	if ((await stops.count()) < 5) found.push('there are hardly any stops');
	return found;
}

// middle brings a stop into view and says where it is.
const middle = (stop) => stop.evaluate((link) => {
	const ring = link.querySelector('circle');
	const there = () => new DOMPoint(ring.cx.baseVal.value, ring.cy.baseVal.value).matrixTransform(link.ownerSVGElement.getScreenCTM());
	// An open card may be over the lower part of the screen.
	scrollBy({ top: there().y - innerHeight / 4, behavior: 'instant' });
	return { x: there().x, y: there().y };
});

// byFinger touches the screen some way off some of the stops: the card is that of the stop
// nearest to the finger.
async function byFinger(page, walk, some) {
	const found = [];
	const stops = walk.locator('.stops a');
	const off = target / 2 - 1;
	for (const i of some(await stops.count())) {
		const turn = i * 2.4; // each in another direction
		const at = await middle(stops.nth(i));
		const touch = { x: at.x + off * Math.cos(turn), y: at.y + off * Math.sin(turn) };
		if (touch.x < 1 || touch.x > phone.width - 1) continue;
		const away = await walk.evaluate((root, { x, y }) => [...root.querySelectorAll('.stops circle')].map((ring) => {
			const there = new DOMPoint(ring.cx.baseVal.value, ring.cy.baseVal.value).matrixTransform(ring.ownerSVGElement.getScreenCTM());
			return Math.hypot(there.x - x, there.y - y);
		}), touch);
		const [nearest, second] = away.toSorted((a, b) => a - b);
		if (second - nearest < 2) continue;
		await page.touchscreen.tap(touch.x, touch.y);
		found.push(...chose(await state(walk), away.indexOf(nearest), `a touch beside ${i}`));
	}
	return found;
}

// withoutScripts reads the list, whole, and follows links from the drawing to a card, on to
// the next and back.
async function withoutScripts(page, walk) {
	const found = [];
	const cards = walk.locator('.walk-cards li');
	const stops = walk.locator('.stops a');
	if ((await cards.count()) !== (await stops.count())) found.push(`${await cards.count()} cards of ${await stops.count()} stops`);
	for (const card of await cards.all()) {
		if (!(await card.locator('p').last().isVisible())) found.push(`a card is shut: ${(await card.innerText()).slice(0, 40)}`);
	}
	const at = await middleOf(stops.nth(1));
	await page.mouse.click(at.x, at.y);
	const shows = async (i, what) => {
		const box = await cards.nth(i).boundingBox();
		if (box.y < -1 || box.y > desk.height - 40) found.push(`${what}: the card is at ${box.y.toFixed(0)} px`);
	};
	await shows(1, 'a click on the drawing');
	await cards.nth(1).locator('[rel="next"]').click();
	await shows(2, 'next');
	await cards.nth(2).locator('a').last().click();
	const top = (await walk.boundingBox()).y;
	if (top < -1 || top > desk.height - 40) found.push(`back to the drawing: it is at ${top.toFixed(0)} px`);
	return found;
}

// middleOf is where a stop is, asked without a script of the page: the middle of its cell.
async function middleOf(stop) {
	await stop.scrollIntoViewIfNeeded();
	const { x, y, width, height } = await stop.locator('path').boundingBox();
	return { x: x + width / 2, y: y + height / 2 };
}

// The functions below run in the page.

// targets names the stops that are smaller than a finger needs though nothing is near them.
function targets(target) {
	const found = [];
	for (const layer of document.querySelectorAll('.stops')) {
		const stops = [...layer.querySelectorAll('a')].map((link) => {
			const ring = link.querySelector('circle');
			const at = new DOMPoint(ring.cx.baseVal.value, ring.cy.baseVal.value).matrixTransform(layer.getScreenCTM());
			return { name: link.textContent, at, box: link.querySelector('path')?.getBoundingClientRect() };
		});
		for (const { name, at, box } of stops) {
			const room = Math.min(...stops.filter((other) => other.at !== at).map((other) => Math.hypot(other.at.x - at.x, other.at.y - at.y)));
			const least = Math.min(target, room) - 0.5;
			if (!box || box.width < least || box.height < least) found.push(`${name} is ${box?.width.toFixed(1)} × ${box?.height.toFixed(1)} px, the next one ${room.toFixed(1)} px away`);
		}
	}
	return found;
}

function onPaper() {
	const found = [];
	for (const walk of document.querySelectorAll('.walk')) {
		for (const gone of walk.querySelectorAll('.walk-how, .stops, .walk-cards')) if (gone.checkVisibility()) found.push(`${gone.getAttribute('class')} is on paper`);
		if (!walk.querySelector('.drawing').checkVisibility()) found.push('the drawing is not on paper');
	}
	return found;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const [folder] = process.argv.slice(2);
	if (!folder || !existsSync(path.join(folder, 'handbook-staff', 'index.html'))) {
		console.error('use: node walk.mjs FOLDER, where FOLDER holds handbook/ and handbook-staff/, pressed with --single');
		process.exit(2);
	}
	const ledger = new Ledger();
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
	try {
		const editions = ['handbook', 'handbook-staff'].map((name) => new Edition(folder, name));
		for (const [edition, other] of [editions, editions.toReversed()]) await walk(browser, edition, other, new OneFile(folder, `${edition.name}.html`), ledger);
	} finally {
		await browser.close();
	}
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
