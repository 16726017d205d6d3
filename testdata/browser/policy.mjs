// Policy: the page's own Content-Security-Policy, without exceptions, and that the
// browser holds the page to it.

const wanted = ['default-src', 'script-src', 'style-src', 'img-src', 'base-uri', 'form-action'];

export async function policy(page) {
	const text = await page.evaluate(() => document.querySelector('head meta[http-equiv="Content-Security-Policy"]')?.content ?? '');
	if (!text) return ['there is none'];
	const found = [];
	const parts = Object.fromEntries(text.split(';').map((part) => part.trim().split(/\s+/)).map(([name, ...sources]) => [name, sources]));
	for (const name of wanted) if (!parts[name]) found.push(`${name} is missing`);
	if (parts['default-src']?.join() !== "'none'") found.push('default-src is not none');
	for (const [name, sources] of Object.entries(parts)) {
		for (const source of sources) {
			const isPicture = name === 'img-src' && source === 'data:';
			if (!isPicture && !/^'(none|self|sha256-[\w+/]+=*)'$/.test(source)) found.push(`${name} allows ${source}`);
		}
	}
	return found;
}

// broken tries what the policy forbids, and gives what went through.
export async function broken(page) {
	return page.evaluate(async () => {
		const refused = [];
		document.addEventListener('securitypolicyviolation', (event) => refused.push(event.effectiveDirective));
		const add = (name, set) => document.head.append(Object.assign(document.createElement(name), set));
		add('script', { textContent: 'window.wentThrough = true' });
		add('style', { textContent: 'html { color: red }' });
		document.body.setAttribute('style', 'color: red');
		document.body.append(Object.assign(new Image(), { src: 'https://noonbook.invalid/x.png' }));
		const want = ['script-src-elem', 'style-src-elem', 'style-src-attr', 'img-src'];
		const missing = () => want.filter((name) => !refused.includes(name));
		// The events may come late on a busy machine; ten seconds only end the wait.
		for (let looks = 0; missing().length > 0 && looks < 100; looks++) await new Promise((done) => setTimeout(done, 100));
		return [...missing().map((name) => `${name} is not held`), ...(window.wentThrough ? ['an inline script ran'] : [])];
	});
}
