// Swift and still: how soon a page opened from a file shows something, by Chromium's
// own trace and beside an empty page; that nothing on it moves afterwards; and how
// many bytes it has.

import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

// How many times as long as an empty page of as many bytes a page may take until its
// first paint, and how many times all pages together may. Milliseconds would say more
// of the machine, and of what else it does, than of the page. Our own limits: all pages
// of the demo took 2.6 times as long where nothing else ran, 2.3 to 2.4 times on a busy
// machine, and 3.8 times there with a script that stopped each for 250 ms; a page alone
// took 5 times as long, and 7 times when it was disturbed.
const slowest = 8;
const together = 3.5;

// Bytes, pictures left out: our own limits. The list of all settings and placeholders, for
// whoever edits the handbook, grows with what there is.
const largest = (name) => (name === 'reference.html' ? 225_000 : 200_000);

// Each round opens the empty page and the page in turn. Medians of the first few count;
// where they are over the limit, more rounds tell a slow page from a busy machine.
const rounds = 3;
const mostRounds = 9;

export async function swift(browser, context, edition, names, ledger) {
	const page = await context.newPage();
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-empty-'));
	try {
		const empty = path.join(folder, 'empty.html');
		const all = names.map((name) => ({ name, own: [], empty: [] }));
		const turn = async ({ name, ...times }) => {
			writeFileSync(empty, emptyPage(statSync(edition.file(name)).size));
			times.empty.push(await firstPaint(browser, page, pathToFileURL(empty).href));
			times.own.push(await firstPaint(browser, page, edition.url(name)));
		};
		await turn({ name: names[0], own: [], empty: [] }); // not counted: the browser itself is still waking up
		let again = all;
		for (let round = 1; again.length > 0 && round <= mostRounds; round++) {
			for (const times of again) await turn(times);
			if (round >= rounds) again = ratio(...all) > together ? all : all.filter((times) => ratio(times) > slowest);
		}
		for (const times of all) ledger.check(edition.label(times.name), 'first paint', ratio(times) <= slowest ? [] : [inWords(times)]);
		ledger.check(edition.label(names[0]), 'first paint', ratio(...all) <= together ? [] : [inWords(...all)], 'all pages');
		const last = all.reduce((a, b) => (ratio(b) > ratio(a) ? b : a));
		ledger.note(`first paint: ${all.length > 1 ? `${all.length} pages ${inWords(...all)}; slowest, ` : ''}${edition.label(last.name)} ${inWords(last)}`);
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}

// emptyPage is a page that shows two words and has so many bytes.
function emptyPage(bytes) {
	const start = '<!doctype html><html lang="en"><meta charset="utf-8"><title>Empty</title><p>Empty page</p><!--';
	return start.padEnd(bytes - '-->'.length, ' ') + '-->';
}

async function firstPaint(browser, page, url) {
	await page.goto('about:blank');
	await browser.startTracing(page, { categories: ['loading', 'blink.user_timing', 'devtools.timeline'] });
	await page.goto(url, { waitUntil: 'load' });
	await page.waitForFunction(() => performance.getEntriesByType('paint').length > 0);
	return paintOf(JSON.parse((await browser.stopTracing()).toString()), url);
}

// paintOf reads the time in ms from the start of the navigation to the first paint.
function paintOf({ traceEvents }, url) {
	const start = traceEvents.filter((e) => e.name === 'navigationStart' && e.args?.data?.documentLoaderURL === url).at(-1);
	const paint = traceEvents.find((e) => e.name === 'firstPaint' && e.args?.data?.navigationId === start?.args.data.navigationId);
	if (!start || !paint) throw new Error(`the trace of ${url} holds no first paint`);
	return (paint.ts - start.ts) / 1000;
}

// sum adds the medians of the pages, of their own or of the empty ones.
const sum = (pages, which) => pages.reduce((ms, times) => ms + times[which].toSorted((a, b) => a - b)[times[which].length >> 1], 0);

const ratio = (...pages) => sum(pages, 'own') / sum(pages, 'empty');

function inWords(...pages) {
	return `after ${sum(pages, 'own').toFixed(0)} ms, ${ratio(...pages).toFixed(1)} times the ${sum(pages, 'empty').toFixed(0)} ms of empty pages with as many bytes`;
}

export function weight(edition, ledger) {
	for (const name of edition.pages) {
		const text = readFileSync(edition.file(name), 'utf8').replace(/<svg.*?<\/svg>/gs, '');
		const bytes = Buffer.byteLength(text);
		ledger.check(edition.label(name), 'weight', bytes <= largest(name) ? [] : [`${bytes} bytes without pictures, more than ${largest(name)}`]);
		ledger.most('page with its drawings, kB', statSync(edition.file(name)).size / 1000);
		ledger.most('page without them, kB', bytes / 1000);
	}
}

// watch makes every page of a context note what moves on it.
export function watch(context) {
	return context.addInitScript(() => {
		window.moved = [];
		new PerformanceObserver((list) => {
			for (const entry of list.getEntries()) {
				window.moved.push(`${entry.value.toFixed(4)}: ${entry.sources.map(({ node }) => node?.outerHTML?.slice(0, 60) ?? node?.nodeName).join(', ')}`);
			}
		}).observe({ type: 'layout-shift', buffered: true });
	});
}

// moved gives what has moved on a page since it was opened, and pictures that would
// move what is below them, were they slower.
export async function moved(page) {
	return page.evaluate(async () => {
		await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
		const sizeless = [...document.querySelectorAll('img:not([width][height])')].map((img) => `${img.getAttribute('src')} has no size`);
		return [...window.moved, ...sizeless];
	});
}
