// What is folded opens where a link leads into it, or to its name.
(() => {
	'use strict';

	const open = () => {
		let id = location.hash.slice(1);
		try {
			id = decodeURIComponent(id);
		} catch {} // no name of ours
		const folded = document.getElementById(id)?.closest('main details, .page details');
		if (folded) folded.open = true;
	};
	addEventListener('hashchange', open);
	open();
})();
