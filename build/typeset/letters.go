package typeset

import (
	"strings"
	"unicode"
)

// Lines breaks text at its spaces into lines that are no wider than ems times
// the size of the letters, by an estimate of their widths. A word that is wider
// stands alone.
func Lines(text string, ems float64) []string {
	var lines []string
	line, used := "", 0.0
	for _, word := range strings.Split(text, " ") {
		wide := widthOf(word)
		if line != "" && used+widthOf(" ")+wide > ems {
			lines = append(lines, line)
			line, used = "", 0
		}
		if line != "" {
			line, used = line+" ", used+widthOf(" ")
		}
		line, used = line+word, used+wide
	}
	return append(lines, line)
}

// widthOf estimates how wide a text is set in the label face, in ems: on the wide
// side of the faces that the style sheet names, so that a line ends early rather
// than late. On the world cards, printed by Chromium on Letter, the longest line
// ends 7 mm before its edge.
func widthOf(text string) float64 {
	wide := 0.0
	for _, r := range text {
		switch {
		case strings.ContainsRune("ijl.,:;'’|!Iıî ", r) || r == '\u00a0' || r == '\u202f':
			wide += 0.3
		case strings.ContainsRune("frt()[]-sczJ", r):
			wide += 0.5
		case strings.ContainsRune("mwMWœæŒ—", r):
			wide += 0.93
		case unicode.IsUpper(r):
			wide += 0.7
		default:
			wide += 0.6
		}
	}
	return wide
}
