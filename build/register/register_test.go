package register_test

import (
	"errors"
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"noonbook/build/form"
	"noonbook/build/register"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// unitFile is a unit.toml with what people put in one besides values: remarks, an order
// of their own, alignment, a list over several lines, line ends of another system.
const unitFile = "# Our own notes.\r\n\r\n[school]\r\nname = \"Elm School\"   # since 1952\r\nlongitude = -64.77\r\nlatitude = 46.09\r\ntime_zone = \"America/Moncton\"\r\n\r\n" +
	"[term]\r\nfirst_day = 2027-04-12\r\nlast_day = 2027-05-14\r\ndays_off = [\r\n\t2027-04-16, # the fair\r\n\t2027-04-19,\r\n]\r\n\r\n[unit]\r\ntitle = \"Sky\"\r\n"

// A bench is a register on a folder, and the last answer.
type bench struct {
	t       *testing.T
	r       *register.Register
	folder  string
	pressed int
	code    int
	body    string
	header  http.Header
}

func newBench(t *testing.T, files map[string]string) *bench {
	t.Helper()
	b := &bench{t: t, r: register.New(), folder: t.TempDir()}
	for name, text := range files {
		b.save(name, text)
	}
	b.r.Folder = func() string { return b.folder }
	b.r.Press = func() { b.pressed++ }
	b.r.Today = func() place.Date { return place.Date{Year: 2027, Month: 4, Day: 12} }
	return b
}

func (b *bench) save(name, text string) {
	b.t.Helper()
	if err := os.WriteFile(filepath.Join(b.folder, name), []byte(text), 0o640); err != nil {
		b.t.Fatal(err)
	}
}

func (b *bench) file(name string) string {
	b.t.Helper()
	src, err := os.ReadFile(filepath.Join(b.folder, name))
	if err != nil {
		b.t.Fatal(err)
	}
	return string(src)
}

func (b *bench) do(q *http.Request) {
	w := httptest.NewRecorder()
	b.r.ServeHTTP(w, q)
	b.code, b.body, b.header = w.Code, w.Body.String(), w.Header()
}

func (b *bench) get(page string) { b.do(httptest.NewRequest("GET", "/desk/"+page, nil)) }

var (
	control = regexp.MustCompile(`(?s)<input ([^>]*)>|<textarea ([^>]*)>\n?(.*?)</textarea>|<select ([^>]*)>(.*?)</select>`)
	option  = regexp.MustCompile(`<option value="([^"]*)" selected>`)
)

// typed is what a browser would send of the last page.
func (b *bench) typed() url.Values {
	b.t.Helper()
	attribute := func(tag, name string) string {
		m := regexp.MustCompile(`(?:^| )` + name + `="([^"]*)"`).FindStringSubmatch(tag)
		if m == nil {
			return ""
		}
		return html.UnescapeString(m[1])
	}
	v := url.Values{}
	for _, m := range control.FindAllStringSubmatch(b.body, -1) {
		switch {
		case m[1] != "" && attribute(m[1], "type") == "checkbox" && !strings.HasSuffix(m[1], " checked"):
		case m[1] != "":
			v.Add(attribute(m[1], "name"), attribute(m[1], "value"))
		case m[2] != "":
			v.Add(attribute(m[2], "name"), html.UnescapeString(m[3]))
		default:
			chosen := option.FindStringSubmatch(m[5])
			if chosen == nil {
				b.t.Fatalf("nothing is chosen in %s", m[0])
			}
			v.Add(attribute(m[4], "name"), html.UnescapeString(chosen[1]))
		}
	}
	return v
}

func (b *bench) post(page string, v url.Values) {
	q := httptest.NewRequest("POST", "/desk/"+page, strings.NewReader(v.Encode()))
	q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	b.do(q)
}

// with opens a page, types, and sends it.
func (b *bench) with(page string, pairs ...string) {
	b.t.Helper()
	b.get(page)
	v := b.typed()
	for i := 0; i < len(pairs); i += 2 {
		if _, ok := v[pairs[i]]; !ok {
			b.t.Fatalf("the page has no line %s", pairs[i])
		}
		v.Set(pairs[i], pairs[i+1])
	}
	b.post(page, v)
}

func (b *bench) text() string {
	return html.UnescapeString(regexp.MustCompile(`\s+`).ReplaceAllString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(b.body, " "), " "))
}

