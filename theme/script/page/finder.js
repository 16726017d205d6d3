// The finder: a word, and the places where it stands.
(() => {
	'use strict';

	const finder = document.querySelector('.finder');
	if (!finder) return;
	const isSingle = document.body.classList.contains('single-file');
	const field = finder.querySelector('input');
	const tally = finder.querySelector('.result-count');
	const list = finder.querySelector('.results');
	const say = (name, ...with_) => finder.dataset[name].replace(/\{(\d)\}/g, (_, n) => with_[n - 1]);
	let words = null; // of the concordance: stem → places

	// The concordance is large, so it is read when the finder is first opened.
	const read = () => new Promise((done, fail) => {
		if (typeof noonbookConcordance !== 'undefined') return done(noonbookConcordance);
		const script = document.createElement('script');
		script.src = finder.dataset.words;
		script.onload = () => done(noonbookConcordance);
		script.onerror = fail;
		document.head.append(script);
	});

	const address = (file, at) => (isSingle ? `#${file.replace(/\.html$/, '')}${at ? `/${at}` : ''}` : `${file}${at ? `#${at}` : ''}`);

	// prepare numbers the places through and unfolds the words.
	const prepare = (concordance) => {
		const places = [];
		for (const page of concordance.pages) {
			const top = { href: address(page.file), title: page.title, label: '', heads: stems(page.title, concordance), owner: [] };
			top.owner = top.heads;
			places.push(top);
			for (const { at, label, note } of page.places) {
				places.push({ href: address(page.file, at), title: page.title, label, note, heads: stems(label, concordance), owner: top.heads });
			}
		}
		const known = new Map();
		for (const line of concordance.words) {
			const [stem, ...steps] = line.split(' ');
			let place = 0;
			known.set(stem, steps.map((step) => (place += parseInt(step, 36))));
		}
		return { concordance, places, known, common: new Set(concordance.common.split(' ')) };
	};

	// stems brings the words of a text to the stems of the concordance, by its tables.
	const stems = (text, { fold, steps }) => (text.toLowerCase().match(/[\p{L}\p{M}]{2,}/gu) ?? []).map((word) => {
		word = [...word].map((c) => fold[c] ?? c).join('');
		for (const step of steps ?? []) {
			const ending = step.find(({ off, left }) => word.endsWith(off) && [...word].length - [...off].length >= left);
			if (ending) word = word.slice(0, word.length - ending.off.length) + ending.with;
		}
		return word;
	});

	// find gives the places that hold most of the words asked for, the best first: what
	// names a place counts for more than what stands in it. The last word may be a
	// beginning, for it is still being written.
	const find = (text) => {
		const { concordance, places, known, common } = words;
		const asked = stems(text, concordance);
		const telling = asked.filter((stem) => !common.has(stem));
		const met = places.map(() => ({ count: 0, weight: 0 }));
		for (const stem of telling) {
			const begun = stem === asked.at(-1) && !/\s$/.test(text) ? (other) => other.startsWith(stem) : (other) => other === stem;
			const here = new Map();
			const add = (place, weight) => here.set(place, Math.max(here.get(place) ?? 0, weight));
			for (const [other, at] of known) {
				if (begun(other)) at.forEach((place) => add(place, other === stem ? 2 : 1));
			}
			places.forEach((place, i) => {
				if (place.owner.some(begun)) add(i, place.label ? 1 : 8);
				if (place.label && place.heads.some(begun)) add(i, place.note ? 7 : 5);
			});
			for (const [place, weight] of here) {
				met[place].count++;
				met[place].weight += weight;
			}
		}
		const most = Math.max(0, ...met.map(({ count }) => count));
		if (most === 0) return [];
		return places
			.map((place, i) => ({ ...place, ...met[i] }))
			.filter(({ count }) => count === most)
			.sort((a, b) => b.weight - a.weight);
	};

	const shown = 24; // more than anyone reads; a further word narrows them
	const show = () => {
		const text = field.value;
		const found = words && text.trim() ? find(text) : [];
		list.replaceChildren(...found.slice(0, shown).map(({ href, title, label, note }) => {
			const item = document.createElement('li');
			const link = document.createElement('a');
			link.href = href;
			link.textContent = label || title;
			item.append(link);
			const about = note ?? (label ? title : '');
			if (about) {
				const small = document.createElement('small');
				small.textContent = about;
				item.append(' ', small);
			}
			return item;
		}));
		if (!text.trim()) tally.textContent = '';
		else if (found.length === 0) tally.textContent = say('none', text.trim());
		else tally.textContent = found.length === 1 ? say('single') : say('some', found.length);
	};

	const open = () => {
		if (words) return;
		read().then((concordance) => {
			words = prepare(concordance);
			show();
		}, () => {
			tally.textContent = say('missing');
		});
	};
	finder.addEventListener('toggle', () => {
		if (!finder.open) return;
		open();
		field.focus();
	});
	field.addEventListener('input', show);

	// Keys: Alt and W from anywhere, arrows through the places, Enter to the first,
	// Escape back to the page.
	document.addEventListener('keydown', (event) => {
		// With Alt, a Mac makes another letter of W; the key is then known by its place.
		const isKey = event.key.toLowerCase() === 'w' || (event.code === 'KeyW' && !/^[a-z]$/i.test(event.key));
		if (!event.altKey || event.ctrlKey || event.metaKey || !isKey) return;
		event.preventDefault();
		finder.scrollIntoView({ block: 'nearest' });
		if (finder.open) field.focus();
		else finder.open = true;
	});
	finder.addEventListener('keydown', (event) => {
		const stops = [field, ...list.querySelectorAll('a')];
		const at = stops.indexOf(document.activeElement);
		const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
		if (step && at >= 0) {
			event.preventDefault();
			stops[Math.min(stops.length - 1, Math.max(0, at + step))].focus();
		} else if (event.key === 'Enter' && at === 0 && stops.length > 1) {
			event.preventDefault();
			stops[1].click();
		} else if (event.key === 'Escape') {
			event.preventDefault();
			finder.open = false;
			finder.querySelector('summary').focus();
		}
	});
	list.addEventListener('click', (event) => {
		if (event.target.closest('a')) finder.open = false;
	});
})();
