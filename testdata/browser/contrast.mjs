// Contrast, measured on pictures of the page. axe-core cannot judge words that
// stand on a gradient, and reads the wrong property of words in drawings (colour, not
// fill). For these the page is pictured twice, with its words and without, and the
// colour of the words is held against what lies below them.

import { colourAt, differ, take } from './pixels.mjs';

// WCAG 2.2, success criterion 1.4.3: 4.5 to 1, and 3 to 1 for large words, which are
// 18 points (24 px) or 14 points (18.66 px) bold.
const need = { small: 4.5, large: 3 };

// A word may cross a thin line of a drawing. So a fifth of its pixels may lie on
// something with less contrast. (Our own bound; WCAG leaves this open.)
const mayCross = 0.2;

// A picture shows so many px of a page, more only where a drawing or a table is taller. What
// stays at the lower edge of the screen has room below them.
const tall = 2400;
const below = 200;

// contrast measures the words below the elements that the selectors name and the
// words of all drawings. It gives the number of measured runs of words and a finding
// for each that is too faint.
export async function contrast(page, camera, selectors) {
	// A table that goes on beyond the edge of its frame is measured laid open; that words
	// can be read on the shade at that edge is tested with the style sheet.
	const open = await page.addStyleTag({ content: '.table-frame { overflow: visible }' });
	const { width, height } = page.viewportSize();
	await page.setViewportSize({ width, height: tall + below });
	const groups = await page.evaluate(gatherWords, selectors);
	const bands = bandsOf(groups);
	await page.setViewportSize({ width, height: Math.max(tall, ...bands.map(({ clip }) => clip.height)) + below });
	// Once in several thousand pictures a clip was not in view at the first look, and it is
	// not known why: each such look is told with its measures. Nothing is pictured that is
	// not in view, and what never comes is a finding.
	const late = [];
	const picture = async ({ clip }) => {
		for (let look = 0; look < 5; look++) {
			const outside = await page.evaluate(bringIntoView, clip);
			if (!outside) return take(camera, clip);
			late.push(outside);
			await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
		}
		return null;
	};
	const withWords = [];
	for (const band of bands) withWords.push(await picture(band));
	// An outline of the ground's colour round the words is ground, and stays.
	const hide = await page.addStyleTag({ content: '* { -webkit-text-fill-color: transparent !important } svg text, svg tspan { fill: transparent !important }' });
	const findings = [];
	let measured = 0;
	for (const [i, band] of bands.entries()) {
		const without = await picture(band);
		measured += band.runs.length;
		if (!without || !withWords[i]) findings.push(`"${band.runs[0].text}" and what is round it does not come into view: ${late.at(-1)}`);
		else findings.push(...band.runs.map((run) => judge(run, withWords[i], without)).filter(Boolean));
	}
	for (const style of [hide, open]) await style.evaluate((element) => element.remove());
	await page.setViewportSize({ width, height });
	return { measured, findings, late };
}

// bandsOf parts a page, from the top, into bands of whole groups, so that a few pictures
// show them all: each picture costs the browser the whole viewport.
function bandsOf(groups) {
	const bands = [];
	for (const { clip, runs } of groups.toSorted((a, b) => a.clip.y - b.clip.y)) {
		const last = bands.at(-1)?.clip;
		const joined = last && {
			x: Math.min(last.x, clip.x),
			y: last.y,
			width: Math.max(last.x + last.width, clip.x + clip.width) - Math.min(last.x, clip.x),
			height: Math.max(last.y + last.height, clip.y + clip.height) - last.y,
		};
		if (joined && joined.height <= tall) bands.at(-1).clip = joined;
		else bands.push({ clip, runs: [] });
		bands.at(-1).runs.push(...runs);
	}
	for (const { clip, runs } of bands) {
		for (const run of runs) run.boxes = run.boxes.map((box) => ({ ...box, x: box.x - clip.x, y: box.y - clip.y }));
	}
	return bands;
}

function judge(run, withWords, without) {
	const least = run.px >= 24 || (run.px >= 18.66 && run.weight >= 700) ? need.large : need.small;
	const inside = pixelsOf(run.boxes, without);
	const inked = inside.filter((i) => differ(withWords, without, i));
	// Words that leave no trace may be of the colour of their ground.
	const below = inked.length > 0 ? inked : inside;
	if (below.length === 0) return `"${run.text}" cannot be measured: it has no pixels`;
	const faint = faintGrounds(run.colour, below.map((i) => colourAt(without, i)), least);
	if (faint.length <= mayCross * below.length) return '';
	const middle = faint.sort((a, b) => a - b)[faint.length >> 1];
	return `"${run.text}" at ${run.where}: ${middle.toFixed(2)} to 1 under ${Math.round((100 * faint.length) / below.length)}% of it, less than ${least}`;
}

function faintGrounds(colour, grounds, least) {
	const known = new Map(); // few grounds differ
	const faint = [];
	for (const ground of grounds) {
		if (!known.has(ground)) known.set(ground, ratio(colour, [ground >> 16, (ground >> 8) & 255, ground & 255]));
		if (known.get(ground) < least) faint.push(known.get(ground));
	}
	return faint;
}