func (b *bench) saved(what string) {
	b.t.Helper()
	if b.code != http.StatusSeeOther {
		b.t.Fatalf("%s: %d %s", what, b.code, b.text())
	}
}

// A page that nothing was typed on writes nothing; one value changes to the byte what
// it must, and what a person types for it is understood.
func TestOnlyWhatWasTypedChanges(t *testing.T) {
	for _, c := range []struct {
		name string
		typ  []string
		old  string
		new  string
	}{
		{"nothing", nil, "", ""},
		{"a name", []string{"school.name", `Elm "Old" School`}, `"Elm School"`, `"Elm \"Old\" School"`},
		{"a place as people write it", []string{"school.latitude", "46°05′N", "school.longitude", "64°46′W"}, "longitude = -64.77\r\nlatitude = 46.09", "longitude = -64.767\r\nlatitude = 46.083"},
		{"both from a map", []string{"school.latitude", "45.5, −73.57", "school.time_zone", "America/Toronto"}, "longitude = -64.77\r\nlatitude = 46.09\r\ntime_zone = \"America/Moncton\"", "longitude = -73.57\r\nlatitude = 45.5\r\ntime_zone = \"America/Toronto\""},
		{"a date", []string{"term.last_day", "May 21, 2027"}, "2027-05-14", "2027-05-21"},
		{"a list", []string{"term.days_off", "16 April 2027, 2027-04-20"}, "2027-04-19", "2027-04-20"},
		{"a new key", []string{"class.pupils", "27"}, "title = \"Sky\"\r\n", "title = \"Sky\"\r\n\r\n[class]\r\npupils = 27\r\n"},
		{"a choice", []string{"school.paper", "Letter"}, "time_zone = \"America/Moncton\"\r\n", "time_zone = \"America/Moncton\"\r\npaper = \"Letter\"\r\n"},
		{"a unit behind a number", []string{"stock.square_mm", "11,5 cm"}, "title = \"Sky\"\r\n", "title = \"Sky\"\r\n\r\n[stock]\r\nsquare_mm = 115\r\n"},
	} {
		b := newBench(t, map[string]string{"unit.toml": unitFile})
		b.with("school", c.typ...)
		b.saved(c.name)
		if got, want := b.file("unit.toml"), strings.Replace(unitFile, c.old, c.new, 1); got != want {
			t.Errorf("%s:\n%s", c.name, got)
		}
		if b.pressed != 1 || b.header.Get("Location") != "../" {
			t.Errorf("%s: pressed %d times, led to %q", c.name, b.pressed, b.header.Get("Location"))
		}
		if info, err := os.Stat(filepath.Join(b.folder, "unit.toml")); err != nil || info.Mode().Perm() != 0o640 {
			t.Errorf("%s: %v, %v", c.name, info.Mode(), err)
		}
		if entries, _ := os.ReadDir(b.folder); len(entries) != 1 {
			t.Errorf("%s: the folder holds %v", c.name, entries)
		}
	}
}

