// The pages at the desk on which a school types, in Chromium: by keyboard, with wrong
// values, in two tabs, with a file that changes on disk meanwhile, without scripts, and
// from another site. What the window prints and what is in the files is looked at too.
//
//     node form.mjs NOONBOOK [FOLDER for pictures]

import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';

const noonbook = path.resolve(process.argv[2]);
const pictures = process.argv[3];
const work = mkdtempSync(path.join(tmpdir(), 'form-'));
process.on('exit', () => rmSync(work, { recursive: true, force: true }));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const toml = '# Our notes stay.\n[unit]\ntitle = "Sky"\n\n[school]\nname = "Elm School" # since 1952\nlatitude = 46.09\nlongitude = -64.77\ntime_zone = "America/Moncton"\n\n[term]\nfirst_day = 2027-04-12\nlast_day = 2027-05-14\n\n[records]\nmoon_log = "moon-log.csv"\n';
const unit = path.join(work, 'unit');
mkdirSync(unit);
const file = path.join(unit, 'unit.toml');
writeFileSync(file, toml);
writeFileSync(path.join(unit, 'moon-log.csv'), 'group;date;time;lit_percent\na;2027-04-20;20:30;12,5\n');
writeFileSync(path.join(unit, '1-a.md'), '```lesson\ntitle = "A"\n```\n\nWords for {class-facts.school}.\n');

const desk = spawn(noonbook, ['desk', unit], { stdio: ['ignore', 'pipe', 'inherit'] });
process.on('exit', () => desk.kill());
const start = await new Promise((found, lost) => {
	let told = '';
	desk.stdout.on('data', (text) => {
		told += text;
		const m = told.match(/true of your school: (\S+)/);
		if (m) found(m[1]);
	});
	desk.on('exit', () => lost(new Error(`the desk ended: ${told}`)));
});
const home = start.replace(/desk\/school$/, '');

const failures = [];
let checks = 0;
function check(what, good, found = '') {
	checks++;
	if (!good) failures.push(`${what}${found === '' ? '' : `: ${typeof found === 'string' ? found : JSON.stringify(found)}`}`);
}
// focused waits until an element has the focus: a browser gives it to what asks for it
// when the page is first drawn.
async function focused(page, id) {
	for (let tries = 0; tries < 100; tries++) {
		if ((await page.evaluate(() => document.activeElement?.id)) === id) return true;
		await new Promise((later) => setTimeout(later, 50));
	}
	return false;
}
const said = () => readFileSync(file, 'utf8');

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
try {
	await inContext({}, keyboard);
	await inContext({}, whileTyping);
	await inContext({}, (context) => wrongValues(context, true));
	await inContext({ javaScriptEnabled: false }, (context) => wrongValues(context, false));
	await inContext({}, twoTabs);
	await inContext({}, changedOnDisk);
	await inContext({}, lists);
	await inContext({}, records);
	await inContext({}, otherSite);
	await inContext({ bypassCSP: true }, looks);
} finally {
	await browser.close();
}
for (const failure of failures) console.error(failure);
console.log(`pages to type on: ${checks} checks, ${failures.length} failures`);
process.exit(failures.length > 0 || checks < 60 ? 1 : 0);

// inContext gives a fresh context whose pages ask nobody but the desk and break no
// policy.
async function inContext(options, work) {
	const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, reducedMotion: 'reduce', ...options });
	context.setDefaultTimeout(60_000);
	context.on('request', (request) => {
		if (!request.url().startsWith(home) && !request.url().startsWith('http://localhost:')) check('a request leaves the desk', false, request.url());
	});
	context.on('console', (message) => {
		if (/Content Security Policy|Refused/.test(message.text())) check('the policy is kept', false, message.text());
	});
	context.on('weberror', (error) => check('scripts run well', false, String(error.error())));
	try {
		await work(context);
	} finally {
		await context.close();
	}
}

