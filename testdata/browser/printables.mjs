// Prints the dial's face and gnomon to PDF in a browser and measures them there.
//
//	node printables.mjs FOLDER letter|a4 LATITUDE STYLE [1|2]
//
// FOLDER holds a pressed handbook-staff/ for a school on that paper, at that latitude in
// degrees, with a style that long in millimetres, of one piece or of a pair. What ought to be there is worked
// out here from the formula of the horizontal dial and the right triangle; nothing
// is asked of the page. Exit 0: all within limits; 1: something is off; 2: wrong use.

import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { sizes } from './paper.mjs';

// The limits of the project: half the width of a pencil line, and what nobody can
// read off a protractor.
const withinMillimetres = 0.2;
const withinDegrees = 0.1;

const [folder, size, latitudeText, styleText, piecesText = '1'] = process.argv.slice(2);
const latitude = Number(latitudeText), style = Number(styleText);
if (!folder || !sizes[size] || !Number.isFinite(latitude) || !(style > 0) || !['1', '2'].includes(piecesText)) {
	console.error('use: node printables.mjs FOLDER letter|a4 LATITUDE STYLE [1|2]');
	process.exit(2);
}
for (const name of ['print-dial-face.html', 'print-dial-gnomon.html']) {
	if (!existsSync(path.join(folder, 'handbook-staff', name))) {
		console.error(`${folder} holds no handbook-staff/${name}`);
		process.exit(2);
	}
}

const radians = (degrees) => (degrees * Math.PI) / 180;
const degrees = (angle) => (angle * 180) / Math.PI;
let failures = 0;
const worst = { mm: 0, deg: 0 };

function check(what, got, want, unit) {
	const off = Math.abs(got - want);
	worst[unit] = Math.max(worst[unit], Number.isNaN(off) ? Infinity : off);
	if (off <= (unit === 'mm' ? withinMillimetres : withinDegrees)) return;
	failures++;
	console.log(`${size}: ${what} is ${got.toFixed(3)} ${unit}, want ${want.toFixed(3)} ${unit}`);
}

// segments returns the straight strokes of the first page of a PDF in millimetres,
// y down, by poppler's own drawing of it.
function segments(file) {
	const svg = execFileSync('pdftocairo', ['-svg', '-f', '1', '-l', '1', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
	const found = [];
	for (const [tag] of svg.matchAll(/<path\b[^>]*>/g)) {
		if (!/stroke-width[=:]/.test(tag)) continue; // letters are filled
		const matrix = tag.match(/transform="matrix\(([^)]*)\)"/)?.[1].split(/[ ,]+/).map(Number) ?? [1, 0, 0, 1, 0, 0];
		const place = (x, y) => ({
			x: ((matrix[0] * x + matrix[2] * y + matrix[4]) * 25.4) / 72,
			y: ((matrix[1] * x + matrix[3] * y + matrix[5]) * 25.4) / 72,
		});
		let last, begin;
		for (const [, letter, numbers] of tag.match(/ d="([^"]*)"/)[1].matchAll(/([MLCZ])([^MLCZ]*)/g)) {
			const n = numbers.trim().split(/[ ,]+/).map(Number);
			const next = letter === 'Z' ? begin : place(n.at(-2), n.at(-1));
			if (letter === 'M') begin = next;
			if ((letter === 'L' || letter === 'Z') && last) found.push(segment(last, next));
			last = next;
		}
	}
	return found;
}

function segment(a, b) {
	return { a, b, length: Math.hypot(b.x - a.x, b.y - a.y), up: degrees(Math.atan2(b.x - a.x, a.y - b.y)) };
}

// apart is the angle between the directions of two lines, 0 to 90 degrees.
function apart(one, other) {
	const turn = Math.abs(one - other) % 180;
	return Math.min(turn, 180 - turn);
}

function distance(point, s) {
	return Math.abs((s.b.x - s.a.x) * (s.a.y - point.y) - (s.a.x - point.x) * (s.b.y - s.a.y)) / s.length;
}

// The bar at the foot of the paper is its lowest long level stroke.
function bar(all) {
	const level = all.filter((s) => apart(s.up, 90) < 0.01 && s.length > 60);
	return level.reduce((lowest, s) => (s.a.y > lowest.a.y ? s : lowest), { a: { y: -1 }, length: NaN });
}

function measureFace(all) {
	// The noon line is the longest stroke straight up that ends within the plate, at
	// the toe: the edges of the plate and its bands are as long or longer, but form
	// corners with level strokes.
	const corner = (p) => all.some((s) => s.length > 60 && apart(s.up, 90) < 0.01 && [s.a, s.b].some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.3));
	const upright = all.filter((s) => apart(s.up, 0) < 0.01 && s.length > 60 && !corner(s.a) && !corner(s.b));
	const noon = upright.reduce((longest, s) => (s.length > longest.length ? s : longest), { length: 0 });
	if (noon.length === 0) {
		failures++;
		console.log(`${size}: the face has no noon line`);
		return;
	}
	const toe = noon.a.y > noon.b.y ? noon.a : noon.b;
	for (let hour = -6; hour <= 6; hour++) {
		const h = radians(15 * hour);
		const line = degrees(Math.atan2(Math.sin(radians(Math.abs(latitude))) * Math.sin(h), Math.cos(h))) * Math.sign(latitude);
		const near = all.filter((s) => s.length > 25 && distance(toe, s) < 1 && apart(s.up, line) < 1.5);
		const best = near.sort((p, q) => apart(p.up, line) - apart(q.up, line))[0];
		check(`line ${hour} h from noon, angle`, best ? line + apart(best.up, line) : NaN, line, 'deg');
		check(`line ${hour} h from noon, from the toe`, best ? distance(toe, best) : NaN, 0, 'mm');
	}
}

