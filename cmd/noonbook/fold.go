package main

import (
	"io"
	"os"
	"strconv"
	"strings"
	"unicode"
)

// folded returns text with its lines broken at spaces to fit the terminal that out
// is. Where out is none, programs read the lines, and they stay whole.
func folded(out io.Writer, text string) string {
	return fold(text, columns(out, os.Getenv))
}

// columns returns the width of a terminal, 0 where there is none or none is known.
// COLUMNS comes first: POSIX.1-2024, base definitions, 8.3, has it as the width that
// the person at the terminal prefers.
func columns(out io.Writer, env func(string) string) int {
	if !isTerminal(out) {
		return 0
	}
	if n, err := strconv.Atoi(env("COLUMNS")); err == nil && n > 0 {
		return n
	}
	return screenColumns(out.(*os.File))
}

// fold breaks the lines that are wider than that. What follows a break stands two
// columns further in than its line began. A word that is wider stays whole, since
// it may be a path or an address to copy.
func fold(text string, width int) string {
	if width <= 0 {
		return text
	}
	var b strings.Builder
	for line := range strings.Lines(text) {
		body := strings.TrimSuffix(line, "\n")
		indent := strings.Repeat(" ", min(len(body)-len(strings.TrimLeft(body, " "))+2, width/2))
		for {
			at := breakAt(body, width)
			if at < 0 {
				break
			}
			b.WriteString(strings.TrimRight(body[:at], " ") + "\n")
			body = indent + strings.TrimLeft(body[at:], " ")
		}
		b.WriteString(body)
		b.WriteString(line[len(strings.TrimSuffix(line, "\n")):])
	}
	return b.String()
}

// breakAt returns the space at which a line is broken: the last one that leaves no
// more than the width before it, or else the first; -1 where the line fits or has
// no words to part. Codes of the pen and marks above letters take no column.
func breakAt(line string, width int) int {
	at, column, word, code := -1, 0, false, false
	for i, r := range line {
		switch {
		case code:
			code = r != 'm'
		case r == '\x1b':
			code = true
		case r == ' ' && word && strings.TrimLeft(line[i:], " ") != "" && (at < 0 || column <= width):
			at = i
			column++
		case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		default:
			word = word || r != ' '
			column++
		}
	}
	if column <= width {
		return -1
	}
	return at
}
