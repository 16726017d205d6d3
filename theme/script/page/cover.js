// The cover opens on the day: its first screen offers the lesson of today, or the next.
(() => {
	'use strict';

	const panel = document.querySelector('.cover .day-panel');
	if (!panel) return;
	const spread = panel.closest('.cover-columns');
	const list = spread.querySelector('.lesson-list');
	const say = (name, ...with_) => panel.dataset[name].replace(/\{(\d)\}/g, (_, n) => with_[n - 1]).replace('..', '.');

	// The times of the list are those of the school's clock, without a zone, and are taken
	// for times by the reader's own clock. That is what a school's computer shows; and to
	// whoever opens the page elsewhere, or sits before a computer whose zone is wrong, the
	// day on the page is the day on the wall. A lesson that is not finished at midnight is
	// still under way.
	const lessons = [...list.children].map((item) => {
		const visits = (place) => {
			const times = [...(item.querySelector(place)?.querySelectorAll('time') ?? [])];
			return times.flatMap((time, i) => (i % 2 ? [] : [{ from: new Date(time.dateTime), to: new Date(times[i + 1].dateTime), begins: time.textContent, ends: times[i + 1].textContent }]));
		};
		return { item, link: item.querySelector('a'), visits: visits('.day-part > p:not(.reserve) .hours'), kept: visits('.reserve .hours') };
	}).filter(({ visits }) => visits.length > 0);
	const begin = (visits) => visits[0].from;
	const end = (visits) => visits.at(-1).to;
	const midnight = (at) => new Date(at.getFullYear(), at.getMonth(), at.getDate());
	// A day may have 23 or 25 hours.
	const daysTo = (at, now) => Math.round((midnight(at) - midnight(now)) / 86_400_000);
	const isToday = (visits, now) => visits.length > 0 && (daysTo(begin(visits), now) === 0 || (begin(visits) <= now && now < end(visits)));

	// find says what the panel shows: the lesson of today that is not over yet, or the last;
	// a lesson whose reserve today is; the next one; or none, after the unit.
	const find = (now) => {
		const inOrder = (these, key) => these.toSorted((a, b) => begin(a[key]) - begin(b[key]));
		const today = inOrder(lessons.filter(({ visits }) => isToday(visits, now)), 'visits');
		const kept = inOrder(lessons.filter(({ kept, visits }) => isToday(kept, now) && end(visits) <= now), 'kept');
		const after = inOrder(lessons.filter(({ visits }) => now < begin(visits) && !isToday(visits, now)), 'visits');
		const here = today.find(({ visits }) => now < end(visits)) ?? today.at(-1);
		if (here) return { kind: 'today', here, also: [...today.filter((other) => other !== here), ...kept], after: after[0] };
		if (kept.length > 0) return { kind: 'reserved', here: kept[0], also: kept.slice(1), after: after[0] };
		const isFirst = after.length === lessons.length;
		if (after.length > 0) return { kind: isFirst ? 'begins' : 'next', here: after[0], also: [], after: undefined };
		return { kind: 'over', here: undefined, also: [], after: undefined };
	};

	const state = ({ kind, here }, now) => {
		if (kind === 'over') return say('about');
		if (kind === 'reserved') return say('reserved');
		if (kind !== 'today') {
			const days = daysTo(begin(here.visits), now);
			return days === 1 ? say('tomorrow') : say('days', days);
		}
		const next = here.visits.find(({ to }) => now < to);
		if (!next) return say('was');
		if (next.from <= now) return say('until', next.ends);
		if (next !== here.visits[0]) return say('pause', next.begins);
		const minutes = Math.ceil((next.from - now) / 60_000);
		if (minutes > 60) return say('later');
		return minutes === 1 ? say('minute') : say('minutes', minutes);
	};

	const make = (name, className, ...inside) => {
		const element = document.createElement(name);
		if (className) element.className = className;
		element.append(...inside);
		return element;
	};
	const text = (lesson, selector) => lesson.item.querySelector(selector).textContent;
	const leading = ({ link }) => link.cloneNode(true);

	const show = ({ kind, here, also, after }, now) => {
		panel.classList.add('is-told'); // its room is what it holds
		panel.classList.toggle('is-over', kind === 'over');
		if (kind === 'over') {
			panel.replaceChildren(make('h2', '', say('over')), make('p', 'day-state', state({ kind }, now)));
			return;
		}
		const place = kind === 'reserved' ? '.reserve ' : '.day-part > p:not(.reserve) ';
		const heading = { today: 'isToday', reserved: 'isToday', begins: 'begins', next: 'next' }[kind];
		const hours = here.item.querySelector(`${place}.hours`).cloneNode(true);
		panel.replaceChildren(
			make('p', 'day-date', say(heading, text(here, `${place}.weekday`))),
			make('h2', '', leading(here)),
			make('p', 'day-time', say('number', text(here, 'b')), ', ', hours, ' ', make('span', 'day-state', state({ kind, here }, now))),
			here.item.querySelector('.day-links').cloneNode(true),
			...also.map((other) => {
				const isKept = !isToday(other.visits, now);
				const when = other.item.querySelector(`${isKept ? '.reserve ' : '.day-part > p:not(.reserve) '}.hours`).cloneNode(true);
				return make('p', 'day-also', say(isKept ? 'kept' : 'also'), ' ', leading(other), ', ', when);
			}),
			...(after ? [make('p', 'day-also', say('after'), ' ', leading(after), ', ', text(after, '.weekday'))] : []),
		);
	};

	// What is past, what comes, and where the shadow of the dial lies.
	const mark = ({ kind, here }, now) => {
		for (const { item, link, visits } of lessons) {
			const file = link.getAttribute('href');
			const all = [item, ...[...spread.querySelectorAll('.dial a')].filter((line) => line.getAttribute('href') === file)];
			for (const element of all) {
				element.classList.toggle('is-past', kind !== 'over' && end(visits) <= now && here.item !== item);
				element.classList.toggle('is-now', here?.item === item && (kind === 'today' || kind === 'reserved'));
				element.classList.toggle('is-next', here?.item === item && (kind === 'next' || kind === 'begins'));
			}
		}
	};

	// A page that stays open goes on with the day. Nobody loses the link that has the focus.
	let shown = '';
	const look = () => {
		const now = new Date();
		const found = find(now);
		const key = [found.kind, ...[found.here, ...found.also, found.after].map((lesson) => lesson?.link.getAttribute('href'))].join(' ');
		if (key !== shown && !panel.contains(document.activeElement)) {
			shown = key;
			show(found, now);
			mark(found, now);
		} else if (key === shown) {
			panel.querySelector('.day-state').textContent = state(found, now);
		}
	};
	look();
	setInterval(look, 15_000);

	// A lesson's hour line and its place in the list point at each other.
	const point = (event) => {
		const leaves = event.type === 'pointerout' || event.type === 'focusout';
		const file = leaves ? '' : (event.target.closest('.dial a') ?? event.target.closest('.lesson-list > li')?.querySelector('a'))?.getAttribute('href');
		for (const link of spread.querySelectorAll('.dial a, .lesson-list > li > a')) (link.closest('.lesson-list > li') ?? link).classList.toggle('pointed-at', link.getAttribute('href') === file);
	};
	for (const type of ['pointerover', 'pointerout', 'focusin', 'focusout']) spread.addEventListener(type, point);
})();
