package source

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"noonbook/build/form"
)

// What is meant as an answer and is not read as one would be shown to the class.
// So no block may be of a kind that nobody knows, and what looks like a fence and
// is none is a fault: in doubt nothing is pressed.

// blockWords open the blocks of noonbook's own.
var blockWords = []string{"compute", Caution, Answer, Staff, Only, Unless}

// codeWords may follow the fence of a block that is shown as code, letter by letter.
var codeWords = []string{"text", "csv", "toml", "markdown", "html", "css", "javascript", "json", "python", "sh"}

// meantWords are words that people write for ours.
var meantWords = map[string]string{
	"answers": Answer, "solution": Answer, "solutions": Answer, "response": Answer, "responses": Answer, "key": Answer, "result": Answer, "results": Answer,
	"réponse": Answer, "réponses": Answer, "reponse": Answer, "reponses": Answer, "corrigé": Answer, "corrige": Answer, "correction": Answer,
	"teacher": Staff, "teachers": Staff, "staff-note": Staff, "staff-notes": Staff, "note": Staff, "notes": Staff, "private": Staff, "hidden": Staff,
	"personnel": Staff, "enseignant": Staff, "enseignante": Staff, "enseignants": Staff, "prof": Staff, "maître": Staff, "maîtresse": Staff,
	"warning": Caution, "attention": Caution, "danger": Caution, "safety": Caution, "careful": Caution, "important": Caution,
	"avertissement": Caution, "prudence": Caution, "sécurité": Caution, "securite": Caution,
	"placeholder": "compute", "reckon": "compute", "calculate": "compute", "computed": "compute", "calcul": "compute", "calculer": "compute",
	"if": Only, "when": Only, "where": Only, "onlyif": Only, "only-if": Only, "si": Only, "seulement": Only, "uniquement": Only,
	"else": Unless, "except": Unless, "unlessif": Unless, "not": Unless, "ifnot": Unless, "if-not": Unless, "sauf": Unless, "sinon": Unless,
}

// meantBlock returns which of our words an author means by a word, or "".
func meantBlock(word string) string {
	word = strings.ToLower(word)
	if slices.Contains(blockWords, word) {
		return word
	}
	if meant, ok := meantWords[word]; ok {
		return meant
	}
	return form.Nearest(word, blockWords)
}

// unknownBlock says what is wrong with the first word after a fence.
func unknownBlock(info string) string {
	word, _ := firstWord(info)
	end := strings.IndexFunc(word, func(c rune) bool { return !unicode.IsLetter(c) && c != '-' })
	if end > 0 && slices.Contains(append(blockWords, "lesson"), strings.ToLower(word[:end])) {
		return fmt.Sprintf("%q is an unknown block; write a space after %q", word, strings.ToLower(word[:end]))
	}
	letters := strings.TrimFunc(word, func(c rune) bool { return !unicode.IsLetter(c) })
	if meant := meantBlock(letters); meant != "" {
		return fmt.Sprintf("%q is an unknown block; did you mean %q?", word, meant)
	}
	return fmt.Sprintf("%q is an unknown block; want %s, or for words shown as they stand %s",
		word, strings.Join(blockWords, ", "), strings.Join(codeWords, ", "))
}

// unclosed reports a block that nothing closes, and one whose fence is as long as
// that of the block which holds it: what ends the one would end the other.
func (v *visitor) unclosed(n ast.Node, what string) {
	f := v.fences[n]
	if f.close > 0 {
		return
	}
	for outer := n.Parent(); outer != nil; outer = outer.Parent() {
		if o := v.fences[outer]; o != nil && o.char == f.char && o.length <= f.length {
			v.problems.Add(v.at(f.open), "the %s begins with %s, and so does the block of line %d that it stands in, which its end would end; begin and end that one with %s",
				what, strings.Repeat(string(f.char), f.length), v.at(o.open).Line, strings.Repeat(string(f.char), f.length+1))
			return
		}
	}
	v.problems.Add(v.at(f.open), "the %s is never closed; end it with a line of %s", what, strings.Repeat(string(f.char), f.length))
}

// nearFences reports lines that look like a fence and were read as something else. inside
// are the lines of those that were read as one.
func (v *visitor) nearFences(inside map[int]*fence) {
	for i, start := range v.lesson.lines.starts {
		if len(v.problems) >= v.most {
			return
		}
		end := len(v.lesson.Source)
		if i+1 < len(v.lesson.lines.starts) {
			end = v.lesson.lines.starts[i+1]
		}
		line := v.lesson.Source[start:end]
		switch f, fenced := inside[i+1]; {
		case !fenced:
			v.nearFence(line, start)
		case f != nil:
			v.fenceInCode(line, start, f)
		}
	}
}

// fencedLines returns the lines that are fences, with nil, and those that are code
// within one, with that.
func (v *visitor) fencedLines() map[int]*fence {
	lines := map[int]*fence{}
	for n, f := range v.fences {
		if f.close > 0 {
			lines[v.at(f.close).Line] = nil
		}
		lines[v.at(f.open).Line] = nil
		if code, ok := n.(*ast.FencedCodeBlock); ok {
			for i := range code.Lines().Len() {
				lines[v.at(code.Lines().At(i).Start).Line] = f
			}
		}
	}
	return lines
}

// tickSigns are the signs that people and their programs take for a backtick.
const tickSigns = "`~:'\"´ˋˊ‘’‚‛′‵“”„‟″＇｀"