// What is wrong comes back beside its line, in the words of proof and with what was
// typed, leads there from the top, and writes nothing.
func TestWrongValuesComeBack(t *testing.T) {
	for _, c := range []struct {
		name, key, value string
		want             []string
	}{
		{"out of bounds", "school.latitude", "95", []string{"95° is outside −90° to 90°."}},
		{"the other axis", "school.latitude", "64°46′W", []string{`This is "64°46′W", want a number from −90° to 90°.`}},
		{"no number", "class.pupils", "many", []string{`This is "many", want a whole number from 0 to 500.`}},
		{"missing", "school.name", " ", []string{"This is missing."}},
		{"a town for its zone", "school.time_zone", "Halifax", []string{`"Halifax" is not in the IANA time zone database`, "Did you mean America/Halifax?"}},
		{"dates that turn", "term.last_day", "14 March 2027", []string{"2027-03-14 is before “First day” 2027-04-12. Did you mean 14 May 2027?"}},
		{"lesson times over one another", "term.lesson_times", "9:10-10:00, 9:50-10:30", []string{"This one begins before the one before it ends."}},
		{"a colour", "school.colour", "green", []string{`"green" is no colour; want six digits as in "#1a5c3a".`}},
		{"a control character", "school.name", "Elm\x07", []string{"This holds the control character U+0007; delete it."}},
		{"markup", "school.colour", `"><script>x</script>`, []string{"is no colour"}},
	} {
		b := newBench(t, map[string]string{"unit.toml": unitFile})
		b.with("school", c.key, c.value)
		if b.code != http.StatusUnprocessableEntity || b.file("unit.toml") != unitFile || b.pressed != 0 {
			t.Errorf("%s: %d, pressed %d times", c.name, b.code, b.pressed)
		}
		id := strings.NewReplacer(".", "-", "_", "-").Replace(c.key)
		for _, want := range append(c.want, "Nothing is saved yet") {
			if !strings.Contains(b.text(), want) {
				t.Errorf("%s: no %q in %s", c.name, want, b.text())
			}
		}
		for _, want := range []string{`<a href="#` + id + `">`, `id="` + id + `-wrong"`, `aria-describedby="` + id + `-wrong`, `aria-invalid="true"`, " autofocus"} {
			if !strings.Contains(b.body, want) {
				t.Errorf("%s: no %s", c.name, want)
			}
		}
		if got := b.typed().Get(c.key); got != strings.TrimSpace(c.value) {
			t.Errorf("%s: %q was typed, the line says %q", c.name, c.value, got)
		}
		if strings.Contains(b.body, "<script>x") {
			t.Errorf("%s: what was typed is markup", c.name)
		}
	}
}

// A value that is allowed and hardly right is asked about once, and saved as it is when
// that is confirmed. The Sun's noon at 64.77° east by Moncton's clock in April, three
// hours behind UTC: 12 h − 64.77/15 h − 3 h is 4:41.
func TestDoubtIsAskedOnce(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile})
	b.with("school", "school.longitude", "64.77")
	if b.code != http.StatusUnprocessableEntity || !strings.Contains(b.text(), "is the sign of the longitude wrong?") || !strings.Contains(b.text(), "noon is at 4:4") {
		t.Fatalf("%d %s", b.code, b.text())
	}
	if b.file("unit.toml") != unitFile {
		t.Fatal("it was written")
	}
	v := b.typed()
	v.Set("as-it-is", "yes")
	b.post("school", v)
	b.saved("confirmed")
	if want := strings.Replace(unitFile, "-64.77", "64.77", 1); b.file("unit.toml") != want {
		t.Errorf("%s", b.file("unit.toml"))
	}
}

// A file that another changed meanwhile is not written. What was not touched follows
// the file, what was typed stays, and the page says what differs.
func TestChangedMeanwhile(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile})
	b.get("school")
	v := b.typed()
	v.Set("school.name", "Oak School")
	v.Set("class.pupils", "27")
	theirs := strings.NewReplacer("46.09", "46.5", "Elm School", "Ash School").Replace(unitFile) + "# a new remark\r\n"
	b.save("unit.toml", theirs)
	b.post("school", v)
	if b.code != http.StatusConflict || b.file("unit.toml") != theirs || b.pressed != 0 {
		t.Fatalf("%d, %s", b.code, b.file("unit.toml"))
	}
	for _, want := range []string{"School: it was Elm School, and is Ash School now.", "North or south: it was 46.09, and is 46.5 now.", "In the file now: Ash School"} {
		if !strings.Contains(b.text(), want) {
			t.Errorf("no %q in %s", want, b.text())
		}
	}
	again := b.typed()
	if again.Get("school.name") != "Oak School" || again.Get("class.pupils") != "27" || again.Get("school.latitude") != "46.5" {
		t.Errorf("the page says %v", again)
	}
	b.post("school", again)
	b.saved("the second time")
	if want := strings.Replace(theirs, "Ash", "Oak", 1) + "\r\n[class]\r\npupils = 27\r\n"; b.file("unit.toml") != want {
		t.Errorf("%s", b.file("unit.toml"))
	}
	// Two tabs: the second one was made before the first was saved.
	b.get("school")
	first, second := b.typed(), b.typed()
	first.Set("class.pupils", "26")
	second.Set("class.group_size", "4")
	b.post("school", first)
	b.saved("the first tab")
	b.post("school", second)
	if b.code != http.StatusConflict || !strings.Contains(b.text(), "Pupils: it was 27, and is 26 now.") {
		t.Fatalf("%d %s", b.code, b.text())
	}
	b.post("school", b.typed())
	b.saved("the second tab")
	if text := b.file("unit.toml"); !strings.Contains(text, "pupils = 26") || !strings.Contains(text, "group_size = 4") {
		t.Errorf("%s", text)
	}
	// A page of another start of the desk: nobody knows what it showed.
	b.get("school")
	stranger := b.typed()
	stranger.Set("file-sum", strings.Repeat("0", 64))
	stranger.Set("class.pupils", "20")
	b.post("school", stranger)
	if b.code != http.StatusConflict || b.typed().Get("class.pupils") != "20" || !strings.Contains(b.text(), "In the file now: 26") {
		t.Errorf("%d %s", b.code, b.text())
	}
}

