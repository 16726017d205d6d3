// What strangers write into lessons runs nothing and fetches nothing. Each line below
// becomes a lesson; those that noonbook takes are pressed and opened in Chromium, as a
// folder and as one file, and everything in them that can be pressed is pressed.
//
//     node hostile.mjs NOONBOOK

import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const noonbook = path.resolve(process.argv[2]);
const work = mkdtempSync(path.join(tmpdir(), 'hostile-'));
process.on('exit', () => rmSync(work, { recursive: true, force: true }));

const run = 'window.ran=1';
const schemes = ['javascript:', 'JaVaScRiPt:', ' javascript:', 'java\tscript:', 'java&#x0A;script:', '&#106;avascript:', 'javascript&colon;', '\\javascript:', 'vbscript:', 'data:text/html,', 'data:image/svg+xml,', 'view-source:javascript:', 'blob:', 'filesystem:', 'file:///etc/', '//example.org/', 'https:javascript:', 'x:javascript:', '\u0001javascript:', '\u00a0javascript:'];
const bodies = [
	...schemes.flatMap((scheme) => [`[press](${scheme}${run})`, `[press](<${scheme}${run}>)`, `![see](${scheme}${run})`, `<${scheme}${run}>`, `[press][a]\n\n[a]: ${scheme}${run}`]),
	`[press](https://example.org/"onclick="${run}")`, `[press](<https://example.org/" onclick="${run}>)`, `[press](https://example.org '" onmouseover="${run}')`,
	`![see](leaf.svg '" onerror="${run}')`, `![" onerror="${run}](leaf.svg)`, `![<img src=x onerror=${run}>](leaf.svg)`, `![see](leaf.svg?"onerror="${run})`, `![see](leaf.svg#"onerror=${run})`,
	`<script>${run}</script>`, `&lt;script&gt;${run}&lt;/script&gt;`, `\\<script>${run}\\</script>`, `<b onclick=${run}>x</b>`, `<!-- --><script>${run}</script>`, `<![CDATA[<script>${run}</script>]]>`,
	`\`<script>${run}</script>\``, `    <script>${run}</script>`, `\`\`\`text\n</code></pre><script>${run}</script>\n\`\`\``, `\`\`\`html onclick="${run}"\n<script>${run}</script>\n\`\`\``,
	`# <script>${run}</script>`, `# &lt;img src=x onerror=${run}&gt; " ' \``, `| a | <script>${run}</script> |\n|---|---|\n| " onclick="${run} | x |`, `1. </li></ol><script>${run}</script>`,
	`{class-facts.school school.name="<script>${run}</script>"}`, `{class-facts.school school.name="</script><script>${run}</script>"}`, `{class-facts.school school.name="' onclick=${run} x='"}`,
	`&#60;script&#62;${run}&#60;/script&#62;`, `&NewLine;<svg onload=${run}>`, `<https://example.org/?a="onclick=${run}>`, `<a@b.c"onclick=${run}>`, `\u2028<script>${run}</script>`, `\ufeff<script>${run}</script>`,
	'[press](#nb-text"onclick=x)', '![see](https://example.org/a.png)', '![see](//example.org/a.png)', '![see](\\\\example.org\\a.png)', `![see](run.svg)`, `[press](run.svg)`, `[press](page.html)`, `[press](leaf.svg)`,
];
const blocks = [
	['title', `</title><script>${run}</script>`], ['title', `" onclick="${run}`], ['summary', `"><img src=x onerror=${run}>`], ['summary', `-->]]></style><script>${run}</script>`],
	['goals', [`<script>${run}</script>`]], ['title', `{"a":"</script><script>${run}</script>"}`], ['title', `\u2028\u2029<!--<script>`],
];
const school = `</script><script>${run}</script>"'><img src=x onerror=${run}>&lt;`;