// keyboard walks through the page with Tab: every line is met once, in the order of the
// page, its focus shows, and neither it nor its label is below what stays in view.
async function keyboard(context) {
	const page = await context.newPage();
	await page.goto(start);
	for (const details of await page.locator('details > summary').all()) {
		await details.focus();
		await page.keyboard.press('Enter');
	}
	await page.focus('.skip'); // the walk begins behind it
	const want = await page.evaluate(() => [...document.querySelectorAll('form :is(input:not([type=hidden]), select, textarea, button, summary)')].map((e) => e.id || e.name || e.textContent));
	const met = [];
	for (let step = 0; step < want.length + 30; step++) {
		await page.keyboard.press('Tab');
		const stop = await page.evaluate(() => {
			const e = document.activeElement;
			if (!e || e === document.body) return null;
			const r = e.getBoundingClientRect(), bar = document.querySelector('.save').getBoundingClientRect(), style = getComputedStyle(e);
			const under = !e.closest('.save') && r.bottom > bar.top + 1 && r.top < bar.bottom;
			return { id: e.id || e.name || e.textContent, inForm: !!e.closest('form'), shows: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2, seen: r.bottom > 0 && r.top < innerHeight && !under };
		});
		if (!stop) break;
		if (!stop.inForm) continue;
		met.push(stop.id);
		check(`the focus of ${stop.id} shows`, stop.shows);
		check(`${stop.id} is in view when it has the focus`, stop.seen);
	}
	check('Tab meets every line once, in order', JSON.stringify(met) === JSON.stringify(want), { met: met.length, want: want.length, lacks: want.filter((id) => !met.includes(id)) });
	check('the first stop of the page skips to its text', await page.evaluate(() => document.querySelector('a').getAttribute('href') === '#nb-text'));
	await page.close();
}

// whileTyping changes the place and reads what the line of the Sun's noon says.
async function whileTyping(context) {
	const page = await context.newPage();
	await page.goto(start);
	const noon = page.locator('#noon-says'), doubt = page.locator('#school-longitude-doubt');
	check('the noon of the place', (await noon.textContent()).includes('13:20'), await noon.textContent());
	const before = await page.locator('#noon-sun').getAttribute('transform');
	await page.fill('#school-longitude', '64.77');
	await doubt.waitFor();
	check('a sign that is missing is asked for', (await doubt.textContent()).includes('is the sign of the longitude wrong?'), await doubt.textContent());
	check('the Sun of the drawing moves', (await page.locator('#noon-sun').getAttribute('transform')) !== before);
	check('the line is described by what is doubted', (await page.locator('#school-longitude').getAttribute('aria-describedby')).includes('school-longitude-doubt'));
	await page.fill('#school-longitude', '64°46′W');
	await doubt.waitFor({ state: 'detached' });
	check('a place as people write it', (await noon.textContent()).includes('13:20'), await noon.textContent());
	await page.fill('#school-time_zone, #school-time-zone', 'Vancouver');
	await page.locator('#school-time-zone-wrong').waitFor();
	check('a town for its zone', (await page.locator('#school-time-zone-wrong').textContent()).includes('America/Vancouver'));
	check('what was typed is in no file', said() === toml);
	await page.close();
}

// wrongValues sends a page with two mistakes, follows the list at its top, mends them
// and comes to the handbook.
async function wrongValues(context, scripts) {
	const page = await context.newPage(), how = scripts ? '' : ', without scripts';
	writeFileSync(file, toml);
	await page.goto(start);
	await page.fill('#term-last-day', '14 March 2027');
	await page.fill('#class-pupils', 'many');
	await page.press('#class-pupils', 'Enter');
	await page.locator('#mistakes').waitFor();
	check(`nothing is written${how}`, said() === toml);
	check(`the list of mistakes has the focus${how}`, await focused(page, 'mistakes'));
	check(`both are listed${how}`, (await page.locator('#mistakes a').count()) === 2);
	check(`a guess is made${how}`, (await page.locator('#term-last-day-wrong').textContent()).includes('Did you mean 14 May 2027?'));
	check(`what was typed stays${how}`, (await page.inputValue('#term-last-day')) === '14 March 2027' && (await page.inputValue('#class-pupils')) === 'many');
	check(`the title says so${how}`, (await page.title()).startsWith('Not saved yet'));
	await page.click('#mistakes a[href="#term-last-day"]');
	check(`the list leads to the line${how}`, await focused(page, 'term-last-day'));
	if (pictures && scripts) await page.screenshot({ path: path.join(pictures, 'form-wrong.png'), fullPage: true });
	await page.fill('#term-last-day', '14 May 2027');
	await page.fill('#class-pupils', '27');
	await page.click('button[type=submit]');
	await page.waitForURL(home);
	check(`it leads to the handbook${how}`, (await page.textContent('h1')).includes('Sky'));
	check(`only that is written${how}`, said() === toml + '\n[class]\npupils = 27\n', said());
	if (scripts) {
		await page.click('nav a[href$="desk/school"]');
		check('the handbook leads to the page', (await page.title()).startsWith('Your school'));
	}
	await page.close();
}

