package starter

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Place reads a latitude and a longitude, in degrees, north and east positive, as people
// write them and maps show them:
//
//	46°05′N 64°46′W      46° 5' 30" N, 64° 46' W      N 46 05.5 W 64 46
//	46.09 -64.77         46.09, −64.77                46,09 -64,77
//
// Without letters the latitude comes first. Letters are N, S, E and W, or north, south,
// east, west, nord, sud, est, ouest; O is west where french is set, and otherwise an
// error, because it is east in other languages. A comma between two digits is a decimal
// comma, unless the text has decimal points; so two numbers with commas want a space
// or a semicolon between them. The error says what was found and what to write.
func Place(text string, french bool) (latitude, longitude float64, err error) {
	plain := plainPlace(text)
	halves, err := halvesOf(plain, french)
	if err != nil {
		return 0, 0, fmt.Errorf("%q %w; %s", text, err, placeForms)
	}
	if halves[0].axis == longitudes || halves[1].axis == latitudes {
		halves[0], halves[1] = halves[1], halves[0]
	}
	switch {
	case halves[0].axis == longitudes || halves[1].axis == latitudes:
		return 0, 0, fmt.Errorf("%q has two of one kind; %s", text, placeForms)
	case (halves[0].axis == neither) != (halves[1].axis == neither):
		return 0, 0, fmt.Errorf("%q has a direction at one number only; %s", text, placeForms)
	}
	latitude, longitude = halves[0].degrees, halves[1].degrees
	switch {
	case latitude < -90 || latitude > 90:
		return 0, 0, fmt.Errorf("the latitude %v° is outside -90° to 90°; it comes before the longitude", latitude)
	case longitude < -180 || longitude > 180:
		return 0, 0, fmt.Errorf("the longitude %v° is outside -180° to 180°", longitude)
	}
	return latitude, longitude, nil
}

const placeForms = `write latitude and longitude, such as 46.09 -64.77 or 46°05′N 64°46′W`

type axis int

const (
	neither axis = iota
	latitudes
	longitudes
)

type half struct {
	axis    axis
	degrees float64
}

// plainPlace writes each sign in one way: - ° ' " and a plain space, and words in
// small letters.
func plainPlace(text string) string {
	return strings.ToLower(strings.NewReplacer(
		"−", "-", "–", "-", "‐", "-", "‑", "-",
		"º", "°", "˚", "°",
		"′′", `"`, "''", `"`, "’’", `"`, "″", `"`, "”", `"`, "“", `"`,
		"′", "'", "’", "'", "‘", "'", "´", "'", "`", "'",
		"\u00a0", " ", "\u202f", " ", "\u2009", " ", "\t", " ",
	).Replace(strings.TrimSpace(text)))
}

var (
	decimalPoint = regexp.MustCompile(`\d\.\d`)
	decimalComma = regexp.MustCompile(`(\d),(\d)`)
	directions   = map[string]struct {
		axis axis
		sign float64
	}{
		"n": {latitudes, 1}, "north": {latitudes, 1}, "nord": {latitudes, 1},
		"s": {latitudes, -1}, "south": {latitudes, -1}, "sud": {latitudes, -1},
		"e": {longitudes, 1}, "east": {longitudes, 1}, "est": {longitudes, 1},
		"w": {longitudes, -1}, "west": {longitudes, -1}, "ouest": {longitudes, -1},
	}
	word = regexp.MustCompile(`\p{L}+\.?`)
	// An angle is degrees, minutes and seconds, the later ones left out; between two of
	// them is a mark or a space.
	angle = regexp.MustCompile(`^([+-]?) ?(\d+(?:\.\d+)?)(?: ?° ?| |$)(?:(\d+(?:\.\d+)?)(?: ?' ?| |$)(?:(\d+(?:\.\d+)?) ?"?)?)?$`)
	// marked are angles one behind the other whose marks tell where each ends.
	marked = regexp.MustCompile(`[+-]? ?\d+(?:\.\d+)?(?: ?°(?: ?\d+(?:\.\d+)? ?'(?: ?\d+(?:\.\d+)? ?")?)?)?`)
)

