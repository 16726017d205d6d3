// In the room: the pages for a projector, on a screen of 1920 × 1080. On every view of
// every lesson the letters are large enough and nothing is cut off; keys, pointer and
// finger lead through it; without scripts it is a page like others.

import { some } from './ledger.mjs';

export const kinds = ['room letters', 'room read aloud', 'room fits', 'room keeps words', 'room keys', 'room answers', 'room without scripts', 'room on a small screen'];

export const screen = { width: 1920, height: 1080 };

// Capitals of a three-hundredth of the distance are read from it, which is a fiftieth of
// the screen's height at six heights (from memory: signs are made for a two-hundredth to a
// four-hundredth). What is read aloud is a twentieth, in the size of its font.
const capital = 1 / 50;
const aloud = 1 / 20;

// A screen of 4:3, as older projectors have, and one that is hardly larger than a tablet.
const others = [{ width: 1024, height: 768 }, { width: 1280, height: 720 }];

const isRoom = (name) => name.startsWith('room-');

export async function room(context, edition, isStaff, ledger) {
	const page = await context.newPage();
	const pictures = new Map(); // src → height of its smallest capitals in its own height
	let views = 0;
	for (const name of edition.pages.filter(isRoom)) {
		const label = edition.label(name);
		if (isStaff) { // whose pages are the class's, with answers
			const { wrong, small } = await answers(page, edition.url(name));
			ledger.check(label, 'room answers', wrong);
			ledger.check(label, 'room letters', small);
		} else {
			views += await measure(name, label);
			ledger.check(label, 'room answers', await page.evaluate(() => (document.querySelector('.answer, [data-part="answer"]') ? ['the class edition has one'] : [])));
		}
		await page.setViewportSize({ width: 360, height: 740 });
		await page.goto(edition.url(name));
		ledger.check(label, 'room on a small screen', await page.evaluate(plain));
	}
	const first = edition.pages.find(isRoom);
	if (first) ledger.check(edition.label(first), 'room keys', await keys(page, edition.url(first), first.replace('room-', '')));
	if (views) ledger.note(`${edition.name} has ${views} views in the room`);
	await page.close();

	async function measure(name, label) {
		await page.setViewportSize(screen);
		await page.goto(edition.url(name));
		const found = { small: [], quiet: [], over: [] };
		let count = 0;
		for await (const [at, seen] of walk(page)) {
			count = at;
			for (const { src, height } of seen.pictures) {
				if (!pictures.has(src)) pictures.set(src, await smallestOf(context, src));
				seen.letters.push({ text: `a picture, ${src.replace(/.*\//, '')}`, capital: pictures.get(src) * height });
			}
			found.small.push(...tooSmall(at, seen.letters));
			if (seen.aloud / screen.height < aloud - 0.0005) found.quiet.push(`view ${at} has ${seen.aloud.toFixed(0)} px`);
			found.over.push(...seen.over.map((what) => `view ${at}: ${what}`));
		}
		ledger.check(label, 'room letters', found.small);
		ledger.check(label, 'room read aloud', found.quiet);
		ledger.check(label, 'room fits', found.over);
		for (const size of others) {
			await page.setViewportSize(size);
			await page.goto(edition.url(name));
			const kept = await page.evaluate(saidOnTheWall);
			const lost = edition.said.get(name).filter((words) => !kept.includes(words));
			ledger.check(label, 'room keeps words', lost.length ? [`lost: ${some(lost, 2)}`] : [], `${size.width} × ${size.height}`);
			const over = [];
			for await (const [at, seen] of walk(page)) over.push(...seen.over.map((what) => `view ${at}: ${what}`));
			ledger.check(label, 'room fits', over, `${size.width} × ${size.height}`);
		}
		return count;
	}
}

