package main

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"compress/gzip"
	"compress/zlib"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"io"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// secret returns a word that stands nowhere else: letters from a digest, so that
// no two begin alike and an index that shares beginnings cannot hide one.
func secret(n int) string {
	sum := sha256.Sum256(fmt.Append(nil, "leak", n))
	word := []byte("q")
	for _, c := range sum[:11] {
		word = append(word, 'b'+c%20)
	}
	return string(word)
}

// opening finds the line that opens an answer or a staff block, in quotes and
// lists too.
var opening = regexp.MustCompile("^([ >]*)(`{3,}|~{3,})[ ]*(answer|staff)\\b[^`]*$")

// planted returns a lesson with a secret word in every answer and staff block, below every
// heading of a part for staff, and at the head of a page for staff.
func planted(text string, words *[]string) string {
	var out []string
	plant := func(indent string) {
		word := secret(len(*words))
		*words = append(*words, word)
		out = append(out, indent+word, strings.TrimRight(indent, " "))
	}
	staff, head, fenced := false, strings.Contains(text, "\nreader = \"staff\"\n"), false
	for line := range strings.SplitSeq(text, "\n") {
		out = append(out, line)
		fence := strings.HasPrefix(line, "```")
		switch m := opening.FindStringSubmatch(line); {
		case m != nil:
			plant(m[1])
		case head && line == "```":
			head = false
			out = append(out, "")
			if !strings.Contains(text, "\n# ") { // text before the first part is a problem
				plant("")
			}
		case fenced:
		case strings.HasPrefix(line, "# "):
			staff = strings.HasSuffix(line, ": staff")
		}
		if fence && strings.TrimLeft(line, "`") != "" && !strings.HasPrefix(strings.TrimLeft(line, "`"), "only") && !strings.HasPrefix(strings.TrimLeft(line, "`"), "unless") {
			fenced = true
		} else if fence {
			fenced = false
		}
		if staff && !fenced && strings.HasPrefix(line, "#") {
			out = append(out, "")
			plant("")
		}
	}
	return strings.Join(out, "\n")
}

// everyOpening has parts for staff with everything that a lesson holds, between parts for
// the class, which OPEN is in. SECRET stands for words of the former.
const everyOpening = "```lesson\ntitle = \"Openings\"\nglance_staff = [\"class-facts.groups\"]\nabsent = \"SECRET23\"\nevidence = [\"SECRET24\"]\n[sheet]\nfront = [\"SECRET11\"]\nback = [\"open-questions\"]\ncard = [\"open-steps\"]\n```\n\n" +
	"# Prepare: staff\n\n## Before\n\n```caution\nA caution, SECRET12\n```\n\n![SECRET13](only-staff.svg)\n\n```compute sun-day\n```\n\n" +
	"# Teach: class\n\n## Open steps\n\n1. OPEN\n\n# Teach: staff\n\n## SECRET11\n\n| Minute | What |\n|---|---|\n| 0 | SECRET14 |\n\n> SECRET15\n\n[SECRET16](https://example.org/SECRET17)\n\n" +
	"```unless place-facts.tropics\n## SECRET18\n\nwords\n```\n\n# Understand: staff\n\nWhy? {class-facts.school school.name=SECRET19}\n\n| fill | SECRET20 |\n|---|---|\n| | |\n| | |\n\n" +
	"# After: class\n\n## Open questions\n\n1. How many?\n\n```answer lines=2\nSECRET21\n```\n\n# After: staff\n\n## Back\n\n```answer lines=4\nSECRET22\n```\n"

// everyCorner has answers and staff notes in and round everything that a lesson
// holds. SECRET stands for further words: in a heading, a table, a link, a
// picture, code and a file that only an answer shows.
const everyCorner = "```lesson\ntitle = \"Corners\"\nsummary = \"s\"\n[sheet]\nback = [\"open\", \"SECRET0\"]\n```\n\n" +
	"## Open\n\n1. One\n\n   ```answer lines=2\n   In a list\n   ```\n\n2. Two\n\n> quoted\n>\n> ~~~staff\n> In a quote\n> ~~~\n\n" +
	"`````staff\n## SECRET0\n\n````answer\nAn answer in a note\n\n```caution\nA caution, SECRET1\n```\n````\n\n| SECRET2 | b |\n|---|---|\n| | |\n| | SECRET3 |\n`````\n\n" +
	"````answer lines=3\n```staff\nA note in an answer\n```\n\n![SECRET4](only-an-answer.svg \"SECRET5\")\n\n[SECRET6](https://example.org/SECRET7)\n\n```compute sun-day\n```\n\n    SECRET8\n\n`SECRET9` {class-facts.school school.name=SECRET10}\n````\n\n" +
	"```caution\n~~~answer\nAn answer in a caution\n~~~\n```\n\nA shared picture: ![shared](shared.svg)\n\n```answer\n![shared](shared.svg)\n```\n"

