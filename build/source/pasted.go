package source

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
)

// Text that is pasted from elsewhere brings signs that look like those of Markdown:
// a space that does not break, a round bullet, a long dash. Each of these finds what
// was meant and did not become it, and says what to type.
var pastes = []struct {
	begin string         // the signs of which the line begins with one; "" for any
	found *regexp.Regexp // its first group is named in the message
	say   string
}{
	{"#", regexp.MustCompile(`^\s*(#{1,6})[\x{a0}\x{2000}-\x{200b}\x{202f}\x{205f}\x{3000}\x{feff}]`), "the space after %s is one that does not break, so this is no heading; type a plain space"},
	{"#", regexp.MustCompile(`^\s*(#{2,6})[\pL\d]`), "no space stands after %s, so this is no heading; type one"},
	{"-*+0123456789", regexp.MustCompile(`^\s*(([-*+]|\d{1,9}[.)]))[\x{a0}\x{2000}-\x{200b}\x{202f}\x{205f}\x{3000}\x{feff}]`), "the space after %s is one that does not break, so this is no list; type a plain space"},
	{"•·▪▫‣⁃◦●○■□►➢", regexp.MustCompile(`^\s*([•·▪▫‣⁃◦●○■□►➢])\s*\S`), "%s begins no list; type a hyphen and a space, or a number, a point and a space"},
	{"–—−o", regexp.MustCompile(`^\s*([–—−o])\t`), "%s and a tab begin no list; type a hyphen and a space"},
	{"", regexp.MustCompile(`(\[\^[^\]\s]+\])`), "%s is no footnote here; write the note into the text, in brackets"},
	{".", regexp.MustCompile(`^\s*(\.\\\S+)`), "%s has a backslash; between folders stands a slash"},
}

// spaces are those that a pattern means by \s.
const spaces = "\t\n\f\r "

var (
	// likeRule is the line below the head of a table, with whatever dashes and spaces.
	likeRule = regexp.MustCompile(`^[\s\p{Zs}|:\-–—−]*$`)
	// bareAddress is an address that stands in the text as such.
	bareAddress = regexp.MustCompile(`(?:^|\s|(?:^|[^\]])\()((?:https?://|www\.)[^\s<>)]+)`)
	inCells     = regexp.MustCompile(`\S\t+\S`)
)

// paragraph looks for what the lines of a paragraph were meant to be.
func (v *visitor) paragraph(n ast.Node) {
	lines := n.Lines()
	tabs, line := 0, ""
	for i := range lines.Len() {
		segment := lines.At(i)
		above := line
		line = string(segment.Value(v.lesson.Source))
		switch {
		case v.pasted(line, segment.Start):
		case strings.ContainsRune(line, '|') && strings.ContainsAny(line, "-–—−") && likeRule.MatchString(line) && i > 0:
			v.noTable(line, above, segment.Start)
		case strings.Contains(line, "\t") && inCells.MatchString(line):
			if tabs++; tabs == 2 {
				v.problems.Add(v.at(lines.At(i-1).Start), "lines with tabs make no table; write | between the cells, and below the heads a line of |---|---|")
			}
		}
	}
}

// pasted reports what one line was meant to be, and whether there is such a thing. A
// pattern is tried only where a sign of it is there, for nearly all lines are plain words.
func (v *visitor) pasted(line string, start int) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(line, spaces))
	for _, p := range pastes {
		if p.begin != "" && !strings.ContainsRune(p.begin, first) {
			continue
		}
		if m := p.found.FindStringSubmatchIndex(line); m != nil {
			v.problems.Add(v.at(start+m[2]), p.say, line[m[2]:m[3]])
			return true
		}
	}
	if !strings.Contains(line, "://") && !strings.Contains(line, "www.") {
		return false
	}
	if m := bareAddress.FindStringSubmatchIndex(line); m != nil {
		address := line[m[2]:m[3]]
		whole := address
		if strings.HasPrefix(address, "www.") {
			whole = "https://" + address
		}
		v.problems.Warn(v.at(start+m[2]), "%s is not a link; write <%s> to make it one", address, whole)
	}
	return false
}

// noTable says why a line that looks like the one below a table's head made no table.
func (v *visitor) noTable(rule, head string, start int) {
	at := v.at(start)
	if strings.ContainsFunc(rule, func(c rune) bool { return c >= utf8.RuneSelf }) {
		v.problems.Add(at, "this line makes no table, for its dashes or spaces are long ones or do not break; type hyphens and plain spaces: |---|---|")
		return
	}
	if above, below := cells(head), cells(rule); above != below {
		v.problems.Add(at, "this line makes no table, for it has %d columns and the heads above it %d", below, above)
	}
}

// cells counts the cells of a line of a table.
func cells(line string) int {
	line = strings.ReplaceAll(strings.TrimSpace(line), `\|`, "")
	return strings.Count(strings.TrimSuffix(strings.TrimPrefix(line, "|"), "|"), "|") + 1
}

// notAFact says what is wrong with a name in braces that is not of the form
// name.fact, or whose name is that of no placeholder; "" where there is no telling.
func (v *visitor) notAFact(name string) string {
	if e, ok := entry.Find(v.catalogue, name); ok {
		return fmt.Sprintf("{%s} needs the name of a fact, as in {%s.%s}; its tables and drawings stand where a block ```compute %s is", name, name, e.FactNames()[0], name)
	}
	if _, ok := v.keys.Field(name); !ok {
		return ""
	}
	hint := "noonbook reckon --list prints what there is"
	if i := slices.IndexFunc(v.catalogue, func(e entry.Entry) bool {
		return slices.ContainsFunc(e.Settings, func(key form.AnyKey) bool { return key.Name() == name })
	}); i >= 0 {
		hint = "noonbook reckon --list " + v.catalogue[i].Name + " prints some"
	}
	return fmt.Sprintf("%s is a key of unit.toml, and braces hold a fact that is computed with it; %s", name, hint)
}
