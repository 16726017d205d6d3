package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"noonbook/build/problem"
)

func TestColoured(t *testing.T) {
	for _, c := range []struct {
		name   string
		env    map[string]string
		system string
		want   bool
	}{
		{"a terminal", map[string]string{"TERM": "xterm-256color"}, "linux", true},
		{"no colour is asked for", map[string]string{"TERM": "xterm-256color", "NO_COLOR": "1"}, "linux", false},
		{"an empty NO_COLOR asks for nothing", map[string]string{"TERM": "xterm", "NO_COLOR": ""}, "linux", true},
		{"a dumb one", map[string]string{"TERM": "dumb"}, "darwin", false},
		{"the old console", nil, "windows", false},
		{"the new one", map[string]string{"WT_SESSION": "x"}, "windows", true},
	} {
		if got := coloured(func(key string) string { return c.env[key] }, c.system); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// Colours say nothing that the words do not: without them the text is the same.
func TestColoursNeverAlone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "unit.toml")
	if err := os.WriteFile(file, []byte("a = 1\nlatitude = 95\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	one := problem.Problem{Place: problem.Place{File: file, Line: 2, Column: 12}, Text: "95° is outside", Warning: true}
	var plain, colour bytes.Buffer
	pen{&plain, false}.problem(one, &shelf{})
	pen{&colour, true}.problem(one, &shelf{})
	want := file + ":2:12: warning: 95° is outside\n    latitude = 95\n               ^\n"
	if plain.String() != want {
		t.Errorf("it says %q, want %q", plain.String(), want)
	}
	bare := strings.NewReplacer(bold, "", yellow, "", red, "", normal, "").Replace(colour.String())
	if bare != want || !strings.Contains(colour.String(), yellow+"warning:"+normal) {
		t.Errorf("in colours it says %q", colour.String())
	}
	if p := penFor(&plain); p.colour {
		t.Error("a pipe gets colours")
	}
}

// A demo's problem finds its line among the embedded files.
func TestExcerptOfTheDemo(t *testing.T) {
	t.Chdir(t.TempDir())
	if text := (&shelf{}).text("demo/unit.toml", 1); !bytes.HasPrefix(text, []byte("# What is true of our school")) {
		t.Errorf("it begins %.30q", text)
	}
}

func TestProgress(t *testing.T) {
	var out bytes.Buffer
	begin := time.Date(2027, 4, 12, 9, 0, 0, 0, time.UTC)
	at := begin
	p := &progress{out: &out, now: func() time.Time { return at }, begin: begin}
	p.stage("reading the lessons") // a quick job says nothing
	at = begin.Add(slow)
	p.step("computing", 9, 120)
	at = at.Add(refresh / 2)
	p.step("computing", 10, 120) // too soon after the last
	at = at.Add(refresh)
	p.stage("writing")
	p.end()
	want := "\rcomputing: 9 of 120\rwriting …" + strings.Repeat(" ", 10) + "\r" + strings.Repeat(" ", 9) + "\r"
	if out.String() != want {
		t.Errorf("it writes %q, want %q", out.String(), want)
	}
	quiet := progressOn(&out)
	quiet.begin = begin
	out.Reset()
	quiet.stage("writing")
	quiet.end()
	if out.Len() > 0 {
		t.Errorf("in a pipe it writes %q", out.String())
	}
}

// A name that holds the end of a line, or a code of a terminal (ECMA-48), is written
// as Go quotes it.
func TestOneLine(t *testing.T) {
	for text, want := range map[string]string{
		"été 5\u00a0mm": "été 5\u00a0mm", "a\nb": `a\nb`, "a\r\x1b[2J": `a\r\x1b[2J`, "\u2028\u009b": `\u2028\u009b`,
	} {
		if got := oneLine(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
