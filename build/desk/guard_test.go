package desk_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"noonbook/build/desk"
	"noonbook/build/file"
)

// secretive returns a desk whose every file holds the word quince.
func secretive() *desk.Desk {
	d := desk.New()
	var files []file.File
	for _, name := range []string{"index.html", "concordance.js", "noonbook.css", "a.svg", "a.png", "a.pdf", "a.csv", "unit.ics"} {
		files = append(files, file.File{Name: name, Bytes: []byte("quince")})
	}
	d.Put(desk.Pressing{Files: files, Problems: []string{"quince"}})
	return d
}

// ask sends a request of this machine to its own name, with more headers.
func ask(d *desk.Desk, path string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest("GET", path, nil)
	r.RemoteAddr, r.Host = "127.0.0.1:5000", "127.0.0.1:8080"
	for i := 0; i < len(headers); i += 2 {
		r.Header.Add(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	d.Handler().ServeHTTP(w, r)
	return w
}

// Another web page gets nothing, by whichever of its ways it asks. The values are
// those of W3C, Fetch Metadata Request Headers, and the serialization of an origin
// that of RFC 6454, 6.2.
func TestOtherPagesAreRefused(t *testing.T) {
	for _, c := range []struct {
		name    string
		headers []string
		code    int
	}{
		{"a program without these headers", nil, 200},
		{"the address was typed", []string{"Sec-Fetch-Site", "none", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "document", "Sec-Fetch-User", "?1"}, 200},
		{"typed, without a mode", []string{"Sec-Fetch-Site", "none"}, 200},
		{"a link between pages", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Mode", "navigate"}, 200},
		{"a script of a page", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "script"}, 200},
		{"with the desk's origin", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Mode", "cors", "Origin", "http://127.0.0.1:8080"}, 200},
		{"the desk's origin alone", []string{"Origin", "http://127.0.0.1:8080"}, 200},

		{"a script element elsewhere", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "script"}, 403},
		{"a picture elsewhere", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "no-cors", "Sec-Fetch-Dest", "image"}, 403},
		{"a frame elsewhere", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-Dest", "iframe"}, 403},
		{"a link elsewhere", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Sec-Fetch-User", "?1"}, 403},
		{"another port of this machine", []string{"Sec-Fetch-Site", "same-site", "Sec-Fetch-Mode", "no-cors"}, 403},
		{"a site that the standard does not know", []string{"Sec-Fetch-Site", "near"}, 403},
		{"an empty site", []string{"Sec-Fetch-Site", ""}, 403},
		{"two sites", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Site", "cross-site"}, 403},
		{"nobody's, and no opening of a page", []string{"Sec-Fetch-Site", "none", "Sec-Fetch-Mode", "no-cors"}, 403},
		{"another origin", []string{"Origin", "https://somewhere.example"}, 403},
		{"an opaque origin", []string{"Origin", "null"}, 403},
		{"another port's origin", []string{"Origin", "http://127.0.0.1:8081"}, 403},
		{"another scheme's origin", []string{"Origin", "https://127.0.0.1:8080"}, 403},
		{"the desk's origin from another site", []string{"Sec-Fetch-Site", "cross-site", "Origin", "http://127.0.0.1:8080"}, 403},
	} {
		d := secretive()
		for _, name := range []string{"", "index.html", "concordance.js", "a.csv", "desk/state.js?seen=0", "desk/follow.js"} {
			w := ask(d, d.Path()+name, c.headers...)
			if w.Code != c.code {
				t.Errorf("%s, %q: %d, want %d", c.name, name, w.Code, c.code)
			}
			if c.code != 200 && (strings.Contains(w.Body.String(), "quince") || strings.Contains(w.Body.String(), strings.Trim(d.Path(), "/"))) {
				t.Errorf("%s, %q: refused with %s", c.name, name, w.Body)
			}
		}
	}
}

// Whoever does not know the path gets nothing, not even an icon, and is not told it.
func TestNothingOutsideThePath(t *testing.T) {
	d := secretive()
	token := strings.Trim(d.Path(), "/")
	for _, path := range []string{
		"/", "/index.html", "/concordance.js", "/favicon.ico", "/desk/state.js?seen=0", "/desk/follow.js", "/robots.txt", "/" + token, "/" + token + "x/index.html",
		"/" + token[:len(token)-1] + "/index.html", "/" + strings.ToLower(token) + "/index.html", "//" + token + "/index.html", "/x/" + token + "/index.html", "/x/../" + token, "/index.html?" + token,
	} {
		w := ask(d, path)
		if w.Code != http.StatusNotFound || strings.Contains(w.Body.String(), "quince") || strings.Contains(w.Body.String(), token) || strings.Contains(w.Header().Get("Location"), token) {
			t.Errorf("%s: %d %v %s", path, w.Code, w.Header(), w.Body)
		}
	}
	if w := ask(d, d.Path()); w.Code != 200 || !strings.Contains(w.Body.String(), "quince") {
		t.Errorf("%s: %d", d.Path(), w.Code)
	}
}

// Each desk has a path of its own of at least 128 bits: 26 letters of RFC 4648, 6,
// with five bits each, in which all letters turn up.
func TestPathsCanNotBeGuessed(t *testing.T) {
	seen, letters := map[string]bool{}, map[rune]bool{}
	for range 200 {
		path := desk.New().Path()
		token := strings.Trim(path, "/")
		if path != "/"+token+"/" || len(token) < 26 || strings.Trim(token, "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") != "" || seen[token] {
			t.Fatalf("a path is %s", path)
		}
		seen[token] = true
		for _, r := range token {
			letters[r] = true
		}
	}
	if len(letters) != 32 {
		t.Errorf("5,200 letters are of %d kinds, want 32", len(letters))
	}
}

// Every answer, also one that refuses, asks the browser to keep it to the page that
// wanted it: Fetch Standard (Cross-Origin-Resource-Policy, X-Content-Type-Options),
// HTML Standard (X-Frame-Options), Content Security Policy Level 3
// (frame-ancestors), RFC 9111 (no-store), W3C Referrer Policy.
func TestEveryAnswerIsShut(t *testing.T) {
	d := secretive()
	empty := desk.New()
	for name, w := range map[string]*httptest.ResponseRecorder{
		"a page":        ask(d, d.Path()),
		"a script":      ask(d, d.Path()+"concordance.js"),
		"a style":       ask(d, d.Path()+"noonbook.css"),
		"a drawing":     ask(d, d.Path()+"a.svg"),
		"a picture":     ask(d, d.Path()+"a.png"),
		"a PDF":         ask(d, d.Path()+"a.pdf"),
		"a table":       ask(d, d.Path()+"a.csv"),
		"the state":     ask(d, d.Path()+"desk/state.js?seen=0"),
		"the follower":  ask(d, d.Path()+"desk/follow.js"),
		"no state":      ask(d, d.Path()+"desk/state.js"),
		"no page":       ask(d, d.Path()+"none.html"),
		"no handbook":   ask(empty, empty.Path()),
		"outside":       ask(d, "/"),
		"another page":  ask(d, d.Path(), "Sec-Fetch-Site", "cross-site"),
		"another place": ask(d, d.Path(), "Origin", "null"),
	} {
		for header, want := range map[string]string{
			"Cross-Origin-Resource-Policy": "same-origin",
			"X-Frame-Options":              "DENY",
			"X-Content-Type-Options":       "nosniff",
			"Cache-Control":                "no-store",
			"Referrer-Policy":              "no-referrer",
		} {
			if got := w.Header().Values(header); len(got) != 1 || got[0] != want {
				t.Errorf("%s: %s is %q, want %q", name, header, got, want)
			}
		}
		policy := w.Header().Values("Content-Security-Policy")
		if len(policy) != 1 || !strings.HasSuffix(policy[0], "frame-ancestors 'none'") {
			t.Errorf("%s: the policy is %q", name, policy)
		}
		if w.Header().Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s may be read elsewhere", name)
		}
	}
}

// A drawing that is opened by itself runs and fetches nothing, but keeps its own
// style; what the browser shows by a viewer of its own is left to that.
func TestPoliciesByKind(t *testing.T) {
	d := secretive()
	for name, want := range map[string]string{
		"a.svg":      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; frame-ancestors 'none'",
		"a.png":      "frame-ancestors 'none'",
		"a.pdf":      "frame-ancestors 'none'",
		"index.html": "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
	} {
		if got := ask(d, d.Path()+name).Header().Get("Content-Security-Policy"); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}
