// Measures the star wheel where it is cut and turned: disc and mask are printed to PDF
// by the browser, and pdftocairo (poppler) turns the PDF's own lines into numbers.
//
//	node wheel.mjs FOLDER LATITUDE LONGITUDE OFFSET
//
// FOLDER holds handbook/ with print-sky-wheel.html, made in 2027 for a school at that
// place, in degrees, whose standard clock is that many hours ahead of UTC; 20° or
// farther from the equator, where there is one face. What ought to be there is worked
// out here: sidereal time from its formula, stars from their catalogue places. Nothing
// is asked of the page. Exit 0: all within limits; 1: something is off; 2: wrong use.

import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { paths } from './paths.mjs';

// Half the width of a pencil line; a sixth of a day's step, and what 0.15 mm are at
// the rim.
const withinMillimetres = 0.2;
const withinDegrees = 0.15;

const disc = 93.5, mask = 82.5, map = 66; // radii of the pieces
const name = 'print-sky-wheel.html';
const [folder, latitudeText, longitudeText, offsetText] = process.argv.slice(2);
const [latitude, longitude, offset] = [latitudeText, longitudeText, offsetText].map(Number);
if (!folder || ![latitude, longitude, offset].every(Number.isFinite) || Math.abs(latitude) < 20) {
	console.error('use: node wheel.mjs FOLDER LATITUDE LONGITUDE OFFSET');
	process.exit(2);
}
const file = path.join(folder, 'handbook', name);
if (!existsSync(file)) {
	console.error(`${file} is missing`);
	process.exit(2);
}
const sign = latitude < 0 ? -1 : 1;

let failures = 0;
const worst = { mm: 0, deg: 0 };
function check(what, got, want, unit) {
	const off = unit === 'deg' ? Math.abs(signed(got - want)) : Math.abs(got - want);
	worst[unit] = Math.max(worst[unit], Number.isNaN(off) ? Infinity : off);
	if (off <= (unit === 'mm' ? withinMillimetres : withinDegrees)) return;
	failures++;
	console.log(`${what} is ${got?.toFixed(3)} ${unit}, want ${want.toFixed(3)} ${unit}`);
}

const signed = (degrees) => ((((degrees + 180) % 360) + 360) % 360) - 180;
const radians = (degrees) => (degrees * Math.PI) / 180;
const apart = ([a, b], [c, d]) => Math.hypot(a - c, b - d);

// circle finds the circle of about that radius, and returns its centre and radius.
function circle(all, radius) {
	for (const { points, curved } of all) {
		if (!curved) continue;
		const [x, y] = [0, 1].map((i) => points.map((p) => p[i]));
		const wide = Math.max(...x) - Math.min(...x), tall = Math.max(...y) - Math.min(...y);
		if (Math.abs(wide / 2 - radius) > 1 || Math.abs(tall - wide) > 0.05) continue;
		return { centre: [(Math.max(...x) + Math.min(...x)) / 2, (Math.max(...y) + Math.min(...y)) / 2], radius: wide / 2 };
	}
	return { centre: [NaN, NaN], radius: NaN };
}

// The bar at the foot of the paper is its lowest long level stroke.
function bar(all) {
	const level = all.filter(({ points: [a, b], points }) => points.length === 2 && Math.abs(a[1] - b[1]) < 0.05 && apart(a, b) > 60);
	const lowest = level.sort((p, q) => q.points[0][1] - p.points[0][1])[0];
	return lowest ? apart(...lowest.points) : NaN;
}

const scratch = mkdtempSync(path.join(tmpdir(), 'noonbook-wheel-'));
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-quic'] });
try {
	const page = await browser.newPage();
	await page.goto(`file://${path.resolve(file)}`);
	const pdf = path.join(scratch, 'wheel.pdf');
	await page.pdf({ path: pdf, preferCSSPageSize: true, printBackground: true });
	measure(paths(pdf, 1, scratch), paths(pdf, 2, scratch));
} finally {
	await browser.close();
	rmSync(scratch, { recursive: true });
}

