// Keyboard: a walk with the Tab key through each page, opening with Enter what is
// folded. Each focus shows and each link is met; where links stand before the text, a
// skip link comes first and works.

import { changedPixels, take } from './pixels.mjs';

// A walk that takes more steps than this goes in circles: the longest page of the
// demo has about a hundred stops.
const mostSteps = 600;

export async function keyboard(context, edition, ledger) {
	const page = await context.newPage();
	const camera = await context.newCDPSession(page);
	const known = new Map();
	for (const name of edition.own) {
		await page.goto(edition.url(name));
		await page.evaluate(prepare);
		const label = edition.label(name);
		const isCover = name === 'index.html';

		const { stops, lost } = await walk(page, camera, known);
		ledger.check(label, 'focus shows', stops.length ? hidden(stops) : ['Tab reaches nothing']);
		ledger.check(label, 'keyboard reach', [...lost, ...(await page.evaluate(missed))]);
		if (isCover) {
			ledger.check(label, 'lessons by keyboard', lessonsMet(stops, await page.evaluate(lessons)));
		} else if (await page.evaluate(hasWay)) {
			ledger.check(label, 'skip link', await skipLink(page, edition.url(name)));
		}
	}
	await page.close();
}

// walk presses Tab until it comes round. Stops of one kind, which stand in elements of the
// same names and classes, all of them on the screen and with nothing over them, look alike
// when they have the focus, so the first is pictured for all: known keeps its count.
async function walk(page, camera, known) {
	const stops = [];
	for (let step = 0; step < mostSteps; step++) {
		await page.keyboard.press('Tab');
		const stop = await page.evaluate(focused);
		if (!stop) return { stops, lost: [] };
		await enter(stop);
		if (!stop.folded) continue;
		await page.keyboard.press('Enter');
		// What is opened may take the focus, as the finder's field does.
		await page.evaluate(() => new Promise((done) => setTimeout(done, 50)));
		const within = await page.evaluate(focused);
		if (within) await enter(within);
	}
	return { stops, lost: [`the walk does not end within ${mostSteps} steps`] };

	async function enter(stop) {
		if (!known.has(stop.look)) known.set(stop.look, await focusPixels(page, camera, stop.clip));
		stop.changed = known.get(stop.look);
		stops.push(stop);
	}
}

// focusPixels counts the pixels that the focus changes: one picture with it, one
// without. Taking the focus away leaves the place from which Tab goes on.
async function focusPixels(page, camera, clip) {
	if (clip.width <= 0 || clip.height <= 0) return 0;
	const withFocus = await take(camera, clip);
	await page.evaluate(() => document.activeElement.blur());
	const without = await take(camera, clip);
	await page.evaluate(() => window.walk.last.focus({ preventScroll: true, focusVisible: true }));
	return changedPixels(withFocus, without);
}

// hidden names the stops whose focus cannot be seen: too few pixels change. An
// underline below the first word is the least that a reader could find, so the
// bound is ten pixels; an outline changes some hundreds. (Our own bound: WCAG 2.4.7
// asks for a visible focus and gives no number.)
function hidden(stops) {
	const leastPixels = 10;
	return stops
		.filter((stop) => stop.changed < leastPixels)
		.map((stop) => `${stop.name} changes ${stop.changed} pixels${stop.clip.width > 0 ? '' : ' and is off the screen'}`);
}

function lessonsMet(stops, lessons) {
	if (lessons.length === 0) return ['the cover lists no lesson'];
	const met = new Set(stops.map((stop) => stop.href));
	return lessons.filter((href) => !met.has(href)).map((href) => `${href} is not reached`);
}

// skipLink follows the first stop of a fresh page, and looks where Tab goes next.
async function skipLink(page, url) {
	await page.goto(url);
	await page.evaluate(prepare);
	await page.keyboard.press('Tab');
	const stop = await page.evaluate(focused);
	if (!stop?.anchor) return [`the first stop is ${stop?.name ?? 'missing'}, not a link into the page`];
	if (stop.clip.width <= 0 || stop.clip.height <= 0) return ['the skip link stays off the screen'];
	await page.keyboard.press('Enter');
	await page.keyboard.press('Tab');
	return page.evaluate((anchor) => {
		const target = document.getElementById(anchor);
		if (!target) return [`#${anchor} is missing`];
		if (!target.querySelector('h1')) return [`#${anchor} does not hold the heading`];
		// Where nothing in the text takes the focus, Tab comes round to the start.
		const now = document.activeElement;
		const round = now === document.body || now === window.walk.last;
		const before = target.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_PRECEDING;
		return before && !round ? [`after the skip link, Tab goes back to ${now.outerHTML.slice(0, 80)}`] : [];
	}, stop.anchor);
}

// The functions below run in the page.

function prepare() {
	window.walk = { met: new Set(), hrefs: new Set(), last: null };
}

// focused describes the element that has the focus, or null when the walk has come
// round: to the body or to an element already met.
function focused() {
	const element = document.activeElement;
	if (!element || element === document.body || window.walk.met.has(element)) return null;
	window.walk.met.add(element);
	window.walk.last = element;
	if (element.href) window.walk.hrefs.add(element.href);
	const box = element.getBoundingClientRect();
	const around = 6; // an outline lies outside its element
	const left = Math.max(0, box.left - around);
	const top = Math.max(0, box.top - around);
	const right = Math.min(innerWidth, box.right + around);
	const bottom = Math.min(innerHeight, box.bottom + around);
	const clip = { x: left + scrollX, y: top + scrollY, width: right - left, height: bottom - top };
	// What is partly off the screen, or below something else, is a case of its own.
	const first = element.getClientRects()[0];
	const above = first && document.elementFromPoint(first.left + Math.min(4, first.width / 2), first.top + first.height / 2);
	const isFree = above && (element.contains(above) || above.contains(element)) && box.left >= 0 && box.top >= 0 && box.right <= innerWidth && box.bottom <= innerHeight;
	const names = [];
	for (let up = element; up; up = up.parentElement) names.push(`${up.localName}.${up.getAttribute('class') ?? ''}`);
	return {
		name: `${element.localName} "${(element.textContent || element.getAttribute('aria-label') || '').trim().slice(0, 40)}"`,
		href: element.href ?? '',
		anchor: element.getAttribute('href')?.startsWith('#') ? element.getAttribute('href').slice(1) : '',
		folded: element.localName === 'summary' && !element.parentElement.open,
		clip,
		look: isFree ? names.join(' ') : [names.join(' '), JSON.stringify(clip), element.outerHTML].join(' '),
	};
}

// missed names what a pointer can use and the walk did not meet. A link in a
// drawing counts as met when another link to the same place was.
function missed() {
	const found = [];
	for (const element of document.querySelectorAll('a, area, button, input, select, textarea, summary')) {
		const href = typeof element.href === 'object' ? new URL(element.href.baseVal, document.baseURI).href : element.href;
		const met = window.walk.met.has(element) || (href && window.walk.hrefs.has(href));
		if (met || element.disabled || element.type === 'hidden' || !element.checkVisibility({ visibilityProperty: true })) continue;
		if (/^(a|area)$/.test(element.localName) && !href) continue;
		found.push(`not reached: ${element.outerHTML.slice(0, 80)}`);
	}
	return found;
}

// hasWay tells whether links to other pages stand in a block before the text. A page to
// print has a single link there, and nothing to skip.
function hasWay() {
	return document.querySelector('header nav') !== null;
}

function lessons() {
	return [...document.querySelectorAll('.lesson-list > li > a[href]')].map((link) => link.href);
}
