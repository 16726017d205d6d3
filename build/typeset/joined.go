package typeset

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// What stays on one line, in both languages: the groups of a long number; a number and the
// sign of its unit, but not a unit that is written out; a time of day and its half of the
// day; a day and its month; degrees and their direction; a name and its number (Lesson 3).

// units are what may follow a number as its unit. "in" is a word too, and is left out.
var units = set("mm cm m km g kg mg t s min h ms ft mi lb oz mph D V W kW N J Pa hPa kPa Hz L l mL ml " +
	"km/s m/s km/h g/m² kg/m³ g/cm³ km² m² % °C °F ° AU au UA ua po pi pouces $ ¢ €")

// directions are what may follow degrees.
var directions = set("north south east west nord sud est ouest N S E W O")

var months = set("January February March April May June July August September October November December " +
	"janvier février mars avril mai juin juillet août septembre octobre novembre décembre")

// counted are the names that a number follows, in lower case.
var counted = set("lesson lessons grade grades step steps part question questions figure table page pages chapter group groups " +
	"room sheet sheets day section no no. nos. p. pp. ch. fig. vol. " +
	"leçon leçons année étape étapes partie tableau chapitre groupe groupes équipe équipes local feuille feuilles jour " +
	"nº n° chap.")

func set(words string) map[string]bool {
	is := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		is[w] = true
	}
	return is
}

// together reports whether the space between two texts may not break.
func (t *setter) together(before, after string) bool {
	prev, next := beside(before, after)
	if t.french && strings.HasPrefix(after, "au ") {
		return false // a word there: du 26 au 30
	}
	switch {
	case prev == '}' || endsInMark(before): // a gap or a slot, which may hold a number
		name := firstWord(after)
		return units[name] || directions[name]
	case digit(prev):
		name := firstWord(after)
		return units[name] || months[name] || strings.HasPrefix(after, "a.m.") || strings.HasPrefix(after, "p.m.") || fraction(after)
	case prev == '°':
		return directions[firstWord(after)]
	case !digit(next) && next != '{':
		return strings.HasSuffix(before, "1er") && months[firstWord(after)]
	}
	last := lastWord(before)
	if last == "h" || last == "min" { // 13 h 20
		number := strings.TrimRight(strings.TrimSuffix(before, last), " "+hard)
		ends, _ := utf8.DecodeLastRuneInString(number)
		return number != "" && digit(ends)
	}
	return months[last] || counted[strings.ToLower(last)]
}

// group reports whether two texts are parts of one long number: 12 and 000.
func group(before, after string) bool {
	head, tail := 0, 0
	for head < len(before) && head < 4 && isDigit(before[len(before)-1-head]) {
		head++
	}
	for tail < len(after) && tail < 4 && isDigit(after[tail]) {
		tail++
	}
	if head < 1 || head > 3 || tail != 3 {
		return false
	}
	prev, _ := utf8.DecodeLastRuneInString(before[:len(before)-head])
	if name := lastWord(strings.TrimRight(before[:len(before)-head], " "+hard)); counted[strings.ToLower(name)] {
		return false // lesson 3, 100 pupils
	}
	return !strings.ContainsRune(".,:/-–", prev) && !unicode.IsLetter(prev)
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// fraction reports whether a text begins with one: 1/2.
func fraction(s string) bool {
	i := 0
	for i < len(s) && i < 3 && isDigit(s[i]) {
		i++
	}
	return i > 0 && i+1 < len(s) && s[i] == '/' && isDigit(s[i+1]) || strings.HasPrefix(s, "½") || strings.HasPrefix(s, "¼") || strings.HasPrefix(s, "¾")
}

// longest is the number of bytes of the longest word of the lists above.
const longest = 16

// firstWord returns the letters, with signs of units, with which a text begins.
func firstWord(s string) string {
	for i, c := range s {
		if i > longest {
			return ""
		}
		if !unicode.IsLetter(c) && !strings.ContainsRune("/²°%$¢€", c) {
			return s[:i]
		}
	}
	return s
}

// lastWord returns the letters in which a text ends, with a stop behind them.
func lastWord(s string) string {
	for i := len(s); i > 0; {
		c, size := utf8.DecodeLastRuneInString(s[:i])
		if len(s)-i > longest {
			return ""
		}
		if !unicode.IsLetter(c) && !(c == '.' && i == len(s)) && c != 'º' && c != '°' {
			return s[i:]
		}
		i -= size
	}
	return s
}

// The marks that build/plan leaves where a value of the school will stand are so many
// letters that nobody can guess, then digits and a z.
const markLetters = 28

// endsInMark reports whether a text ends where a value will stand: what follows can be its
// unit.
func endsInMark(s string) bool {
	digits, ok := strings.CutSuffix(s, "z")
	if !ok {
		return false
	}
	letters := digits
	for len(letters) > 0 && isDigit(letters[len(letters)-1]) {
		letters = letters[:len(letters)-1]
	}
	return len(letters) < len(digits) && len(letters) >= markLetters && lower(letters[len(letters)-markLetters:])
}

func lower(s string) bool {
	for i := range len(s) {
		if s[i] < 'a' || s[i] > 'z' {
			return false
		}
	}
	return true
}
