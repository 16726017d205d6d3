package desk_test

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"noonbook/build/desk"
	"noonbook/build/file"
)

// serve answers for a desk, and returns the address of its cover without the slash.
func serve(t *testing.T, d *desk.Desk) string {
	t.Helper()
	server := httptest.NewServer(d.Handler())
	t.Cleanup(server.Close)
	return server.URL + strings.TrimSuffix(d.Path(), "/")
}

func get(t *testing.T, address string) (code int, kind, body string) {
	t.Helper()
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, answer.Header.Get("Content-Type"), string(text)
}

func TestDesk(t *testing.T) {
	d := desk.New()
	at := serve(t, d)

	d.Put(desk.Pressing{Problems: []string{"1-a.md:3:1: <b> is off"}})
	if code, _, body := get(t, at+"/"); code != http.StatusServiceUnavailable || !strings.Contains(body, "&lt;b&gt; is off") || !strings.Contains(body, `data-whole="0"`) {
		t.Errorf("before a handbook: %d %s", code, body)
	}
	d.Put(desk.Pressing{Files: []file.File{{Name: "index.html", Bytes: []byte("<body>one</body></html>")}, {Name: "a.svg", Bytes: []byte("<svg/>")}}})
	for _, c := range []struct {
		path, kind, body string
		code             int
	}{
		{"/", "text/html; charset=utf-8", `<body>one<script src="` + d.Path() + `desk/follow.js" data-whole="2" defer></script></body></html>`, 200},
		{"/index.html", "text/html; charset=utf-8", `<body>one<script src="` + d.Path() + `desk/follow.js" data-whole="2" defer></script></body></html>`, 200},
		{"/a.svg", "image/svg+xml", "<svg/>", 200},
		{"/none.html", "text/plain; charset=utf-8", "the handbook has no none.html\n", 404},
		{"/desk/state.js?seen=1", "text/javascript; charset=utf-8", `noonbookDesk({"serial":2,"whole":2,"problems":[]});`, 200},
		{"/desk/state.js", "text/plain; charset=utf-8", "seen: a number is wanted\n", 400},
	} {
		if code, kind, body := get(t, at+c.path); code != c.code || kind != c.kind || body != c.body {
			t.Errorf("%s: %d %s %q", c.path, code, kind, body)
		}
	}
	d.Put(desk.Pressing{Problems: []string{"off"}})
	if _, _, body := get(t, at+"/"); !strings.Contains(body, "one") {
		t.Errorf("a failed pressing took the handbook away: %s", body)
	}
	if _, _, body := get(t, at+"/desk/state.js?seen=2"); body != `noonbookDesk({"serial":3,"whole":2,"problems":["off"]});` {
		t.Errorf("a failed pressing tells %s", body)
	}
}

// A page that has seen everything is answered when something changes.
func TestStateWaits(t *testing.T) {
	d := desk.New()
	at := serve(t, d)
	told := make(chan string)
	go func() {
		_, _, body := get(t, at+"/desk/state.js?seen=0")
		told <- body
	}()
	select {
	case body := <-told:
		t.Fatalf("it did not wait: %s", body)
	case <-time.After(50 * time.Millisecond):
	}
	d.Put(desk.Pressing{Files: []file.File{}})
	if body := <-told; !strings.Contains(body, `"whole":1`) {
		t.Errorf("it tells %s", body)
	}
}

// Others are not answered: another machine, or a web page that leads here by a
// name of its own.
func TestOnlyThisMachine(t *testing.T) {
	d := desk.New()
	d.Put(desk.Pressing{Files: []file.File{{Name: "index.html", Bytes: []byte("secret")}}})
	for _, c := range []struct {
		from, host string
		code       int
	}{
		{"127.0.0.1:5000", "127.0.0.1:80", 200},
		{"127.0.0.1:5000", "localhost:80", 200},
		{"[::1]:5000", "[::1]:80", 200},
		{"192.168.1.7:5000", "127.0.0.1:80", 403},
		{"127.0.0.1:5000", "somewhere.example:80", 403},
		{"127.0.0.1:5000", "127.0.0.1.somewhere.example", 403},
	} {
		r := httptest.NewRequest("GET", d.Path(), nil)
		r.RemoteAddr, r.Host = c.from, c.host
		w := httptest.NewRecorder()
		d.Handler().ServeHTTP(w, r)
		if w.Code != c.code || (c.code != 200 && strings.Contains(w.Body.String(), "secret")) {
			t.Errorf("from %s to %s: %d %s", c.from, c.host, w.Code, w.Body)
		}
	}
	r := httptest.NewRequest("POST", d.Path(), nil)
	r.RemoteAddr, r.Host = "127.0.0.1:5000", "localhost"
	w := httptest.NewRecorder()
	if d.Handler().ServeHTTP(w, r); w.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", w.Code)
	}
}

func TestPrint(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		name = filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	write("unit.toml", "a")
	last := desk.Print(dir)
	for _, c := range []struct {
		name    string
		change  func()
		differs bool
	}{
		{"nothing", func() {}, false},
		{"another size", func() { write("unit.toml", "ab") }, true},
		{"the same size, later", func() {
			later := time.Now().Add(time.Minute)
			if err := os.Chtimes(filepath.Join(dir, "unit.toml"), later, later); err != nil {
				t.Fatal(err)
			}
		}, true},
		{"a new lesson in a folder", func() { write("more/2-b.md", "b") }, true},
		{"a hidden folder", func() { write(".git/x", "b") }, false},
		{"a pressed handbook", func() { write("handbook/.noonbook-files", ""); write("handbook/a.html", "") }, false},
		{"gone", func() { os.Remove(filepath.Join(dir, "unit.toml")) }, true},
	} {
		c.change()
		now := desk.Print(dir)
		if (now != last) != c.differs {
			t.Errorf("%s: differs is %v", c.name, now != last)
		}
		last = now
	}
	if desk.Print(filepath.Join(dir, "none")) == last {
		t.Error("no folder looks like a folder")
	}
}

// Watch waits until a change has settled, and calls once for it.
func TestWatch(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	looks := []string{"a", "a", "b", "c", "c", "c", "d", "d"} // b is half written
	var calledAt []int
	at := -1
	look := func() string {
		if at++; at >= len(looks)-1 {
			stop()
			return looks[len(looks)-1]
		}
		return looks[at]
	}
	desk.Watch(ctx, time.Millisecond, look(), look, func() { calledAt = append(calledAt, at) })
	if len(calledAt) < 1 || calledAt[0] != 4 || len(calledAt) > 2 {
		t.Errorf("called after the looks %v, want 4 and perhaps 7", calledAt)
	}
}
