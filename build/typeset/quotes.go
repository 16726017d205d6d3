package typeset

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Straight quotes become curved ones by what stands beside them: one that follows the
// beginning of the block, a space or an opening mark opens, the others close. English has
// “ ” and within them ‘ ’, as typed. French has « » with narrow spaces, and “ ” within
// them. Behind a number, where no quote is open, they are feet and inches, or minutes and
// seconds of arc, and become primes. A quote with a space on either side, such as a ditto
// mark, stays straight: nobody can know its direction.

// single returns what to print for a straight single quote between two texts.
func (t *setter) single(before, after string) string {
	prev, next := t.beside(before, after)
	switch {
	case digit(prev) && !word(next) && t.singles == 0, digit(prev) && digit(next):
		return "′"
	case word(prev) && word(next):
		return "’"
	case !opening(prev) || dash(prev) && !word(next):
		t.singles = max(0, t.singles-1)
		return "’"
	case ends(next):
		return "'"
	case !t.french && elided(after) || shortYear(after):
		return "’"
	}
	t.singles++
	return "‘"
}

// double returns what to print for a straight double quote between two texts.
func (t *setter) double(before, after string) string {
	prev, next := t.beside(before, after)
	switch {
	case digit(prev) && (len(t.closers) == 0 || inFeet(before)):
		return "″"
	case (prev == 0 || unicode.IsSpace(prev)) && ends(next):
		return `"`
	case opening(prev) && !(dash(prev) && !word(next)), len(t.closers) == 0 && word(next):
		set, closer := "“", "”"
		if t.french && len(t.closers) == 0 {
			set, closer = "«"+narrow, narrow+"»"
		}
		t.closers = append(t.closers, closer)
		return set
	}
	closer := "”"
	if t.french {
		closer = narrow + "»"
	}
	if last := len(t.closers) - 1; last >= 0 {
		closer = t.closers[last]
		t.closers = t.closers[:last]
	}
	return closer
}

// beside returns the characters on either side of a quote, as they are set, 0 for the end
// of the block.
func (t *setter) beside(before, after string) (prev, next rune) {
	prev, next = beside(before, after)
	if len(before) == t.quoted && before != "" {
		prev = t.quote
	}
	return prev, next
}

// beside returns the characters on either side of a place, 0 for the end of the block.
func beside(before, after string) (prev, next rune) {
	if before != "" {
		prev, _ = utf8.DecodeLastRuneInString(before)
	}
	if after != "" {
		next, _ = utf8.DecodeRuneInString(after)
	}
	return prev, next
}

func digit(c rune) bool { return '0' <= c && c <= '9' || strings.ContainsRune("¼½¾", c) }

// word reports whether a character belongs to a word, or is a gap of a line, code or a
// picture.
func word(c rune) bool {
	return unicode.IsLetter(c) || digit(c) || unicode.IsMark(c) || strings.ContainsRune("{}\ufffc", c)
}

func dash(c rune) bool { return strings.ContainsRune("-–—/=", c) }

// opening reports whether a quote behind a character opens.
func opening(c rune) bool {
	return c == 0 || unicode.IsSpace(c) || dash(c) || strings.ContainsRune(`([{“‘«¿¡`, c)
}

// ends reports whether nothing that could be quoted follows a quote.
func ends(c rune) bool { return c == 0 || unicode.IsSpace(c) }

// elided reports whether a text begins with an English word that lost its beginning:
// ’tis. From memory: Chicago Manual of Style, 17th edition, 6.117.
func elided(after string) bool {
	end := strings.IndexFunc(after, func(c rune) bool { return !unicode.IsLetter(c) })
	if end < 0 {
		end = len(after)
	}
	return end <= len("twould") && slices.Contains([]string{"em", "n", "til", "tis", "twas", "twere", "twill", "twould"}, strings.ToLower(after[:end]))
}

// shortYear reports whether a text begins with a year without its century: ’90s, ’27.
func shortYear(after string) bool {
	if len(after) < 2 || !digit(rune(after[0])) || !digit(rune(after[1])) {
		return false
	}
	next, _ := utf8.DecodeRuneInString(after[2:])
	return len(after) == 2 || unicode.IsSpace(next) || strings.ContainsRune("s.,;:?!)", next)
}

// inFeet reports whether a text ends in a length in feet whose inches want their mark: 5' 3.
func inFeet(before string) bool {
	rest := strings.TrimRight(before, "0123456789./½¼¾")
	rest = strings.TrimSuffix(strings.TrimSuffix(rest, " "), hard)
	for _, mark := range []string{"'", "′", "’"} {
		if number, ok := strings.CutSuffix(rest, mark); ok {
			last, _ := utf8.DecodeLastRuneInString(number)
			return digit(last)
		}
	}
	return false
}
