// Pixels: just enough of PNG (W3C, third edition, 2025, sections 5, 7 and 9) to read
// the pictures that the browser takes: 8 bits a sample, not interlaced, RGB or RGBA.

import { inflateSync } from 'node:zlib';

// Two pixels differ when one of their colours does by more than this, of 255: about
// the least that is seen at a glance (from memory), far above the noise of smoothing.
const trace = 32;

// take pictures a part of the page and reads the picture. The clip is in page
// coordinates and must lie within the viewport.
export async function take(camera, { x, y, width, height }) {
	const clip = { x, y, width, height, scale: 1 };
	const shot = await camera.send('Page.captureScreenshot', { format: 'png', optimizeForSpeed: true, clip });
	return decode(Buffer.from(shot.data, 'base64'));
}

// differ reports whether two pictures of one size differ in pixel i, counted row by row.
export function differ(one, two, i) {
	const a = i * one.samples;
	const b = i * two.samples;
	for (let s = 0; s < 3; s++) {
		if (Math.abs(one.bytes[a + s] - two.bytes[b + s]) > trace) return true;
	}
	return false;
}

// changedPixels counts the pixels in which two pictures of one size differ.
export function changedPixels(one, two) {
	let changed = 0;
	for (let i = 0; i < one.width * one.height; i++) if (differ(one, two, i)) changed++;
	return changed;
}

// colourAt gives red, green and blue of pixel i as one number, 0xRRGGBB.
export function colourAt(picture, i) {
	return picture.bytes.readUIntBE(i * picture.samples, 3);
}

// decode reads a picture.
export function decode(png) {
	const header = { width: png.readUInt32BE(16), height: png.readUInt32BE(20), depth: png[24], colour: png[25], interlace: png[28] };
	const samples = { 2: 3, 6: 4 }[header.colour];
	if (header.depth !== 8 || header.interlace !== 0 || !samples) throw new Error(`a picture of a kind not read here: ${JSON.stringify(header)}`);
	const parts = [];
	for (let place = 8; place < png.length; ) {
		const length = png.readUInt32BE(place);
		if (png.toString('latin1', place + 4, place + 8) === 'IDAT') parts.push(png.subarray(place + 8, place + 8 + length));
		place += 12 + length;
	}
	const { width, height } = header;
	return { width, height, samples, bytes: unfilter(inflateSync(Buffer.concat(parts)), width * samples, height, samples) };
}

// unfilter undoes the five filters of section 9.2, row by row. What lies left of a
// row and above the first one counts as 0.
function unfilter(rows, stride, height, samples) {
	const out = Buffer.alloc(stride * height);
	for (let y = 0; y < height; y++) {
		const from = y * (stride + 1);
		const filter = filters[rows[from]];
		if (!filter) throw new Error(`filter ${rows[from]} is none of PNG's`);
		const row = out.subarray(y * stride, (y + 1) * stride);
		rows.copy(row, 0, from + 1, from + 1 + stride);
		const above = y > 0 ? out.subarray((y - 1) * stride, y * stride) : new Uint8Array(stride);
		filter(row, above, samples);
	}
	return out;
}

const filters = [
	() => {},
	(row, above, n) => {
		for (let x = n; x < row.length; x++) row[x] += row[x - n];
	},
	(row, above) => {
		for (let x = 0; x < row.length; x++) row[x] += above[x];
	},
	(row, above, n) => {
		for (let x = 0; x < row.length; x++) row[x] += ((x < n ? 0 : row[x - n]) + above[x]) >> 1;
	},
	(row, above, n) => {
		for (let x = 0; x < row.length; x++) row[x] += x < n ? above[x] : paeth(row[x - n], above[x], above[x - n]);
	},
];

// paeth is the predictor of section 9.4.
function paeth(left, up, corner) {
	const sum = left + up - corner;
	const byLeft = Math.abs(sum - left);
	const byUp = Math.abs(sum - up);
	const byCorner = Math.abs(sum - corner);
	if (byLeft <= byUp && byLeft <= byCorner) return left;
	return byUp <= byCorner ? up : corner;
}
