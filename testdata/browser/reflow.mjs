// Reflow: at 320 CSS pixels (WCAG 2.2, success criterion 1.4.10) a page scrolls
// downwards only. What is wider scrolls in a frame of its own.

import { some } from './ledger.mjs';
import { moved } from './swift.mjs';

const width = 320;

export async function reflow(context, edition, ledger) {
	const page = await context.newPage();
	await page.setViewportSize({ width, height: 800 });
	for (const name of edition.own) {
		await page.goto(edition.url(name));
		ledger.check(edition.label(name), 'stillness', await moved(page), 'phone');
		const { widest, sticking } = await page.evaluate(whatSticksOut);
		const found = [];
		if (widest > width) found.push(`the document is ${widest} px wide: ${some(sticking)}`);
		else if (sticking.length > 0) found.push(`cut off at the edge: ${some(sticking)}`);
		ledger.check(edition.label(name), 'reflow', found);
	}
	await page.close();
}

// whatSticksOut runs in the page. It names the elements that reach past the right
// edge, apart from those inside a frame that scrolls, those whose parent is already
// named, and what a drawing cuts off itself: the part of a poster on one sheet is a
// drawing within the sheet, and its box is that of the whole poster.
function whatSticksOut() {
	for (const details of document.querySelectorAll('details')) details.open = true;
	const edge = document.documentElement.clientWidth;
	const scrolls = (element) => /auto|scroll/.test(getComputedStyle(element).overflowX);
	const framed = (element) => {
		for (let up = element.parentElement; up && up !== document.body; up = up.parentElement) {
			if (scrolls(up)) return true;
		}
		return false;
	};
	const named = new Set();
	const sticking = [];
	for (const element of document.body.querySelectorAll('*')) {
		const box = element.getBoundingClientRect();
		// Half a pixel: layout works in fractions, screens do not.
		if (box.width === 0 || box.right <= edge + 0.5 || framed(element) || element.closest('svg svg')) continue;
		named.add(element);
		if (named.has(element.parentElement)) continue;
		const kind = element.getAttribute('class');
		sticking.push(`${element.localName}${kind ? `.${kind.trim().replace(/\s+/g, '.')}` : ''} to ${Math.round(box.right)} px`);
	}
	return { widest: document.scrollingElement.scrollWidth, sticking };
}
