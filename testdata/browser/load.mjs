// Opening: every page, scripts on and off. Nothing may go wrong, nothing may be
// fetched from outside the handbook, and every link and anchor must lead somewhere.

import { some } from './ledger.mjs';
import { broken, policy } from './policy.mjs';
import { moved } from './swift.mjs';

// load opens the pages of an edition in one context and enters what it finds.
export async function load(context, edition, hasScripts, ledger) {
	const setting = hasScripts ? 'scripts on' : 'scripts off';
	const page = await context.newPage();
	const seen = { errors: [], requests: [] };
	page.on('console', (message) => {
		if (message.type() === 'error') seen.errors.push(`${message.text()} ${message.location().url}`);
	});
	page.on('pageerror', (error) => seen.errors.push(String(error)));
	page.on('requestfailed', (request) => seen.errors.push(`${request.url()} ${request.failure()?.errorText}`));
	page.on('request', (request) => seen.requests.push(request.url()));

	const read = new Map();
	for (const name of edition.pages) {
		seen.errors = [];
		seen.requests = [];
		await page.goto(edition.url(name), { waitUntil: 'load' });
		const shape = await page.evaluate(shapeOfPage);
		read.set(name, shape);

		const label = edition.label(name);
		ledger.check(label, 'errors', seen.errors, setting);
		ledger.check(label, 'requests', strangers(seen.requests, edition), setting);
		ledger.check(label, 'title and heading', titleAndHeading(shape), setting);
		ledger.check(label, 'policy', await policy(page), setting);
		if (hasScripts) ledger.check(label, 'stillness', await moved(page), 'desktop');
	}
	for (const [name, shape] of read) {
		ledger.check(edition.label(name), 'links', brokenLinks(shape, edition, read, ledger), setting);
	}
	if (hasScripts) ledger.check(edition.label(edition.pages[0]), 'policy', await broken(page), 'tried');
	await page.close();
	return read;
}

function strangers(requests, edition) {
	if (requests.length === 0) return ['no request was seen, not even for the page: the watch is broken'];
	return requests.filter((url) => !edition.holds(url)).map((url) => `asks for ${url}`);
}

function titleAndHeading(shape) {
	const found = [];
	if (!shape.title.trim()) found.push('no title');
	if (shape.headings.length !== 1) found.push(`${shape.headings.length} h1: ${some(shape.headings)}`);
	else if (!shape.headings[0].trim()) found.push('empty h1');
	return found;
}

function brokenLinks(shape, edition, read, ledger) {
	const found = new Set();
	for (const { written, url, isLink } of shape.targets) {
		if (isLink && /^(https?|mailto|tel):/.test(url)) {
			ledger.note(`a link leaves the handbook and is not followed: ${written}`);
		} else if (!isLink && url.startsWith('data:')) {
			continue; // carried in the page itself
		} else if (!edition.holds(url)) {
			found.add(`"${written}" leads to no file of this edition`);
		} else if (isLink && url.includes('#')) {
			const anchor = decodeURIComponent(new URL(url).hash.slice(1));
			const there = read.get(edition.pageOf(url));
			if (!anchor) found.add(`"${written}" has an empty anchor`);
			else if (!there?.anchors.includes(anchor)) found.add(`"${written}" has no such anchor`);
		}
	}
	return [...found];
}

// shapeOfPage runs in the page. It reads attributes through the DOM, so that it
// sees what scripts made as well as what was written.
function shapeOfPage() {
	const targets = [];
	const add = (written, isLink) => targets.push({ written, url: new URL(written, document.baseURI).href, isLink });
	for (const attribute of ['href', 'xlink:href', 'src', 'poster', 'data', 'action', 'cite']) {
		for (const element of document.querySelectorAll(`[${CSS.escape(attribute)}]`)) {
			const isLink = /^(a|area)$/i.test(element.localName) || attribute === 'cite';
			const inside = /^(use|textPath|[a-z]+Gradient|pattern)$/.test(element.localName);
			add(element.getAttribute(attribute), isLink || inside);
		}
	}
	for (const element of document.querySelectorAll('[srcset]')) {
		for (const one of element.getAttribute('srcset').split(',')) add(one.trim().split(/\s+/)[0], false);
	}
	return {
		title: document.title,
		headings: [...document.querySelectorAll('h1')].map((h) => h.textContent),
		anchors: [...document.querySelectorAll('[id]')].map((e) => e.id),
		targets,
	};
}
