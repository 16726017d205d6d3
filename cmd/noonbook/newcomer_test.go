package main

import (
	"context"
	"html"
	"io"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"noonbook/build/desk"
)

func TestHome(t *testing.T) {
	for _, c := range []struct {
		name, working, program, own string
		writable                    bool
		want                        string
	}{
		{"where it is started", "/u", "/bin", "/home/a", true, "/u"},
		{"beside the program", "/u", "/u", "/home/a", true, "/u"},
		{"started in the person's own folder", "/home/a", "/home/a/sky", "/home/a", true, "/home/a/sky"},
		{"started at the root", "/", "/u", "/home/a", true, "/u"},
		{"nowhere", "", "/u", "/home/a", true, "/u"},
		{"a program for all", "/home/a", "/usr/bin", "/home/a", false, "/home/a"},
		{"in the person's own folder itself", "/home/a", "/home/a", "/home/a", true, "/home/a"},
	} {
		got := home(filepath.FromSlash(c.working), filepath.FromSlash(c.program), filepath.FromSlash(c.own), func(string) bool { return c.writable })
		if got != filepath.FromSlash(c.want) {
			t.Errorf("%s: %s", c.name, got)
		}
	}
}

var hidden = regexp.MustCompile(`name="(page-token|file-sum)" value="([^"]*)"`)

// A visitor is somebody at a browser.
type visitor struct {
	t       *testing.T
	address string // of the page
}

func (v visitor) get() string {
	v.t.Helper()
	answer, err := http.Get(v.address)
	if err != nil {
		v.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil || answer.StatusCode != 200 {
		v.t.Fatalf("%d %s, %v", answer.StatusCode, text, err)
	}
	return string(text)
}

// send fills in lines of the page and sends it as a browser does. It returns what the
// browser shows then.
func (v visitor) send(values map[string]string) (code int, body string) {
	v.t.Helper()
	typed := url.Values{}
	for _, m := range hidden.FindAllStringSubmatch(v.get(), -1) {
		typed.Set(m[1], html.UnescapeString(m[2]))
	}
	for key, text := range values {
		typed.Set(key, text)
	}
	q, err := http.NewRequest("POST", v.address, strings.NewReader(typed.Encode()))
	if err != nil {
		v.t.Fatal(err)
	}
	q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	q.Header.Set("Origin", "http://"+q.URL.Host)
	client := http.Client{CheckRedirect: func(next *http.Request, _ []*http.Request) error {
		next.Header.Del("Referer") // as the way to another page has it
		return nil
	}}
	answer, err := client.Do(q)
	if err != nil {
		v.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		v.t.Fatal(err)
	}
	return answer.StatusCode, string(text)
}

// Somebody without a terminal puts the program in a folder, starts it and fills in the
// page: the unit is laid out, the handbook pressed, and both are of their own school.
func TestNewcomerFillsInThePage(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	var out, errs board
	opened, ended := make(chan string, 1), make(chan error, 1)
	go func() {
		ended <- newcomer(ctx, dir, func(address string) error { opened <- address; return nil }, &out, &errs)
	}()
	v := visitor{t, <-opened}
	if !regexp.MustCompile(`^http://127\.0\.0\.1:\d+/[A-Z2-7]{26,}/desk/school$`).MatchString(v.address) {
		t.Fatalf("it opened %s", v.address)
	}
	for _, want := range []string{"makes your handbook, in the folder", "close it, or press Ctrl-C", v.address} {
		if text := strings.Join(strings.Fields(out.String()), " "); !strings.Contains(text, want) {
			t.Errorf("the window does not say %q: %s", want, text)
		}
	}
	if entries, _ := os.ReadDir("."); len(entries) > 0 {
		t.Fatalf("before anything is filled in, there is %v", entries)
	}
	// In the term of the demo: a lesson of it may name a day.
	school := map[string]string{
		"unit.title": "Our sky", "school.name": "Harbour Street School", "school.latitude": "44°39′N", "school.longitude": "63°35′W", "school.time_zone": "America/Halifax",
		"school.language": "en", "school.paper": "A4", "term.first_day": "12 April 2027", "term.last_day": "14 May 2027", "term.lesson_times": "9:10–10:00, 10:15–11:05, 13:15–14:05",
	}
	wrong := map[string]string{}
	for key, text := range school {
		wrong[key] = text
	}
	wrong["term.last_day"] = "14 March 2027"
	if code, body := v.send(wrong); code != http.StatusUnprocessableEntity || !strings.Contains(body, "Did you mean 14 May 2027?") {
		t.Errorf("%d %s", code, body)
	}
	if entries, _ := os.ReadDir("."); len(entries) > 0 {
		t.Fatalf("with a wrong day, there is %v", entries)
	}
	code, body := v.send(school)
	if code != 200 || !strings.Contains(body, "Our sky") || !strings.Contains(body, "Harbour Street School") || !strings.Contains(body, "desk/follow.js") {
		t.Errorf("it leads to %d %s", code, body)
	}
	toml, err := os.ReadFile("content/unit.toml")
	if err != nil || !strings.Contains(string(toml), "latitude = 44.65") || !strings.Contains(string(toml), "first_day = 2027-04-12") {
		t.Errorf("%v: %s", err, toml)
	}
	cover, err := os.ReadFile("handbook/index.html")
	if err != nil || !strings.Contains(string(cover), "Harbour Street School") || strings.Contains(string(cover), "follow.js") {
		t.Errorf("%v: %s", err, cover)
	}
	// Later that day the class has a pupil more.
	if code, _ := v.send(map[string]string{"class.pupils": "25"}); code != 200 {
		t.Errorf("%d", code)
	}
	if toml, _ = os.ReadFile("content/unit.toml"); !strings.Contains(string(toml), "\npupils = 25\n") || !strings.Contains(string(toml), "latitude = 44.65") {
		t.Errorf("%s", toml)
	}
	stop()
	if err := <-ended; err != nil || exitCode(err, &errs) != done {
		t.Errorf("it ended with %v", err)
	}
}

// Lessons that lack a unit.toml are no reason to lay out others.
func TestNewcomerWithLessons(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	if err := os.Mkdir("content", 0o777); err != nil {
		t.Fatal(err)
	}
	save(t, "content", "1-a.md", lesson+"Own words.\n")
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	var out, errs board
	opened, ended := make(chan string, 1), make(chan error, 1)
	go func() {
		ended <- newcomer(ctx, dir, func(address string) error { opened <- address; return nil }, &out, &errs)
	}()
	v := visitor{t, <-opened}
	code, body := v.send(map[string]string{
		"unit.title": "Our sky", "school.name": "Elm School", "school.latitude": "46.09", "school.longitude": "-64.77", "school.time_zone": "America/Moncton",
		"term.first_day": "2027-04-12", "term.last_day": "2027-05-14",
	})
	if code != 200 || !strings.Contains(body, "Our sky") {
		t.Errorf("%d %s", code, body)
	}
	if entries, _ := os.ReadDir("content"); len(entries) != 2 {
		t.Errorf("the folder holds %v", entries)
	}
	stop()
	<-ended
}

// The desk of a unit offers the page, that of the demo does not, and a page that was
// saved is pressed once, not again by the desk that sees the folder change.
func TestDeskOffersThePage(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "Words {class-facts.school}.\n"})
	d := startDesk(t, dir)
	if text, _ := d.get("a.html"); !strings.Contains(text, `data-form="Your school"`) {
		t.Errorf("no way to the page: %s", text)
	}
	v := visitor{t, d.address + "desk/school"}
	if code, body := v.send(map[string]string{"school.name": "Oak School"}); code != 200 || !strings.Contains(body, "Oak School") {
		t.Errorf("%d %s", code, body)
	}
	until(t, "some looks at the folder", func() bool { text, _ := d.get("a.html"); return strings.Contains(text, "Oak School") })
	d.end()
	d = startDesk(t, "--content", "../../testdata/units/french")
	if text, _ := d.get("desk/school"); !strings.Contains(text, "Votre école") {
		t.Errorf("%s", text)
	}
	d.end()
	t.Chdir(t.TempDir())
	d = startDesk(t)
	if text, _ := d.get("desk/school"); !strings.Contains(text, "no pages to type on") {
		t.Errorf("the demo: %s", text)
	}
	d.end()
}

