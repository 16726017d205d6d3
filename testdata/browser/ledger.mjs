// The ledger counts what was checked and prints a line for each check that fails.

export class Ledger {
	passed = 0;
	failed = 0;
	counts = new Map(); // kind of check → how often it was made
	heights = new Map(); // what is measured → its greatest value
	notes = new Map(); // what a person may want to know, and how often it was met
	spent = new Map(); // what was done → milliseconds that it took, of both editions together

	// check enters one check of one page. Findings are strings; none means passed.
	check(page, kind, findings, setting = '') {
		this.counts.set(kind, (this.counts.get(kind) ?? 0) + 1);
		if (findings.length === 0) {
			this.passed++;
			return;
		}
		this.failed++;
		const name = setting ? `${kind} (${setting})` : kind;
		console.log(`${page}: ${name}: ${oneLine(findings.join(' | '))}`);
	}

	note(text) {
		this.notes.set(text, (this.notes.get(text) ?? 0) + 1);
	}

	// most keeps the greatest value of something measured.
	most(what, value) {
		this.heights.set(what, Math.max(value, this.heights.get(what) ?? -Infinity));
	}

	// spend does work and keeps how long it took.
	async spend(what, work) {
		const from = performance.now();
		const result = await work();
		this.spent.set(what, (this.spent.get(what) ?? 0) + performance.now() - from);
		return result;
	}

	// close fails every kind that should have been checked and never was, and
	// prints the summary. It reports whether all is well.
	close(kinds) {
		for (const kind of kinds) {
			if (!this.counts.has(kind)) this.check('handbook', kind, ['nothing was checked']);
		}
		for (const [text, times] of this.notes) console.log(`note: ${oneLine(text)}${times > 1 ? ` (${times} times)` : ''}`);
		if (this.heights.size) console.log(`most: ${[...this.heights].map(([what, value]) => `${what} ${value.toFixed(0)}`).join(', ')}`);
		if (this.spent.size) console.log(`seconds: ${[...this.spent].map(([what, time]) => `${what} ${(time / 1000).toFixed(0)}`).join(', ')}`);
		console.log([...this.counts].map(([kind, times]) => `${kind} ${times}`).join(', '));
		console.log(`${this.passed} passed, ${this.failed} failed`);
		return this.failed === 0;
	}
}

// some names the first few of a list and says how many more there are.
export function some(list, most = 4) {
	const more = list.length - most;
	return list.slice(0, most).join(', ') + (more > 0 ? ` and ${more} more` : '');
}

function oneLine(text) {
	return text.replace(/\s+/g, ' ').trim();
}
