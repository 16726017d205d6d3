// Walks: a drawing with points to choose, and a card for each. The page shows the card whose
// name is in the address by itself; this adds keys, fingers that are a little off, a ring
// round what was chosen, and that the page stays where it is.
(() => {
	'use strict';

	const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
	const finger = 24; // px between a touch and the point that it may mean
	const nameOf = (link) => decodeURIComponent(link.getAttribute('href').slice(1));
	const here = () => {
		try {
			return decodeURIComponent(location.hash.slice(1));
		} catch {
			return ''; // no name of ours
		}
	};

	for (const walk of document.querySelectorAll('.walk')) lead(walk);

	function lead(walk) {
		const layer = walk.querySelector('.stops');
		const cards = walk.querySelector('.walk-cards');
		const stops = [...layer.querySelectorAll('a')].map((link) => {
			const ring = link.querySelector('circle');
			return { link, name: nameOf(link), title: link.querySelector('title').textContent, x: ring.cx.baseVal.value, y: ring.cy.baseVal.value, reach: ring.r.baseVal.value };
		});
		const box = layer.viewBox.baseVal;

		// What a screen reader hears when a card opens.
		const told = document.createElement('p');
		told.className = 'walk-told';
		told.setAttribute('role', 'status');
		walk.append(told);

		// The name of the point that has the focus, or that is pointed at. A text that is
		// changed, not replaced, leaves the styles of the page's thousand elements alone.
		const label = document.createElementNS(layer.namespaceURI, 'text');
		const word = document.createTextNode('');
		label.setAttribute('aria-hidden', 'true');
		label.append(word);
		layer.append(label);
		const name = (stop) => {
			word.data = stop ? stop.title : '';
			if (!stop) return;
			const size = (14 * box.width) / layer.getBoundingClientRect().width;
			const place = (stop.x - box.x) / box.width;
			const above = stop.y - stop.reach - size * 0.5;
			label.setAttribute('font-size', size);
			label.setAttribute('text-anchor', place < 0.25 ? 'start' : place > 0.75 ? 'end' : 'middle');
			label.setAttribute('x', stop.x);
			label.setAttribute('y', above - size < box.y ? stop.y + stop.reach + size * 1.2 : above);
		};

		const chosen = () => stops.find((stop) => stop.name === here());
		const of = (target) => stops.find(({ link }) => link.contains(target));
		// One of them is in the order of the Tab key.
		const rove = (to) => stops.forEach((stop) => stop.link.setAttribute('tabindex', stop === to ? 0 : -1));
		const show = () => {
			const now = chosen();
			for (const { link } of stops) link.removeAttribute('aria-current');
			now?.link.setAttribute('aria-current', 'true');
			if (now) rove(now);
			told.textContent = now ? [...document.getElementById(now.name).querySelectorAll('p:not(.walk-on)')].map((line) => line.textContent).join(' ') : '';
		};

		// go leads to a card or back to the drawing, and the page stays where it is.
		const go = (link) => {
			const at = [scrollX, scrollY];
			location.hash = link.hash ?? link.getAttribute('href');
			scrollTo({ left: at[0], top: at[1], behavior: 'instant' });
			show();
			const now = chosen();
			const card = now && document.getElementById(now.name);
			if (layer.contains(link)) link.focus({ preventScroll: true });
			else if (card) (card.querySelector(`[rel="${link.rel}"]`) ?? card.querySelector('[rel], a')).focus({ preventScroll: true });
			else stops.find(({ link: stop }) => stop.tabIndex === 0).link.focus({ preventScroll: true });
			cards.scrollTop = 0;
			const { top, bottom } = (card ?? layer).getBoundingClientRect();
			if (bottom < 0 || top > innerHeight) (card ?? walk).scrollIntoView({ block: 'nearest', behavior: 'instant' });
		};

		// The next stop in a direction: what lies aside counts twice.
		const beyond = (from, [right, down]) => {
			let best = from;
			let least = Infinity;
			for (const stop of stops) {
				const [x, y] = [stop.x - from.x, stop.y - from.y];
				const [ahead, aside] = [x * right + y * down, Math.abs(x * down + y * right)];
				const cost = ahead + 2 * aside;
				if (ahead > 0 && cost < least) [best, least] = [stop, cost];
			}
			return best;
		};
		const led = (from, key) => {
			const at = stops.indexOf(from);
			const ends = { Home: 0, End: stops.length - 1, PageUp: Math.max(0, at - 1), PageDown: Math.min(stops.length - 1, at + 1) };
			return ways[key] ? beyond(from, ways[key]) : stops[ends[key]];
		};

		walk.addEventListener('keydown', (event) => {
			if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
			if (event.key === 'Escape') {
				if (chosen()) go(walk.querySelector('.walk-on a:last-child'));
				else document.activeElement.blur();
				return;
			}
			const from = of(event.target);
			const to = from && led(from, event.key);
			if (!to) return;
			event.preventDefault();
			rove(to);
			to.link.focus();
		});

		// A browser moves a tap onto a link that is near it, not always the nearest: what counts
		// is where the finger came down.
		let touch;
		walk.addEventListener('pointerdown', (event) => {
			touch = event.pointerType === 'touch' ? event : undefined;
		});
		walk.addEventListener('click', (event) => {
			const by = event.detail > 0 ? touch : undefined; // Enter has no clicks to count
			touch = undefined;
			const meant = layer.contains(event.target) ? near(by ?? event)?.link : undefined;
			const link = (by && meant) ?? event.target.closest('a[href^="#"]') ?? meant;
			if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
			if (!link) return;
			event.preventDefault();
			go(link);
		});
		const near = ({ clientX, clientY }) => {
			const away = ({ x, y }) => {
				const at = new DOMPoint(x, y).matrixTransform(layer.getScreenCTM());
				return Math.hypot(at.x - clientX, at.y - clientY);
			};
			const nearest = stops.reduce((best, stop) => (away(stop) < away(best) ? stop : best));
			return away(nearest) <= finger ? nearest : undefined;
		};

		for (const type of ['focusin', 'focusout', 'pointerover', 'pointerout']) {
			layer.addEventListener(type, (event) => {
				const leaves = type === 'focusout' || type === 'pointerout';
				name((leaves ? undefined : of(event.target)) ?? of(document.activeElement));
			});
		}
		addEventListener('hashchange', () => {
			show();
			// The back button takes the focus away with the card.
			if (document.activeElement === document.body) chosen()?.link.focus({ preventScroll: true });
		});
		rove(stops[0]);
		show();
	}
})();