function measure(below, above) {
	check('check bar of the disc', bar(below), 100, 'mm');
	check('check bar of the mask', bar(above), 100, 'mm');
	const one = circle(below, disc), two = circle(above, mask);
	check('radius of the disc', one.radius, disc, 'mm');
	check('radius of the mask', two.radius, mask, 'mm');
	check('centre of the mask, across', two.centre[0], one.centre[0], 'mm');
	check('centre of the mask, down', two.centre[1], one.centre[1], 'mm');

	// The pins: crosses of 5 mm, whose middle is the centre.
	for (const [what, all, { centre }] of [['disc', below, one], ['mask', above, two]]) {
		const arms = all.filter(({ points }) => points.length === 2 && Math.abs(apart(...points) - 5) < 0.1 && apart(middle(points), centre) < 1);
		check(`arms of the cross on the ${what}`, arms.length, 2, 'mm');
		for (const { points } of arms) check(`pin of the ${what}, off its centre`, apart(middle(points), centre), 0, 'mm');
	}

	const dates = scale(below, one.centre, mask, (r) => r > mask);
	const hours = scale(above, two.centre, mask, (r) => r < mask).filter((t) => t.long > 3.5);
	if (dates.length !== 365 || hours.length !== 24) {
		failures++;
		console.log(`${dates.length} dates and ${hours.length} hours are on the rims, not 365 and 24`);
		return;
	}
	// The first of a month goes through to the rim; after the shortest month comes March.
	const months = dates.filter((t) => t.long > 8);
	const gap = (i) => (((sign * (months[(i + 1) % 12].angle - months[i].angle)) % 360) + 360) % 360;
	months.sort((p, q) => sign * (p.angle - q.angle));
	const february = [...months.keys()].sort((i, j) => gap(i) - gap(j))[0];
	const january = months[(february + 11) % 12].angle;
	const turn = (t) => (((sign * (t.angle - january)) % 360) + 360.01) % 360;
	dates.sort((p, q) => turn(p) - turn(q));
	hours.sort((p, q) => turnOfHour(p, hours) - turnOfHour(q, hours));

	const stars = [
		// J2000, precessed to the middle of 2027 below. Source: Hipparcos, by pyephem.
		['Regulus', 152.093, 11.967], ['Procyon', 114.827, 5.225], ['Spica', 201.298, -11.161], ['Altair', 297.696, 8.868], ['Rigel', 78.634, -8.202],
	];
	for (const [day, hour] of [[109, 21], [9, 18], [200, 23], [309, 26], [359, 30]]) {
		const turned = angleOfHour(hours, hour) - dates[day].angle;
		// Mean sidereal time: 280.46062° + 360.98564737° a day from noon of 1 January 2000
		// (IAU 1982, Meeus, Astronomical Algorithms, equation 12.4, its first terms).
		const days = Date.UTC(2027, 0, 1 + day) / 864e5 + (hour - offset) / 24 - 10957.5;
		const sidereal = 280.46062 + 360.98564737 * days + longitude;
		for (const [star, ra2000, dec2000] of stars) {
			const [ra, dec] = ofDate(ra2000, dec2000);
			const radius = (map * (90 - sign * dec)) / (180 - Math.abs(latitude) + 34 / 60);
			if (radius > map) continue;
			const want = { angle: sign * ra, radius };
			const dot = nearest(below, one.centre, want);
			const stands = dot ? dot.angle + turned : NaN;
			check(`${star} on day ${day} at ${hour} h, angle from the meridian`, stands, sign * (ra - sidereal), 'deg');
			check(`${star}, from the pin`, dot?.radius ?? NaN, radius, 'mm');
		}
	}

	// The window: cut where the horizon crosses the meridian, at the rim of the map.
	const window = above.filter((p) => !p.curved && p.points.length > 200).sort((p, q) => q.points.length - p.points.length)[0];
	const foot = window ? Math.max(...window.points.map((p) => p[1])) - two.centre[1] : NaN;
	check('window, from the pin to its foot', foot, map, 'mm');
	console.log(`wheel at ${latitude}°: worst ${worst.mm.toFixed(3)} mm and ${worst.deg.toFixed(3)}°`);
}

function middle([a, b]) {
	return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

// clockwise from the ray that points down, degrees
function angle(centre, [x, y]) {
	return (Math.atan2(centre[0] - x, y - centre[1]) * 180) / Math.PI;
}

// scale finds the strokes that begin on a circle and point at its centre.
function scale(all, centre, radius, side) {
	const found = [];
	for (const { points, curved } of all) {
		if (curved || points.length !== 2) continue;
		const [on, off] = points.toSorted((p, q) => Math.abs(apart(centre, p) - radius) - Math.abs(apart(centre, q) - radius));
		if (Math.abs(apart(centre, on) - radius) > 0.1 || !side(apart(centre, off)) || apart(on, off) < 1) continue;
		if (Math.abs(signed(angle(centre, on) - angle(centre, off))) > 0.2) continue;
		found.push({ angle: angle(centre, on), long: apart(on, off) });
	}
	return found;
}

// The scale of hours has a degree more than a turn in a day, so that between its last
// hour, 11, and its first, 12, there is the least room.
function turnOfHour(t, hours) {
	const order = hours.map((h) => h.angle).sort((p, q) => p - q);
	let first = order[0], least = 360;
	order.forEach((a, i) => {
		const next = i + 1 < order.length ? order[i + 1] : order[0] + 360;
		if (next - a < least) [least, first] = [next - a, sign > 0 ? a : next];
	});
	return ((sign * (first - t.angle)) % 360 + 360.01) % 360;
}

function angleOfHour(hours, hour) {
	return hours[hour - 12].angle;
}

// Precession to the middle of 2027: m = 46.12″ and n = 20.04″ a year (IAU 2006).
function ofDate(ra, dec) {
	const years = 27.5;
	return [
		ra + (years * (46.12 + 20.04 * Math.sin(radians(ra)) * Math.tan(radians(dec)))) / 3600,
		dec + (years * 20.04 * Math.cos(radians(ra))) / 3600,
	];
}

// nearest is the filled dot nearest to a place, within a millimetre.
function nearest(all, centre, { angle: turn, radius }) {
	const want = [centre[0] - radius * Math.sin(radians(turn)), centre[1] + radius * Math.cos(radians(turn))];
	let best, least = 1;
	for (const { points, curved } of all) {
		if (!curved) continue;
		const [x, y] = [0, 1].map((i) => points.map((p) => p[i]));
		const wide = Math.max(...x) - Math.min(...x), tall = Math.max(...y) - Math.min(...y);
		if (Math.abs(wide - tall) > 0.02 || wide > 3 || wide < 1.2) continue; // bright stars are 1.2 mm across and more
		const at = [(Math.max(...x) + Math.min(...x)) / 2, (Math.max(...y) + Math.min(...y)) / 2];
		if (apart(at, want) < least) [least, best] = [apart(at, want), { angle: angle(centre, at), radius: apart(centre, at) }];
	}
	return best;
}

process.exit(failures > 0 ? 1 : 0);
