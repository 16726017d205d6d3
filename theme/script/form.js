// Asks the desk for the Sun's noon while a place is typed. The page works without it:
// the desk says the same when the page is sent. It asks by script elements, since the
// page allows its own scripts and no other way out.
(function () {
	'use strict';
	var keys = ['school.latitude', 'school.longitude', 'school.elevation_m', 'school.time_zone', 'term.first_day'];
	var says = document.getElementById('noon-says'), note = document.getElementById('noon-note'), sun = document.getElementById('noon-sun');
	var asked = 0, last = null, timer = 0;
	function line(key) { return document.getElementsByName(key)[0]; }
	if (!says || !line(keys[0])) { return; }

	function ask() {
		var query = keys.map(function (key) {
			return line(key) ? encodeURIComponent(key) + '=' + encodeURIComponent(line(key).value) : '';
		}).join('&');
		if (last) { last.remove(); }
		last = document.createElement('script');
		last.src = 'noon.js?asked=' + (++asked) + '&' + query;
		document.head.append(last);
	}

	window.noonbookNoon = function (answer) {
		if (answer.asked !== asked) { return; } // of what was typed before
		says.textContent = answer.says;
		note.textContent = answer.note;
		sun.setAttribute('transform', 'translate(' + answer.at + ' 0)');
		if (answer.known) { sun.removeAttribute('display'); } else { sun.setAttribute('display', 'none'); }
		keys.slice(0, 4).forEach(function (key) {
			if (line(key)) { mark(line(key), answer.wrong[key] || '', answer.doubt[key] || ''); }
		});
	};

	// mark puts below a line what is wrong with it, and takes away what is mended. What
	// is only doubted may be right, and so does not make the line invalid.
	function mark(input, wrong, doubt) {
		put(input, 'wrong', wrong);
		put(input, 'doubt', doubt);
		if (wrong) { input.setAttribute('aria-invalid', 'true'); } else { input.removeAttribute('aria-invalid'); }
		var ids = ['wrong', 'doubt', 'note', 'help'].map(function (part) { return input.id + '-' + part; });
		input.setAttribute('aria-describedby', ids.filter(function (id) { return document.getElementById(id); }).join(' '));
	}

	function put(input, part, text) {
		var id = input.id + '-' + part, p = document.getElementById(id);
		if (!text) {
			if (p) { p.remove(); }
			return;
		}
		if (!p) {
			p = document.createElement('p');
			p.id = id;
			p.className = 'wrong';
			p.lang = 'en'; // as problems are
			input.after(p);
		}
		p.textContent = text;
	}

	keys.forEach(function (key) {
		if (line(key)) {
			line(key).addEventListener('input', function () {
				clearTimeout(timer);
				timer = setTimeout(ask, 300);
			});
		}
	});
})();
