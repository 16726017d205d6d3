package typeset

import "strings"

// Lines breaks text of the label face at its spaces into lines that are no wider than ems
// times the size of the letters. A word that is wider stands alone.
func Lines(text string, ems float64) []string { return linesOf(text, ems, labelFace) }

func linesOf(text string, ems float64, f face) []string {
	var lines []string
	line, used, space := "", 0.0, widthOf(" ", f)
	for word := range strings.SplitSeq(text, " ") {
		wide := widthOf(word, f)
		if line != "" && used+space+wide > ems {
			lines = append(lines, line)
			line, used = "", 0
		}
		if line != "" {
			line, used = line+" ", used+space
		}
		line, used = line+word, used+wide
	}
	return append(lines, line)
}
