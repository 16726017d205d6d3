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
	}

	file(page) {
		return path.join(this.folder, page);
	}

	url(page) {
		return pathToFileURL(this.file(page)).href;
	}

	// same reports whether a page differs from that of another edition in nothing but the
	// words that name the edition.
	same(other, page) {
		const bare = (edition) => readFileSync(edition.file(page), 'utf8').replace(/<meta name="robots"[^>]*>|<b class="edition">.*?<\/b>/g, '').replace(/ (?=<\/p>)/g, '');
		return other.pages.includes(page) && bare(this) === bare(other);
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
