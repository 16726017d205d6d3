package form

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode"

	"noonbook/compute/place"
)

// advice says what to write instead of what an author wrote, where it can be
// told what was meant: "write 46.083". It is empty where it cannot.
func (f Field) advice(s string) string {
	switch s = strings.TrimSpace(s); f.Kind() {
	case Number, Whole:
		return numberAdvice(s, f.Unit)
	case Date:
		for _, word := range f.Choices {
			if strings.EqualFold(word, s) {
				return "write " + quoted(word)
			}
		}
		return dateAdvice(s)
	case Flag:
		switch strings.ToLower(s) {
		case "yes", "true", "on", "oui", "vrai", "y":
			return "write true"
		case "no", "false", "off", "non", "faux", "n":
			return "write false"
		}
	case Clock:
		if c, ok := loosely(s); ok {
			return "write " + quoted(c)
		}
	case Span:
		from, to, both := strings.Cut(strings.NewReplacer("–", "-", "—", "-", " to ", "-", " à ", "-").Replace(s), "-")
		a, okA := loosely(from)
		b, okB := loosely(to)
		if first, _ := clock(a); both && okA && okB {
			if last, _ := clock(b); first >= last {
				return ""
			}
			return "write " + quoted(a+"-"+b)
		}
	case Month:
		if m := yearMonth.FindStringSubmatch(s); m != nil {
			if n, _ := strconv.Atoi(m[2]); n >= 1 && n <= 12 {
				return fmt.Sprintf(`write "%s-%02d"`, m[1], n)
			}
		}
	case Text:
		for _, word := range f.Choices {
			if strings.EqualFold(word, s) {
				return "write " + quoted(word)
			}
		}
	}
	return ""
}

// guess is the advice for a value of an unknown key.
func guess(s string) string {
	if advice := dateAdvice(s); advice != "" {
		return advice
	}
	return numberAdvice(s, "")
}

var (
	yearMonth  = regexp.MustCompile(`^(\d{4})[-/. ](\d{1,2})$`)
	looseClock = regexp.MustCompile(`^([01]?\d|2[0-3]) ?(?:[:.hH] ?([0-5]\d)?)$`)
)

// loosely reads a time of day as people write it: 9.10, 9h10, 9h.
func loosely(s string) (string, bool) {
	m := looseClock.FindStringSubmatch(strings.TrimSpace(s))
	if m == nil || m[2] == "" && !strings.ContainsAny(s, "hH") {
		return "", false
	}
	if m[2] == "" {
		m[2] = "00"
	}
	return m[1] + ":" + m[2], true
}

const number = `[-+]?(?:\d+(?:[.,]\d+)?|[.,]\d+)`

var (
	plainNumber  = regexp.MustCompile(`^` + number + `$`)
	coordinate   = regexp.MustCompile(`^([NSEWO] ?)?(` + number + `) ?(?:°|º|˚|deg) ?(?:(\d+(?:[.,]\d+)?) ?(?:'|′|’|‘|´|min) ?(?:(\d+(?:[.,]\d+)?) ?(?:"|″|”|“|''|′′|’’|sec)?)?)? ?([NSEWO])?$`)
	compassed    = regexp.MustCompile(`^(?:([NSEWO]) ?(` + number + `)|(` + number + `) ?([NSEWO]))$`)
	withUnit     = regexp.MustCompile(`^(` + number + `) ?([^\d\s.,+-][^\d]{0,15}[²³]?)$`)
	thousands    = regexp.MustCompile(`^([-+]?\d{1,3})(?:[ '’]\d{3})+$`)
	manyCommas   = regexp.MustCompile(`^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$`)
	manyPoints   = regexp.MustCompile(`^[-+]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$`)
	trailingDot  = regexp.MustCompile(`^[-+]?\d+\.$`)
	leadingZeros = regexp.MustCompile(`^([-+]?)0+(\d+(?:\.\d+)?)$`)
)

