package file

import (
	"os"
	"strconv"
	"strings"
	"testing"
)

// The rules are those of Microsoft, "Naming Files, Paths, and Namespaces", section
// Naming Conventions, https://learn.microsoft.com/windows/win32/fileio/naming-a-file:
// characters that are reserved, names of devices "followed immediately by an
// extension" too, a space or a period at the end. NUL and / are what POSIX.1-2017,
// section 3.170, excludes.
func TestSound(t *testing.T) {
	for _, name := range []string{
		"index.html", "a", "our crest.svg", "École.html", "e\u0301cole.html", "क्या-है.html", "نمی\u200cدانم.html", "日本.html",
		"console.html", "com.html", "com10.html", "lpt.csv", "null.html", "auxiliary.html", "a.con", "my.nul.html", "-a.html", "a'b.html",
		"1,5.html", "a&b.html", "100%.html", "~a.html", "#a.html", strings.Repeat("a", 250) + ".html",
	} {
		if err := Sound(name); err != nil {
			t.Errorf("%q is refused: %v", name, err)
		}
	}
	for name, says := range map[string]string{
		"": "needs a name", ".": "begins with a dot", "..": "begins with a dot", ".htaccess": "hides a file", ".noonbook-files": "hides a file",
		"a.": "ends in a dot or a space", "a ": "ends in a dot or a space", "a.html ": "ends in a dot or a space", "con.": "ends in a dot",
		"a/b.html": "holds /", `a\b.html`: `holds \`, "a:b.html": "holds :", "a<b": "holds <", "a>b": "holds >", `a"b`: `holds "`, "a|b": "holds |", "a?.html": "holds ?", "a*": "holds *",
		"a\nb.html": "U+000A", "a\x00": "U+0000", "a\tb": "U+0009", "a\x7f": "U+007F", "a\u0085b": "U+0085", "a\u2028b": "U+2028", "a\u202egnp.html": "U+202E", "a\ufeffb": "U+FEFF", "a\u200bb": "U+200B",
		"\xff.html": "is not UTF-8", strings.Repeat("a", 251) + ".html": "has 256 bytes", strings.Repeat("é", 128): "has 256 bytes",
		"con": "con is a device", "CON.html": "CON is a device", "nul.tar.gz": "nul is a device", "aux.html": "device", "Prn.csv": "device", "com1.html": "device", "COM9": "device", "com0.x": "device",
		"lpt1.html": "device", "LPT9.svg": "device", "com¹.html": "device", "lpt³": "device", "conin$": "device", "CONOUT$.txt": "device", "con .html": "device",
	} {
		if err := Sound(name); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: %v, want %s", name, err, says)
		} else if strings.ContainsAny(err.Error(), "\n\t\x00\x7f\u0085\u2028\u202e\ufeff") {
			t.Errorf("%q: the message holds what it warns of: %q", name, err)
		}
	}
}

// Pairs of CaseFolding.txt of the Unicode Character Database, 15.0: status C and S,
// with the Kelvin sign, the long s and the final sigma.
func TestFolded(t *testing.T) {
	for _, pair := range [][2]string{{"A.csv", "a.csv"}, {"École", "éCOLE"}, {"ΣΑΣ", "σας"}, {"\u212a", "k"}, {"\u017f", "S"}, {"Ж", "ж"}, {"\u1e9e", "ß"}, {"a.HTML", "A.html"}} {
		if Folded(pair[0]) != Folded(pair[1]) {
			t.Errorf("%q and %q are told apart", pair[0], pair[1])
		}
	}
	for _, pair := range [][2]string{{"a.csv", "b.csv"}, {"e", "é"}, {"a-b", "a_b"}, {"ı", "i"}, {"1", "¹"}} {
		if Folded(pair[0]) == Folded(pair[1]) {
			t.Errorf("%q and %q are one", pair[0], pair[1])
		}
	}
}

// Letters with accents are one name with the same letters taken apart, as macOS keeps
// them: Unicode Character Database, testdata/reference/accents.tsv.
func TestFoldedTakesAccentsApart(t *testing.T) {
	text, err := os.ReadFile("../../testdata/reference/accents.tsv")
	if err != nil {
		t.Fatal(err)
	}
	letters := 0
	for line := range strings.SplitSeq(strings.TrimSpace(string(text)), "\n") {
		letter, parts, ok := strings.Cut(line, "\t")
		if !ok {
			continue // the first line
		}
		one, two := runes(t, letter), runes(t, parts)
		if Folded("x"+one+".md") != Folded("x"+two+".md") {
			t.Errorf("%s and %s are two names: %q, %q", letter, parts, Folded(one), Folded(two))
		}
		letters++
	}
	if letters < 700 {
		t.Errorf("only %d letters were looked at", letters)
	}
	for _, pair := range [][2]string{{"é", "e"}, {"é", "è"}, {"ß", "s"}} {
		if Folded(pair[0]) == Folded(pair[1]) {
			t.Errorf("%s and %s are one name", pair[0], pair[1])
		}
	}
}

func runes(t *testing.T, hex string) string {
	var s strings.Builder
	for code := range strings.FieldsSeq(hex) {
		n, err := strconv.ParseUint(code, 16, 32)
		if err != nil {
			t.Fatal(err)
		}
		s.WriteRune(rune(n))
	}
	return s.String()
}
