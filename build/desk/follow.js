// Follows the desk: loads the page again when a pressing succeeded, and shows the
// problems of one that did not. It asks by script elements, since the pages allow
// their own scripts and no other way out.
(function () {
	"use strict";
	var own = document.currentScript, whole = Number(own.dataset.whole), news = new URL("state.js", own.src).href, seen = -1, last = null;
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
	function hideInPrint() { board.style.display = media.matches ? "none" : ""; }
	media.addEventListener("change", hideInPrint);

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