// A file that is no TOML is not changed, and what proof says to it is told.
func TestBrokenFileIsLocked(t *testing.T) {
	broken := unitFile + "[class\r\n"
	b := newBench(t, map[string]string{"unit.toml": broken})
	b.get("school")
	if b.code != 200 || strings.Contains(b.body, "<form") || !strings.Contains(b.text(), "the brackets do not match; write [class]") {
		t.Errorf("%d %s", b.code, b.text())
	}
	v := url.Values{"file-sum": {"x"}, "page-token": {"x"}}
	if b.post("school", v); b.code != http.StatusForbidden || b.file("unit.toml") != broken {
		t.Errorf("%d", b.code)
	}
}

// A value that the file has and that is wrong stands on its line, with what is wrong.
func TestWrongInTheFile(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": strings.Replace(unitFile, "46.09", "146.09  # degrees", 1) + "colour = 3\r\n"})
	b.get("school")
	if b.typed().Get("school.latitude") != "146.09" || !strings.Contains(b.text(), "146.09° is outside") || !strings.Contains(b.text(), "unit.colour is not a key") {
		t.Errorf("%s", b.text())
	}
	b.with("school", "school.latitude", "46.1")
	b.saved("mended") // the rest is told, and is for an editor
	if !strings.Contains(b.file("unit.toml"), "latitude = 46.1  # degrees") {
		t.Errorf("%s", b.file("unit.toml"))
	}
}

