// The finder: a word, the places where it stands, and the line of each.
(() => {
	'use strict';

	const finder = document.querySelector('.finder');
	if (!finder) return;
	const isSingle = document.body.classList.contains('single-file');
	const field = finder.querySelector('input');
	const tally = finder.querySelector('.result-count');
	const list = finder.querySelector('.results');
	const say = (name, ...with_) => finder.dataset[name].replace(/\{(\d)\}/g, (_, n) => with_[n - 1]);
	let words = null; // of the concordance, unfolded
	let linesAt = () => []; // of a place, by its number

	// The concordance is large, so it is read when the finder is first opened.
	const read = (src, known) => new Promise((done, fail) => {
		if (known()) return done(known());
		const script = document.createElement('script');
		script.src = src;
		script.onload = () => done(known());
		script.onerror = fail;
		document.head.append(script);
	});
	const readWords = () => read(finder.dataset.words, () => (typeof noonbookConcordance === 'undefined' ? null : noonbookConcordance));
	const readLines = () => read(finder.dataset.lines, () => (typeof noonbookLines === 'undefined' ? null : noonbookLines));

	const address = (file, at) => (isSingle ? `#${file.replace(/\.html$/, '')}${at ? `/${at}` : ''}` : `${file}${at ? `#${at}` : ''}`);

	// prepare numbers the places through and unfolds the words.
	const prepare = (concordance) => {
		const { fold, steps } = concordance;
		const known = new Map(); // stem → places
		for (const line of concordance.words) {
			const [stem, ...gaps] = line.split(' ');
			let place = 0;
			known.set(stem, gaps.map((gap) => (place += parseInt(gap, 36))));
		}
		const common = new Set(concordance.common.split(' '));
		words = { fold, steps, known, common, all: [...known.keys(), ...common], places: [], also: new Map() };
		for (const [page, { file, title, after = 0, places }] of concordance.pages.entries()) {
			const owner = stems(title);
			const shared = { title, after, owner, page };
			words.places.push({ ...shared, at: 0, href: address(file), label: '', heads: owner });
			for (const [i, { at, label, note, also = '' }] of places.entries()) {
				const [heads, other] = [stems(label), stems(also)];
				words.places.push({ ...shared, at: i + 1, href: address(file, at), label, note, other, heads: [...heads, ...other] });
				// "Eye" and "lens" say less than "eyepiece", so only a term of one word is found by it elsewhere.
				if (heads.length === 1) other.forEach((one) => words.also.set(one, [...(words.also.get(one) ?? []), ...heads]));
			}
		}
	};

	// stems brings the words of a text to the stems of the concordance, by its tables.
	const wordsOf = (text) => text.match(/[\p{L}\p{M}]{2,}/gu) ?? [];
	const stems = (text) => wordsOf(text).map(stem);
	const stemmed = new Map();
	const stem = (word) => {
		if (!stemmed.has(word)) stemmed.set(word, toStem(word.toLowerCase()));
		return stemmed.get(word);
	};
	const toStem = (word) => {
		word = [...word].map((c) => words.fold[c] ?? c).join('');
		for (const step of words.steps ?? []) {
			const ending = step.find(({ off, left }) => word.endsWith(off) && [...word].length - [...off].length >= left);
			if (ending) word = word.slice(0, word.length - ending.off.length) + ending.with;
		}
		return word;
	};

	// The lines of a place are in a file beside the page; in the handbook in one file they
	// are read off its page.
	const unfoldLines = ({ lines, places }) => {
		const all = lines.split('\n');
		linesAt = (number) => {
			let at = 0;
			return places[number].split(' ').filter(Boolean).map((gap) => all[(at += parseInt(gap, 36))]);
		};
	};
	const breaks = new Set('article aside blockquote br caption details div dl figure h1 h2 h3 h4 h5 hr li ol p pre section summary table tbody thead tr ul'.split(' '));
	const skipped = new Set(['svg', 'script', 'figcaption', 'nav']);
	const linesOfPage = (root) => {
		const places = [[]];
		let line = '';
		let isTerm = false;
		const end = () => {
			const text = line.replace(/\s+/g, ' ').replace(/^[ ·]+|[ ·]+$/g, '');
			if (/[\p{L}\p{M}]{2}/u.test(text)) places.at(-1).push(text);
			line = '';
		};
		const walk = (node) => {
			if (node.nodeType === Node.TEXT_NODE) line += node.data;
			if (node.nodeType !== Node.ELEMENT_NODE || skipped.has(node.localName) || node.className === 'walk-on') return;
			const { localName } = node;
			if (breaks.has(localName) || localName === 'dt' || (isTerm && localName === 'a')) end();
			if (/^(h[234]|dt)$/.test(localName) && node.id) {
				places.push([]);
				isTerm = /nb-term-\d+$/.test(node.id);
			}
			else if (localName !== 'h1') {
				if (/^(td|th|dd)$/.test(localName) && line) line += ' · ';
				node.childNodes.forEach(walk);
			}
			if (breaks.has(localName)) end();
		};
		walk(root);
		return places;
	};
	const readPages = () => {
		const pages = new Map();
		linesAt = (number) => {
			const { page, at, href } = words.places[number];
			if (!pages.has(page)) {
				const root = document.getElementById(`${href.slice(1).split('/')[0]}/nb-text`);
				pages.set(page, root ? linesOfPage(root) : []);
			}
			return pages.get(page)[at] ?? [];
		};
		words.places.forEach((place) => { // the pages for a projector are not in the file
			place.gone = !document.getElementById(decodeURIComponent(place.href.slice(1).split('/')[0]));
		});
	};

	// isNear reports whether two words differ by one letter that is wrong, missing or too
	// much, or by two neighbours that are swapped. Of a word that is still being written
	// the other may go on.
	const isNear = (asked, other, writing) => {
		const agrees = (a, b) => (writing ? b.startsWith(a) : a === b);
		let i = 0;
		while (i < asked.length && asked[i] === other[i]) i++;
		const [a, b] = [asked.slice(i), other.slice(i)];
		return agrees(a.slice(1), b.slice(1)) || agrees(a, b.slice(1)) || agrees(a.slice(1), b) ||
			(a.length > 1 && a[0] === b[1] && a[1] === b[0] && agrees(a.slice(2), b.slice(2)));
	};
	const shortest = 4; // of shorter words half the others are near

	// meant gives the stems that a word may stand for: itself, those that it begins, and
	// where there is none those near it.
	const meant = (word, writing) => {
		const asked = stem(word);
		const begun = words.all.filter((other) => other === asked || (writing && other.startsWith(asked)));
		if (begun.length || asked.length < shortest) return { word, asked, near: [], ...widened(begun) };
		let near = words.all.filter((other) => Math.abs(other.length - asked.length) < 2 && isNear(asked, other, false));
		if (!near.length && writing) near = words.all.filter((other) => other.length >= asked.length && isNear(asked, other, true));
		return { word, asked, near, ...widened(near) };
	};
	// Another name of a term leads to the places of the term too.
	const widened = (some) => ({ stems: new Set(some), wider: new Set(some.flatMap((other) => words.also.get(other) ?? [])) });

	// find gives the places that hold most of the words asked for, the best first: what
	// names a place counts for more than what stands in it. The last word may be a
	// beginning, for it is still being written.
	const find = (text) => {
		const { places, known, common } = words;
		const all = wordsOf(text);
		const told = all.filter((word) => !common.has(stem(word)));
		const telling = (told.length ? told : all).map((word) => meant(word, word === all.at(-1) && !/\s$/.test(text)));
		const met = places.map(() => ({ count: 0, weight: 0 }));
		for (const { asked, stems: some, wider, near } of telling) {
			const here = new Map();
			const add = (place, weight) => here.set(place, Math.max(here.get(place) ?? 0, weight));
			for (const other of some) (known.get(other) ?? []).forEach((place) => add(place, other === asked || near.includes(other) ? 2 : 1));
			for (const other of wider) (known.get(other) ?? []).forEach((place) => add(place, 1));
			const names = (head) => some.has(head);
			places.forEach((place, i) => {
				if (place.owner.some(names)) add(i, place.label ? 1 : 8);
				if (place.label && place.heads.some(names)) add(i, place.note ? 7 : 5);
				if (place.other?.some((one) => one === asked || near.includes(one))) add(i, 9);
			});
			for (const [place, weight] of here) {
				met[place].count++;
				met[place].weight += weight;
			}
		}
		const most = Math.max(0, ...met.map(({ count }) => count));
		const found = places
			.map((place, i) => ({ ...place, ...met[i], number: i }))
			.filter(({ count, gone }) => most > 0 && count === most && !gone)
			.sort((a, b) => a.after - b.after || b.weight - a.weight);
		return { found, telling, isCommon: told.length === 0 };
	};

	// The line of a place that holds most of the words, or its first that says something.
	const enough = 30; // letters, more than a label has
	const lineOf = ({ number, note }, telling) => {
		const lines = [...(note ? [note] : []), ...linesAt(number)];
		let best = '';
		let most = 0;
		for (const line of lines) {
			const here = stemsOf(line);
			const told = telling.filter(({ stems: some, wider }) => here.some((one) => some.has(one) || wider.has(one))).length;
			if (told > most) [best, most] = [line, told];
			if (told === telling.length) break;
		}
		return best || (lines.find((line) => line.length > enough) ?? lines[0] ?? '');
	};
	const linesRead = new Map();
	const stemsOf = (line) => {
		if (!linesRead.has(line)) linesRead.set(line, stems(line));
		return linesRead.get(line);
	};

	// marked takes a line apart at the words that were meant: every other piece is one. Of
	// a long line the words round the first of them are left.
	const before = 60;
	const after = 110;
	const marked = (line, telling) => {
		const pieces = [''];
		let from = 0;
		for (const { 0: word, index } of line.matchAll(/[\p{L}\p{M}]{2,}/gu)) {
			if (!telling.some(({ stems: some, wider }) => some.has(stem(word)) || wider.has(stem(word)))) continue;
			pieces[pieces.length - 1] += line.slice(from, index);
			pieces.push(word, '');
			from = index + word.length;
		}
		pieces[pieces.length - 1] += line.slice(from);
		if (pieces.length > 1 && pieces[0].length > before) pieces[0] = `… ${pieces[0].slice(-before).replace(/^\S*\s/, '')}`;
		let room = before + after;
		const left = pieces.findIndex((piece) => (room -= piece.length) < 0);
		if (left < 0) return pieces;
		const last = left % 2 ? '' : pieces[left].slice(0, pieces[left].length + room).replace(/\s\S*$/, '');
		return [...pieces.slice(0, left - (left % 2)), `${left % 2 ? pieces[left - 1] : last} …`];
	};

	// wordOf gives a stem as the handbook writes it, by the shortest of its forms.
	const wordOf = (asked) => {
		const forms = (words.known.get(asked) ?? []).slice(0, 6)
			.flatMap((number) => [words.places[number].label || words.places[number].title, ...linesAt(number)])
			.flatMap(wordsOf)
			.filter((word) => stem(word) === asked)
			.map((word) => word.toLowerCase());
		return forms.sort((a, b) => a.length - b.length)[0] ?? asked;
	};

	// alike suggests words for one that nothing is near to: those that begin like it.
	const alike = (asked) => words.all
		.map((other) => {
			let i = 0;
			while (i < other.length && other[i] === asked[i]) i++;
			return { other, same: i };
		})
		.filter(({ same, other }) => same >= shortest - 1 && same * 2 >= Math.max(asked.length, other.length))
		.sort((a, b) => b.same - a.same || a.other.length - b.other.length)
		.slice(0, 3)
		.map(({ other }) => wordOf(other));

	const element = (name, ...inside) => {
		const made = document.createElement(name);
		made.append(...inside);
		return made;
	};

	const result = (place, telling) => {
		const link = element('a', place.label || place.title);
		link.href = place.href;
		const item = element('li', link);
		if (place.label) item.append(' ', element('small', place.title));
		const line = lineOf(place, telling);
		if (line) item.append(element('p', ...marked(line, telling).map((piece, i) => (i % 2 ? element('mark', piece) : piece))));
		return item;
	};

	const suggestion = (word) => {
		const button = element('button', word);
		button.type = 'button';
		button.addEventListener('click', () => {
			field.value = word;
			field.focus();
			show();
		});
		return element('li', button);
	};

	const shown = 24; // more than anyone reads; a further word narrows them
	const show = () => {
		const text = field.value.trim();
		if (!words || !text) {
			list.replaceChildren();
			tally.textContent = '';
			return;
		}
		const { found, telling, isCommon } = find(field.value);
		const count = found.length === 1 ? say('single') : say('some', found.length);
		const wrong = telling.find(({ near }) => near.length);
		list.replaceChildren(...found.slice(0, shown).map((place) => result(place, telling)));
		if (telling.length === 0) {
			tally.textContent = say('letters');
		} else if (found.length === 0) {
			const instead = alike(telling.at(-1).asked);
			tally.textContent = say(instead.length ? 'perhaps' : 'none', text);
			list.append(...instead.map(suggestion));
		} else if (wrong) {
			tally.textContent = `${say('near', wrong.word, wrong.near.slice(0, 3).map(wordOf).join(', '))} ${count}`;
		} else {
			tally.textContent = isCommon ? `${say('common', text)} ${count}` : count;
		}
	};

	// Lines can come while somebody goes through the places with the arrows.
	const again = () => {
		const places = () => [...list.querySelectorAll('a, button')];
		const at = places().indexOf(document.activeElement);
		show();
		places()[at]?.focus();
	};

	const open = () => {
		if (words) return;
		readWords().then((concordance) => {
			prepare(concordance);
			if (isSingle) readPages();
			show();
			if (!isSingle) readLines().then(unfoldLines).then(again, () => {}); // without lines the places alone are shown
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
		const stops = [field, ...list.querySelectorAll('a, button')];
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
