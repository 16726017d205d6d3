package source

import (
	"bytes"
	"fmt"
	"regexp"
	"sync"
)

// The parser's time grows with the square of some things: of what opens in one
// paragraph, of the blocks within one another, of the columns of a table with the
// short rows below. A lesson that a person wrote is far from these bounds; one that
// an accident made, such as a file pasted into itself, is told so at once. With them
// half a million bytes of anything are read within two seconds.
const (
	maxNested    = 100      // quotes and lists that begin on one line
	maxAsides    = 20       // blocks within one another
	maxColumns   = 100      // of a table
	maxParagraph = 64 << 10 // bytes of lines without an empty one between them
	maxOpening   = 400      // [ in a paragraph, or {
	maxEmphasis  = 1000     // * and _ in a paragraph
	maxProblems  = 1000     // of a lesson; behind them nothing is looked at
)

// nested has many parts: it is made, and tried, where a line has as many signs.
var nested = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(fmt.Sprintf(`^(?:[ \t]*(?:>|[-*+][ \t]|\d{1,9}[.)][ \t])){%d}`, maxNested+1))
})

// signs counts what begins quotes and items of lists.
func signs(line []byte) (n int) {
	for _, sign := range []string{">", "-", "*", "+", ".", ")"} {
		n += bytes.Count(line, []byte(sign))
	}
	return n
}

// outOfBounds returns the offset of what in a lesson would take the parser long, and
// what it is; "" where nothing would.
func outOfBounds(src []byte) (offset int, what string) {
	at, begin := 0, 0 // of the line, and of its paragraph
	var open, emphasis, braces int
	inCode := false
	for line := range bytes.Lines(src) {
		inner := bytes.TrimLeft(line, " \t>")
		fenced := bytes.HasPrefix(inner, []byte("```")) || bytes.HasPrefix(inner, []byte("~~~"))
		if len(bytes.TrimSpace(line)) == 0 || fenced || inCode {
			inCode = inCode != fenced
			begin, open, emphasis, braces = at+len(line), 0, 0, 0
			at += len(line)
			continue
		}
		open += bytes.Count(line, []byte("["))
		braces += bytes.Count(line, []byte("{"))
		emphasis += bytes.Count(line, []byte("*")) + bytes.Count(line, []byte("_"))
		switch {
		case len(line) > maxNested && signs(line) > maxNested && nested().Match(line):
			return at, fmt.Sprintf("quotes and lists within one another, more than %d deep", maxNested)
		case bytes.Count(line, []byte("|")) > maxColumns+1:
			return at, fmt.Sprintf("a line with %d columns; a table may have up to %d", bytes.Count(line, []byte("|"))-1, maxColumns)
		case at+len(line)-begin > maxParagraph:
			return begin, fmt.Sprintf("a paragraph of more than %d kB; leave an empty line where the next one begins", maxParagraph>>10)
		case open > maxOpening:
			return begin, fmt.Sprintf("more than %d [ in one paragraph", maxOpening)
		case braces > maxOpening:
			return begin, fmt.Sprintf("more than %d { in one paragraph", maxOpening)
		case emphasis > maxEmphasis:
			return begin, fmt.Sprintf("more than %d * and _ in one paragraph", maxEmphasis)
		}
		at += len(line)
	}
	return 0, ""
}
