package desk_test

import (
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"noonbook/build/desk"
	"noonbook/build/file"
)

// typedOn returns a desk whose pages to type on say quince and count what is sent.
func typedOn() (*desk.Desk, *int) {
	d, sent := secretive(), 0
	d.Offer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodPost {
			sent++
		}
		io.WriteString(w, "quince "+r.URL.Path)
	}))
	return d, &sent
}

// Only a page of the desk sends anything to it: a request says so, and nothing in it
// says otherwise. What browsers send with a form is that of the Fetch Standard (append a
// request Origin header), W3C Fetch Metadata, and RFC 9110, 10.1.3 (Referer).
func TestOnlyOwnPagesSend(t *testing.T) {
	for _, c := range []struct {
		name    string
		host    string
		headers []string
		code    int
	}{
		{"a form of the desk", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "same-origin", "Sec-Fetch-Mode", "navigate", "Origin", "http://127.0.0.1:8080", "Referer", "http://127.0.0.1:8080/x/desk/school"}, 200},
		{"by its other name", "localhost:8080", []string{"Sec-Fetch-Site", "same-origin", "Origin", "http://localhost:8080"}, 200},
		{"an old browser, the origin alone", "127.0.0.1:8080", []string{"Origin", "http://127.0.0.1:8080"}, 200},
		{"an old browser, the page alone", "127.0.0.1:8080", []string{"Referer", "http://127.0.0.1:8080/x"}, 200},

		{"a program that says nothing", "127.0.0.1:8080", nil, 403},
		{"typed into the address line", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "none", "Sec-Fetch-Mode", "navigate"}, 403},
		{"another site's form", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "cross-site", "Sec-Fetch-Mode", "navigate", "Origin", "https://somewhere.example"}, 403},
		{"another port's form", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "same-site", "Origin", "http://127.0.0.1:8081"}, 403},
		{"a page that hides its origin", "127.0.0.1:8080", []string{"Origin", "null"}, 403},
		{"a page that hides its origin, from the desk's site", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "same-origin", "Origin", "null"}, 403},
		{"another scheme", "127.0.0.1:8080", []string{"Origin", "https://127.0.0.1:8080"}, 403},
		{"another page's address", "127.0.0.1:8080", []string{"Referer", "https://somewhere.example/"}, 403},
		{"the desk's address in another's", "127.0.0.1:8080", []string{"Referer", "http://127.0.0.1:8080.somewhere.example/"}, 403},
		{"an own site with another page's address", "127.0.0.1:8080", []string{"Sec-Fetch-Site", "same-origin", "Referer", "https://somewhere.example/"}, 403},
		{"a name made elsewhere", "somewhere.example:8080", []string{"Sec-Fetch-Site", "same-origin", "Origin", "http://somewhere.example:8080"}, 403},
		{"a name made elsewhere, with the desk's origin", "somewhere.example", []string{"Origin", "http://127.0.0.1:8080"}, 403},
	} {
		d, sent := typedOn()
		send := func(path string) *httptest.ResponseRecorder {
			r := httptest.NewRequest("POST", path, strings.NewReader("a=b"))
			r.RemoteAddr, r.Host = "127.0.0.1:5000", c.host
			for i := 0; i < len(c.headers); i += 2 {
				r.Header.Add(c.headers[i], c.headers[i+1])
			}
			w := httptest.NewRecorder()
			d.Handler().ServeHTTP(w, r)
			return w
		}
		w := send(d.Path() + "desk/school")
		if w.Code != c.code || (*sent == 1) != (c.code == 200) {
			t.Errorf("%s: %d, want %d; %d arrived", c.name, w.Code, c.code, *sent)
		}
		if c.code != 200 && (strings.Contains(w.Body.String(), "quince") || strings.Contains(w.Body.String(), strings.Trim(d.Path(), "/"))) {
			t.Errorf("%s: refused with %s", c.name, w.Body)
		}
		before := *sent
		for _, path := range []string{"/desk/school", "/x/desk/school", d.Path() + "index.html", d.Path(), d.Path() + "../desk/school"} {
			if w := send(path); w.Code == 200 || *sent != before {
				t.Errorf("%s, sent to %s: %d", c.name, strings.ReplaceAll(path, d.Path(), "/TOKEN/"), w.Code)
			}
		}
	}
}