func halvesOf(text string, french bool) (halves [2]half, err error) {
	if decimalPoint.MatchString(text) {
		text = strings.ReplaceAll(text, ",", ";")
	} else {
		text = decimalComma.ReplaceAllString(text, "$1.$2")
		text = strings.ReplaceAll(text, ",", ";")
	}
	words := word.FindAllStringIndex(text, -1)
	if len(words) == 0 {
		parts, err := twoNumbers(text)
		if err != nil {
			return halves, err
		}
		for i, part := range parts {
			if halves[i].degrees, err = degreesOf(part, true); err != nil {
				return halves, err
			}
		}
		return halves, nil
	}
	for _, w := range words {
		if name := strings.TrimSuffix(text[w[0]:w[1]], "."); name != "o" && directions[name].axis == neither {
			return halves, fmt.Errorf("has %q, which is no direction", name)
		}
	}
	if len(words) > 2 {
		return halves, errors.New("has more than two directions")
	}
	before := strings.Trim(text[:words[0][0]], " ;") == "" // letters before their numbers
	var parts []string
	switch {
	case len(words) == 1:
		return halves, errors.New("has a direction at one number only")
	case before:
		parts = []string{text[words[0][1]:words[1][0]], text[words[1][1]:]}
	default:
		parts = []string{text[:words[0][0]], text[words[0][1]:words[1][0]]}
		if strings.Trim(text[words[1][1]:], " ;.") != "" {
			return halves, errors.New("has something behind the last direction")
		}
	}
	for i, part := range parts {
		name := strings.TrimSuffix(text[words[i][0]:words[i][1]], ".")
		d := directions[name]
		switch {
		case name == "o" && french:
			d = directions["ouest"]
		case name == "o":
			return halves, errors.New("has an O, which is west in French and east in other languages; write W, E or the word")
		}
		x, err := degreesOf(part, false)
		if err != nil {
			return halves, err
		}
		halves[i] = half{d.axis, d.sign * x}
	}
	return halves, nil
}

// twoNumbers cuts a text without letters at its separator, or where its marks or
// spaces tell.
func twoNumbers(text string) ([]string, error) {
	var parts []string
	for part := range strings.SplitSeq(text, ";") {
		if strings.TrimSpace(part) != "" {
			parts = append(parts, part)
		}
	}
	if len(parts) == 2 {
		return parts, nil
	}
	parts = marked.FindAllString(text, -1)
	if rest := marked.ReplaceAllString(text, ""); strings.TrimSpace(rest) != "" {
		return nil, errors.New("is not a place")
	}
	switch len(parts) {
	case 2:
	case 1:
		return nil, errors.New("has one number where two are wanted")
	default:
		return nil, fmt.Errorf("has %d numbers where two are wanted", len(parts))
	}
	return parts, nil
}

func degreesOf(text string, signed bool) (float64, error) {
	text = strings.Join(strings.Fields(strings.Trim(text, " ;")), " ")
	m := angle.FindStringSubmatch(text)
	if m == nil {
		return 0, fmt.Errorf("has %q, which is no angle", text)
	}
	if m[1] != "" && !signed {
		return 0, errors.New("has a sign beside a direction")
	}
	total := 0.0
	for i, unit := range []float64{1, 60, 3600} {
		if m[2+i] == "" {
			break
		}
		x, err := strconv.ParseFloat(m[2+i], 64)
		if err != nil {
			return 0, fmt.Errorf("has %q, which is no number", m[2+i])
		}
		if i > 0 && (x >= 60 || strings.Contains(m[1+i], ".")) {
			return 0, fmt.Errorf("has %q, whose minutes and seconds cannot be read", text)
		}
		total += x / unit
	}
	if m[1] == "-" {
		total = -total
	}
	return total, nil
}
