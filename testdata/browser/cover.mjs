// Cover: what its first screen offers on a day, by a clock that the browser is told. On
// the days of all lessons, before, between and after them, in both editions, on a desk
// and on a phone.
//
//	node cover.mjs FOLDER
//
// FOLDER holds handbook/ and handbook-staff/, pressed with --single. check.mjs does the
// same among its other checks. Exit 0: all passed; 1: a check failed; 2: wrong use.

import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { Edition } from './edition.mjs';
import { Ledger, some } from './ledger.mjs';
import { moved, watch } from './swift.mjs';

export const kinds = ['cover opens on the day', 'cover above the fold', 'cover shows all lessons', 'cover says what a lesson is', 'cover leads to its rows', 'cover stands still', 'cover without scripts', 'cover in one file', 'cover on one sheet'];

const desk = { width: 1440, height: 900 };
const phone = { width: 390, height: 844 };

// A unit of so many lessons has all of them on one screen. (Our own bound; the demo has 14.)
const oneScreen = 14;

// The demo on the day and at the hour for which it is drawn: lesson, and when it begins. The
// calendar of the demo was read by a person.
const known = { page: 'moon-phases.html', at: '2027-04-28T09:00', title: 'Moon phases with a lamp and a ball', state: 'It starts in 10 minutes.', hours: '9:10 to 10:00 a.m.' };

const minute = 60_000;
const day = 24 * 60 * minute;

// cover opens the covers in contexts of its own: the clock and the zone are theirs.
export async function cover(browser, edition, isStaff, ledger) {
	const label = edition.label('index.html');
	const open = (options, work) => inContext(browser, options, (context) => work(context));
	const lessons = await open({ javaScriptEnabled: false }, (context) => plain(context, edition, label, isStaff, ledger));
	for (const viewport of [desk, phone]) {
		await open({ viewport, hasTouch: viewport === phone, isMobile: viewport === phone }, (context) => days(context, edition, label, isStaff, lessons, viewport, ledger));
	}
	// Whoever reads it in another zone has the same page on the same date of his own.
	await open({ timezoneId: 'Pacific/Auckland' }, async (context) => {
		const seen = await look(await context.newPage(), edition.url('index.html'), lessons[0].from - 12 * 60 * minute);
		ledger.check(label, 'cover opens on the day', seen.title === lessons[0].title && seen.kind === 'is-now' ? [] : [`on the first lesson's date it shows ${seen.title}`], 'another zone');
	});
	await open({}, (context) => list(context, edition, label, lessons, ledger));
	await open({}, (context) => late(context, edition, label, lessons, ledger));
	await open({}, (context) => sheet(context, edition, label, lessons, ledger));
	await open({}, (context) => bound(context, edition, label, lessons, ledger));
}

async function inContext(browser, options, work) {
	const context = await browser.newContext({ viewport: desk, offline: true, reducedMotion: 'reduce', timezoneId: 'UTC', ...options });
	context.setDefaultTimeout(120_000);
	try {
		await watch(context);
		return await work(context);
	} finally {
		await context.close();
	}
}

