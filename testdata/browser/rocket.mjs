// Rocket: the template and the clinometer, printed to PDF by the browser and measured
// there. pdftocairo (poppler) turns the PDF's own lines into numbers; nothing is read
// from the page. What they must be follows from the demo's pipe and the usual sizes,
// worked out here a second time.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { paths } from './paths.mjs';

const within = { mm: 0.2, deg: 0.1 }; // half the width of a pencil line, and what a protractor shows

// The demo's pipe, the usual play and paper (0.1 mm), and the middle size.
const pipe = 21.3, play = 0.8, sheet = 0.1, glue = 10;
const body = 200, nose = 45, fin = { root: 52, tip: 28, span: 34 * (pipe / 20), sweep: 28 * (pipe / 20) };
const outside = pipe + play + 2 * sheet;
const round = Math.PI * (pipe + play + sheet);
const slant = Math.hypot(outside / 2, nose);
const sector = (360 * (outside / 2)) / slant;

export const kind = 'rocket at true size';
export const template = 'print-rocket-wrap.html', clinometer = 'print-rocket-clinometer.html';

export async function rocket(context, edition, ledger) {
	const folder = mkdtempSync(path.join(tmpdir(), 'noonbook-rocket-'));
	const page = await context.newPage();
	try {
		for (const [name, measure] of [[template, measureTemplate], [clinometer, measureClinometer]]) {
			await page.goto(edition.url(name));
			// Dashes come out as many short lines; drawn through, they lie on the same ones.
			await page.addStyleTag({ content: '.fold { stroke-dasharray: none !important; }' });
			const file = path.join(folder, 'page.pdf');
			await page.pdf({ path: file, preferCSSPageSize: true, printBackground: true });
			ledger.check(edition.label(name), kind, measure(paths(file, 1, folder), ledger));
		}
	} finally {
		rmSync(folder, { recursive: true });
		await page.close();
	}
}

const apart = ([a, b], [c, d]) => Math.hypot(a - c, b - d);
const angle = (at, [x, y]) => (Math.atan2(y - at[1], x - at[0]) * 180) / Math.PI;

class Findings extends Array {
	worst = 0;

	compare(what, got, want, unit) {
		const off = Math.abs(got - want);
		this.worst = Math.max(this.worst, off / within[unit]);
		if (!(off <= within[unit])) this.push(`${what} is ${got.toFixed(3)} ${unit}, not ${want.toFixed(3)}`);
	}
}

