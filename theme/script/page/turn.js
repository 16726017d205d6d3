// The handbook in one file.
(() => {
	'use strict';

	// A handbook in one file shows a page at a time: it is named after the page, and
	// the finder, of which there is one, goes to where that page has its own.
	if (document.body.classList.contains('single-file')) {
		const title = document.title;
		const turn = () => {
			const at = document.getElementById(decodeURIComponent(location.hash.slice(1))) ?? document.getElementById('index');
			const page = at?.closest('.page');
			if (!page) return;
			document.title = page.matches('.cover') ? title : `${page.querySelector('h1').textContent} · ${title}`;
			const home = page.querySelector('.navigation, .cover-head') ?? page.querySelector('header');
			home.insertBefore(document.querySelector('.finder'), home.querySelector('.all-pages'));
		};
		addEventListener('hashchange', turn);
		turn();
	}
})();