const drawn = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><title>%s</title><path d="M0 0L9 9"/></svg>`

// No byte of an answer or a staff note reaches the class edition: not its pages,
// sheets and printables, not its style, script and index, not the single file,
// the zip and whatever else press writes, also after undoing every packing that
// is found in them. The staff edition holds every word, so none was planted in
// vain.
func TestNothingLeaks(t *testing.T) {
	unraced(t)
	t.Run("demo", func(t *testing.T) {
		dir, words := t.TempDir(), []string(nil)
		if err := os.CopyFS(dir, os.DirFS("../../content")); err != nil {
			t.Fatal(err)
		}
		lessons, err := filepath.Glob(filepath.Join(dir, "*.md"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range lessons {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, []byte(planted(string(text), &words)), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		if len(words) < 50 {
			t.Errorf("only %d words were planted", len(words))
		}
		// What stands at some schools only is looked for at one of them.
		nowhere := slices.Clone(words)
		for i, elsewhere := range demoElsewhere {
			if i > 0 {
				moveDemo(t, dir, elsewhere)
			}
			_, lacking := hunted(t, dir, words)
			nowhere = slices.DeleteFunc(nowhere, func(word string) bool { return !slices.Contains(lacking, word) })
		}
		if len(nowhere) > 0 {
			t.Errorf("%v are nowhere in the staff edition of any school", nowhere)
		}
	})
	t.Run("corners", func(t *testing.T) {
		var words []string
		text := planted(everyCorner, &words)
		openings := planted(everyOpening, &words)
		for n := 24; n >= 0; n-- {
			word := secret(1000 + n)
			text = strings.ReplaceAll(text, fmt.Sprint("SECRET", n), word)
			openings = strings.ReplaceAll(openings, fmt.Sprint("SECRET", n), word)
			words = append(words, word)
		}
		inFile := secret(2000)
		dir := folder(t, map[string]string{
			"1-corners.md":       text,
			"2-openings.md":      openings,
			"3-page.md":          planted("```lesson\ntitle = \"Page\"\npart = \"page\"\nreader = \"staff\"\n[[vocabulary]]\nterm = \""+inFile+"\"\nmeaning = \"m\"\n```\n\n```compute unit-map\n```\n\n```compute risk-notes\n```\n", &words),
			"only-staff.svg":     fmt.Sprintf(drawn, inFile),
			"only-an-answer.svg": fmt.Sprintf(drawn, inFile),
			"shared.svg":         fmt.Sprintf(drawn, "for everyone"),
		})
		class := leaks(t, dir, append(words, inFile))
		if !strings.Contains(class["/shared.svg"], "for everyone") || class["/only-an-answer.svg"]+class["/only-staff.svg"] != "" {
			t.Error("the class edition should have the picture that it shows, and no other")
		}
		if class["/page.html"] != "" || !strings.Contains(class["/openings.html"], "OPEN") || !strings.Contains(class["/card-openings.html"], "OPEN") {
			t.Error("the class edition should have the parts for the class, and no page for staff")
		}
	})
}

// demoElsewhere are places and terms at which everything of the demo stands once: with
// a level and a polar dial, in the north, the south and the tropics, with the Sun down or
// up all day, with records and without.
var demoElsewhere = []struct{ latitude, longitude, zone, first, last string }{
	{},
	{"-1.29", "36.82", "Africa/Nairobi", "2028-06-05", "2028-07-14"},
	{"-45.87", "170.5", "Pacific/Auckland", "2028-02-07", "2028-03-17"},
	{"78.22", "15.65", "Arctic/Longyearbyen", "2027-11-01", "2027-12-10"},
	{"71.29", "-156.79", "America/Anchorage", "2027-05-03", "2027-06-11"},
	{"46.09", "-64.77", "America/Moncton", "2027-04-12", "2027-05-21"},
}

