// The margin of a lesson, and of every other page with text: at 1440 px it is nowhere empty
// for longer than a screen, no two pieces of it meet, none leaves it, the mark of a caution
// is beside it, and the foot of the page is below the last words. The limits are ours.
//
//	node margin.mjs FOLDER
//
// run alone prints for every such page of both editions how many screens it has and the
// longest stretch of its margin without words or a picture. Exit 0: all within the limits;
// 1: not; 2: wrong use.

import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const kinds = ['margin filled', 'margin apart', 'cautions marked', 'horizon in view'];

const screen = { width: 1440, height: 900 };
const longestEmpty = screen.height;

// margin looks at every page of the edition that has a margin, and tells what it measured.
export async function margin(context, edition, ledger, tell = () => {}) {
	const page = await context.newPage();
	await page.setViewportSize(screen);
	for (const name of edition.pages) {
		if (/^(print|room|pupil|card|day)-/.test(name)) continue;
		await page.goto(edition.url(name));
		if (!(await page.$('article'))) continue;
		const label = edition.label(name);
		const { screens, empty, at, meeting, astray } = await page.evaluate(lookedAt);
		tell(`${label}: ${screens.toFixed(2)} screens, margin empty for ${Math.round(empty)} px from ${Math.round(at)} px`);
		ledger.check(label, 'margin filled', empty <= longestEmpty ? [] : [`nothing for ${Math.round(empty)} px from ${Math.round(at)} px, more than ${longestEmpty}`]);
		ledger.check(label, 'margin apart', meeting);
		ledger.check(label, 'cautions marked', astray);
		ledger.check(label, 'horizon in view', await page.evaluate(horizonWrong));
	}
	await page.close();
}

// lookedAt runs in the page. What stays in view while the page moves does not count, nor
// do rules and the ground that the sections begin with. The link to the file of a long
// table goes along beside the table, from its head to its foot, and counts so far.
function lookedAt() {
	const article = document.querySelector('article');
	const line = article.getBoundingClientRect().left;
	const { top, bottom } = article.getBoundingClientRect();
	const pieces = []; // of words and pictures: where they are, and to which piece they belong
	const add = (box, of) => {
		if (box.width > 0 && box.height > 0 && box.left < line) pieces.push({ left: box.left, right: box.right, top: box.top, bottom: box.bottom, of });
	};
	const owner = (element) => element.closest('.lesson-number, .glance, .beside, .side-label, .print-link, .table-file, .note, h2, h3, summary') ?? element;
	const walk = document.createTreeWalker(article, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
	while (walk.nextNode()) {
		const node = walk.currentNode;
		const element = node.nodeType === Node.TEXT_NODE ? node.parentElement : node;
		// The part of a poster on one sheet is a drawing within the sheet, which cuts it off.
		if (element.closest('.horizon, details:not([open]) > :not(summary), svg svg')) continue;
		if (node.nodeType === Node.TEXT_NODE) {
			if (node.data.trim() === '') continue;
			const range = document.createRange();
			range.selectNodeContents(node);
			const cut = getComputedStyle(element).overflow === 'hidden' ? element.getBoundingClientRect().bottom : Infinity;
			for (const box of range.getClientRects()) {
				if (box.top < cut) add(box, owner(element));
			}
		} else if (['svg', 'img'].includes(node.localName)) add(node.getBoundingClientRect(), owner(node));
	}
	for (const element of article.querySelectorAll('[data-letter]')) { // a letter of the glossary is drawn by the style sheet
		const letter = getComputedStyle(element, '::before');
		const { left, top } = element.getBoundingClientRect();
		if (letter.content !== 'none') add(new DOMRect(left + parseFloat(letter.left), top, parseFloat(letter.width) - parseFloat(letter.paddingRight), parseFloat(letter.height)), element);
	}
	const name = (element) => `${element.localName}.${element.className} ${element.textContent.trim().slice(0, 24)}`;
	const meeting = [];
	const wide = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16; // a tolerance of a pixel grows with the page
	for (const [i, a] of pieces.entries()) {
		if (a.right > line + wide) meeting.push(`${name(a.of)} crosses the line by ${Math.round(a.right - line)} px`);
		for (const b of pieces.slice(i + 1)) {
			if (a.of === b.of) continue;
			if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > wide && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > wide) meeting.push(`${name(a.of)} meets ${name(b.of)}`);
		}
	}
	for (const along of article.querySelectorAll('.table-file')) {
		if (getComputedStyle(along).position === 'sticky') add({ ...along.getBoundingClientRect().toJSON(), bottom: along.parentElement.getBoundingClientRect().bottom }, along);
	}
	// The mark of a caution begins beside it, whatever else the margin has there; that of an
	// answer or a note, which may be a line long, no more than half a line below its end.
	const astray = [...article.querySelectorAll('.caution, .answer, .staff')].filter((caution) => {
		const mark = caution.querySelector('.side-label');
		const half = mark?.getBoundingClientRect().height / 2;
		return mark && mark.getBoundingClientRect().top > caution.getBoundingClientRect().bottom + (caution.matches('.caution') ? -half : half);
	}).map((caution) => `the mark is below ${caution.textContent.trim().slice(0, 40)}`);
	let empty = 0, at = 0, end = top;
	for (const box of [...pieces.sort((a, b) => a.top - b.top), { top: bottom, bottom }]) {
		if (box.top - end > empty) [empty, at] = [box.top - end, end + scrollY];
		end = Math.max(end, box.bottom);
	}
	return { screens: (document.querySelector('main').getBoundingClientRect().bottom + scrollY) / innerHeight, empty, at, meeting: [...new Set(meeting)].slice(0, 5), astray };
}

// horizonWrong runs in the page: halfway down, the piece that stays in view is in the
// window and in the margin; and it does not pull the foot over the last words.
function horizonWrong() {
	const horizon = document.querySelector('.horizon');
	if (!horizon) return ['there is none'];
	const wrong = [];
	const line = document.querySelector('article').getBoundingClientRect().left;
	scrollTo(0, (document.documentElement.scrollHeight - innerHeight) / 2);
	const box = horizon.getBoundingClientRect();
	if (box.height === 0 || box.bottom > innerHeight + 1 || box.top < 0) wrong.push(`halfway down the page it is at ${Math.round(box.top)} px of ${innerHeight}`);
	if (box.right > line + 1) wrong.push(`it crosses the line of the margin by ${Math.round(box.right - line)} px`);
	scrollTo(0, 0);
	const foot = document.querySelector('footer.page-width').getBoundingClientRect().top;
	for (const element of document.querySelectorAll('article > :not(.horizon), article section > *')) {
		if (element.getBoundingClientRect().bottom > foot + 1) wrong.push(`the foot begins above the end of ${element.textContent.trim().slice(0, 30)}`);
	}
	return wrong;
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
	const folder = process.argv[2];
	if (!folder) {
		console.error('use: node margin.mjs FOLDER');
		process.exit(2);
	}
	const { chromium } = await import('playwright-core');
	const { Edition } = await import('./edition.mjs');
	const { Ledger } = await import('./ledger.mjs');
	const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
	const ledger = new Ledger();
	for (const name of ['handbook', 'handbook-staff']) await margin(await browser.newContext({ offline: true, reducedMotion: 'reduce' }), new Edition(folder, name), ledger, console.log);
	await browser.close();
	process.exitCode = ledger.close(kinds) ? 0 : 1;
}
