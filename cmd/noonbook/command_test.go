package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// A folder may be named by itself or with --content, by every verb that reads one.
func TestFolderNamedEitherWay(t *testing.T) {
	dir := folder(t, map[string]string{"1-a.md": lesson + "Words.\n"})
	for _, args := range [][]string{{dir}, {"--content", dir}, {"--content=" + dir}} {
		if out := must(t, append([]string{"proof"}, args...)...); out != "0 problems, 0 warnings\n" {
			t.Errorf("proof %v says %q", args, out)
		}
		to := filepath.Join(t.TempDir(), "book")
		must(t, append([]string{"press", "--out", to}, args...)...)
		if text, err := os.ReadFile(filepath.Join(to, "a.html")); err != nil || !strings.Contains(string(text), "Words.") {
			t.Errorf("press %v: %v", args, err)
		}
	}
	for _, verb := range []string{"press", "proof", "desk"} {
		for want, args := range map[string][]string{
			verb + `: "` + dir + `" is too much; --content names the folder "other" already`: {verb, dir, "--content", "other"},
			verb + `: "other" is too much; it reads one folder`:                              {verb, dir, "other"},
			verb + ": the name of the folder is empty":                                       {verb, ""},
			"there is no folder none":                                                        {verb, "none"},
		} {
			if code, out, errs := noonbook(t, args...); code != wrongUse || errs != "noonbook: "+want+"\n" || out != "" {
				t.Errorf("noonbook %v: exit %d, %q %q", args, code, out, errs)
			}
		}
	}
}

// Which unit is read where none is named: that of ./content, else that of this
// folder, else the demo, and only then is the demo spoken of.
func TestDemoIsSaid(t *testing.T) {
	const said = "no unit.toml and no folder content is here, so this is the demo unit of an invented school; noonbook starter FOLDER lays out a unit of your own\n"
	dir := folder(t, map[string]string{"1-a.md": lesson})
	settings, err := os.ReadFile(filepath.Join(dir, "unit.toml"))
	if err != nil {
		t.Fatal(err)
	}
	lay := func(names ...string) {
		t.Helper()
		t.Chdir(t.TempDir())
		for _, name := range names {
			text := lesson
			if filepath.Base(name) == "unit.toml" {
				text = string(settings)
			}
			if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
				t.Fatal(err)
			}
		}
	}
	for _, verb := range []string{"press", "proof"} {
		lay()
		// Behind it the demo has one warning: its plans of flights grow old.
		out, errs := mustAll(t, verb)
		if rest, ok := strings.CutPrefix(errs+out, said); !ok || strings.Count(rest, ": warning: ") != 1 || !strings.Contains(rest, ": warning: mission-plans: ") {
			t.Errorf("%s in an empty folder says %q", verb, errs)
		}
		for _, names := range [][]string{{"unit.toml", "1-a.md"}, {"content/unit.toml", "content/1-a.md"}, {"unit.toml", "1-a.md", "content/notes.txt"}, {"unit.toml", "content/unit.toml", "content/1-a.md"}} {
			lay(names...)
			if _, errs := mustAll(t, verb); errs != "" {
				t.Errorf("%s in a folder with %v says %q", verb, names, errs)
			}
		}
		lay("content/1-a.md")
		if code, _, errs := noonbook(t, verb); code == done || strings.Contains(errs, "demo") || !strings.Contains(errs, "unit.toml") {
			t.Errorf("%s in a folder with lessons alone: exit %d, %s", verb, code, errs)
		}
	}
}

// mustAll is must that also returns what went to the error stream.
func mustAll(t *testing.T, args ...string) (out, errs string) {
	t.Helper()
	code, out, errs := noonbook(t, args...)
	if code != done {
		t.Fatalf("noonbook %v: exit %d\n%s", args, code, errs)
	}
	return out, errs
}

// Help is the same by each way to it, and names what the verb takes.
func TestHelpOfEachVerb(t *testing.T) {
	whole := must(t, "--help")
	for _, args := range [][]string{{"help"}, {"-h"}} {
		if must(t, args...) != whole {
			t.Errorf("noonbook %v says something else than --help", args)
		}
	}
	for verb, words := range map[string]string{
		"press":   "[FOLDER] --content --out --staff --single --zip",
		"desk":    "[FOLDER] --content --staff --port --open",
		"proof":   "[FOLDER] --content",
		"reckon":  "NAME.FACT --list --json --csv --content",
		"starter": "FOLDER KEY=VALUE --small",
	} {
		text := must(t, "help", verb)
		if text != must(t, verb, "--help") || text != must(t, "--help", verb) || !strings.HasPrefix(text, "noonbook "+verb+" ") {
			t.Errorf("help %s says %q", verb, text)
		}
		for _, word := range strings.Fields(words) {
			if !strings.Contains(text, word) {
				t.Errorf("help %s does not name %s", verb, word)
			}
		}
		if !strings.Contains(whole, "noonbook "+verb) {
			t.Errorf("the help does not name %s", verb)
		}
		whole += text
	}
	for line := range strings.Lines(whole) {
		if utf8.RuneCountInString(strings.TrimSuffix(line, "\n")) > 86 {
			t.Errorf("a line of help is long: %s", line)
		}
	}
}

// A word that is nearly right is told the right one, on one line whatever it holds.
func TestNearlyRightWords(t *testing.T) {
	for want, args := range map[string][]string{
		`"pres" is not a verb; did you mean "press"?`:                                    {"pres"},
		`"Desk" is not a verb; did you mean "desk"?`:                                     {"Desk"},
		`"recon" is not a verb; did you mean "reckon"?`:                                  {"recon", "sun-day"},
		`"version" is not a verb; did you mean "--version"?`:                             {"version"},
		`"-help" is not a verb; did you mean "--help"?`:                                  {"-help"},
		`"build" is not a verb; they are press, desk, proof, reckon and starter`:         {"build"},
		`"prof" is not a verb; did you mean "proof"?`:                                    {"help", "prof"},
		`help: "desk" is too much; it is about one verb`:                                 {"help", "press", "desk"},
		`"pre\nss" is not a verb; did you mean "press"?`:                                 {"pre\nss"},
		`press: flag provided but not defined: -otu; did you mean "--out"? noonbook `:    {"press", "--otu", "x"},
		`press: flag provided but not defined: -st\naff; did you mean "--staff"? `:       {"press", "--st\naff"},
		`proof: flag provided but not defined: -colour; noonbook proof --help says more`: {"proof", "--colour"},
		`there is no folder a\x1b[31m\nb`:                                                {"press", "a\x1b[31m\nb"},
	} {
		code, out, errs := noonbook(t, args...)
		if code != wrongUse || !strings.HasPrefix(errs, "noonbook: "+want) || strings.Count(errs, "\n") != 1 || strings.Contains(errs, "\x1b") || out != "" {
			t.Errorf("noonbook %q: exit %d, %q %q", args, code, out, errs)
		}
	}
}

// The folder content comes before the one that one stands in, as it does where
// noonbook is started without a verb (TestStanding): there a unit lies beside the
// program.
func TestChosenFolder(t *testing.T) {
	for want, names := range map[string][]string{
		"":        nil,
		".":       {"unit.toml", "content/notes.txt"},
		"content": {"unit.toml", "content/unit.toml"},
	} {
		t.Chdir(t.TempDir())
		for _, name := range names {
			if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, nil, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		if got := chosen(""); got != want {
			t.Errorf("of %v it reads %q, want %q", names, got, want)
		}
		if got := chosen("mine"); got != "mine" {
			t.Errorf("a named folder is %q", got)
		}
	}
}
