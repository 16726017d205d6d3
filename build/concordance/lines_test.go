package concordance

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/file"
)

// linesOf reads the second script: the lines of each place, by where links lead.
func linesOf(t *testing.T, files ...file.File) (wholeListing, map[string][]string) {
	t.Helper()
	js, inLines, err := of(files, "en")
	if err != nil {
		t.Fatal(err)
	}
	l, _ := read(t, js)
	text, ok := strings.CutPrefix(string(inLines), "var noonbookLines=")
	if !ok {
		t.Fatalf("the script begins %.40q", inLines)
	}
	var in struct {
		Lines  string
		Places []string
	}
	if err := json.Unmarshal([]byte(strings.TrimSuffix(text, ";\n")), &in); err != nil {
		t.Fatal(err)
	}
	all := strings.Split(in.Lines, "\n")
	if slices.Sort(all); len(slices.Compact(all)) != len(strings.Split(in.Lines, "\n")) {
		t.Errorf("a line is written twice: %q", in.Lines)
	}
	all = strings.Split(in.Lines, "\n")
	var where []string
	for _, p := range l.Pages {
		where = append(where, p.File)
		for _, s := range p.Places {
			where = append(where, p.File+"#"+s.Anchor)
		}
	}
	if len(in.Places) != len(where) {
		t.Fatalf("%d places have lines, and there are %d", len(in.Places), len(where))
	}
	found := map[string][]string{}
	for i, gaps := range in.Places {
		at := 0
		for gap := range strings.FieldsSeq(gaps) {
			n, err := strconv.ParseInt(gap, 36, 32)
			if err != nil {
				t.Fatal(err)
			}
			at += int(n)
			found[where[i]] = append(found[where[i]], all[at])
		}
	}
	return l, found
}

// A line is what stands together on the page: a paragraph, a step, a row of a table
// with its cells, a key with what it means. Headings, drawings, ways round the page and
// from card to card and rows of numbers are none; one that pages share is written once.
func TestLines(t *testing.T) {
	_, found := linesOf(t,
		file.File{Name: "a.html", Bytes: []byte(`<main><h1>Up</h1><p>Mark the <b>tip</b> at <data>noon</data>.</p><nav><a href="#x">Ways</a></nav><p class="walk-on"><a href="#x">next: Orion</a></p>` +
			`<ol><li>Cut<ul><li>along it</li></ul></li></ol><h2 id="x">Table</h2><table><tr><th>Hour<th>Angle</tr><tr><td>noon</td><td></td></tr><tr><td>9:00</td><td>46</td></tr></table>` +
			`<svg><svg><text>drawn</text></svg><text>drawn too</text></svg><dl><div><dt>latitude</dt><dd>How far. <small>a number</small></dd></div></dl></main>`)},
		file.File{Name: "b.html", Bytes: []byte(`<main><h1>Again</h1><p>New words</p><p>Mark the tip at noon.</p></main>`)})
	for place, want := range map[string][]string{
		"a.html":   {"Mark the tip at noon.", "Cut", "along it"},
		"a.html#x": {"Hour · Angle", "noon", "latitude · How far. a number"},
		"b.html":   {"New words", "Mark the tip at noon."},
	} {
		if !slices.Equal(found[place], want) {
			t.Errorf("the lines at %s are %q, want %q", place, found[place], want)
		}
	}
}

// Sheets and room views say again what a lesson says, and come behind it; the page for
// whoever edits comes last.
func TestPagesThatComeAfter(t *testing.T) {
	l, _ := linesOf(t,
		file.File{Name: "keys.html", Bytes: []byte(`<body><main><h1>Keys</h1><section class="for-editing"><p>dial</p></section></main></body>`)},
		file.File{Name: "room-a.html", Bytes: []byte(`<body class="room"><main><h1>A</h1></main></body>`)},
		file.File{Name: "pupil-a.html", Bytes: []byte(`<body class="lesson-sheet"><main><h1>A</h1></main></body>`)},
		file.File{Name: "a.html", Bytes: []byte(`<body class="parted"><main><h1>A</h1></main></body>`)})
	for _, p := range l.Pages {
		if want := map[string]int{"keys.html": 2, "room-a.html": 1, "pupil-a.html": 1}[p.File]; p.After != want {
			t.Errorf("%s comes after %d, want %d", p.File, p.After, want)
		}
	}
}

// A term's other names lead to it, and are no part of what it means.
func TestOtherNames(t *testing.T) {
	l, found := linesOf(t, file.File{Name: "glossary.html", Bytes: []byte(`<main><h1>Glossary</h1><b class="also">no term</b><dl><div><dt id="nb-term-1">gnomon</dt><dd>It casts the shadow. ` +
		`<small>Also: <b class="also">pointer</b>, <b class="also">shadow stick</b></small> <a href="a.html">A</a></dd></div></dl></main>`)})
	want := spot{Anchor: "nb-term-1", Label: "gnomon", Note: "It casts the shadow.", Also: "pointer shadow stick"}
	if got := l.Pages[0].Places[0]; got != want {
		t.Errorf("the term is %+v, want %+v", got, want)
	}
	if got := found["glossary.html#nb-term-1"]; len(got) != 1 || !strings.HasSuffix(got[0], "Also: pointer, shadow stick") {
		t.Errorf("its lines are %q", got)
	}
}