// plain reads the list as it is without scripts, and wants it whole: it alone says which
// lesson is held when, and what it takes.
async function plain(context, edition, label, isStaff, ledger) {
	const page = await context.newPage();
	await page.goto(edition.url('index.html'));
	const lessons = await page.evaluate(() => [...document.querySelectorAll('.lesson-list > li')].map((item) => ({
		title: item.querySelector('a').textContent,
		page: item.querySelector('a').getAttribute('href'),
		date: item.querySelector('small time').dateTime,
		summary: item.querySelector('.summary').textContent,
		hours: item.querySelector('.hours').textContent,
		visits: [...item.querySelectorAll('.day-part > p:not(.reserve) time')].map((time) => time.dateTime),
		links: [...item.querySelectorAll('.day-links a')].map((link) => link.getAttribute('href')),
		unseen: [...item.querySelectorAll('a, time, .summary')].filter((element) => !element.checkVisibility({ opacityProperty: true }) || element.getBoundingClientRect().height === 0).length,
	})));
	const found = lessons.length ? [] : ['the list is empty'];
	for (const lesson of lessons) {
		// The times of the browser told to be in UTC are those of the school's clock.
		[lesson.from, lesson.to] = [Date.parse(`${lesson.visits[0]}Z`), Date.parse(`${lesson.visits.at(-1)}Z`)];
		const name = lesson.page;
		if (lesson.unseen) found.push(`${name}: ${lesson.unseen} things are not shown`);
		if (!lesson.visits[0]?.startsWith(lesson.date)) found.push(`${name}: it is on ${lesson.date} and begins ${lesson.visits[0]}`);
		if (!(lesson.from < lesson.to)) found.push(`${name}: it lasts from ${lesson.visits[0]} to ${lesson.visits.at(-1)}`);
		if (lesson.visits.length % 2) found.push(`${name}: ${lesson.visits.length} times`);
		found.push(...wanted(edition, name, isStaff).filter((link) => !lesson.links.includes(link)).map((link) => `${name}: no link to ${link}`));
		if (!isStaff) found.push(...lesson.links.filter((link) => /^(day|room)-/.test(link)).map((link) => `${name}: a link to ${link}`));
	}
	if (await page.evaluate(() => document.querySelector('.finder').checkVisibility())) found.push('the finder is shown, which needs a script');
	ledger.check(label, 'cover without scripts', found);
	await page.close();
	return lessons;
}

// wanted are the pages that belong to the day of a lesson, by what the folder holds.
function wanted(edition, name, isStaff) {
	const own = ['pupil', 'card'].map((kind) => `${kind}-${name}`);
	const prints = edition.pages.filter((page) => page.startsWith('print-') && lessonOf(edition, page) === name);
	return [name, ...own.filter((page) => edition.pages.includes(page)), ...prints, ...(isStaff ? [`day-${name}`, `room-${name}`] : [])];
}

