package source

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
)

// anchors names the headings of one lesson after their words. Placeholders are
// left out of the name, so that a link to a heading holds at every school.
type anchors struct {
	used map[string]bool
	last map[string]int // number that the latest heading of equal words bears
}

var bracePattern = regexp.MustCompile(`\{[^}]*\}`)

// Generate implements goldmark's parser.IDs. The names of our own page parts
// begin with "nb-", which no heading's name can.
func (a *anchors) Generate(heading []byte, _ ast.NodeKind) []byte {
	words := strings.FieldsFunc(strings.ToLower(bracePattern.ReplaceAllString(string(heading), " ")), func(c rune) bool {
		return !unicode.IsLetter(c) && !unicode.IsDigit(c)
	})
	base := strings.Join(words, "-")
	if base == "" || words[0] == "nb" {
		base = "part-" + base
	}
	base = strings.TrimSuffix(base, "-")
	name := base
	for n := max(2, a.last[base]+1); a.used[name]; n++ {
		name = base + "-" + strconv.Itoa(n)
		a.last[base] = n
	}
	a.used[name] = true
	return []byte(name)
}

// Put implements goldmark's parser.IDs.
func (a *anchors) Put(name []byte) { a.used[string(name)] = true }