// Who did not get a page from this register writes nothing, and neither does what no
// page sends.
func TestOnlyOwnPagesWrite(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile, "moon-log.csv": "group,date,time\n"})
	b.get("school")
	good := b.typed()
	good.Set("school.name", "Stolen School")
	change := func(key string, values ...string) url.Values {
		v := url.Values{}
		for k, x := range good {
			v[k] = x
		}
		if v[key] = values; len(values) == 0 {
			delete(v, key)
		}
		return v
	}
	b.get("moon-log")
	other := b.typed().Get("page-token")
	foreign := newBench(t, map[string]string{"unit.toml": unitFile})
	foreign.get("school")
	send := func(method, target, kind, body string) func() {
		return func() {
			q := httptest.NewRequest(method, target, strings.NewReader(body))
			if kind != "" {
				q.Header.Set("Content-Type", kind)
			}
			b.do(q)
		}
	}
	const form = "application/x-www-form-urlencoded"
	for _, c := range []struct {
		name string
		do   func()
		code int
	}{
		{"no token", send("POST", "/desk/school", form, change("page-token").Encode()), 403},
		{"an empty token", send("POST", "/desk/school", form, change("page-token", "").Encode()), 403},
		{"the token of another page", send("POST", "/desk/school", form, change("page-token", other).Encode()), 403},
		{"the token of another desk", send("POST", "/desk/school", form, change("page-token", foreign.typed().Get("page-token")).Encode()), 403},
		{"two tokens", send("POST", "/desk/school", form, change("page-token", other, good.Get("page-token")).Encode()), 403},
		{"all in the address", send("POST", "/desk/school?"+good.Encode(), form, ""), 403},
		{"read", send("GET", "/desk/school?"+good.Encode(), "", ""), 200},
		{"put", send("PUT", "/desk/school", form, good.Encode()), 405},
		{"deleted", send("DELETE", "/desk/school", "", ""), 405},
		{"as text", send("POST", "/desk/school", "text/plain", good.Encode()), 415},
		{"as JSON", send("POST", "/desk/school", "application/json", `{}`), 415},
		{"as files", send("POST", "/desk/school", "multipart/form-data; boundary=x", "--x--"), 415},
		{"as nothing", send("POST", "/desk/school", "", good.Encode()), 415},
		{"no form", send("POST", "/desk/school", form, "a=%zz"), 400},
		{"too large", send("POST", "/desk/school", form, change("unit.summary", strings.Repeat("a", 300<<10)).Encode()), 413},
		{"no such page", send("POST", "/desk/unit.toml", form, good.Encode()), 404},
		{"a path", send("POST", "/desk/../school", form, good.Encode()), 404},
		{"a hidden path", send("POST", "/desk/%2e%2e/unit.toml", form, good.Encode()), 404},
		{"below a page", send("POST", "/desk/school/unit.toml", form, good.Encode()), 404},
		{"a file", send("GET", "/desk/moon-log.csv", "", ""), 404},
		{"a program's page", send("POST", "/desk/form.js", form, good.Encode()), 404},
	} {
		c.do()
		if b.code != c.code {
			t.Errorf("%s: %d, want %d: %s", c.name, b.code, c.code, b.body)
		}
		if b.file("unit.toml") != unitFile || b.file("moon-log.csv") != "group,date,time\n" || b.pressed != 0 {
			t.Fatalf("%s wrote", c.name)
		}
	}
	// What stands in the address is no part of what the page sends.
	rest := change("school.name")
	send("POST", "/desk/school?school.name=Stolen+School", form, rest.Encode())()
	if b.saved("a page with more in its address"); b.file("unit.toml") != unitFile {
		t.Error("the address wrote")
	}
	b.post("school", good)
	b.saved("the page itself")
}

// A unit that is not there yet is begun with everything that is typed, and with what
// the page showed.
func TestNewUnit(t *testing.T) {
	b := newBench(t, nil)
	b.r.Folder = func() string { return "" }
	b.r.Fresh = form.Values{"unit.title": "Sky"}
	var begun form.Values
	b.r.Begin = func(v form.Values) error { begun = v; return nil }
	b.with("school", "school.name", "Elm School")
	if b.code != http.StatusUnprocessableEntity || begun != nil {
		t.Fatalf("%d, begun with %v", b.code, begun)
	}
	for _, id := range []string{"school-latitude", "school-longitude", "school-time-zone", "term-first-day", "term-last-day"} {
		if !strings.Contains(b.body, `<a href="#`+id+`">`) {
			t.Errorf("no way to %s", id)
		}
	}
	v := b.typed()
	for key, text := range map[string]string{"school.latitude": "46.09", "school.longitude": "-64.77", "school.time_zone": "America/Moncton", "term.first_day": "12 April 2027", "term.last_day": "14 May 2027"} {
		v.Set(key, text)
	}
	v.Set("school.paper", "Letter")
	b.post("school", v)
	b.saved("filled in")
	if school.UnitTitle.Of(begun) != "Sky" || school.Name.Of(begun) != "Elm School" || school.Paper.Of(begun) != "Letter" || school.TermLastDay.Of(begun).String() != "2027-05-14" || b.pressed != 1 {
		t.Errorf("begun with %v, pressed %d times", begun, b.pressed)
	}
	b.r.Begin = func(form.Values) error { return errors.New("the disk is full") }
	b.post("school", v)
	if b.code == http.StatusSeeOther || !strings.Contains(b.text(), "The disk is full.") || b.typed().Get("school.name") != "Elm School" {
		t.Errorf("%d %s", b.code, b.text())
	}
}