// lessonOf is the page that a printable's head leads back to.
function lessonOf(edition, page) {
	const head = readFileSync(edition.file(page), 'utf8').match(/<header.*?<\/header>/s)?.[0] ?? '';
	return [...head.matchAll(/href="([^"#]+\.html)"/g)].map(([, href]) => href).at(-1);
}

// look opens a cover at a time, and gives what it shows.
async function look(page, url, at) {
	await page.clock.setFixedTime(at);
	await page.goto(url);
	const seen = await page.evaluate(shown);
	seen.moved = await moved(page);
	return seen;
}

// shown runs in the page.
function shown() {
	const panel = document.querySelector('.day-panel');
	const heading = panel.querySelector('h2');
	const marked = document.querySelectorAll('.lesson-list > :is(.is-now, .is-next)');
	const cast = [...document.querySelectorAll('.dial .cast')].filter((shadow) => getComputedStyle(shadow).visibility === 'visible' && shadow.getClientRects().length > 0);
	return {
		title: heading.textContent,
		page: heading.querySelector('a')?.getAttribute('href') ?? '',
		date: panel.querySelector('.day-date')?.textContent ?? '',
		state: panel.querySelector('.day-state').textContent,
		hours: panel.querySelector('.day-time .hours')?.textContent ?? '',
		links: [...panel.querySelectorAll('h2 a, .day-links a')].map((link) => ({ href: link.getAttribute('href'), bottom: link.getBoundingClientRect().bottom, right: link.getBoundingClientRect().right })),
		also: [...panel.querySelectorAll('.day-also a')].map((link) => link.getAttribute('href')),
		kind: marked.length === 1 ? marked[0].className.match(/is-now|is-next/)[0] : `${marked.length} lessons marked`,
		shadows: cast.map((shadow) => shadow.closest('a').getAttribute('href')),
		gaps: panel.textContent.match(/\{\d\}|undefined|⟦/g) ?? [],
		wide: document.documentElement.scrollWidth,
	};
}

async function days(context, edition, label, isStaff, lessons, viewport, ledger) {
	const setting = `${viewport.width} px`;
	const url = edition.url('index.html');
	const page = await context.newPage();
	const [wrong, below, jumps] = [[], [], []];
	const first = lessons.toSorted((a, b) => a.from - b.from)[0];
	const end = Math.max(...lessons.map(({ to }) => to));
	const see = async (at, what) => {
		const seen = await look(page, url, at);
		jumps.push(...seen.moved.map((shift) => `${what}: ${shift}`));
		if (seen.gaps.length) wrong.push(`${what}: a gap is not filled: ${seen.gaps}`);
		if (seen.wide > viewport.width) wrong.push(`${what}: it is ${seen.wide} px wide`);
		return seen;
	};
	const expect = (seen, lesson, kind, what) => {
		if (seen.title !== lesson.title || seen.page !== lesson.page) wrong.push(`${what}: it offers "${seen.title}", not "${lesson.title}"`);
		if (seen.kind !== kind) wrong.push(`${what}: ${seen.kind}, not ${kind}`);
		if (seen.shadows.join() !== (kind === 'is-now' ? lesson.page : '')) wrong.push(`${what}: the shadow lies on ${seen.shadows}`);
		const hrefs = seen.links.map(({ href }) => href);
		const missing = wanted(edition, lesson.page, isStaff).filter((page) => !hrefs.includes(page));
		below.push(...missing.map((page) => `${what}: no link to ${page}`));
		below.push(...seen.links.filter(({ bottom, right }) => bottom > viewport.height || right > viewport.width).map(({ href, bottom }) => `${what}: the link to ${href} ends at ${bottom.toFixed(0)} px`));
		if (isStaff ? hrefs[1] !== `day-${lesson.page}` : hrefs.some((href) => /^(day|room)-/.test(href))) below.push(`${what}: it leads to ${hrefs}`);
	};

	for (const lesson of lessons) {
		const sameDay = lessons.filter(({ date, page }) => date === lesson.date && page !== lesson.page);
		const states = [];
		const times = viewport === desk ? [lesson.from - 10 * minute, lesson.from + minute, lesson.to + minute] : [lesson.from - 10 * minute];
		for (const at of times) {
			// With two lessons on one day the page goes on to the second.
			const other = sameDay.find(({ from, to }) => (at < from && at >= lesson.to) || (at < to && at < lesson.from && from < lesson.from));
			const what = `${lesson.page} ${new Date(at).toISOString().slice(0, 16)}`;
			const seen = await see(at, what);
			expect(seen, other ?? lesson, 'is-now', what);
			if (!seen.date.includes(String(Number(lesson.date.slice(8))))) wrong.push(`${what}: it says "${seen.date}" on ${lesson.date}`);
			if (!other && seen.hours !== lesson.hours) wrong.push(`${what}: it is held ${lesson.hours} and says ${seen.hours}`);
			if (sameDay.some(({ page }) => ![seen.page, ...seen.also].includes(page))) wrong.push(`${what}: another lesson of the day is missing`);
			states.push(seen.state);
		}
		if (new Set(states).size !== states.length) wrong.push(`${lesson.page}: before, during and after it says ${states.join(' / ')}`);
	}
	for (const days of [1, 10]) expect(await see(Date.parse(`${first.date}T09:00Z`) - days * day, `${days} days before`), first, 'is-next', `${days} days before`);
	const free = between(lessons);
	if (free) expect(await see(free.at, 'a day between'), free.next, 'is-next', 'a day between');
	const after = await see(end + day, 'after the unit');
	if (after.page || after.links.length || after.shadows.length || !after.title) wrong.push(`after the unit it shows "${after.title}" and ${after.links.length} links`);
	if (lessons.some((lesson) => lesson.page === known.page) && edition.pages.length > 50) {
		const seen = await see(Date.parse(`${known.at}Z`), known.at);
		for (const key of ['page', 'title', 'state', 'hours']) if (seen[key].replaceAll(/\s/g, ' ') !== known[key]) wrong.push(`${known.at}: ${key} is "${seen[key]}", not "${known[key]}"`);
	}
	ledger.check(label, 'cover opens on the day', wrong, setting);
	ledger.check(label, 'cover above the fold', below, setting);
	ledger.check(label, 'cover stands still', jumps.length ? [some(jumps)] : [], setting);
}

// between is a day without a lesson between two that have one.
function between(lessons) {
	const inOrder = lessons.toSorted((a, b) => a.from - b.from);
	const i = inOrder.findIndex(({ date }, i) => i > 0 && Date.parse(date) - Date.parse(inOrder[i - 1].date) > 2 * day);
	return i < 0 ? undefined : { at: Date.parse(`${inOrder[i].date}T08:00Z`) - day, next: inOrder[i] };
}

// list looks at the list beside the dial: all of it on one screen, what each lesson is
// about in the room kept for it, and each leading line at its row.
async function list(context, edition, label, lessons, ledger) {
	const page = await context.newPage();
	await page.clock.setFixedTime(lessons[0].from - 3 * day);
	await page.goto(edition.url('index.html'));
	const boxes = () => page.evaluate(() => [...document.querySelectorAll('.lesson-list > li')].map((item) => [item, ...item.querySelectorAll('a, small')].map((element) => element.getBoundingClientRect()).filter(({ height }) => height).map(({ top, bottom, left, right }) => ({ top, bottom, left, right }))));
	const rows = await boxes();
	const out = rows.flatMap((row, i) => (row.some(({ top, bottom, right }) => top < 0 || bottom > desk.height || right > desk.width) ? [`${lessons[i].page} ends at ${row[0].bottom.toFixed(0)} px`] : []));
	ledger.check(label, 'cover shows all lessons', lessons.length > oneScreen ? [] : out);

	const strays = await page.evaluate(() => {
		const found = [];
		const lines = [...document.querySelectorAll('.fan-dial a')].filter((line) => line.getClientRects().length);
		document.querySelectorAll('.lesson-list > li').forEach((item, i) => {
			const leader = lines[i]?.querySelector('.leader');
			if (lines[i]?.getAttribute('href') !== item.querySelector('a').getAttribute('href')) return found.push(`line ${i + 1} leads to ${lines[i]?.getAttribute('href')}`);
			const end = leader.getPointAtLength(leader.getTotalLength()).matrixTransform(leader.getScreenCTM());
			const box = item.getBoundingClientRect();
			const aside = Math.min(Math.abs(end.x - box.left), Math.abs(end.x - box.right));
			if (aside > 3 || Math.abs(end.y - (box.top + box.bottom) / 2) > 3) found.push(`the line of lesson ${i + 1} ends ${aside.toFixed(0)} px beside its row and ${(end.y - (box.top + box.bottom) / 2).toFixed(0)} px below its middle`);
		});
		return found;
	});
	ledger.check(label, 'cover leads to its rows', strays);

	const found = [];
	const seen = () => page.evaluate(() => [...document.querySelectorAll('.summary')].map((summary) => {
		const words = document.createRange();
		words.selectNodeContents(summary);
		const [box, room] = [words.getBoundingClientRect(), summary.getBoundingClientRect()];
		return { is: getComputedStyle(summary).opacity === '1', fits: !summary.textContent || (box.bottom <= room.bottom + 1 && box.right <= room.right + 1), under: [...document.querySelectorAll('.lesson-list > li')].every((item) => item.getBoundingClientRect().bottom <= room.top + 1) };
	}));
	const ways = { pointer: (link) => link.hover(), focus: (link) => link.focus() };
	for (const [way, reach] of Object.entries(ways)) {
		await page.mouse.move(0, 0);
		for (const [i, { page: name }] of lessons.entries()) {
			await reach(page.locator('.lesson-list > li > a').nth(i));
			const all = await seen();
			const which = all.flatMap(({ is }, j) => (is ? [j] : []));
			if (which.join() !== String(i)) found.push(`${way} on ${name} shows ${which.map((j) => lessons[j].page)}`);
			if (!all[i].fits || !all[i].under) found.push(`${way} on ${name}: what it says does not fit into its room`);
		}
	}
	if (JSON.stringify(await boxes()) !== JSON.stringify(rows)) found.push('the list has moved');
	ledger.check(label, 'cover says what a lesson is', [...new Set(found)]);
	await page.close();
}

// late lets the script come after the page is painted, as it may from a slow host.
async function late(context, edition, label, lessons, ledger) {
	const page = await context.newPage();
	const name = 'noonbook.js';
	await page.clock.setFixedTime(lessons[0].from - 10 * minute);
	const script = readFileSync(path.join(edition.folder, name), 'utf8');
	await page.route(`**/${name}`, (route) => route.fulfill({ contentType: 'text/javascript', body: '' }));
	await page.goto(edition.url('index.html'));
	const empty = await page.evaluate(async () => {
		await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
		return document.querySelector('.day-panel').childElementCount === 0;
	});
	await page.evaluate(script);
	const filled = await page.evaluate(() => document.querySelector('.day-panel').childElementCount > 0);
	ledger.check(label, 'cover stands still', [...(empty && filled ? [] : ['the script did not come late']), ...(await moved(page))], 'late script');
	await page.close();
}

// sheet prints the cover on the day of a lesson: one sheet with every lesson,
// and nothing of the day, which is over when the paper is read.
async function sheet(context, edition, label, lessons, ledger) {
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-cover-'));
	const page = await context.newPage();
	try {
		await page.clock.setFixedTime(lessons[0].from + minute);
		await page.goto(edition.url('index.html'));
		const state = await page.evaluate(() => document.querySelector('.day-state').textContent);
		const file = path.join(folder, 'cover.pdf');
		await page.pdf({ path: file, preferCSSPageSize: true, width: '180mm', height: '180mm' });
		const squeezed = (text) => text.replace(/\s+/g, '');
		const sheets = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
		const words = squeezed(sheets.join(''));
		const found = sheets.length === 1 ? [] : [`${sheets.length} sheets`];
		for (const { title } of lessons) if (!words.includes(squeezed(title))) found.push(`"${title}" is not on it`);
		if (words.includes(squeezed(state))) found.push(`it says "${state}"`);
		ledger.check(label, 'cover on one sheet', found);
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}

// bound looks at the handbook in one file, which has the same first screen.
async function bound(context, edition, label, lessons, ledger) {
	const file = path.join(path.dirname(edition.folder), `${edition.name}.html`);
	if (!existsSync(file)) return ledger.check(label, 'cover in one file', [`${file} is missing: press with --single`]);
	const page = await context.newPage();
	await page.clock.setFixedTime(lessons[0].from + minute);
	await page.goto(`file://${file}`);
	const seen = await page.evaluate(shown);
	const loose = await page.evaluate(() => [...document.querySelectorAll('.day-panel a')].map((link) => link.getAttribute('href')).filter((href) => !href.startsWith('#') || !document.getElementById(href.slice(1))));
	const inHead = await page.evaluate(() => document.querySelector('.cover-head > .finder') !== null);
	const stem = lessons[0].page.replace('.html', '');
	const found = loose.map((href) => `${href} leads nowhere`);
	if (seen.page !== `#${stem}` || seen.kind !== 'is-now' || seen.shadows.join() !== `#${stem}`) found.push(`on the day of ${stem} it shows ${seen.page}, ${seen.kind}, and the shadow on ${seen.shadows}`);
	if (seen.links.some(({ href }) => href.startsWith('#room-'))) found.push('it leads to a page for a projector, which is not in it');
	if (!inHead) found.push('the finder is not in the head of the cover');
	ledger.check(`${edition.name}.html`, 'cover in one file', found);
	return page.close();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
	const [folder] = process.argv.slice(2);
	if (!folder || !existsSync(path.join(folder, 'handbook-staff', 'index.html'))) {
		console.error('use: node cover.mjs FOLDER, where FOLDER holds handbook/ and handbook-staff/, pressed with --single');
		process.exit(2);
	}
	const ledger = new Ledger();
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
	try {
		for (const name of ['handbook', 'handbook-staff']) await cover(browser, new Edition(folder, name), name === 'handbook-staff', ledger);
	} finally {
		await browser.close();
	}
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