// From another machine nothing is taken, whatever it says.
func TestNothingIsSentFromElsewhere(t *testing.T) {
	d, sent := typedOn()
	for _, address := range []string{"192.168.1.7:5000", "10.0.0.2:1", "[2001:db8::1]:80", "", "127.0.0.1"} {
		r := httptest.NewRequest("POST", d.Path()+"desk/school", strings.NewReader("a=b"))
		r.RemoteAddr, r.Host = address, "127.0.0.1:8080"
		r.Header.Set("Origin", "http://127.0.0.1:8080")
		r.Header.Set("Sec-Fetch-Site", "same-origin")
		w := httptest.NewRecorder()
		if d.Handler().ServeHTTP(w, r); w.Code != http.StatusForbidden || *sent != 0 {
			t.Errorf("%s: %d", address, w.Code)
		}
	}
}

// A page to type on may be sent back to the desk and nowhere else, and tells its
// address to the desk alone; all else is as shut as other answers.
func TestPagesToTypeOnAreShut(t *testing.T) {
	d, _ := typedOn()
	w := ask(d, d.Path()+"desk/school")
	for header, want := range map[string]string{
		"Content-Security-Policy":      "default-src 'none'; script-src 'self'; style-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
		"Referrer-Policy":              "same-origin",
		"Cross-Origin-Resource-Policy": "same-origin",
		"X-Frame-Options":              "DENY",
		"X-Content-Type-Options":       "nosniff",
		"Cache-Control":                "no-store",
	} {
		if got := w.Header().Values(header); len(got) != 1 || got[0] != want {
			t.Errorf("%s is %q", header, got)
		}
	}
	if w.Body.String() != "quince /desk/school" {
		t.Errorf("%s", w.Body)
	}
	if got := ask(d, d.Path()).Header().Get("Content-Security-Policy"); !strings.Contains(got, "form-action 'none'") {
		t.Errorf("a page of the handbook: %s", got)
	}
	for _, method := range []string{"PUT", "DELETE", "PATCH", "OPTIONS"} {
		r := httptest.NewRequest(method, d.Path()+"desk/school", nil)
		r.RemoteAddr, r.Host = "127.0.0.1:5000", "127.0.0.1:8080"
		r.Header.Set("Origin", "http://127.0.0.1:8080")
		w := httptest.NewRecorder()
		if d.Handler().ServeHTTP(w, r); w.Code != http.StatusMethodNotAllowed || strings.Contains(w.Body.String(), "quince") {
			t.Errorf("%s: %d", method, w.Code)
		}
	}
}

// Pages of the handbook lead to the page to type on, where there is one.
func TestHandbookLeadsToTheForm(t *testing.T) {
	page := []file.File{{Name: "index.html", Bytes: []byte("<p>quince</p></body>")}}
	d, _ := typedOn()
	d.Put(desk.Pressing{Files: page, Form: `Your "school"`})
	if got := ask(d, d.Path()).Body.String(); !strings.Contains(got, `data-form="Your &#34;school&#34;" data-start="`+d.Path()+`desk/school"`) {
		t.Errorf("%s", got)
	}
	d = desk.New()
	d.Put(desk.Pressing{Files: page, Form: "Your school"})
	if got := ask(d, d.Path()).Body.String(); strings.Contains(got, "data-form") {
		t.Errorf("without one: %s", got)
	}
	if w := ask(d, d.Path()+"desk/school"); w.Code != http.StatusNotFound {
		t.Errorf("without one: %d", w.Code)
	}
}
