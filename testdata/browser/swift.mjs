// Swift and still: how soon a page opened from a file shows something, by Chromium's
// own trace; that nothing on it moves afterwards; and how many bytes it has.

import { statSync, readFileSync } from 'node:fs';

// The limits.
const firstPaint = 200; // ms
const largest = 200_000; // bytes, pictures left out

// Other work on the machine makes a page slower, never faster, so the best of a few
// runs is what the page itself takes.
const runs = 8;

export async function swift(browser, context, edition, names, ledger) {
	const page = await context.newPage();
	for (const name of names) {
		let best = Infinity;
		for (let run = 0; run < runs && best >= firstPaint; run++) {
			await page.goto('about:blank');
			await browser.startTracing(page, { categories: ['loading', 'blink.user_timing', 'devtools.timeline'] });
			await page.goto(edition.url(name), { waitUntil: 'load' });
			await page.waitForFunction(() => performance.getEntriesByType('paint').length > 0);
			best = Math.min(best, paintOf(JSON.parse((await browser.stopTracing()).toString()), edition.url(name)));
		}
		ledger.check(edition.label(name), 'first paint', best < firstPaint ? [] : [`after ${best.toFixed(0)} ms, the best of ${runs}`]);
		ledger.most('first paint, ms', best);
	}
	await page.close();
}

// paintOf reads the time from the start of the navigation to the first paint.
function paintOf({ traceEvents }, url) {
	const start = traceEvents.filter((e) => e.name === 'navigationStart' && e.args?.data?.documentLoaderURL === url).at(-1);
	const paint = traceEvents.find((e) => e.name === 'firstPaint' && e.args?.data?.navigationId === start?.args.data.navigationId);
	return start && paint ? (paint.ts - start.ts) / 1000 : Infinity;
}

export function weight(edition, ledger) {
	for (const name of edition.pages) {
		const text = readFileSync(edition.file(name), 'utf8').replace(/<svg.*?<\/svg>/gs, '');
		const bytes = Buffer.byteLength(text);
		ledger.check(edition.label(name), 'weight', bytes <= largest ? [] : [`${bytes} bytes without pictures, more than ${largest}`]);
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
