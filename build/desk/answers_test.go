package desk_test

import (
	"context"
	"net/http"
	"strings"
	"testing"
	"time"

	"noonbook/build/desk"
	"noonbook/build/file"
)

// Answers are never kept by the browser, nor taken for another kind; what is not
// there is told without the name's own markup.
func TestAnswersAreFresh(t *testing.T) {
	d := desk.New()
	d.Put(desk.Pressing{Files: []file.File{{Name: "index.html", Bytes: []byte("<body><pre></body></pre></body></html>")}, {Name: "unit.ics", Bytes: []byte("BEGIN")}, {Name: "half.html", Bytes: []byte("no end")}}})
	address := serve(t, d)
	for path, want := range map[string]int{"/": 200, "/unit.ics": 200, "/desk/follow.js": 200, "/desk/state.js?seen=9": 200, "/none.html": 404, "/favicon.ico": 404, "/a/b.html": 404, "/desk/none": 404} {
		answer, err := http.Get(address + path)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != want {
			t.Errorf("%s: %d, want %d", path, answer.StatusCode, want)
		}
		if want == 200 && (answer.Header.Get("Cache-Control") != "no-store" || answer.Header.Get("X-Content-Type-Options") != "nosniff") {
			t.Errorf("%s: headers are %v", path, answer.Header)
		}
	}
	if _, _, body := get(t, address+"/"); strings.Count(body, "/desk/follow.js") != 1 || !strings.HasSuffix(body, "</pre><script src=\""+d.Path()+"desk/follow.js\" data-whole=\"1\" defer></script></body></html>") {
		t.Errorf("the script stands elsewhere: %s", body)
	}
	if _, _, body := get(t, address+"/half.html"); !strings.HasPrefix(body, "no end<script") {
		t.Errorf("a page without an end: %s", body)
	}
	if _, kind, body := get(t, address+"/unit.ics"); kind != "text/calendar; charset=utf-8" || body != "BEGIN" {
		t.Errorf("a calendar file is %s, %s", kind, body)
	}
	if _, kind, body := get(t, address+"/%3Cb%3E.html"); strings.Contains(body, "<b>") || !strings.HasPrefix(kind, "text/plain") {
		t.Errorf("%s, %s", kind, body)
	}
}

// Pages load themselves again when a pressing succeeded, and only then: Whole
// stays as it was after one with problems, and Serial counts every one. A page
// that was taken away is gone.
func TestOnlyWholePressingsCount(t *testing.T) {
	d := desk.New()
	address := serve(t, d)
	state := func() string { _, _, body := get(t, address+"/desk/state.js?seen=-1"); return body }
	page := func(words string) desk.Pressing {
		return desk.Pressing{Files: []file.File{{Name: "index.html", Bytes: []byte(words)}, {Name: words + ".html"}}, Problems: []string{"a warning"}}
	}
	for i, c := range []struct {
		put  desk.Pressing
		want string
	}{
		{desk.Pressing{Problems: []string{"x"}}, `noonbookDesk({"serial":1,"whole":0,"problems":["x"]});`},
		{page("one"), `noonbookDesk({"serial":2,"whole":2,"problems":["a warning"]});`},
		{desk.Pressing{Problems: []string{"y", "z"}}, `noonbookDesk({"serial":3,"whole":2,"problems":["y","z"]});`},
		{desk.Pressing{}, `noonbookDesk({"serial":4,"whole":2,"problems":[]});`},
		{page("two"), `noonbookDesk({"serial":5,"whole":5,"problems":["a warning"]});`},
	} {
		d.Put(c.put)
		if got := state(); got != c.want {
			t.Errorf("after pressing %d: %s, want %s", i+1, got, c.want)
		}
	}
	if code, _, _ := get(t, address+"/one.html"); code != http.StatusNotFound {
		t.Errorf("a page of the last handbook is still there: %d", code)
	}
	if code, _, _ := get(t, address+"/two.html"); code != http.StatusOK {
		t.Errorf("a page of this one is not: %d", code)
	}
}

// Watch calls once for each change that has settled, not for one that is taken
// back, and not at all where nothing changes.
func TestWatchCallsForWhatSettles(t *testing.T) {
	for _, c := range []struct {
		name, looks string // a letter for each look
		calls       int
	}{
		{"nothing changes", "aaaaaaaa", 0},
		{"one change", "aabbbbbb", 1},
		{"taken back before it settles", "aabaaaaa", 0},
		{"taken back later", "aabbbaaa", 2},
		{"changing all the time", "abcdefgh", 0},
		{"two changes", "abbbcccc", 2},
	} {
		ctx, stop := context.WithCancel(context.Background())
		at, calls := -1, 0
		look := func() string {
			if at++; at >= len(c.looks) {
				stop()
				return c.looks[len(c.looks)-1:]
			}
			return c.looks[at : at+1]
		}
		desk.Watch(ctx, time.Millisecond, look(), look, func() {
			if at < len(c.looks) {
				calls++
			}
		})
		stop()
		if calls != c.calls {
			t.Errorf("%s: called %d times, want %d", c.name, calls, c.calls)
		}
	}
}