// twoTabs saves one page, and then another that was made before.
async function twoTabs(context) {
	writeFileSync(file, toml);
	const one = await context.newPage(), two = await context.newPage();
	await one.goto(start);
	await two.goto(start);
	await one.fill('#school-name', 'Oak School');
	await one.click('button[type=submit]');
	await one.waitForURL(home);
	await two.fill('#class-name', 'grade 6');
	await two.click('button[type=submit]');
	await two.locator('#meanwhile').waitFor();
	check('the other tab is told what is new', (await two.textContent('#meanwhile')).includes('it was Elm School, and is Oak School now'), await two.textContent('#meanwhile'));
	check('the other tab wrote nothing', !said().includes('grade 6'));
	check('it has the focus', await focused(two, 'meanwhile'));
	check('it follows what it did not touch', (await two.inputValue('#school-name')) === 'Oak School' && (await two.inputValue('#class-name')) === 'grade 6');
	await two.click('button[type=submit]');
	await two.waitForURL(home);
	check('both are saved', said().includes('"Oak School" # since 1952') && said().includes('name = "grade 6"'), said());
	await one.close();
	await two.close();
}

// changedOnDisk changes the same line in the file and on the page.
async function changedOnDisk(context) {
	writeFileSync(file, toml);
	const page = await context.newPage();
	await page.goto(start);
	const theirs = toml.replace('Elm', 'Ash') + '# another remark\n';
	writeFileSync(file, theirs);
	await page.fill('#school-name', 'Oak School');
	await page.click('button[type=submit]');
	await page.locator('#meanwhile').waitFor();
	check('the file stays as it was changed', said() === theirs);
	check('the line tells both', (await page.inputValue('#school-name')) === 'Oak School' && (await page.textContent('#school-name-note')).includes('Ash School'));
	await page.close();
	writeFileSync(file, toml);
}

// lists types a kind of lens with a wrong cell, mends it, and takes the row out again.
async function lists(context) {
	writeFileSync(file, toml);
	const page = await context.newPage();
	const opened = async () => {
		await page.goto(start);
		await page.evaluate(() => document.querySelectorAll('details').forEach((d) => { d.open = true; }));
	};
	await opened();
	check('two empty rows of lenses', (await page.locator('#stock-lenses tbody tr').count()) === 2);
	await page.fill('#stock-lenses-0-label', 'bag A');
	await page.fill('#stock-lenses-0-diameter-mm', '2');
	await page.fill('#stock-lenses-0-focal-mm', '250');
	await page.click('button[type=submit]');
	await page.locator('#mistakes').waitFor();
	check('a wrong cell of a list writes nothing', said() === toml);
	await page.click('#mistakes a');
	check('the list leads to the cell of a list', await focused(page, 'stock-lenses-0-diameter-mm'));
	await page.fill('#stock-lenses-0-diameter-mm', '50');
	await page.click('button[type=submit]');
	await page.waitForURL(home);
	check('the row is in the file', said() === `${toml}\n[[stock.lenses]]\nlabel = "bag A"\ndiameter_mm = 50\nfocal_mm = 250\n`, said());
	await opened();
	check('two empty rows below it', (await page.locator('#stock-lenses tbody tr').count()) === 3);
	for (const input of await page.locator('#stock-lenses tbody tr:first-child input').all()) await input.fill('');
	await page.click('button[type=submit]');
	await page.waitForURL(home);
	check('an emptied row is in the file no more', !said().includes('lenses'), said());
	await page.close();
	writeFileSync(file, toml);
}

