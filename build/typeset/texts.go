package typeset

import (
	"fmt"
	"strconv"
	"strings"
)

// readTexts returns the texts of a file of words by the name of their section and their own,
// joined by a dot. Such a file is TOML of one kind alone, lines of key = "text" below
// [sections], with comments: to read all of TOML took a twentieth of a press. What is of
// another kind, and a name that was there before, is an error.
func readTexts(src string) (map[string]string, error) {
	section, number := "", 0
	texts := make(map[string]string, strings.Count(src, "\n"))
	for line := range strings.Lines(src) {
		number++
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if line[0] == '[' {
			name, rest, closed := strings.Cut(line[1:], "]")
			if !closed || !bare(strings.ReplaceAll(name, ".", "")) || !lineEnds(rest) {
				return nil, fmt.Errorf("line %d: %q is no [section]", number, line)
			}
			section = name + "."
			continue
		}
		key, text, err := textOf(line)
		if err != nil {
			return nil, fmt.Errorf("line %d: %w", number, err)
		}
		key = section + key
		if _, twice := texts[key]; twice {
			return nil, fmt.Errorf("line %d: %q was there before", number, key)
		}
		texts[key] = text
	}
	return texts, nil
}

// bare reports whether a key needs no quotes.
func bare(key string) bool {
	const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-"
	return key != "" && strings.Trim(key, letters) == ""
}

// textOf reads a line of key = "text".
func textOf(line string) (key, text string, err error) {
	rest := line
	if line[0] == '"' {
		key, rest, err = quotedText(line)
	} else if at := strings.IndexAny(line, " \t="); at >= 0 {
		key, rest = line[:at], line[at:]
	}
	if err != nil {
		return "", "", err
	}
	rest, equals := strings.CutPrefix(strings.TrimLeft(rest, " \t"), "=")
	rest = strings.TrimLeft(rest, " \t")
	if !equals || line[0] != '"' && !bare(key) || rest == "" || rest[0] != '"' {
		return "", "", fmt.Errorf("%q is no key = \"text\"", line)
	}
	text, rest, err = quotedText(rest)
	if err == nil && !lineEnds(rest) {
		err = fmt.Errorf("%q stands behind a text", rest)
	}
	return key, text, err
}

// quotedText reads a text in double quotes, and returns what stands behind it.
func quotedText(s string) (text, rest string, err error) {
	for at := 1; at < len(s); at++ {
		switch s[at] {
		case '\\':
			at++
		case '"':
			text, rest = s[1:at], s[at+1:]
			if strings.IndexByte(text, '\\') >= 0 {
				if text, err = strconv.Unquote(s[:at+1]); err != nil {
					return "", "", fmt.Errorf("a backslash that TOML does not know in %s", s[:at+1])
				}
			}
			return text, rest, nil
		}
	}
	return "", "", fmt.Errorf("no quote closes %s", s)
}

// lineEnds reports whether nothing but a comment follows on a line.
func lineEnds(rest string) bool {
	rest = strings.TrimLeft(rest, " \t")
	return rest == "" || rest[0] == '#'
}
