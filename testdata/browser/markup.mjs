// Markup: html-validate with its rules for valid HTML, none turned off.

import { HtmlValidate } from 'html-validate';

const validator = new HtmlValidate({ root: true, extends: ['html-validate:standard'] });

export async function markup(edition, ledger) {
	for (const name of edition.pages) {
		const report = await validator.validateFile(edition.file(name));
		const found = report.results
			.flatMap((result) => result.messages)
			.filter((message) => message.severity === 2)
			.map((m) => `${m.line}:${m.column} ${m.ruleId}: ${m.message}${m.selector ? ` at ${m.selector}` : ''}`);
		ledger.check(edition.label(name), 'markup', found);
	}
}