var (
	ticks = regexp.MustCompile(`^(?:\\?[` + tickSigns + `])+`)
	// within is one of our words after what could be a fence in the middle of a line.
	midLine = regexp.MustCompile("(?i)(?:\\\\?[`~]){3,}[\\s\\p{Zs}]*(?:compute|caution|answer|staff|only|unless)\\b")
	// bare is what follows the fence of an answer, without the fence.
	bare = regexp.MustCompile(`(?i)^answer[\s\p{Zs}]+lines[\s\p{Zs}]*=[\s\p{Zs}]*\d+[\s\p{Zs}]*$`)
	// bareStanding is what follows the fence of an only or unless, without it, or after a
	// backtick or two that nothing closes.
	bareStanding = regexp.MustCompile(`(?i)^(?:only|unless)[\s\p{Zs}]+[a-z]+(?:-[a-z]+)*\.[a-z_]+\b[^.,;:!?]*$`)
)

const howToFence = "a block begins and ends with a line of three backticks, ```"

// nearFence looks at a line that is outside all fences.
func (v *visitor) nearFence(line []byte, start int) {
	before := led(line)
	rest := string(bytes.TrimRight(line[before:], "\n"))
	if !mayFence(rest) {
		return
	}
	run := ticks.FindString(rest)
	signs := strings.ReplaceAll(run, `\`, "")
	after := strings.TrimLeftFunc(rest[len(run):], func(c rune) bool { return unicode.IsSpace(c) || c == '\u200b' || c == '\u2060' || c == '\ufeff' })
	word := after
	if end := strings.IndexFunc(after, func(c rune) bool { return !unicode.IsLetter(c) && c != '-' }); end >= 0 {
		word = after[:end]
	}
	count := len([]rune(signs))
	real := strings.Trim(signs, "`") == "" || strings.Trim(signs, "~") == ""
	closed := count > 0 && strings.ContainsAny(after, "`~:'\"´‘’“”„″")
	at := v.at(start + before)
	switch {
	case count >= 3 && real && run == signs && closed:
		v.problems.Add(at, "a block cannot stand on one line; %s", howToFence)
	case count >= 3 && real && run == signs:
		v.problems.Add(at, "%s is indented too far to begin or end a block, or has no empty line before it; %s", run, howToFence)
	case count >= 3 && (after == "" || word != ""):
		v.problems.Add(at, "%s begins no block; %s", run, howToFence)
	case count > 0 && !closed && word != "" && meantBlock(word) != "" && (count == 2 || onlyLines(after[len(word):])):
		v.problems.Add(at, "%s%s begins no block; %s", run, word, howToFence)
	case bareStanding.MatchString(after) && !closed:
		v.problems.Add(at, "%s begins no block; %s", run+after, howToFence)
	case bare.MatchString(rest):
		v.problems.Add(at, "%s begins no block without its fence; %s", rest, howToFence)
	case mayFenceWithin(rest):
		if mid := midLine.FindStringIndex(rest); mid != nil {
			v.problems.Add(v.at(start+before+mid[0]), "a block begins on a line of its own; %s", howToFence)
		}
	}
}

// led returns how many bytes of a line may stand before a fence: spaces of any kind,
// quotes, marks of lists.
func led(line []byte) int {
	at := 0
	for {
		c, size := utf8.DecodeRune(line[at:])
		switch {
		case isSpace(c) || c == '>' || c == '\u200b' || c == '\u2060' || c == '\ufeff':
			at += size
			continue
		case c >= '0' && c <= '9':
			rest := bytes.TrimLeft(line[at:], "0123456789")
			size = len(line) - at - len(rest) + 1
			if size > 10 || len(rest) == 0 || rest[0] != '.' && rest[0] != ')' {
				return at
			}
		case !strings.ContainsRune("-*+•·–", c):
			return at
		}
		behind, more := utf8.DecodeRune(line[at+size:])
		if !isSpace(behind) {
			return at
		}
		at += size + more
	}
}

// isSpace reports whether a character is a space as Markdown has it, or one of print.
func isSpace(c rune) bool {
	return c < utf8.RuneSelf && strings.IndexByte(spaces, byte(c)) >= 0 || c >= utf8.RuneSelf && unicode.Is(unicode.Zs, c)
}

// mayFence reports whether a line, without what leads it, can be near a fence at all: it
// begins with a sign that is taken for a backtick, or like one of the words that need no
// fence to be seen, or it has three backticks or tildes further on.
func mayFence(rest string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeftFunc(rest, unicode.IsSpace))
	return strings.ContainsRune(tickSigns+`\aAoOuU`, first) || mayFenceWithin(rest)
}

// mayFenceWithin reports whether a line has backticks or tildes enough for a fence.
func mayFenceWithin(rest string) bool { return strings.Count(rest, "`")+strings.Count(rest, "~") >= 3 }

// onlyLines reports whether nothing follows a word, or the number of lines.
func onlyLines(rest string) bool {
	rest = strings.TrimSpace(rest)
	return rest == "" || strings.HasPrefix(rest, "lines")
}

// fenceInCode looks at a line within a block of code. One of our blocks that begins
// there with a fence as long as the code's is no example of a block: the code
// before it was not closed.
func (v *visitor) fenceInCode(line []byte, start int, f *fence) {
	before := led(line)
	rest := line[before:]
	info := bytes.TrimLeft(rest, string(f.char))
	word, _ := firstWord(string(info))
	if len(rest)-len(info) >= f.length && word != "" && meantBlock(word) != "" {
		v.problems.Add(v.at(start+before), "%s stands in the block of line %d, which is not closed before it; close that one, or if this is an example in it, begin and end it with %s",
			bytes.TrimSpace(rest), v.at(f.open).Line, strings.Repeat(string(f.char), len(rest)-len(info)+1))
	}
}
