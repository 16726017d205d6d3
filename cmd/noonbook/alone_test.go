package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestStanding(t *testing.T) {
	for _, c := range []struct {
		name    string
		files   string // that exist, with slashes
		working string
		program string
		want    spot
		ok      bool
	}{
		{"in the folder of lessons", "u/unit.toml", "u", "bin", spot{"u", "."}, true},
		{"above it", "u/content/unit.toml", "u", "bin", spot{"u", "content"}, true},
		{"both", "u/unit.toml u/content/unit.toml", "u", "bin", spot{"u", "content"}, true},
		{"started in the home folder", "u/unit.toml", "home", "u", spot{"u", "."}, true},
		{"the working folder comes first", "u/unit.toml v/unit.toml", "u", "v", spot{"u", "."}, true},
		{"no unit", "u/content/1-lesson.md", "u", "bin", spot{}, false},
		{"nowhere", "unit.toml", "", "", spot{}, false},
	} {
		exists := func(name string) bool {
			return strings.Contains(" "+c.files+" ", " "+filepath.ToSlash(name)+" ")
		}
		if got, ok := standing(c.working, c.program, exists); got != c.want || ok != c.ok {
			t.Errorf("%s: %v, %v", c.name, got, ok)
		}
	}
}

func TestAlonePressesAndOpens(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson})
	t.Chdir(dir)
	at, ok := here()
	if !ok || at.content != "." {
		t.Fatalf("it stands at %v", at)
	}
	opened := ""
	var out, errs bytes.Buffer
	if err := alone(context.Background(), at, func(file string) error { opened = file; return nil }, &out, &errs); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(opened); err != nil || filepath.Base(opened) != "index.html" || !filepath.IsAbs(opened) {
		t.Errorf("it opened %q: %v", opened, err)
	}
	out.Reset()
	if err := alone(context.Background(), at, func(string) error { return errors.New("no screen") }, &out, &errs); err != nil || !strings.Contains(out.String(), "no screen") {
		t.Errorf("without a browser: %v, %s", err, &out)
	}
}

func TestAloneWithAProblemOpensNothing(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "{sun-dya.noon}\n"})
	t.Chdir(dir)
	var out, errs bytes.Buffer
	err := alone(context.Background(), spot{dir, "."}, func(string) error { t.Error("it opened something"); return nil }, &out, &errs)
	if exitCode(err, &errs) != contentFault || !strings.Contains(errs.String(), "sun-dya") {
		t.Errorf("%v, %s", err, &errs)
	}
}

func TestPauseWaitsForEnter(t *testing.T) {
	in := strings.NewReader("abc\nrest")
	var out bytes.Buffer
	pause(in, &out)
	if in.Len() != len("rest") || !strings.Contains(out.String(), "Enter") {
		t.Errorf("%d bytes are left, it says %q", in.Len(), &out)
	}
	pause(strings.NewReader(""), &out) // no keyboard: it does not wait
}
