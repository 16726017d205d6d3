// Readers: how much each of them is given. A pupil's page has at most six screens at
// 1440 × 900, what is set aside for a click apart; on paper a day sheet is one sheet with
// two sides, a build card one or two pages, and neither has a letter below ten points,
// small capitals, raised signs and drawings apart. The limits are ours.

export const kinds = ['screens of a lesson', 'sides of a sheet', 'letters of a sheet'];

const screen = { width: 1440, height: 900 };
const mostScreens = 6;
const mostSides = 2;
const leastPoints = 10;
const pixelsAPoint = 96 / 72; // CSS Values and Units 3, section 6.2

// sheets are the sides on which each page prints, as paper counted them.
export async function readers(context, edition, sheets, ledger) {
	const page = await context.newPage();
	await page.setViewportSize(screen);
	for (const name of edition.own) {
		const label = edition.label(name);
		const onPaper = /^(day|card)-/.test(name);
		if (!onPaper && (edition.name !== 'handbook' || !edition.pages.includes(`pupil-${name}`))) continue;
		await page.goto(edition.url(name));
		if (onPaper) {
			const sides = sheets.get(label) ?? sheets.get(name) ?? NaN;
			ledger.check(label, 'sides of a sheet', sides <= mostSides ? [] : [`${sides} sides, more than ${mostSides}`]);
			await page.emulateMedia({ media: 'print' });
			ledger.check(label, 'letters of a sheet', await page.evaluate(smallLetters, leastPoints * pixelsAPoint - 0.05));
			await page.emulateMedia({ media: 'screen' });
			continue;
		}
		const height = await page.evaluate(() => document.querySelector('main').getBoundingClientRect().bottom + scrollY);
		const screens = height / screen.height;
		ledger.check(label, 'screens of a lesson', screens <= mostScreens ? [] : [`${screens.toFixed(1)} screens, more than ${mostScreens}`]);
	}
	await page.close();
}

// smallLetters runs in the page.
function smallLetters(least) {
	const found = new Set();
	const walk = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
	while (walk.nextNode()) {
		const element = walk.currentNode.parentElement;
		if (walk.currentNode.data.trim() === '' || element.closest('svg, sup, sub, [hidden]') || element.getClientRects().length === 0) continue;
		const size = parseFloat(getComputedStyle(element).fontSize);
		if (size < least) found.add(`${(size * 0.75).toFixed(1)} pt: ${element.localName}.${element.className} ${walk.currentNode.data.trim().slice(0, 30)}`);
	}
	return [...found].slice(0, 5);
}