const unit = path.join(work, 'unit');
mkdirSync(unit);
const settings = (name) => `unit.title = ${JSON.stringify(name)}\nschool.name = ${JSON.stringify(name)}\nschool.latitude = 46.09\nschool.longitude = -64.77\nschool.time_zone = "America/Moncton"\n[term]\nfirst_day = 2027-01-04\nlast_day = 2027-06-20\n`;
writeFileSync(path.join(unit, 'unit.toml'), settings(school));
writeFileSync(path.join(unit, 'leaf.svg'), '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"><title>Leaf</title><path d="M0 0L4 1"/></svg>');
writeFileSync(path.join(unit, 'run.svg'), `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 1"><script>${run}</script></svg>`);
writeFileSync(path.join(unit, 'page.html'), `<script>${run}</script>`);
const head = (key, value) => '```lesson\n' + (key === 'title' ? '' : 'title = "A"\n') + 'part = "page"\n' + `${key} = ${JSON.stringify(value)}\n` + '```\n\n';
bodies.forEach((body, i) => writeFileSync(path.join(unit, `b${i}.md`), `${head('title', 'A')}Words.\n\n${body}\n\n\`\`\`answer\n${body.replaceAll('```', '~~~')}\n\`\`\`\n`));
blocks.forEach(([key, value], i) => writeFileSync(path.join(unit, `h${i}.md`), `${head(key, value)}Words.\n`));

// Lessons with a problem are taken away, and what is left must press.
const offered = readdirSync(unit).filter((name) => name.endsWith('.md')).length;
for (let round = 0; round < 5; round++) {
	const told = spawnSync(noonbook, ['proof', unit], { encoding: 'utf8', maxBuffer: 1 << 26 });
	if (told.status === 0) break;
	if (told.status !== 1) throw new Error(`proof ended with ${told.status}: ${told.stderr}`);
	const faulty = new Set([...told.stderr.matchAll(/unit\/([bh]\d+\.md)(?::\d+)*: (?!warning)/g)].map((m) => m[1]));
	for (const drawing of told.stderr.matchAll(/unit\/(run\.svg):/g)) bodies.forEach((body, i) => body.includes(drawing[1]) && faulty.add(`b${i}.md`));
	if (faulty.size === 0) throw new Error(told.stderr);
	for (const name of faulty) rmSync(path.join(unit, name), { force: true });
}
const taken = readdirSync(unit).filter((name) => name.endsWith('.md')).length;
execFileSync(noonbook, ['press', '--staff', '--single', '--content', unit, '--out', path.join(work, 'out')]);

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const failures = [];
let pressed = 0;
for (const scripts of [true, false]) {
	const context = await browser.newContext({ javaScriptEnabled: scripts });
	const pages = ['out', 'out-staff'].flatMap((edition) => [path.join(work, `${edition}.html`), ...readdirSync(path.join(work, edition)).filter((name) => /^[bh]\d+\.html$|^index\.html$|^leaf\.svg$/.test(name)).map((name) => path.join(work, edition, name))]);
	for (const file of pages) {
		const page = await context.newPage();
		const fault = (what) => failures.push(`${path.relative(work, file)}, scripts ${scripts ? 'on' : 'off'}: ${what}`);
		page.on('dialog', (dialog) => { fault(`a dialog: ${dialog.message()}`); void dialog.dismiss(); });
		page.on('console', (message) => /Content Security Policy/.test(message.text()) && fault(message.text()));
		await page.route('**/*', (route) => {
			const to = route.request().url();
			if (to.startsWith('file:') || to.startsWith('data:')) return route.continue();
			if (!route.request().isNavigationRequest()) fault(`asks for ${to}`);
			return route.abort();
		});
		await page.goto(pathToFileURL(file).href, { waitUntil: 'load' });
		for (const link of await page.locator('article a[href], h1, h2, article img').all()) {
			if (!(await link.isVisible())) continue;
			const leads = (await link.getAttribute('href')) ?? '';
			if (/^\s*(javascript|vbscript|data:text|file):/i.test(leads)) fault(`a link leads to ${leads}`);
			if (/^(https?:|mailto:|\/\/)/.test(leads) || leads.endsWith('.html') || leads.endsWith('.svg')) continue; // leaves the page, as it should
			await link.dispatchEvent('click');
			await link.dispatchEvent('mouseover');
			pressed++;
		}
		if (scripts && (await page.evaluate(() => window.ran))) fault('a stranger\'s script ran');
		await page.close();
	}
	await context.close();
}
await browser.close();
for (const failure of failures) console.error(failure);
console.log(`hostile corpus: ${offered} lessons, ${offered - taken} refused, ${taken} pressed and opened, ${pressed} things pressed, ${failures.length} failures`);
if (failures.length > 0 || taken < 20 || pressed < 40) process.exit(1);
