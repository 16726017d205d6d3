// Accessibility: axe-core at WCAG 2.2 A and AA, light and dark, phone and desktop. On the
// phone, whose colours are the desktop's, one page is light and the next dark.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { contrast } from './contrast.mjs';
import { some } from './ledger.mjs';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const levels = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const screens = {
	desktop: { width: 1280, height: 900 },
	phone: { width: 390, height: 844 },
};

// access looks at the pages with everything that unfolds unfolded, since what is
// folded away is not examined. Contrast that axe leaves open is measured on pictures,
// on the desktop, where there is room for wide tables; the phone's colours are the
// same. Pictures take longer than all else, so of pages that the editions do not have
// alike they are taken of one: the staff's, which holds all that the class's holds.
export async function access(context, edition, isStaff, ledger) {
	const page = await context.newPage();
	const camera = await context.newCDPSession(page);
	for (const [i, name] of edition.own.entries()) {
		const label = edition.label(name);
		const onPhone = ['light', 'dark'][i % 2];
		const takesPictures = isStaff || edition.alike.includes(name);
		await page.goto(edition.url(name));
		await page.evaluate(`${axe}; undefined`);
		await page.evaluate(unfold);
		for (const colorScheme of ['light', 'dark']) {
			const open = {};
			for (const [screen, size] of Object.entries(screens)) {
				if (screen === 'phone' && colorScheme !== onPhone) continue;
				await page.setViewportSize(size);
				await page.emulateMedia({ colorScheme });
				// From the top: what an index that stays in view covers for the moment is no fault.
				await page.evaluate(() => scrollTo(0, 0));
				const result = await page.evaluate(runAxe, levels);
				ledger.check(label, 'axe', verdict(result), `${screen}, ${colorScheme}`);
				open[screen] = undecided(result, label, ledger);
				if (screen !== 'desktop' || !takesPictures) continue;
				const { measured, findings, late } = await contrast(page, camera, open.desktop);
				if (late.length) ledger.note(`not in view at the first look, ${label}, ${colorScheme}: ${some(late)}`);
				if (measured > 0) ledger.check(label, 'contrast', findings.length ? [`${findings.length} of ${measured} runs of words are faint: ${some(findings)}`] : [], colorScheme);
			}
			const unmeasured = open.phone?.filter((selector) => !open.desktop.includes(selector)) ?? [];
			if (unmeasured.length) ledger.note(`contrast left open on the phone only, ${label}: ${some(unmeasured)}`);
		}
	}
	await page.close();
}

// undecided gives the selectors whose contrast axe leaves open, and notes whatever
// else it leaves open.
function undecided(result, label, ledger) {
	for (const rule of result.undecided) {
		if (rule.id !== 'color-contrast') ledger.note(`axe leaves ${rule.id} open on ${rule.nodes.length} elements of ${label}: ${some(rule.nodes, 2)}`);
	}
	return result.undecided.filter((rule) => rule.id === 'color-contrast').flatMap((rule) => rule.selectors);
}

// verdict holds it against axe itself when it judged no contrast: every page has words.
function verdict({ violations, met }) {
	if (!met.includes('color-contrast')) return [`contrast was not examined, only ${some(met)}`];
	return violations.map((rule) => `${rule.id} (${rule.help}) on ${rule.nodes.length}: ${some(rule.nodes, 3)}`);
}

function unfold() {
	for (const details of document.querySelectorAll('details')) details.open = true;
}

// runAxe runs in the page and returns only what the report needs.
async function runAxe(tags) {
	const result = await globalThis.axe.run(document, {
		runOnly: { type: 'tag', values: tags },
		resultTypes: ['violations', 'incomplete'],
		checks: { 'color-contrast': { options: { ignoreLength: true } } }, // single figures too
	});
	const brief = (rule) => ({
		id: rule.id,
		help: rule.help,
		selectors: rule.nodes.map((node) => node.target[0]),
		nodes: rule.nodes.map((node) => {
			const data = node.any[0]?.data;
			const colours = data?.contrastRatio ? ` ${data.fgColor} on ${data.bgColor} is ${data.contrastRatio}:1` : '';
			return `${node.target.join(' ')}${colours}`;
		}),
	});
	return {
		violations: result.violations.map(brief),
		undecided: result.incomplete.map(brief),
		met: [...result.passes, ...result.violations].map((rule) => rule.id),
	};
}