function pixelsOf(boxes, { width, height }) {
	const pixels = [];
	for (const box of boxes) {
		const right = Math.min(width, box.x + box.width);
		const bottom = Math.min(height, box.y + box.height);
		for (let y = Math.max(0, Math.floor(box.y)); y < bottom; y++) {
			for (let x = Math.max(0, Math.floor(box.x)); x < right; x++) pixels.push(y * width + x);
		}
	}
	return pixels;
}

// ratio is the contrast ratio of WCAG 2.2 (definition of "contrast ratio"). A colour
// that lets its ground through is mixed with it first.
function ratio([r, g, b, alpha], ground) {
	const mixed = [r, g, b].map((part, i) => part * alpha + ground[i] * (1 - alpha));
	const [light, dark] = [luminance(mixed), luminance(ground)].sort((a, b) => b - a);
	return (light + 0.05) / (dark + 0.05);
}

// luminance is the relative luminance of WCAG 2.2.
function luminance(colour) {
	const [r, g, b] = [...colour].map((part) => {
		const s = part / 255;
		return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

// bringIntoView runs in the page. It gives '' where all of the clip can be seen, else
// what stands in its way.
function bringIntoView({ x, y, width, height }) {
	scrollTo({ left: x, top: y, behavior: 'instant' });
	const pixel = 1; // a clip is whole pixels, and so is the way that a page scrolls
	const inside = (from, length, start, room) => start <= from + pixel && from + length <= start + room + pixel;
	if (inside(x, width, scrollX, innerWidth) && inside(y, height, scrollY, innerHeight)) return '';
	const { scrollWidth, scrollHeight } = document.documentElement;
	return JSON.stringify({ clip: { x, y, width, height }, scrollX, scrollY, innerWidth, innerHeight, scrollWidth, scrollHeight });
}

// gatherWords runs in the page. A run is a text node; runs are grouped by the drawing,
// table or element that holds them, which is pictured whole. Boxes are measured from the
// corner of the page.
function gatherWords(selectors) {
	const pen = Object.assign(document.createElement('canvas'), { width: 1, height: 1 }).getContext('2d', { willReadFrequently: true });
	const rgba = (colour, opacity) => {
		pen.clearRect(0, 0, 1, 1);
		pen.fillStyle = colour;
		pen.fillRect(0, 0, 1, 1);
		const [r, g, b, a] = pen.getImageData(0, 0, 1, 1).data;
		return [r, g, b, (a / 255) * opacity];
	};
	const opacityOf = (element) => {
		let opacity = 1;
		for (let up = element; up; up = up.parentElement) opacity *= Number(getComputedStyle(up).opacity);
		return opacity;
	};
	// framed tells whether a box is within what shows of a drawing in a drawing.
	const framed = (part, box) => {
		const corner = (x, y) => new DOMPoint(x, y).matrixTransform(part.parentElement.getScreenCTM());
		const { x, y, width, height } = part;
		const [from, to] = [corner(x.baseVal.value, y.baseVal.value), corner(x.baseVal.value + width.baseVal.value, y.baseVal.value + height.baseVal.value)];
		return box.left >= from.x && box.right <= to.x && box.top >= from.y && box.bottom <= to.y;
	};
	const groups = new Map();
	const seen = new Set();
	const addRun = (node) => {
		const element = node.parentElement;
		const drawn = element.closest('svg');
		const style = getComputedStyle(element);
		// Of the two sets of labels that a drawing has, one is shown.
		if (seen.has(node) || !node.data.trim() || !element.checkVisibility({ visibilityProperty: true }) || element.getClientRects().length === 0) return;
		seen.add(node);
		// A sheet is a drawing with a part of a poster in it, which it cuts off at its frame.
		const part = element.closest('svg svg');
		if (part && !framed(part, element.getBoundingClientRect())) return;
		const range = document.createRange();
		range.selectNodeContents(node);
		const boxes = drawn ? [element.getBoundingClientRect()] : [...range.getClientRects()];
		const scale = drawn ? (drawn.getScreenCTM()?.a ?? 1) : 1;
		const holder = part?.parentElement.closest('svg') ?? drawn ?? element.closest('table') ?? element;
		const box = holder.getBoundingClientRect();
		const x = Math.max(0, Math.floor(box.left + scrollX));
		const y = Math.max(0, Math.floor(box.top + scrollY));
		if (!groups.has(holder)) groups.set(holder, { clip: { x, y, width: Math.ceil(box.right + scrollX) - x, height: Math.ceil(box.bottom + scrollY) - y }, runs: [] });
		groups.get(holder).runs.push({
			text: node.data.trim().slice(0, 30),
			where: `${holder.localName}${holder.getAttribute('class') ? `.${holder.getAttribute('class').trim().replace(/\s+/g, '.')}` : ''}`,
			px: parseFloat(style.fontSize) * scale,
			weight: Number(style.fontWeight),
			colour: rgba(drawn ? style.fill : style.color, opacityOf(element) * (drawn ? Number(style.fillOpacity) : 1)),
			boxes: boxes.map((b) => ({ x: b.left + scrollX, y: b.top + scrollY, width: b.width, height: b.height })),
		});
	};
	const roots = new Set(document.querySelectorAll('svg text'));
	for (const selector of selectors) roots.add(document.querySelector(selector));
	for (const root of roots) {
		const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
		while (walker.nextNode()) addRun(walker.currentNode);
	}
	return [...groups.values()].filter(({ clip }) => clip.width > 0 && clip.height > 0);
}
