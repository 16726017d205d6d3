package file

import "testing"

// The types are those of IANA's registry of media types,
// https://www.iana.org/assignments/media-types, and of RFC 9239 (JavaScript), RFC
// 4180 (CSV), RFC 5545 (calendars), RFC 3003 (mp3), RFC 5334 (ogg), RFC 2361 (wav),
// RFC 4337 (mp4); that of webm is its makers' (WebM Container Guidelines).
func TestMediaType(t *testing.T) {
	for name, want := range map[string]string{
		"index.html": "text/html", "noonbook.css": "text/css", "noonbook.js": "text/javascript", "dial-day-table.csv": "text/csv",
		"unit.ics": "text/calendar", "crest.SVG": "image/svg+xml", "a.b.png": "image/png", "a.jpg": "image/jpeg", "a.jpeg": "image/jpeg",
		"a.gif": "image/gif", "a.webp": "image/webp", "a.pdf": "application/pdf", "a.txt": "text/plain",
		"a.mp3": "audio/mpeg", "a.ogg": "audio/ogg", "a.wav": "audio/vnd.wave", "a.m4a": "audio/mp4", "a.mp4": "video/mp4", "a.webm": "video/webm",
		"a.zip": "application/octet-stream", "png": "application/octet-stream", "": "application/octet-stream",
	} {
		if got := MediaType(name); got != want {
			t.Errorf("%q is %s, want %s", name, got, want)
		}
	}
}