// The base is a fold, drawn in dashes that a PDF keeps one by one; it runs from the
// sharp end of the style to the foot of the upright side. The second of a pair is mirrored.
// Single pieces lie head to foot: every stroke as long as a style and as steep is one, and
// its tip is the end that an upright side begins at.
function measureGnomon(all) {
	const angle = radians(Math.abs(latitude));
	const gap = (p, q) => Math.hypot(p.x - q.x, p.y - q.y);
	for (const side of [1, -1].slice(0, Number(piecesText))) {
		const slope = side * (90 - Math.abs(latitude));
		const steep = all.filter((s) => apart(s.up, slope) < 2 && s.length > style / 2);
		const longest = Math.max(...steep.map((s) => s.length), 0);
		const edges = steep.filter((s) => s.length > longest - 1);
		check(`styles ${side}`, edges.length > 0 ? 0 : NaN, 0, 'mm');
		for (const [i, edge] of edges.entries()) {
			const name = `${side}, ${i + 1} of ${edges.length}`;
			check(`style ${name}, length`, edge.length, style, 'mm');
			check(`style ${name}, angle`, slope + apart(edge.up, slope), slope, 'deg');
			const meetings = all.filter((s) => apart(s.up, 0) < 1 && s.length > 20)
				.flatMap((s) => [[s.a, s.b], [s.b, s.a]].flatMap(([head, foot]) => [[edge.a, edge.b], [edge.b, edge.a]].map(([tip, toe]) => ({ upright: s, foot, toe, tip, head, off: gap(tip, head) }))));
			const best = meetings.sort((p, q) => p.off - q.off)[0];
			check(`upright side ${name}, from the tip`, best?.off ?? NaN, 0, 'mm');
			check(`upright side ${name}, length`, best?.upright.length ?? NaN, style * Math.sin(angle), 'mm');
			check(`upright side ${name}, angle`, best ? apart(best.upright.up, 0) : NaN, 0, 'deg');
			check(`base ${name}, length`, best ? gap(best.foot, best.toe) : NaN, style * Math.cos(angle), 'mm');
		}
	}
}

const scratch = mkdtempSync(path.join(tmpdir(), 'noonbook-print-'));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
try {
	const page = await browser.newPage();
	for (const [name, measure] of [['print-dial-face', measureFace], ['print-dial-gnomon', measureGnomon]]) {
		await page.goto(`file://${path.resolve(folder, 'handbook-staff', `${name}.html`)}`);
		const file = path.join(scratch, `${name}.pdf`);
		await page.pdf({ path: file, preferCSSPageSize: true });
		const [, width, height] = execFileSync('pdfinfo', [file], { encoding: 'utf8' }).match(/Page size: +([\d.]+) x ([\d.]+)/).map(Number);
		const paper = [width, height].sort((a, b) => a - b);
		sizes[size].forEach((points, i) => check(`${name}, paper`, (paper[i] * 25.4) / 72, (points * 25.4) / 72, 'mm'));
		const all = segments(file);
		check(`${name}, bar`, bar(all).length, 100, 'mm');
		measure(all);
		// "Fit to page" is caught by the bar: its label still says 100 mm.
		await page.pdf({ path: file, preferCSSPageSize: true, scale: 0.94 });
		const shrunk = bar(segments(file)).length;
		check(`${name}, bar of a print at 94 %`, shrunk, 94, 'mm');
		if (!/100 mm/.test(execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }))) {
			failures++;
			console.log(`${size}: ${name}: the bar does not say that it is 100 mm long`);
		}
	}
} finally {
	await browser.close();
	rmSync(scratch, { recursive: true });
}
console.log(`${size}: ${failures} off; worst ${worst.mm.toFixed(3)} mm and ${worst.deg.toFixed(3)}°`);
process.exitCode = failures > 0 ? 1 : 0;