function tooSmall(at, letters) {
	const least = Math.min(...letters.map((letter) => letter.capital));
	if (least / screen.height >= capital) return [];
	return [`view ${at}: capitals of ${((1000 * least) / screen.height).toFixed(1)} thousandths, ${some(letters.filter((letter) => letter.capital === least).map(({ text }) => text), 1)}`];
}

// roomPlain looks at the pages in a context without scripts. It comes first, since it
// notes what they say.
export async function roomPlain(context, edition, ledger) {
	const page = await context.newPage();
	edition.said = new Map();
	await page.setViewportSize(screen);
	for (const name of edition.pages.filter(isRoom)) {
		await page.goto(edition.url(name));
		ledger.check(edition.label(name), 'room without scripts', await page.evaluate(plain));
		edition.said.set(name, await page.evaluate(said));
	}
	await page.close();
}

// walk shows one view after the other, by the key that a presenter's remote sends.
async function* walk(page) {
	await page.keyboard.press('Home');
	const count = await page.evaluate(() => document.querySelectorAll('.view').length);
	for (let at = 1; at <= count; at++) {
		yield [at, await page.evaluate(look)];
		await page.keyboard.press('PageDown');
	}
}

// answers presses the key at every question, and wants the answer then and not before.
async function answers(page, url) {
	await page.setViewportSize(screen);
	await page.goto(url);
	const wrong = [];
	const small = [];
	const shown = () => page.evaluate(() => document.querySelector('.is-shown .answer')?.checkVisibility() ?? null);
	for await (const [at] of walk(page)) {
		const before = await shown();
		if (before === null) continue;
		if (before) wrong.push(`view ${at} shows the answer unasked`);
		await page.keyboard.press('a');
		if (!(await shown())) wrong.push(`view ${at} does not show the answer`);
		const seen = await page.evaluate(look);
		wrong.push(...seen.over.map((what) => `view ${at} with its answer: ${what}`));
		small.push(...tooSmall(at, seen.letters));
		await page.keyboard.press('a');
		if (await shown()) wrong.push(`view ${at} keeps the answer`);
	}
	return { wrong, small };
}