// moveDemo puts the copy of the demo elsewhere, without its records.
func moveDemo(t *testing.T, dir string, to struct{ latitude, longitude, zone, first, last string }) {
	t.Helper()
	name := filepath.Join(dir, "unit.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for key, value := range map[string]string{"latitude": to.latitude, "longitude": to.longitude, "time_zone": strconv.Quote(to.zone), "first_day": to.first, "last_day": to.last} {
		line := regexp.MustCompile(`(?m)^` + key + ` = \S+`)
		if !line.Match(text) {
			t.Fatalf("unit.toml of the demo has no line %s", key)
		}
		text = line.ReplaceAll(text, []byte(key+" = "+value))
	}
	text = regexp.MustCompile(`(?m)^\w+ = "[a-z-]+\.csv".*\n`).ReplaceAll(text, nil)
	if err := os.WriteFile(name, text, 0o666); err != nil {
		t.Fatal(err)
	}
}

// leaks presses a unit, wants every word in the staff edition and none in the
// class edition, and returns the latter.
func leaks(t *testing.T, dir string, words []string) map[string]string {
	t.Helper()
	class, lacking := hunted(t, dir, words)
	for _, word := range lacking {
		t.Errorf("%s is nowhere in the staff edition", word)
	}
	return class
}

// hunted presses a unit and wants none of the words in the class edition. It returns
// that, and the words that the staff edition lacks.
func hunted(t *testing.T, dir string, words []string) (classes map[string]string, lacking []string) {
	t.Helper()
	where := filepath.Join(t.TempDir(), "out")
	if err := os.MkdirAll(where, 0o777); err != nil {
		t.Fatal(err)
	}
	must(t, "press", "--staff", "--single", "--zip", "--content", dir, "--out", filepath.Join(where, "book"))
	class, staff := map[string]string{}, []string{}
	for name, text := range tree(t, where) {
		if noindex := strings.Contains(text, `name="robots" content="noindex"`); filepath.Ext(name) == ".html" && noindex != strings.HasPrefix(name, "/book-staff") {
			t.Errorf("%s: that search engines leave it out is %v", name, noindex)
		}
		if strings.HasPrefix(name, "/book-staff") {
			staff = append(staff, text)
		} else {
			class[name] = text
		}
	}
	for _, need := range []string{"/book.html", "/book.zip", "/book/concordance.js"} {
		if class[need] == "" {
			t.Errorf("press wrote no %s", need)
		}
	}
	for name, text := range class {
		for form, bytes := range unpacked(name, []byte(text)) {
			lower := strings.ToLower(string(bytes))
			for _, word := range words {
				if strings.Contains(lower, word[3:10]) { // a stem or a cut would tell it too
					t.Errorf("%s of %s holds %s", form, name, word)
				}
			}
		}
	}
	all := strings.Join(staff, "\n")
	for _, word := range words {
		if !strings.Contains(all, word) {
			lacking = append(lacking, word)
		}
	}
	pages := map[string]string{}
	for name, text := range class {
		if short, ok := strings.CutPrefix(name, "/book"); ok {
			pages[short] = text
		}
	}
	return pages, lacking
}

var (
	base64Run  = regexp.MustCompile(`[A-Za-z0-9+/_-]{24,}={0,2}`)
	percentRun = regexp.MustCompile(`(?:[^\s"'<>]*%[0-9A-Fa-f]{2})+[^\s"'<>]*`)
	escapedRun = regexp.MustCompile(`(?:\\u00[0-9A-Fa-f]{2}|\\x[0-9A-Fa-f]{2}|&#x?[0-9A-Fa-f]+;){4,}`)
)