// numberAdvice says how a number is written that a person wrote otherwise: with a
// comma, with its unit, in degrees and minutes. unit is that of the key.
func numberAdvice(s, unit string) string {
	if len(s) > 60 {
		return ""
	}
	plain := strings.NewReplacer("−", "-", "–", "-", "\u00a0", " ", "\u202f", " ", "\u2009", " ").Replace(s)
	plain = strings.TrimSpace(strings.ReplaceAll(plain, "- ", "-"))
	upper := strings.ToUpper(plain)
	switch {
	case (unit == "deg" || unit == "") && coordinate.MatchString(upper):
		return coordinateAdvice(coordinate.FindStringSubmatch(upper))
	case (unit == "deg" || unit == "") && compassed.MatchString(upper):
		m := compassed.FindStringSubmatch(upper)
		return inCompass(pointed(m[2]+m[3]), m[1]+m[4])
	case strings.Count(plain, ",") > 1 && manyCommas.MatchString(plain):
		return "write " + strings.ReplaceAll(plain, ",", "")
	case manyPoints.MatchString(plain) && (strings.Contains(plain, ",") || strings.Count(plain, ".") > 1):
		return "write " + pointed(strings.ReplaceAll(plain, ".", ""))
	case manyCommas.MatchString(plain) && strings.Contains(plain, "."):
		return "write " + strings.ReplaceAll(plain, ",", "")
	case thousands.MatchString(plain):
		return "write " + strings.NewReplacer(" ", "", "'", "", "’", "").Replace(plain)
	case plainNumber.MatchString(plain) && strings.Contains(plain, ","):
		_, fraction, _ := strings.Cut(plain, ",")
		if len(fraction) == 3 && !strings.HasPrefix(strings.TrimLeft(plain, "+-"), "0") {
			return fmt.Sprintf("write %s with a point, or %s where thousands are meant", pointed(plain), strings.ReplaceAll(plain, ",", ""))
		}
		return fmt.Sprintf("write %s, with a point in place of the comma", pointed(plain))
	case trailingDot.MatchString(plain):
		return "write " + pointed(strings.TrimSuffix(plain, "."))
	case leadingZeros.MatchString(plain), plainNumber.MatchString(plain) && plain != s, strings.HasPrefix(strings.TrimLeft(plain, "+-"), ".") && plainNumber.MatchString(plain):
		return "write " + pointed(plain)
	case plainNumber.MatchString(plain):
		return "write " + pointed(plain) + " without quotes"
	}
	if m := withUnit.FindStringSubmatch(plain); m != nil {
		return unitAdvice(m[1], strings.TrimSpace(m[2]), unit)
	}
	return ""
}

// pointed writes a number with a point, and without zeros that TOML does not take.
func pointed(s string) string {
	s = strings.ReplaceAll(s, ",", ".")
	sign := ""
	if s[0] == '-' || s[0] == '+' {
		sign, s = strings.TrimPrefix(s[:1], "+"), s[1:]
	}
	s = strings.TrimLeft(s, "0")
	if s == "" || s[0] == '.' {
		s = "0" + s
	}
	return sign + s
}

// coordinateAdvice turns degrees and minutes into degrees, as exact as they are:
// a minute is 0.017°, a second 0.0003°.
func coordinateAdvice(m []string) string {
	degrees, places := pointed(m[2]), 0
	if m[3] == "" {
		if letter := strings.TrimSpace(m[1]) + m[5]; letter != "" {
			return inCompass(degrees, letter)
		}
		return "write " + degrees + " without °"
	}
	x, _ := strconv.ParseFloat(degrees, 64)
	minutes, _ := strconv.ParseFloat(pointed(m[3]), 64)
	seconds := 0.0
	places = 3
	if strings.ContainsAny(m[3], ".,") {
		places = 4
	}
	if m[4] != "" {
		seconds, _ = strconv.ParseFloat(pointed(m[4]), 64)
		places = 4
	}
	if minutes >= 60 || seconds >= 60 || x != math.Trunc(x) {
		return ""
	}
	x = math.Copysign(math.Abs(x)+minutes/60+seconds/3600, x)
	if strings.HasPrefix(degrees, "-") {
		x = -math.Abs(x)
	}
	return inCompass(strconv.FormatFloat(math.Round(x*math.Pow10(places))/math.Pow10(places), 'f', -1, 64), strings.TrimSpace(m[1])+m[5])
}

// inCompass gives a number of degrees its sign: south and west are negative.
func inCompass(degrees, letter string) string {
	switch letter {
	case "S", "W":
		return "write -" + strings.TrimLeft(degrees, "-")
	case "O": // ouest in French, Ost in German
		return fmt.Sprintf("write -%s for west, %s for east", strings.TrimLeft(degrees, "-"), strings.TrimLeft(degrees, "-"))
	}
	return "write " + degrees
}

