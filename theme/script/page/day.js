// What the day changes on a page, by the reader's own clock.
(() => {
	'use strict';

	const each = (selector, work) => document.querySelectorAll(selector).forEach(work);

	// The lesson of the day, on its date by the reader's own clock.
	const now = new Date();
	const today = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
	each(`[data-today] time[datetime="${today}"]`, (time) => {
		const stop = time.closest('li');
		const mark = document.createElement('b');
		mark.className = 'today-label';
		mark.textContent = stop.parentElement.dataset.today;
		time.after(' ', mark);
		stop.classList.add('is-today');
		const file = stop.querySelector('a').getAttribute('href');
		each('.dial a, .arc a', (line) => line.classList.toggle('is-today', line.classList.contains('is-today') || line.getAttribute('href') === file));
	});

	// On the cover a lesson's hour line and its place in the list point at each other.
	each('.cover-columns', (spread) => {
		const point = (event) => {
			const file = event.type === 'pointerout' || event.type === 'focusout' ? '' : event.target.closest('.dial a, .lesson-list a')?.getAttribute('href');
			spread.querySelectorAll('.dial a, .lesson-list a').forEach((link) => (link.closest('.lesson-list li') ?? link).classList.toggle('pointed-at', link.getAttribute('href') === file));
		};
		for (const type of ['pointerover', 'pointerout', 'focusin', 'focusout']) spread.addEventListener(type, point);
	});
})();