// The page speaks the school's language, and before there is one the browser's.
func TestLanguageOfThePage(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": strings.Replace(unitFile, "[term]", "language = \"fr\"\r\n[term]", 1)})
	b.get("school")
	if !strings.Contains(b.body, `<html lang="fr">`) || !strings.Contains(b.text(), "Votre école") || b.typed().Get("term.first_day") != "12 avril 2027" {
		t.Errorf("%s", b.text())
	}
	b.with("school", "term.last_day", "21 mai 2027")
	b.saved("a French date")
	if !strings.Contains(b.file("unit.toml"), "last_day = 2027-05-21") {
		t.Errorf("%s", b.file("unit.toml"))
	}
	b.with("school", "school.latitude", "95")
	if !strings.Contains(b.body, `<p class="wrong" id="school-latitude-wrong" lang="en">95° is outside`) || !strings.Contains(b.body, `<span lang="en">95° is outside`) {
		t.Errorf("what is wrong is in English and does not say so: %s", b.body)
	}
	b = newBench(t, nil)
	b.r.Folder = func() string { return "" }
	for header, want := range map[string]string{"fr-CA,fr;q=0.8,en;q=0.5": "fr", "de, fr;q=0.5": "fr", "en-CA": "en", "": "en", "tlh": "en"} {
		q := httptest.NewRequest("GET", "/desk/school", nil)
		q.Header.Set("Accept-Language", header)
		if b.do(q); !strings.Contains(b.body, `<html lang="`+want+`">`) {
			t.Errorf("%q: %s", header, b.body[:60])
		}
	}
}

// The check while one types: the same place as above, and what cannot be read.
func TestNoonAsked(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile})
	for _, c := range []struct{ query, want string }{
		{"school.latitude=46.09&school.longitude=-64.77&school.time_zone=America/Moncton&term.first_day=12+April+2027", "noon is at 13:20"},
		{"school.latitude=46.09&school.longitude=64.77&school.time_zone=America/Moncton&term.first_day=2027-04-12", "is the sign of the longitude wrong?"},
		{"school.latitude=x&school.longitude=64.77", `"school.latitude":"This is \"x\", want a number`},
		{"school.latitude=46.09&school.longitude=-64.77&school.time_zone=America/Moncton", "On 12 April 2027"},
		{"", "Fill in the place"},
	} {
		b.get("noon.js?asked=7&" + c.query)
		if b.code != 200 || !strings.HasPrefix(b.body, `noonbookNoon({"asked":7,`) || !strings.Contains(b.body, c.want) || !strings.HasPrefix(b.header.Get("Content-Type"), "text/javascript") {
			t.Errorf("%s: %d %s", c.query, b.code, b.body)
		}
	}
	for _, query := range []string{"", "?asked=", "?asked=alert(1)", "?asked=1&school.name=" + strings.Repeat("a", 5000)} {
		if b.get("noon.js" + query); b.code != http.StatusBadRequest {
			t.Errorf("%.40s: %d", query, b.code)
		}
	}
	b.get("noon.js?asked=1&school.time_zone=" + url.QueryEscape(`</script><script>x</script>`))
	if strings.Contains(b.body, "<script>") {
		t.Errorf("%s", b.body)
	}
}

// Every key of unit.toml is on the page, with a label of its own, and tables have rows.
func TestEveryKeyIsOnThePage(t *testing.T) {
	b := newBench(t, map[string]string{"unit.toml": unitFile + "[[stock.lenses]]\r\nlabel = \"bag A\"\r\ndiameter_mm = 50\r\nfocal_mm = 250\r\n"})
	b.get("school")
	for _, f := range school.Settings() {
		id := strings.NewReplacer(".", "-", "_", "-").Replace(f.Name())
		if n := strings.Count(b.body, ` id="`+id+`"`); n != 1 {
			t.Errorf("%s is on the page %d times", f.Name(), n)
		}
	}
	if b.typed().Get("stock.lenses[0].label") != "bag A" || !b.typed().Has("stock.lenses[2].label") {
		t.Errorf("%v", b.typed())
	}
	ids := map[string]int{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(b.body, -1) {
		if ids[m[1]]++; ids[m[1]] == 2 {
			t.Errorf("the id %s is there twice", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`(?:for|aria-describedby|aria-labelledby)="([^"]*)"`).FindAllStringSubmatch(b.body, -1) {
		for _, id := range strings.Fields(m[1]) {
			if ids[id] == 0 {
				t.Errorf("nothing has the id %s", id)
			}
		}
	}
	if regexp.MustCompile(` on[a-z]+="|style="|javascript:|<script>|⟦`).MatchString(b.body) {
		t.Error("the page holds script or style of its own, or lacks a word")
	}
}
