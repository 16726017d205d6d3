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
		time.parentElement.append(' ', mark); // behind the day of the cycle, which keeps its place
		stop.classList.add('is-today');
		const file = stop.querySelector('a').getAttribute('href');
		each('.dial a, .arc a', (line) => line.classList.toggle('is-today', line.classList.contains('is-today') || line.getAttribute('href') === file));
	});
})();