// keys tries every way through a lesson.
async function keys(page, url, lesson) {
	const found = [];
	await page.setViewportSize(screen);
	await page.goto(url);
	const count = await page.evaluate(() => document.querySelectorAll('.view').length);
	const now = () => page.evaluate(() => [...document.querySelectorAll('.view')].findIndex((view) => view.checkVisibility()) + 1);
	const expect = async (what, want) => {
		const got = await now();
		if (got !== want) found.push(`${what} leads to view ${got}, not ${want}`);
	};
	for (const [key, want] of [
		['Home', 1], ['ArrowRight', 2], ['ArrowDown', 3], ['PageDown', 4], ['Space', 5], ['ArrowLeft', 4], ['ArrowUp', 3], ['PageUp', 2], ['Shift+Space', 1],
		['ArrowLeft', 1], ['End', count], ['ArrowRight', count], ['Home', 1], ['Control+ArrowRight', 1], ['x', 1], ['ArrowRight', 2],
	]) {
		await page.keyboard.press(key);
		await expect(key, want);
	}
	const focus = await page.evaluate(() => [document.activeElement.matches('.view.is-shown'), document.activeElement.getAttribute('aria-label')]);
	if (!focus[0] || !focus[1]?.includes('2')) found.push(`the focus does not follow, or says only "${focus[1]}"`);
	const said = await page.evaluate(() => document.querySelector('[role=status]').textContent);
	if (said) found.push(`each step is told as "${said}"`);
	if (!(await page.evaluate(() => document.querySelector('.room-foot').innerText)).includes(`2 of ${count}`)) found.push('the place is not shown');
	await page.reload();
	await expect('opening it again', 2);

	await page.mouse.click(screen.width - 20, 500);
	await expect('the right end', 3);
	await page.mouse.click(20, 500);
	await expect('the left end', 2);
	const swipe = (from, to) => page.evaluate(([a, b]) => {
		for (const [type, clientX] of [['pointerdown', a], ['pointerup', b]]) document.querySelector('.is-shown').dispatchEvent(new PointerEvent(type, { bubbles: true, pointerType: 'touch', clientX, clientY: 400 }));
	}, [from, to]);
	await swipe(1000, 600);
	await expect('a finger to the left', 3);
	await swipe(600, 1000);
	await expect('a finger to the right', 2);
	await swipe(600, 620);
	await expect('a tap', 2);

	for (const [dark, light] of [['b', 'b'], ['.', 'Escape'], ['b', 'click']]) {
		await page.keyboard.press(dark);
		const { width, height } = screen;
		const shot = await page.screenshot({ clip: { x: 0, y: 0, width, height } });
		if (!(await page.evaluate(isBlack, shot.toString('base64')))) found.push(`${dark} leaves the screen lit`);
		if (!(await page.evaluate(() => document.querySelector('[role=status]').textContent))) found.push('that it is dark is not told');
		if (light === 'click') await page.mouse.click(400, 400);
		else await page.keyboard.press(light);
		await expect(light, 2);
	}
	await page.keyboard.press('b');
	await page.keyboard.press('PageDown');
	await expect('leading on from the dark', 3);

	const moves = await page.evaluate(() => getComputedStyle(document.querySelector('.room-sun')).transitionDuration);
	if (moves !== '0s') found.push(`the Sun moves for ${moves} where less motion is asked for`);
	await page.emulateMedia({ colorScheme: 'dark' });
	const ground = await page.evaluate(() => getComputedStyle(document.querySelector('.room-views')).backgroundColor.match(/\d+/g).slice(0, 3).map(Number));
	if (Math.max(...ground) > 60) found.push(`on a dark screen the ground is ${ground}`);
	await page.emulateMedia({ colorScheme: null });

	await page.keyboard.press('Escape');
	await page.waitForURL((to) => to.href.endsWith(`/${lesson}`)).catch(() => found.push('Escape does not lead to the lesson'));
	return found;
}

// smallestOf opens a picture by itself: its smallest capitals as a part of its height.
async function smallestOf(context, src) {
	const page = await context.newPage();
	try {
		await page.goto(src);
		return await page.evaluate(() => {
			const root = document.documentElement;
			if (root.localName !== 'svg') return Infinity;
			const scale = root.viewBox.baseVal.height || root.height.baseVal.value;
			const heights = [...root.querySelectorAll('text')].map((text) => {
				const within = text.getCTM().a / root.getCTM().a; // of groups that are scaled
				return (0.69 * parseFloat(getComputedStyle(text).fontSize) * within) / scale; // a Palatino's capital; Arial's is 0.72
			});
			return Math.min(Infinity, ...heights);
		});
	} finally {
		await page.close();
	}
}

// The functions below run in the page.

