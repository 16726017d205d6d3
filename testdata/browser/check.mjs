// Opens a pressed handbook in a browser and checks both of its editions.
//
//	node check.mjs FOLDER [letter|a4]
//
// FOLDER holds handbook/ and handbook-staff/, and each in one file beside it. A line is printed for each check
// that fails, then a summary. Exit 0: all passed; 1: a check failed; 2: wrong use.

import { existsSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { access } from './access.mjs';
import { cover, kinds as coverKinds } from './cover.mjs';
import { Edition } from './edition.mjs';
import { finder, kinds as finderKinds } from './finder.mjs';
import { keyboard } from './keyboard.mjs';
import { Ledger } from './ledger.mjs';
import { kinds as letterKinds, letters } from './letters.mjs';
import { load } from './load.mjs';
import { kinds as longKinds, long } from './long.mjs';
import { kinds as marginKinds, margin } from './margin.mjs';
import { markup } from './markup.mjs';
import { paper, sizes } from './paper.mjs';
import { kinds as readerKinds, readers } from './readers.mjs';
import { reflow } from './reflow.mjs';
import { clinometer, kind as rocketKind, rocket, template } from './rocket.mjs';
import { kinds as roomKinds, room, roomPlain, screen } from './room.mjs';
import { OneFile, kinds as singleKinds, prints, single } from './single.mjs';
import { swift, watch, weight } from './swift.mjs';
import { Tally, kinds as tableKinds, tables } from './tables.mjs';
import { tube } from './tube.mjs';
import { kinds as walkKinds, walk } from './walk.mjs';
import { strips, kind as waterKind, water } from './water.mjs';

const names = ['handbook', 'handbook-staff'];
const kinds = [
	'same pages', 'errors', 'requests', 'title and heading', 'links', 'markup', 'axe', 'contrast', 'reflow',
	'policy', 'stillness', 'weight', 'first paint', ...finderKinds, ...longKinds, ...singleKinds, ...roomKinds, ...coverKinds, ...letterKinds,
	'focus shows', 'keyboard reach', 'lessons by keyboard', 'skip link', 'paper size', 'paper scale', 'paper words', ...readerKinds, ...marginKinds, ...tableKinds, ...walkKinds,
];
const browserArguments = [
	'--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
	'--disable-background-networking', '--disable-component-update', '--disable-sync',
	'--font-render-hinting=none', // as a window has it: letters are as wide as readers see them
];

const [folder, size = 'letter'] = process.argv.slice(2);
if (!folder || !sizes[size]) fail('use: node check.mjs FOLDER [letter|a4]');
for (const name of names) {
	if (!existsSync(path.join(folder, `${name}.html`))) fail(`${path.join(folder, name)}.html is missing: press with --single`);
	if (!existsSync(path.join(folder, name, 'index.html'))) fail(`${path.join(folder, name)} holds no handbook: index.html is missing`);
}

// A unit without rockets or water clocks has none to measure; the demo has.
if (existsSync(path.join(folder, names[0], 'rocket-day.html'))) kinds.push(rocketKind);
if (existsSync(path.join(folder, names[1], strips))) kinds.push(waterKind);

const ledger = new Ledger();
const tally = new Tally();
const [forClass, forStaff] = names.map((name) => new Edition(folder, name));
ledger.check('handbook', 'same pages', forClass.pages.filter((page) => !forStaff.pages.includes(page)).map((page) => `the staff edition lacks ${page}`));
forClass.share(forStaff);
// What a class sees on the wall the staff's pages hold too, with the answers.
forClass.own = forClass.own.filter((name) => !name.startsWith('room-'));
// Without windows of its own, where that is installed, it takes a quarter less time.
const executablePath = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium'].find((file) => existsSync(file));
const browser = await chromium.launch({ executablePath, args: browserArguments });
try {
	// What is timed is timed before the rest makes the machine busy.
	await inContext({}, (context) => ledger.spend('swift', () => swift(browser, context, forClass, forClass.pages.filter((name) => !name.startsWith('print-')), ledger)));
	await inContext({}, (context) => swift(browser, context, new OneFile(folder, `${names[0]}.html`), [`${names[0]}.html`], ledger));
	const sheets = new Map();
	const parts = [forStaff, forClass].flatMap(partsOf);
	await Promise.all([1, 2].map(async () => {
		while (parts.length) await parts.shift()(sheets);
	}));
	tally.check(ledger);
	await inContext({}, async (context) => {
		for (const edition of [forClass, forStaff]) await ledger.spend('one file on paper', () => prints(context, new OneFile(folder, `${edition.name}.html`), edition, sheets, ledger));
	});
} finally {
	await browser.close();
}
process.exitCode = ledger.close(kinds) ? 0 : 1;

// partsOf gives the checks of an edition as parts that two hands take in turn, what takes
// longest first. A part needs nothing of another; it adds the number of sheets that each
// page prints on, if it counts them.
function partsOf(edition) {
	const one = new OneFile(folder, `${edition.name}.html`);
	const isStaff = edition === forStaff;
	const part = (what, work, options) => () => inContext(options ?? {}, (context) => ledger.spend(what, () => work(context)));
	// Some checks add words and styles of their own, which the policy forbids.
	const open = { bypassCSP: true };
	return [
		part('access', (context) => access(context, edition, isStaff, ledger), open),
		part('keyboard', (context) => keyboard(context, edition, ledger), open),
		part('walk', () => walk(browser, edition, isStaff ? forClass : forStaff, one, ledger)),
		(sheets) => part('paper', async (context) => {
			const counts = await paper(context, edition, size, ledger);
			for (const [page, count] of counts) sheets.set(page, count);
			await readers(context, edition, counts, ledger);
		}, open)(),
		...[true, false].map((javaScriptEnabled) => part('load', async (context) => {
			if (javaScriptEnabled) await watch(context);
			await load(context, edition, javaScriptEnabled, ledger);
			await single(context, one, edition, javaScriptEnabled, ledger);
			if (!javaScriptEnabled) await roomPlain(context, edition, ledger);
		}, { javaScriptEnabled })),
		part('finder', async (context) => {
			for (const [place, start] of [[edition, 'index.html'], [one, one.name]]) await finder(context, place, start, ledger);
		}),
		part('room', (context) => room(context, edition, isStaff, ledger), { viewport: screen }),
		part('letters', (context) => letters(context, edition, ledger)),
		part('cover', () => cover(browser, edition, isStaff, ledger)),
		part('reflow', async (context) => {
			await watch(context);
			await reflow(context, edition, ledger);
		}, open),
		part('tables', (context) => tables(context, edition, tally, ledger), open),
		part('margin', (context) => margin(context, edition, ledger), open),
		part('measures', async (context) => {
			await markup(edition, ledger);
			await markup(one, ledger);
			weight(edition, ledger);
			await long(context, edition, ledger);
			await tube(context, edition, ledger);
			if ([template, clinometer].every((name) => edition.pages.includes(name))) await rocket(context, edition, ledger);
			if (edition.pages.includes(strips)) await water(context, edition, ledger);
		}, open),
	];
}

// inContext gives a fresh, offline context without motion.
async function inContext(options, work) {
	const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, offline: true, reducedMotion: 'reduce', ...options });
	// A machine busy with other work is slow, not broken.
	context.setDefaultTimeout(120_000);
	try {
		await work(context);
	} finally {
		await context.close();
	}
}

function fail(message) {
	console.error(message);
	process.exit(2);
}