// records types a wrong cell and a right row.
async function records(context) {
	const page = await context.newPage(), log = () => readFileSync(path.join(unit, 'moon-log.csv'), 'utf8');
	const before = log();
	await page.goto(start.replace('school', 'moon-log'));
	check('an old row and five new ones', (await page.locator('tbody tr').count()) === 6);
	check('every cell has a name', await page.evaluate(() => [...document.querySelectorAll('td :is(input, select)')].every((e) => e.getAttribute('aria-labelledby').split(' ').every((id) => document.getElementById(id)?.textContent.trim()))));
	await page.fill('#cell-1-1', '31 April 2027');
	await page.fill('#cell-1-2', '21:15');
	await page.press('#cell-1-2', 'Enter');
	await page.locator('#mistakes').waitFor();
	check('a wrong cell writes nothing', log() === before);
	if (pictures) await page.screenshot({ path: path.join(pictures, 'form-records.png'), fullPage: true });
	await page.click('#mistakes a');
	check('the list leads to the cell', await focused(page, 'cell-1-1'));
	await page.fill('#cell-1-1', '30 April 2027');
	await page.fill('#cell-1-3', '37.5 %');
	await page.click('button[type=submit]');
	await page.locator('.saved').waitFor();
	check('the row is written as the file has its own', log() === before + ';2027-04-30;21:15;37,5\n' || log() === `${before};2027-04-30;21:15;37,5\n`, log());
	check('five empty rows again', (await page.locator('tbody tr').count()) === 7);
	await page.close();
}

// otherSite sends the page's own form, token and all, from a page of another port, by
// each of its names, and by script. Nothing may be written.
async function otherSite(context) {
	writeFileSync(file, toml);
	const page = await context.newPage();
	await page.goto(start);
	const fields = await page.evaluate(() => [...new FormData(document.querySelector('form'))]);
	const quoted = (s) => s.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
	const inputs = fields.map(([name, value]) => `<textarea name="${quoted(name)}">\n${quoted(name === 'school.name' ? 'Stolen School' : value)}</textarea>`).join('');
	const stranger = createServer((request, answer) => {
		answer.setHeader('Content-Type', 'text/html');
		answer.end(`<!doctype html><title>stranger</title><form method="post" action="${start}">${inputs}<button>send</button></form>`);
	});
	await new Promise((ready) => stranger.listen(0, '127.0.0.1', ready));
	const there = `http://localhost:${stranger.address().port}/`;
	try {
		for (const policy of ['', 'no-referrer', 'unsafe-url']) {
			await page.goto(there);
			if (policy) await page.evaluate((p) => document.head.insertAdjacentHTML('beforeend', `<meta name="referrer" content="${p}">`), policy);
			const [answer] = await Promise.all([page.waitForResponse((r) => r.request().method() === 'POST'), page.click('button')]);
			check(`a form of another site is refused, ${policy || 'as usual'}`, answer.status() === 403, String(answer.status()));
			check('and writes nothing', said() === toml);
		}
		await page.goto(there);
		await page.evaluate((to) => fetch(to, { method: 'POST', mode: 'no-cors', body: new URLSearchParams(new FormData(document.querySelector('form'))) }).catch(() => {}), start);
		check('a script of another site writes nothing', said() === toml);
	} finally {
		stranger.close();
	}
	await page.close();
}

// looks holds the pages against WCAG 2.2 A and AA with axe, in light and dark, on a desktop
// and a phone, and sees that nothing is wider than the phone.
async function looks(context) {
	const page = await context.newPage();
	for (const name of ['school', 'moon-log']) {
		for (const wrong of [false, true]) {
			await page.setViewportSize({ width: 1280, height: 900 });
			await page.goto(start.replace('school', name));
			if (wrong) {
				await page.fill(name === 'school' ? '#term-last-day' : '#cell-2-1', 'someday');
				await page.click('button[type=submit]');
				await page.locator('#mistakes').waitFor();
			}
			await page.evaluate(`${axe}; undefined`);
			await page.evaluate(() => document.querySelectorAll('details').forEach((d) => { d.open = true; }));
			for (const [screen, size] of Object.entries({ desktop: { width: 1280, height: 900 }, phone: { width: 320, height: 700 } })) {
				for (const colorScheme of ['light', 'dark']) {
					await page.setViewportSize(size);
					await page.emulateMedia({ colorScheme });
					const found = await page.evaluate(async () => {
						const result = await window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
						return { violations: result.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).slice(0, 4).join(', ')}`), passes: result.passes.map((p) => p.id) };
					});
					check(`axe, ${name}, ${screen}, ${colorScheme}`, found.violations.length === 0, found.violations.join('; '));
					check('contrast was examined', found.passes.includes('color-contrast'));
					const wide = await page.evaluate(() => document.scrollingElement.scrollWidth - innerWidth);
					check(`nothing is wider than the window, ${name}, ${screen}`, wide <= 0, `${wide} px`);
					if (pictures) await page.screenshot({ path: path.join(pictures, `form-${name}-${screen}-${colorScheme}${wrong ? '-wrong' : ''}.png`), fullPage: true });
				}
			}
		}
	}
	await page.close();
}