// look measures the view that is shown.
function look() {
	const view = document.querySelector('.view.is-shown');
	const body = view.querySelector('.view-body');
	const foot = document.querySelector('.room-foot');
	const letters = [];
	let aloud = Infinity;
	const brush = document.createElement('canvas').getContext('2d');
	for (const box of [view, foot]) {
		const texts = document.createTreeWalker(box, NodeFilter.SHOW_TEXT);
		for (let node = texts.nextNode(); node; node = texts.nextNode()) {
			const element = node.parentElement;
			if (!node.data.trim() || !element.checkVisibility({ visibilityProperty: true }) || element.closest('title, desc, [role=status]')) continue;
			const style = getComputedStyle(element);
			const turned = element.closest('text')?.getScreenCTM();
			const scale = turned ? Math.hypot(turned.a, turned.b) : 1;
			const size = parseFloat(style.fontSize);
			brush.font = `${style.fontWeight} 100px ${style.fontFamily}`;
			letters.push({ text: node.data.trim().slice(0, 30), capital: (brush.measureText('H').actualBoundingBoxAscent / 100) * size * scale });
			const isAloud = ['words', 'step', 'question', 'care'].includes(view.dataset.kind) && body.contains(element);
			if (isAloud && !element.closest('table, svg, .side-label, .view-lead, .answer')) aloud = Math.min(aloud, size);
		}
	}
	const over = [];
	if (body.scrollHeight > body.clientHeight + 1 || body.scrollWidth > body.clientWidth + 1) over.push(`${body.scrollWidth} × ${body.scrollHeight} in ${body.clientWidth} × ${body.clientHeight}`);
	const ground = foot.getBoundingClientRect().top;
	for (const element of view.querySelectorAll('.view-under, .view-number, p, li, tr, td, th, dt, dd, img, svg, svg text')) {
		const box = element.getBoundingClientRect();
		if (box.width === 0 || view.dataset.half && element.localName === 'text') continue;
		const sides = element.localName === 'text' ? body.getBoundingClientRect() : { left: 0, right: innerWidth }; // where drawings are cut off
		if (box.left < sides.left - 1 || box.top < -1 || box.right > sides.right + 1 || box.bottom > ground + 1) over.push(`${element.localName} "${element.textContent.trim().slice(0, 30)}" at ${[box.left, box.top, box.right, box.bottom].map(Math.round)}`);
	}
	if (document.querySelectorAll('.view').length > 1 && [...document.querySelectorAll('.view')].filter((v) => v.checkVisibility()).length !== 1) over.push('more than one view is shown, or none');
	const pictures = [...view.querySelectorAll('img')].map((image) => {
		const box = image.getBoundingClientRect();
		return { src: image.src, height: Math.min(box.height, (box.width * image.naturalHeight) / image.naturalWidth) };
	});
	return { letters, aloud, over: over.slice(0, 3), pictures };
}

// said are the words of each paragraph, item and cell, without blanks.
function said() {
	return [...document.querySelectorAll('.view-body :is(p, li, td, th, dd)')].map((element) => element.textContent.replace(/\s+/g, '')).filter(Boolean);
}

// saidOnTheWall are those of all views, one after the other, where a paragraph may go on
// in the next.
function saidOnTheWall() {
	return [...document.querySelectorAll('.view-body')].map((body) => {
		const copy = body.cloneNode(true);
		if (body.parentElement.previousElementSibling?.dataset.from === body.parentElement.dataset.from) copy.querySelectorAll('.side-label').forEach((label) => label.remove());
		return copy.textContent.replace(/\s+/g, '');
	}).join('');
}

// plain wants all views below one another, in their order, and nothing that only a
// script could serve.
function plain() {
	const found = [];
	const views = [...document.querySelectorAll('.view')];
	if (views.length < 2) found.push(`${views.length} views`);
	let below = -Infinity;
	for (const view of views) {
		const box = view.getBoundingClientRect();
		if (!view.checkVisibility() || box.height === 0) found.push(`"${view.textContent.trim().slice(0, 30)}" is not shown`);
		if (box.top < below - 1) found.push(`"${view.textContent.trim().slice(0, 30)}" stands above what comes before it`);
		below = box.top;
	}
	for (const button of document.querySelectorAll('button')) if (button.checkVisibility()) found.push(`a button that does nothing: ${button.outerHTML.slice(0, 60)}`);
	if (document.documentElement.scrollWidth > innerWidth) found.push(`the page is ${document.documentElement.scrollWidth} px wide`);
	return found.slice(0, 4);
}

// isBlack reports whether a picture of the screen has no pixel that is lit.
async function isBlack(picture) {
	const bytes = Uint8Array.from(atob(picture), (c) => c.charCodeAt(0));
	const image = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
	const canvas = new OffscreenCanvas(image.width, image.height).getContext('2d');
	canvas.drawImage(image, 0, 0);
	return canvas.getImageData(0, 0, image.width, image.height).data.every((value, i) => i % 4 === 3 || value < 8);
}