// Somebody who comes back gets the handbook, from where the page is a link away; or,
// where unit.toml has a problem, the page that mends it.
func TestHomecomer(t *testing.T) {
	start, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ name, lesson, opens string }{
		{"well", "Words.\n", ""},
		{"with a problem", "{sun-dya.noon}\n", "desk/school"},
	} {
		dir := folder(t, map[string]string{"1-a.md": lesson + c.lesson})
		t.Chdir(dir)
		ctx, stop := context.WithCancel(context.Background())
		var out, errs board
		opened, ended := make(chan string, 1), make(chan error, 1)
		go func() {
			ended <- homecomer(ctx, spot{dir, "."}, func(address string) error { opened <- address; return nil }, &out, &errs)
		}()
		address := <-opened
		if !strings.HasSuffix(address, "/"+c.opens) {
			t.Errorf("%s: it opened %s", c.name, address)
		}
		if text := (visitor{t, address}).get(); !strings.Contains(text, "Your school") {
			t.Errorf("%s: %s", c.name, text)
		}
		if _, err := os.Stat("handbook/index.html"); (err == nil) != (c.opens == "") {
			t.Errorf("%s: %v", c.name, err)
		}
		stop()
		if err := <-ended; err != nil {
			t.Errorf("%s: it ended with %v", c.name, err)
		}
		t.Chdir(start)
	}
}

// A desk without a window ends by itself when nobody has asked it for a while, and not
// before.
func TestUnseenDeskEnds(t *testing.T) {
	var out, errs board
	d := &tender{waiting: true, desk: desk.New(), out: &out, errs: &errs, idle: 2 * time.Second}
	listener, address, err := d.listen(0)
	if err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	begin := time.Now()
	go func() { ended <- d.serve(context.Background(), listener, "") }()
	time.Sleep(time.Second)
	if answer, err := http.Get(address); err != nil {
		t.Fatal(err)
	} else if err := answer.Body.Close(); err != nil {
		t.Fatal(err)
	}
	if err := <-ended; err != nil || time.Since(begin) < 2900*time.Millisecond {
		t.Errorf("it ended after %v with %v", time.Since(begin), err)
	}
}
