// The piece that stays in view at the foot of the margin: where in the lesson one is.
(() => {
	'use strict';

	const still = matchMedia('(prefers-reduced-motion: reduce)');
	const byItself = CSS.supports('animation-timeline: scroll()'); // the style sheet moves the Sun

	for (const horizon of document.querySelectorAll('.horizon')) {
		const article = horizon.closest('article');
		const name = horizon.querySelector('.horizon-place span');
		const title = name.textContent;
		const heads = [...article.querySelectorAll('h2, .opening > h3, .have-ready > h3')].filter((head) => !head.closest('aside'));
		const parts = [...horizon.querySelectorAll('.horizon-parts a')];

		const look = () => {
			if (article.getClientRects().length === 0) return; // another page of the one file
			const line = innerHeight * 0.4;
			const above = (head) => head.getBoundingClientRect().top <= line;
			const head = heads.findLast(above);
			const words = head ? head.textContent.trim() : title;
			if (name.textContent !== words) name.textContent = words;
			const part = heads.findLast((other) => other.closest('.opening-head') && above(other));
			for (const link of parts) {
				const here = part !== undefined && link.hash === `#${part.id}`;
				if (here) link.setAttribute('aria-current', 'true');
				else link.removeAttribute('aria-current');
			}
			if (byItself || still.matches) return;
			const way = document.documentElement.scrollHeight - innerHeight;
			horizon.style.setProperty('--gone', way > 0 ? Math.min(1, scrollY / way).toFixed(3) : 0);
		};

		let asked = false;
		const soon = () => {
			if (asked) return;
			asked = true;
			requestAnimationFrame(() => {
				asked = false;
				look();
			});
		};
		addEventListener('scroll', soon, { passive: true });
		addEventListener('resize', soon);
		addEventListener('hashchange', soon);
		look();
	}
})();
