package main

import (
	"bytes"
	"context"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite what the golden files expect")

// noonbook runs the command in this process and returns what it prints.
func noonbook(t *testing.T, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(context.Background(), args, &o, &e)
	return code, o.String(), e.String()
}

// must is noonbook that has to end well.
func must(t *testing.T, args ...string) string {
	t.Helper()
	code, out, errs := noonbook(t, args...)
	if code != done {
		t.Fatalf("noonbook %s: exit %d\n%s", strings.Join(args, " "), code, errs)
	}
	return out
}

// folder makes a content folder of the given files beside a sound unit.toml.
func folder(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	settings, err := os.ReadFile("../../testdata/units/south/unit.toml")
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{"unit.toml": string(settings)}
	for name, text := range files {
		all[name] = text
	}
	for name, text := range all {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, name)), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// tree reads every file below a folder, by its name from there.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	files := map[string]string{}
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(name)
		files[filepath.ToSlash(strings.TrimPrefix(name, dir))] = string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// Every mistake in the unit of mistakes is reported with its place.
func TestProofOfEveryMistake(t *testing.T) {
	code, _, errs := noonbook(t, "proof", "../../testdata/units/broken")
	if code != contentFault {
		t.Errorf("exit %d", code)
	}
	const golden = "../../testdata/golden/broken.txt"
	if *update {
		if err := os.WriteFile(golden, []byte(errs), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	got, expected := strings.Split(errs, "\n"), strings.Split(string(want), "\n")
	for i := range max(len(got), len(expected)) {
		switch {
		case i >= len(got):
			t.Errorf("missing: %s", expected[i])
		case i >= len(expected):
			t.Errorf("not expected: %s", got[i])
		case got[i] != expected[i]:
			t.Errorf("line %d\n got %s\nwant %s", i+1, got[i], expected[i])
		}
	}
}

func TestWrongUse(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "noonbook press"},
		{[]string{"pres"}, `"pres" is not a verb`},
		{[]string{"press", "--outt", "x"}, "press: flag provided but not defined: -outt"},
		{[]string{"press", "a", "b"}, `press: "b" is too much`},
		{[]string{"proof", "a", "b"}, `proof: "b" is too much`},
		{[]string{"reckon"}, "reckon: name a placeholder"},
		{[]string{"reckon", "sun-dya"}, `reckon: "sun-dya" is not a placeholder; did you mean "sun-day"?`},
		{[]string{"reckon", "sun-day", "date"}, `reckon sun-day: "date" is not of the form key=value`},
		{[]string{"reckon", "sun-day", "date=soon"}, `reckon sun-day: date is "soon", want a date such as 2027-04-20`},
		{[]string{"reckon", "dial-table", "school.latitude=95"}, "reckon dial-table: school.latitude 95° is outside −90° to 90°"},
		{[]string{"starter"}, "starter: name one folder"},
	} {
		code, _, errs := noonbook(t, c.args...)
		if code != wrongUse || !strings.Contains(errs, c.want) {
			t.Errorf("noonbook %v: exit %d, %s", c.args, code, errs)
		}
	}
}

func TestHelp(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"press", "--help"}, {"proof", "-h"}, {"reckon", "--help"}, {"starter", "--help"}} {
		if out := must(t, args...); !strings.Contains(out, "noonbook") || len(out) < 150 {
			t.Errorf("noonbook %v says %q", args, out)
		}
	}
}