// unitNames are ways to write the units of keys.
var unitNames = map[string][]string{
	"deg":      {"°", "º", "deg", "degrees", "degree", "degrés", "degré"},
	"percent":  {"%", "percent", "per cent", "pct", "pour cent"},
	"mm":       {"mm", "millimetres", "millimeters", "millimètres"},
	"cm":       {"cm", "centimetres", "centimeters", "centimètres"},
	"m":        {"m", "metres", "meters", "metre", "meter", "mètres", "mètre"},
	"km":       {"km", "kilometres", "kilometers", "kilomètres"},
	"km/h":     {"km/h", "kmh", "kph"},
	"m/s":      {"m/s", "ms", "mps"},
	"g":        {"g", "grams", "gram", "grammes", "gramme"},
	"g/m²":     {"g/m²", "gsm", "g/m"},
	"s":        {"s", "sec", "seconds", "secondes"},
	"days":     {"days", "day", "d", "jours", "jour"},
	"min":      {"min", "minutes", "minute"},
	"minutes":  {"min", "minutes", "minute"},
	"dioptres": {"dioptres", "dioptre", "diopters", "dpt", "d"},
	"times":    {"times", "x", "×"},
}

// inMetres are the lengths that a key may count in.
var inMetres = map[string]float64{"mm": 0.001, "cm": 0.01, "m": 1, "km": 1000}

// isUnit reports whether a word names the unit.
func isUnit(word, unit string) bool {
	for _, name := range unitNames[unit] {
		if strings.EqualFold(word, name) {
			return true
		}
	}
	return unit != "" && strings.EqualFold(word, unit)
}

func unitAdvice(number, word, unit string) string {
	if unit == "" || isUnit(word, unit) {
		for _, r := range word { // anything may stand behind a number where the unit is unknown
			if unit == "" && !unicode.IsLetter(r) && !strings.ContainsRune("°º%²³/", r) {
				return ""
			}
		}
		return fmt.Sprintf("write %s without %s", pointed(number), shown(word))
	}
	for from, size := range inMetres {
		if into, length := inMetres[unit]; length && isUnit(word, from) {
			x, _ := strconv.ParseFloat(pointed(number), 64)
			return fmt.Sprintf("write %s, the number of %s", strconv.FormatFloat(math.Round(x*size/into*1e6)/1e6, 'f', -1, 64), unit)
		}
	}
	return ""
}

var (
	dayFirst  = regexp.MustCompile(`^(\d{1,2}) ?[-/. ] ?(\d{1,2}) ?[-/. ] ?(\d{4})$`)
	yearFirst = regexp.MustCompile(`^(\d{4}) ?[-/. ] ?(\d{1,2}) ?[-/. ] ?(\d{1,2})$`)
	monthWord = regexp.MustCompile(`^(?:(\d{1,2})(?:st|nd|rd|th|er|\.)? (\pL+)\.?,? (\d{4})|(\pL+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4}))$`)
)

const noSuchDay = "there is no such day"

// dateAdvice says how a date is written that a person wrote otherwise.
func dateAdvice(s string) string {
	if len(s) > 40 || !strings.ContainsAny(s, "0123456789") {
		return ""
	}
	s = strings.NewReplacer("\u00a0", " ", "‑", "-", "–", "-", "−", "-").Replace(s)
	if m := yearFirst.FindStringSubmatch(s); m != nil {
		if d, ok := dateOf(m[1], m[2], m[3]); ok {
			return "write " + d
		}
		return noSuchDay
	}
	if m := dayFirst.FindStringSubmatch(s); m != nil {
		a, okA := dateOf(m[3], m[2], m[1])
		b, okB := dateOf(m[3], m[1], m[2])
		switch {
		case okA && okB && a != b:
			return fmt.Sprintf("write %s or %s, year, month and day", a, b)
		case okA:
			return "write " + a
		case okB:
			return "write " + b
		}
		return noSuchDay
	}
	if m := monthWord.FindStringSubmatch(s); m != nil {
		if n := monthNumber(m[2] + m[4]); n > 0 {
			if d, ok := dateOf(m[3]+m[6], strconv.Itoa(n), m[1]+m[5]); ok {
				return "write " + d
			}
		}
	}
	return ""
}

func dateOf(year, month, day string) (string, bool) {
	y, _ := strconv.Atoi(year)
	m, _ := strconv.Atoi(month)
	d, _ := strconv.Atoi(day)
	date := place.Date{Year: y, Month: time.Month(m), Day: d}.String()
	_, err := place.ParseDate(date)
	return date, err == nil
}

var frenchMonths = []string{"janvier", "février", "mars", "avril", "mai", "juin", "juillet", "août", "septembre", "octobre", "novembre", "décembre"}

// monthNumber reads the English or French name of a month, or the first three
// letters of an English one.
func monthNumber(word string) int {
	for m := time.January; m <= time.December; m++ {
		if name := m.String(); strings.EqualFold(word, name) || strings.EqualFold(word, name[:3]) || strings.EqualFold(word, frenchMonths[m-1]) {
			return int(m)
		}
	}
	return 0
}