function measureTemplate(drawn, ledger) {
	const findings = new Findings();
	const all = drawn.filter((l) => !l.filled); // areas of glue are grey, and letters
	const area = all.filter((l) => !l.curved && l.points.length >= 4);
	const size = (l) => {
		const [x, y] = [0, 1].map((i) => l.points.map((p) => p[i]));
		return [Math.max(...x) - Math.min(...x), Math.max(...y) - Math.min(...y)];
	};
	const wrap = area.find((l) => l.points.length <= 5 && Math.abs(size(l)[1] - body) < 5 && Math.abs(size(l)[0] - round - glue) < 5);
	if (!wrap) return ['the wrap is not on the sheet'];
	findings.compare('width of the wrap', size(wrap)[0], round + glue, 'mm');
	findings.compare('length of the wrap', size(wrap)[1], body, 'mm');
	const left = Math.min(...wrap.points.map((p) => p[0]));
	const overlap = all.find((l) => l.points.length === 2 && Math.abs(apart(...l.points) - body) < 1 && Math.abs(l.points[0][0] - left - round) < 3);
	if (!overlap) return ['the line of the overlap is not on the sheet'];
	findings.compare('once round', overlap.points[0][0] - left, round, 'mm');

	// The cone's arc is the line of most points; its sides lead from its ends to where
	// they meet, which must be the centre of the arc.
	const arc = all.filter((l) => !l.curved).sort((a, b) => b.points.length - a.points.length)[0].points;
	const [from, to] = [arc[0], arc.at(-1)];
	const side = (end) => all.find((l) => l.points.length === 2 && l.points.some((p) => apart(p, end) < 0.05) && Math.abs(apart(...l.points) - slant) < 3);
	const [one, two] = [side(from), side(to)];
	if (!one || !two) return [...findings, 'the sides of the cone do not end at its arc'];
	const tip = one.points.find((p) => apart(p, from) > 1), other = two.points.find((p) => apart(p, to) > 1);
	findings.compare('gap at the tip of the cone', apart(tip, other), 0, 'mm');
	findings.compare('side of the cone', apart(tip, from), slant, 'mm');
	findings.compare('other side of the cone', apart(tip, to), slant, 'mm');
	for (const p of arc) findings.compare('radius of the arc', apart(tip, p), slant, 'mm');
	findings.compare('angle of the sector', Math.abs(angle(tip, from) - angle(tip, to)), sector, 'deg');
	let long = 0;
	for (let i = 1; i < arc.length; i++) long += apart(arc[i - 1], arc[i]);
	findings.compare('arc of the cone, round the tube', long, Math.PI * outside, 'mm');

	// A fin's outline has ten corners: tab, root, tip, root, tab.
	const fins = area.filter((l) => Math.abs(size(l)[0] - 2 * (fin.span + 7)) < 2 && l.points.length >= 10 && l.points.length <= 11);
	if (fins.length !== 3) return [...findings, `${fins.length} fins are on the sheet, not 3`];
	for (const { points: [root, tipFront, , , , , tipBack] } of fins) {
		findings.compare('span of a fin', tipFront[0] - root[0], fin.span, 'mm');
		findings.compare('sweep of a fin', tipFront[1] - root[1], fin.sweep, 'mm');
		findings.compare('tip of a fin', apart(tipFront, tipBack), fin.tip, 'mm');
	}
	const roots = all.filter((l) => l.points.length === 2 && Math.abs(apart(...l.points) - fin.root) < 2 && l.points[0][0] > left + round + glue);
	if (roots.length !== 6) return [...findings, `${roots.length} roots of fins are on the sheet, not 6`];
	for (const l of roots) findings.compare('root of a fin', apart(...l.points), fin.root, 'mm');
	ledger.note(`template: worst ${(findings.worst * within.mm).toFixed(3)} mm or as much of ${within.deg}°`);
	return [...findings];
}

function measureClinometer(all, ledger) {
	const findings = new Findings();
	const radius = 120;
	const arc = all.filter((l) => !l.curved).sort((a, b) => b.points.length - a.points.length)[0].points;
	// The hole is a small circle: the centre of its curves.
	const hole = all.filter((l) => l.curved && l.points.every((p) => apart(p, l.points[0]) < 3)).map((l) => {
		const [x, y] = [0, 1].map((i) => l.points.map((p) => p[i]));
		return [(Math.max(...x) + Math.min(...x)) / 2, (Math.max(...y) + Math.min(...y)) / 2];
	}).find((centre) => Math.abs(apart(centre, arc[0]) - radius) < 3);
	if (!hole) return ['the hole of the string is not on the sheet'];
	for (const p of arc) findings.compare('radius of the scale', apart(hole, p), radius, 'mm');
	const straw = all.find((l) => l.points.length === 2 && l.points.every((p) => Math.abs(p[1] - hole[1]) < 0.1) && apart(...l.points) > radius);
	if (!straw) return [...findings, 'the line of the straw does not go through the hole'];
	const level = angle(straw.points[0], straw.points[1]);
	// Ticks end on the scale and point at the hole: both ends stand at the same
	// elevation, counted from the line square to the straw towards the eye at its left end.
	const ticks = all.filter((l) => l.points.length === 2 && l.points.some((p) => Math.abs(apart(hole, p) - radius) < 0.5) && apart(...l.points) < 15);
	const elevations = ticks.map(({ points }) => {
		const [inner, outer] = points.toSorted((p, q) => apart(hole, p) - apart(hole, q));
		findings.compare('turn of a tick', angle(hole, inner) - angle(hole, outer), 0, 'deg');
		return angle(hole, outer) - level - 90;
	}).sort((p, q) => p - q);
	if (elevations.length !== 101) return [...findings, `${elevations.length} ticks are on the sheet, not 101`];
	elevations.forEach((e, i) => findings.compare('tick', e, i - 10, 'deg'));
	ledger.note(`clinometer: worst ${(findings.worst * within.mm).toFixed(3)} mm or as much of ${within.deg}°`);
	return [...findings];
}
