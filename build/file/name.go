package file

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longest is how many bytes a name may have on the file systems of Linux; those of
// Windows and macOS allow 255 letters (limits.h, NAME_MAX; Microsoft, Maximum Path
// Length Limitation).
const longest = 255

// Sound returns nil when a file may bear the name on Windows, macOS and Linux
// alike, since a handbook is carried from one to the other. The error names the
// name and says what is wrong with it.
//
// Source: Microsoft, Naming Files, Paths, and Namespaces, Naming Conventions.
func Sound(name string) error {
	switch {
	case name == "":
		return fmt.Errorf("a file needs a name")
	case !utf8.ValidString(name):
		return fmt.Errorf("the file name %q is not UTF-8", name)
	case len(name) > longest:
		return fmt.Errorf("the file name %.40q… has %d bytes; up to %d fit on every computer", name, len(name), longest)
	case name[0] == '.':
		return fmt.Errorf("the file name %q begins with a dot, which hides a file on many computers", name)
	case strings.HasSuffix(name, ".") || strings.HasSuffix(name, " "):
		return fmt.Errorf("the file name %q ends in a dot or a space, which Windows drops", name)
	}
	for _, r := range name {
		if strings.ContainsRune(`/\:<>"|?*`, r) {
			return fmt.Errorf("the file name %q holds %c, which a name cannot hold on every computer", name, r)
		}
		if unseen(r) {
			return fmt.Errorf("the file name %q holds the character %U, which nobody can see", name, r)
		}
	}
	if stem, _, _ := strings.Cut(name, "."); device(strings.TrimRight(stem, " ")) {
		return fmt.Errorf("the file name %q is taken on Windows, where %s is a device; name it otherwise", name, stem)
	}
	return nil
}

// unseen reports whether a character steers the screen, breaks the line or turns
// the direction of writing, so that a name is not what it looks like. The joiners
// that some scripts need (U+200C, U+200D) are not among them.
func unseen(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Zl, unicode.Zp, unicode.Bidi_Control) || r == '\ufeff' || r == '\u200b'
}

// device reports whether Windows keeps a name, in any case, for a device,
// whatever ending follows it.
func device(stem string) bool {
	stem = strings.ToLower(stem)
	if slices.Contains([]string{"con", "prn", "aux", "nul", "conin$", "conout$"}, stem) {
		return true
	}
	for _, kind := range []string{"com", "lpt"} {
		if number, ok := strings.CutPrefix(stem, kind); ok && slices.Contains(strings.Split("0123456789¹²³", ""), number) {
			return true
		}
	}
	return false
}

// Folded returns the name without its case, and with accents as letters of their
// own. Two names with one folded form are one file on Windows or macOS.
func Folded(name string) string {
	return strings.Map(func(r rune) rune {
		least := r
		for other := unicode.SimpleFold(r); other != r; other = unicode.SimpleFold(other) {
			least = min(least, other)
		}
		return least
	}, Decomposed(name))
}

// Leaving reports whether a name is one that systems and editors leave beside the files
// that somebody works on: a hidden file, a lock, a copy, notes of their own.
func Leaving(name string) bool {
	return strings.HasPrefix(name, ".") || strings.HasSuffix(name, "~") || strings.HasPrefix(name, "#") && strings.HasSuffix(name, "#")
}
