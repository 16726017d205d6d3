package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"unicode"

	"noonbook/build/problem"
	"noonbook/content"
)

// A pen writes problems. On a terminal it sets weights and colours, which say
// nothing that the words do not say.
type pen struct {
	out    io.Writer
	colour bool
}

// Select Graphic Rendition, ECMA-48 (1991), 8.3.117.
const (
	bold   = "\x1b[1m"
	yellow = "\x1b[33m"
	red    = "\x1b[31m"
	normal = "\x1b[0m"
)

func penFor(out io.Writer) pen {
	return pen{out, isTerminal(out) && coloured(os.Getenv, runtime.GOOS)}
}

// isTerminal reports whether what is written goes to a screen.
func isTerminal(out io.Writer) bool {
	file, ok := out.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// coloured reports whether the person at a terminal wants colours and the terminal
// knows them. NO_COLOR, set to anything, asks for none; so does TERM=dumb. The
// older console of Windows shows the codes themselves, so there a sign of a newer
// one is needed.
func coloured(env func(string) string, system string) bool {
	if env("NO_COLOR") != "" || env("TERM") == "dumb" {
		return false
	}
	return system != "windows" || env("WT_SESSION") != "" || env("TERM") != ""
}

func (p pen) set(code, text string) string {
	if !p.colour || text == "" {
		return text
	}
	return code + text + normal
}

// problem writes one problem: a line for people and programs alike,
// file:line:column: text, and below it the offending line of the file with a caret.
func (p pen) problem(one problem.Problem, files *shelf) {
	text, mark := one.Text, red
	if one.Warning {
		text, mark = p.set(yellow, "warning:")+" "+text, yellow
	}
	if one.Place != (problem.Place{}) {
		text = p.set(bold, one.Place.String()+":") + " " + text
	}
	fmt.Fprintln(p.out, folded(p.out, text))
	if e, ok := problem.Find(files.text(one.File, one.Line), one.Place); ok {
		fmt.Fprintf(p.out, "    %s\n    %s%s\n", e.Line, strings.Repeat(" ", e.Caret), p.set(mark, "^"))
	}
}

// report writes the problems and their count.
func report(out io.Writer, problems problem.List) {
	p, files := penFor(out), &shelf{}
	for _, one := range problems.Shown() {
		p.problem(one, files)
	}
	faults := problems.Faults()
	fmt.Fprintf(out, "%s, %s\n", counted(faults, "problem"), counted(len(problems)-faults, "warning"))
}

// A shelf holds the files that problems speak of, read again.
type shelf struct{ texts map[string][]byte }

// text returns a file, nil where it cannot be read or no line of it is asked for.
func (s *shelf) text(name string, line int) []byte {
	if line == 0 {
		return nil
	}
	if text, ok := s.texts[name]; ok {
		return text
	}
	text, err := os.ReadFile(filepath.FromSlash(name))
	if inDemo, ok := strings.CutPrefix(name, demoRoot+"/"); ok && errors.Is(err, fs.ErrNotExist) {
		text, err = fs.ReadFile(content.Files(), inDemo)
	}
	if err != nil {
		text = nil // the problem stands without its line
	}
	if s.texts == nil {
		s.texts = map[string][]byte{}
	}
	s.texts[name] = text
	return text
}

// oneLine writes what would begin another line, or tell a terminal what to do, as
// Go writes it in quotes. A name of a file or a word of the command may hold it.
func oneLine(text string) string {
	var b strings.Builder
	for _, r := range text {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			quoted := strconv.QuoteRuneToASCII(r)
			b.WriteString(quoted[1 : len(quoted)-1])
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
