// Follows the desk: loads the page again when a pressing succeeded, and shows the
// problems of one that did not. It asks by script elements, since the pages allow
// their own scripts and no other way out.
(function () {
	"use strict";
	var own = document.currentScript, whole = Number(own.dataset.whole), news = new URL("state.js", own.src).href, seen = -1, last = null, bar = null;
	var board = document.createElement("div");
	board.setAttribute("role", "status");
	board.id = "desk-problems";
	board.hidden = true;
	board.tabIndex = 0; // it may be longer than its room, and is then scrolled by keys
	Object.assign(board.style, {
		position: "fixed", left: "0", right: "0", bottom: "0", maxHeight: "45vh", overflow: "auto", zIndex: "9",
		background: "#fffbe8", color: "#22262a", borderTop: "3px solid #a05f00", padding: "0.6rem 1rem",
		font: "14px/1.4 ui-monospace, Menlo, Consolas, monospace", whiteSpace: "pre-wrap"
	});
	document.body.append(board);
	var media = window.matchMedia("print");
	function hideInPrint() {
		board.style.display = media.matches ? "none" : "";
		if (bar) {
			bar.style.display = board.style.display;
		}
	}
	media.addEventListener("change", hideInPrint);

	if (own.dataset.form) { // a way to the page on which the school types
		var way = document.createElement("a"), skip = document.querySelector(".skip");
		bar = document.createElement("nav");
		bar.setAttribute("aria-label", own.dataset.form);
		way.href = own.dataset.start;
		way.textContent = own.dataset.form;
		Object.assign(bar.style, { padding: "0.4rem 1rem 0", textAlign: "right", font: "14px/1.7 sans-serif" });
		bar.append(way);
		document.body.insertBefore(bar, skip ? skip.nextSibling : document.body.firstChild);
	}

	window.noonbookDesk = function (state) {
		if (state.whole > whole) {
			location.reload();
			return;
		}
		seen = state.serial;
		board.textContent = state.problems.join("\n");
		board.hidden = state.problems.length === 0;
		ask(0);
	};
	function ask(wait) {
		setTimeout(function () {
			if (last) {
				last.remove();
			}
			last = document.createElement("script");
			last.src = news + "?seen=" + seen;
			last.onerror = function () { ask(2000); }; // the desk was left; it may come back
			document.head.append(last);
		}, wait);
	}
	ask(0);
})();
