// Paths: the lines of a printed sheet as numbers, by poppler's own drawing of the PDF.

import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';

// paths gives the lines of a sheet in millimetres, each a list of points; sheets count
// from 1, and the drawing is left in the folder.
export function paths(pdf, sheet, folder) {
	const svg = path.join(folder, 'page.svg');
	execFileSync('pdftocairo', ['-svg', '-f', `${sheet}`, '-l', `${sheet}`, pdf, svg]);
	const found = [];
	for (const [, tag] of readFileSync(svg, 'utf8').matchAll(/<path ([^>]*)\/>/g)) {
		const d = tag.match(/ ?d="([^"]*)"/)?.[1] ?? '';
		const [a, b, c, e, x, y] = (tag.match(/matrix\(([^)]*)\)/)?.[1] ?? '1,0,0,1,0,0').split(',').map(Number);
		for (const part of d.split(/(?=M)/)) {
			const numbers = part.match(/-?[\d.]+(?:e-?\d+)?/g)?.map(Number) ?? [];
			const points = [];
			for (let i = 0; i + 1 < numbers.length; i += 2) {
				points.push([a * numbers[i] + c * numbers[i + 1] + x, b * numbers[i] + e * numbers[i + 1] + y].map((pt) => (pt * 25.4) / 72));
			}
			if (points.length > 1) found.push({ points, curved: /C/.test(part), filled: !/stroke-width/.test(tag) });
		}
	}
	return found;
}
