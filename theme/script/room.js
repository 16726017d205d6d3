// A lesson in the room: one view at a time. The page holds them one below the other; on a
// wide screen this shows one, with letters as large as fit, and leads from one to the next.
(() => {
	'use strict';

	// As in room.css. Where it does not hold, the page stays as it is.
	const wide = matchMedia('screen and (min-width: 45rem) and (min-height: 24rem)');

	// Letters in hundredths of the screen's height: what is tried, the largest first, by
	// what a view shows. What is read aloud goes below 5 only when it cannot be divided.
	const sizes = [11.5, 10, 9, 8.2, 7.4, 6.8, 6.2, 5.6, 5, 4.6, 4.2, 3.9, 3.6, 3.4, 3.2, 2.95];
	const largest = { title: 6.2, question: 10, step: 8.2, care: 6.8, words: 7.4, table: 6.2, computed: 4.2, picture: 4.2 };
	const besidePicture = 5.6;
	const aloud = 5;
	// The smallest letters; and those of a table or a drawing that would else be cut off or
	// cover itself, of which capitals still are a fiftieth.
	const least = 3.2;
	const scant = 2.95;

	class Room {
		constructor(box) {
			this.box = box;
			this.foot = box.parentElement.querySelector('.room-foot');
			this.written = [...box.childNodes].map((node) => node.cloneNode(true));
			this.key = `room ${location.pathname}`;
			this.at = 0;
		}

		// lay fits every view to the screen; what is too long goes on in a further one.
		lay() {
			const kept = this.views?.[this.at]?.dataset.from ?? remembered(this.key);
			this.box.replaceChildren(...this.written.map((node) => node.cloneNode(true)));
			this.box.classList.add('is-running');
			let under = '';
			let until = { text: '', level: '' };
			let from = 0;
			for (const node of [...this.box.children]) {
				if (node.matches('.view-until')) {
					until = { text: node.textContent, level: node.previousElementSibling.localName };
					continue;
				}
				if (!node.matches('.view')) {
					under = node.textContent;
					if (node.localName <= until.level) until = { text: '', level: '' };
					continue;
				}
				node.dataset.from = from++;
				node.dataset.until = until.text;
				const line = document.createElement('p');
				line.className = 'view-under';
				line.textContent = under;
				node.prepend(line);
				fit(node);
			}
			this.views = [...this.box.querySelectorAll(':scope > .view')];
			this.views.forEach((view, i) => {
				view.tabIndex = -1;
				view.setAttribute('role', 'group');
				view.setAttribute('aria-label', [view.querySelector('.view-under').textContent, this.place(i)].filter(Boolean).join(', '));
			});
			this.show(Math.max(0, this.views.findIndex((view) => view.dataset.from === kept)));
		}

		// leave gives the page back as it was written.
		leave() {
			this.box.classList.remove('is-running', 'is-dark');
			this.box.replaceChildren(...this.written.map((node) => node.cloneNode(true)));
			this.views = null;
		}

		place(i) {
			return this.foot.dataset.place.replace('{1}', i + 1).replace('{2}', this.views.length);
		}

		part(name) {
			return this.foot.querySelector(`[data-part="${name}"]`);
		}

		show(i, move = false) {
			this.at = Math.min(this.views.length - 1, Math.max(0, i));
			this.views.forEach((view, k) => view.classList.toggle('is-shown', k === this.at));
			const view = this.views[this.at];
			this.dark(false);
			this.answer(false);
			this.part('place').textContent = this.place(this.at);
			this.part('until').textContent = view.dataset.until;
			this.part('back').disabled = this.at === 0;
			this.part('on').disabled = this.at === this.views.length - 1;
			const button = this.part('answer');
			if (button) button.disabled = !view.querySelector('.answer');
			this.foot.style.setProperty('--at', `${4 + (92 * this.at) / Math.max(1, this.views.length - 1)}%`);
			remember(this.key, view.dataset.from);
			if (move) view.focus({ preventScroll: true });
		}

		answer(on = !this.views[this.at].classList.contains('is-answered')) {
			const view = this.views[this.at];
			const answer = view.querySelector('.answer');
			if (!answer || on === view.classList.contains('is-answered')) return;
			view.classList.toggle('is-answered', on);
			view.classList.remove('is-alone');
			if (!enlarge(view, scant) && on) {
				view.classList.add('is-alone'); // a long answer has the screen to itself
				enlarge(view, scant);
			}
			answer.tabIndex = -1;
			(on ? answer : view).focus({ preventScroll: true });
		}

		dark(on = !this.box.classList.contains('is-dark')) {
			if (on === this.box.classList.contains('is-dark')) return;
			this.box.classList.toggle('is-dark', on);
			this.part('status').textContent = on ? this.foot.dataset.dark : '';
			if (!on) this.views[this.at].focus({ preventScroll: true });
		}

		fill() {
			if (document.fullscreenElement) document.exitFullscreen();
			else document.documentElement.requestFullscreen?.().catch(() => {});
		}

		// press does what a key asks for, and tells whether it asks for anything.
		press(key, shift) {
			const last = this.views.length - 1;
			const to = { ArrowRight: 1, ArrowDown: 1, PageDown: 1, ArrowLeft: -1, ArrowUp: -1, PageUp: -1, ' ': shift ? -1 : 1 }[key];
			if (to) this.show(this.at + to, true);
			else if (key === 'Home') this.show(0, true);
			else if (key === 'End') this.show(last, true);
			else if (key === 'b' || key === 'B' || key === '.') this.dark();
			else if (key === 'a' || key === 'A') this.answer();
			else if (key === 'f' || key === 'F') this.fill();
			else if (key === 'Escape' && this.box.classList.contains('is-dark')) this.dark(false);
			else if (key === 'Escape') this.part('lesson').click();
			else return false;
			return true;
		}
	}

	// The place is kept for a page that is opened again in the middle of a lesson; where a
	// browser keeps nothing, it begins at the beginning.
	function remember(key, at) {
		try {
			sessionStorage.setItem(key, at);
		} catch {
			// nothing is kept
		}
	}

	function remembered(key) {
		try {
			return sessionStorage.getItem(key) ?? '0';
		} catch {
			return '0';
		}
	}

	// fit gives a view the largest letters with which nothing is cut off. What does not
	// fit is divided, at rows, items or paragraphs, into views of about the same length.
	function fit(view) {
		const spare = view.cloneNode(true);
		view.classList.add('is-shown');
		const isAloud = !['table', 'computed', 'picture'].includes(view.dataset.kind);
		if (!enlarge(view, isAloud ? aloud : least) || isCrowded(view)) {
			const parts = isCrowded(view) ? halves(view, spare) : divided(view, spare);
			if (parts.length > 1) {
				view.replaceWith(...parts);
				parts.forEach(fit);
				return;
			}
			enlarge(view, scant);
		}
		view.classList.remove('is-shown');
	}

	function enlarge(view, floor) {
		const body = view.querySelector('.view-body');
		const top = Math.min(largest[view.dataset.kind], body.querySelector('img') ? besidePicture : Infinity);
		for (const size of sizes) {
			if (size > top || size < floor) continue;
			view.style.setProperty('--letters', `${size}vh`);
			if (holds(body)) break;
		}
		body.querySelectorAll('svg.drawing').forEach(letters);
		return holds(body);
	}

	function holds(body) {
		return body.scrollHeight <= body.clientHeight + 1 && body.scrollWidth <= body.clientWidth + 1;
	}

	// letters makes those of a drawing as large as the smallest on the screen. Where they
	// would then cover one another or be cut off, capitals are only just a fiftieth of it,
	// and where that is too much, too, the drawing is lettered as for a narrow page.
	function letters(drawing) {
		const tries = [[least, false], [scant, false]];
		if (drawing.querySelector('.narrow')) tries.push([least, true], [scant, true]);
		if (!tries.some(([size, isNarrow]) => letter(drawing, size, isNarrow))) letter(drawing, scant, false);
	}

	// letter tells whether all letters then stand free.
	function letter(drawing, size, isNarrow) {
		drawing.classList.toggle('is-narrow', isNarrow);
		for (const text of drawing.querySelectorAll('text')) {
			text.style.fontSize = '';
			if (!text.checkVisibility()) continue;
			const { a, b } = text.getScreenCTM(); // some letters are turned
			const smallest = (size * innerHeight) / 100 / Math.hypot(a, b);
			if (parseFloat(getComputedStyle(text).fontSize) < smallest) text.style.fontSize = `${smallest}px`;
		}
		return !covers(drawing) && !sticksOut(drawing);
	}

	// covers reports whether letters of a drawing stand on others, by more than the air
	// above and below them.
	function covers(drawing) {
		const boxes = [...drawing.querySelectorAll('text')].map((text) => Object.assign(text.getBoundingClientRect(), { says: text.textContent }));
		return boxes.some((a, i) => boxes.slice(i + 1).some((b) => {
			if (a.says === b.says) return false; // the naughts where two axes meet
			const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
			const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
			return across > 1 && down > 0.3 * Math.min(a.height, b.height);
		}));
	}

	// sticksOut reports whether letters of a drawing are cut off at the sides of the view.
	function sticksOut(drawing) {
		const room = drawing.closest('.view-body').getBoundingClientRect();
		return [...drawing.querySelectorAll('text')].map((text) => text.getBoundingClientRect()).some((box) => box.width > 0 && (box.left < room.left - 1 || box.right > room.right + 1));
	}

	function isCrowded(view) {
		const drawing = view.querySelector('svg.drawing');
		return drawing !== null && !view.dataset.half && covers(drawing);
	}

	// halves shows a drawing whose letters are too close in two views, the upper and the
	// lower or the left and the right part of it, each with a little of the other.
	function halves(view, spare) {
		return [0, 1].map((half) => {
			const part = spare.cloneNode(true);
			const drawing = part.querySelector('svg.drawing');
			const { x, y, width, height } = drawing.viewBox.baseVal;
			const isTall = height > 0.6 * width;
			part.dataset.half = isTall ? 'down' : 'across';
			const [w, h] = isTall ? [width, 0.55 * height] : [0.55 * width, height];
			drawing.setAttribute('viewBox', [x + half * (width - w), y + half * (height - h), w, h].join(' '));
			return part;
		});
	}

	// pieces is what a view can be divided into: the rows of its table, or the blocks or
	// items of its body, or the sentences of its one paragraph.
	function pieces(view) {
		let box = view.querySelector('.view-body');
		const parts = () => [...box.children].filter((piece) => !piece.matches('.answer, .side-label'));
		for (;;) {
			if (box.matches('table')) box = box.querySelector('tbody') ?? box;
			const [only, ...more] = parts();
			if (!only || more.length > 0 || only.matches('svg, tr, h1, .sentence, p:not(:has(> .sentence))')) return parts();
			box = only;
		}
	}

	// cut puts every sentence of a paragraph into an element of its own. One ends at a stop
	// before a capital.
	function cut(view) {
		for (const paragraph of view.querySelectorAll('.view-body p:not(.side-label, .answer *)')) {
			if (paragraph.querySelector('.sentence')) continue;
			const nodes = [...paragraph.childNodes];
			paragraph.replaceChildren();
			let sentence;
			const begin = () => {
				sentence = document.createElement('span');
				sentence.className = 'sentence';
				paragraph.append(sentence);
			};
			begin();
			for (const node of nodes) {
				const texts = node.nodeType === Node.TEXT_NODE ? node.data.split(/(?<=[.!?]["”’»)]*\s+)(?=[«“"(]*\p{Lu})/u) : [node];
				texts.forEach((text, i) => {
					if (i > 0) begin();
					sentence.append(text);
				});
			}
		}
	}

	function divided(view, spare) {
		if (pieces(view).length < 2) [view, spare].forEach(cut);
		const all = pieces(view).length;
		if (all < 2) return [view];
		const left = pieces(view);
		while (left.length > 1 && !holds(view.querySelector('.view-body'))) left.pop().remove();
		const count = Math.ceil(all / left.length);
		const each = Math.ceil(all / count);
		const parts = [];
		for (let from = 0; from < all; from += each) {
			const part = spare.cloneNode(true);
			pieces(part).forEach((piece, i) => (i < from || i >= from + each) && piece.remove());
			if (from > 0) part.querySelector('.view-number')?.classList.add('goes-on');
			parts.push(part);
		}
		return parts;
	}

	const box = document.querySelector('.room-views');
	if (!box) return;
	const room = new Room(box);
	let now = null; // the room, while it shows a view at a time
	const turn = () => {
		now = wide.matches ? room : null;
		if (now) now.lay();
		else room.leave();
	};
	turn();
	wide.addEventListener('change', turn);
	let waits;
	addEventListener('resize', () => {
		clearTimeout(waits);
		waits = setTimeout(turn, 100);
	});
	// On paper nothing is divided.
	addEventListener('beforeprint', () => now?.leave());
	addEventListener('afterprint', turn);

	document.addEventListener('keydown', (event) => {
		if (!now || event.altKey || event.ctrlKey || event.metaKey || event.defaultPrevented) return;
		if ((event.key === ' ' || event.key === 'Enter') && event.target.closest('a, button')) return;
		if (now.press(event.key, event.shiftKey)) event.preventDefault();
	});
	document.addEventListener('click', (event) => {
		if (!now) return;
		const part = event.target.closest('[data-part]')?.dataset.part;
		if (now.box.classList.contains('is-dark')) now.dark(false);
		else if (part === 'back') now.show(now.at - 1, true);
		else if (part === 'on') now.show(now.at + 1, true);
		else if (part === 'answer') now.answer();
		else if (part === 'dark') now.dark();
	});

	// A finger that goes across leads on or back: a tenth of the width, more across than down.
	let from = null;
	document.addEventListener('pointerdown', (event) => {
		from = event.pointerType === 'touch' ? { x: event.clientX, y: event.clientY } : null;
	});
	document.addEventListener('pointerup', (event) => {
		if (!now || !from) return;
		const across = event.clientX - from.x;
		if (Math.abs(across) > innerWidth / 10 && Math.abs(across) > 2 * Math.abs(event.clientY - from.y)) now.show(now.at + (across < 0 ? 1 : -1), true);
		from = null;
	});
})();