// unpacked returns the bytes as they are and everything that is packed in them,
// named by how: entries of zips, gzip and zlib streams wherever they begin,
// base64, percent-escapes and numeric escapes, and what is packed within those.
func unpacked(name string, b []byte) map[string][]byte {
	found := map[string][]byte{name: b}
	var open func(how string, b []byte, depth int)
	add := func(how string, b []byte, depth int) {
		if len(b) > 7 {
			found[how] = b
			open(how, b, depth)
		}
	}
	open = func(how string, b []byte, depth int) {
		if depth > 3 {
			return
		}
		for i, content := range zipped(b) {
			add(how+" zip"+i, content, depth+1)
		}
		for i := 0; i+2 < len(b); i++ {
			switch {
			case b[i] == 0x1f && b[i+1] == 0x8b:
				if r, err := gzip.NewReader(bytes.NewReader(b[i:])); err == nil {
					text, _ := io.ReadAll(r)
					add(fmt.Sprint(how, " gzip@", i), text, depth+1)
				}
			case b[i]&0x0f == 8 && (int(b[i])<<8|int(b[i+1]))%31 == 0:
				if r, err := zlib.NewReader(bytes.NewReader(b[i:])); err == nil {
					text, _ := io.ReadAll(r)
					add(fmt.Sprint(how, " zlib@", i), text, depth+1)
				}
			}
		}
		for i, run := range base64Run.FindAll(b, -1) {
			for _, code := range []*base64.Encoding{base64.RawStdEncoding, base64.RawURLEncoding} {
				if text, err := code.DecodeString(strings.TrimRight(string(run), "=")); err == nil {
					add(fmt.Sprint(how, " base64#", i), text, depth+1)
					inflated, _ := io.ReadAll(flate.NewReader(bytes.NewReader(text)))
					add(fmt.Sprint(how, " base64+deflate#", i), inflated, depth+1)
					break
				}
			}
		}
		for i, run := range percentRun.FindAll(b, -1) {
			if text, err := url.PathUnescape(string(run)); err == nil {
				add(fmt.Sprint(how, " percent#", i), []byte(text), depth+1)
			}
		}
		for i, run := range escapedRun.FindAll(b, -1) {
			add(fmt.Sprint(how, " escaped#", i), numeric(run), depth+1)
		}
	}
	open(name, b, 0)
	return found
}

func zipped(b []byte) map[string][]byte {
	contents := map[string][]byte{}
	if !bytes.HasPrefix(b, []byte("PK")) {
		return nil
	}
	r, err := zip.NewReader(bytes.NewReader(b), int64(len(b)))
	if err != nil {
		return nil
	}
	_ = fs.WalkDir(r, ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			contents["/"+name], err = fs.ReadFile(r, name)
		}
		return err
	})
	return contents
}

var oneEscape = regexp.MustCompile(`\\u00([0-9A-Fa-f]{2})|\\x([0-9A-Fa-f]{2})|&#x([0-9A-Fa-f]{2});|&#([0-9]+);`)

func numeric(run []byte) []byte {
	return oneEscape.ReplaceAllFunc(run, func(m []byte) []byte {
		parts := oneEscape.FindSubmatch(m)
		if d := parts[4]; len(d) > 0 {
			n := 0
			_, _ = fmt.Sscan(string(d), &n)
			return []byte(string(rune(n)))
		}
		text, _ := hex.DecodeString(string(bytes.Join(parts[1:4], nil)))
		return text
	})
}

// The search for leaks finds a word however it is packed, so that it does not
// pass by being blind.
func TestUnpackingFindsWhatIsHidden(t *testing.T) {
	word := secret(3000)
	pack := func(w func(io.Writer) io.WriteCloser) []byte {
		var b bytes.Buffer
		c := w(&b)
		fmt.Fprint(c, strings.Repeat("filler ", 30), word)
		c.Close()
		return b.Bytes()
	}
	gz := pack(func(w io.Writer) io.WriteCloser { return gzip.NewWriter(w) })
	deflated := pack(func(w io.Writer) io.WriteCloser { f, _ := flate.NewWriter(w, 9); return f })
	var zipFile bytes.Buffer
	z := zip.NewWriter(&zipFile)
	entry, _ := z.Create("a.html")
	fmt.Fprint(entry, strings.Repeat("filler ", 30), word)
	z.Close()
	escapes := ""
	for _, c := range []byte(word) {
		escapes += fmt.Sprintf(`\u00%02x`, c)
	}
	for name, b := range map[string][]byte{
		"plain":          []byte("x" + word),
		"gzip within":    append([]byte("junk"), gz...),
		"zlib":           pack(func(w io.Writer) io.WriteCloser { return zlib.NewWriter(w) }),
		"zip":            zipFile.Bytes(),
		"base64":         []byte(`"` + base64.StdEncoding.EncodeToString([]byte("xxxxxxxx"+word)) + `"`),
		"base64 gzip":    []byte("a(" + base64.StdEncoding.EncodeToString(gz) + ")"),
		"base64 deflate": []byte(base64.URLEncoding.EncodeToString(deflated)),
		"percent":        []byte("data:text/plain,%" + strings.ToUpper(hex.EncodeToString([]byte(word[:1]))) + word[1:5] + "%" + hex.EncodeToString([]byte(word[5:6])) + word[6:]),
		"escapes":        []byte(escapes),
	} {
		hidden := true
		for _, text := range unpacked(name, b) {
			hidden = hidden && !bytes.Contains(text, []byte(word))
		}
		if hidden {
			t.Errorf("%s: the word is not found", name)
		}
	}
}
