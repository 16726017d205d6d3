// An edition is a pressed folder: its pages, and what can be told from their names.

import { readFileSync, readdirSync, realpathSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

export class Edition {
	constructor(parent, name) {
		this.name = name;
		this.folder = realpathSync(path.join(parent, name));
		this.pages = readdirSync(this.folder, { recursive: true })
			.filter((file) => file.endsWith('.html'))
			.sort();
		this.own = this.pages;
	}

	file(page) {
		return path.join(this.folder, page);
	}

	url(page) {
		return pathToFileURL(this.file(page)).href;
	}

	// share divides the pages that two editions have alike between them, so that what
	// takes long is done once: own keeps the pages that only this edition has, or has
	// otherwise, and its half of the rest.
	share(other) {
		const alike = this.pages.filter((page) => other.pages.includes(page) && this.#bare(page) === other.#bare(page));
		this.own = this.pages.filter((page) => alike.indexOf(page) % 2 !== 1);
		other.own = other.pages.filter((page) => !alike.includes(page) || alike.indexOf(page) % 2 === 1);
		this.alike = other.alike = alike;
	}

	// bare is a page without the words that name the edition.
	#bare(page) {
		return readFileSync(this.file(page), 'utf8').replace(/<meta name="robots"[^>]*>|<b class="edition">.*?<\/b>/g, '').replace(/ (?=<\/p>)/g, '');
	}

	label(page) {
		return `${this.name}/${page}`;
	}

	// holds reports whether a URL leads to a file inside this folder, by its real
	// path, so that neither "../" nor a symbolic link leads out.
	holds(url) {
		const file = this.#path(url);
		if (!file) return false;
		return realpathSync(file).startsWith(this.folder + path.sep) && statSync(file).isFile();
	}

	// pageOf gives the page's name for a URL inside the folder.
	pageOf(url) {
		return path.relative(this.folder, realpathSync(this.#path(url)));
	}

	#path(url) {
		if (!url.startsWith('file:')) return '';
		const bare = new URL(url);
		bare.hash = '';
		bare.search = '';
		try {
			const file = fileURLToPath(bare);
			statSync(file);
			return file;
		} catch {
			return ''; // no such file
		}
	}
}
