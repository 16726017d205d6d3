package placeholder_test

import (
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// A shown is what a calculator makes of a run of text: a value, and how far off it may
// be for its last digit where the text is one number and no sum.
type shown struct {
	value float64
	half  float64 // half a unit of the last digit
	one   bool    // a single number
	text  string
}

// A symbol is a number with its unit, an operation, a name of one, or a word, which ends
// every sum.
type symbol struct {
	kind   string // "number", "word", or the operation itself
	value  float64
	half   float64
	at, to int // bytes of the text
}

// A grammar is how a language writes numbers, clocks, units and powers.
type grammar struct {
	number, clock, units, raised *regexp.Regexp
}

var englishGrammar = grammar{
	number: regexp.MustCompile(`^(\d{1,3}(?:[ \x{a0}\x{202f}]\d{3})+|\d+)(\.\d+)?`),
	clock:  regexp.MustCompile(`^(\d{1,2}):(\d\d)`),
	units:  unitsOf(`million[ \x{a0}](?:km|years)|au|times|days?|years?|squares?|paces?|diameters|steps|hours`, `an?[ \x{a0}](?:square|millimetre|hour|degree|day)`),
	raised: regexp.MustCompile(`^to the power of`),
}

// French writes 9 h 10 for a time of day; 9 h 10 min lasts so long.
var frenchGrammar = grammar{
	number: regexp.MustCompile(`^(\d{1,3}(?:[ \x{a0}\x{202f}]\d{3})+|\d+)(,\d+)?`),
	clock:  regexp.MustCompile(`^(\d{1,2})[ \x{a0}]h[ \x{a0}](\d\d)(?:[^ \x{a0}\d]|[ \x{a0}][^m]|$)`),
	units:  unitsOf(`millions?[ \x{a0}](?:de[ \x{a0}]km|d’années)|ua|fois|jours?|ans?|carrés?|pas|diamètres?|heures?`, `par[ \x{a0}](?:carré|millimètre|heure|degré|jour)`),
	raised: regexp.MustCompile(`^à la puissance`),
}

// unitsOf matches the units that stand behind a number: those that all languages share,
// a language's own, and what may follow either.
func unitsOf(own, each string) *regexp.Regexp {
	return regexp.MustCompile(`^[ \x{a0}\x{202f}]?((?:°|′|%|km³/s²|m/s²|km/s|m/s|kg/m³|mm|km|mL/min|mL|m|kg|g|D|N|h|min|s|` + own + `)(?:[ \x{a0}](?:` + each + `))?)(?:[^\pL]|$)`)
}

var (
	powerStart = regexp.MustCompile(`^⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+`)
	functions  = regexp.MustCompile(`^(sin|cos|tan)(⁻¹)?[ \x{a0}]`)
	operations = regexp.MustCompile(`^[=×÷+−/()√π]`)
	timeUnits  = map[string]float64{"h": 3600, "min": 60, "s": 1}
)

// tokens cuts a step of a working. A number with h, min or s is a time in seconds, and
// so is a time of day; all other units stand for themselves.
func (g grammar) tokens(text string) (list []symbol) {
	for at := 0; at < len(text); {
		rest := text[at:]
		add := func(kind string, length int, value, half float64) {
			list = append(list, symbol{kind, value, half, at, at + length})
			at += length
		}
		if m := g.clock.FindStringSubmatchIndex(rest); m != nil {
			h, _ := strconv.Atoi(rest[m[2]:m[3]])
			min, _ := strconv.Atoi(rest[m[4]:m[5]])
			add("number", m[5], float64(h*3600+min*60), 30)
		} else if m := g.number.FindStringSubmatch(rest); m != nil {
			whole := strings.NewReplacer(" ", "", "\u00a0", "", "\u202f", "").Replace(m[1])
			value, _ := strconv.ParseFloat(whole+strings.Replace(m[2], ",", ".", 1), 64)
			half := 0.5 * math.Pow10(-max(0, len(m[2])-1))
			length := len(m[0])
			if unit := g.units.FindStringSubmatchIndex(rest[length:]); unit != nil {
				name := rest[length:][unit[2]:unit[3]]
				length += unit[3]
				first, _, _ := strings.Cut(strings.ReplaceAll(name, "\u00a0", " "), " ")
				if seconds, ok := timeUnits[first]; ok {
					value, half = value*seconds, half*seconds
					if n := len(list); n > 0 && list[n-1].kind == "time" && strings.Trim(text[list[n-1].to:at], " \u00a0") == "" && list[n-1].half > half {
						value, at, length = value+list[n-1].value, list[n-1].at, length+at-list[n-1].at
						list = list[:n-1]
					}
					add("time", length, value, half)
					continue
				}
			}
			add("number", length, value, half)
		} else if m := powerStart.FindString(rest); m != "" {
			add("power", len(m), digitsOf(m), 0)
		} else if m := functions.FindStringSubmatch(rest); m != nil {
			add(m[1]+m[2], len(m[1]+m[2]), 0, 0)
		} else if m := g.raised.FindString(rest); m != "" {
			add("raised", len(m), 0, 0)
		} else if m := operations.FindString(rest); m != "" {
			add(m, len(m), 0, 0)
		} else if gap := len(rest) - len(strings.TrimLeft(rest, " \u00a0\u202f")); gap > 0 {
			at += gap
		} else {
			length := strings.IndexAny(rest, " \u00a0\u202f=×÷+−/()√")
			if length <= 0 {
				length = len(rest)
			}
			add("word", length, 0, 0)
		}
	}
	return list
}

// digitsOf reads ², ⁻¹¹ and the like.
func digitsOf(raised string) float64 {
	plain := strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9").Replace(raised)
	n, _ := strconv.Atoi(plain)
	return float64(n)
}

var errNoSum = errors.New("no sum")

// A calculator works out a run of tokens by the usual rules.
type calculator struct {
	list []symbol
	at   int
}

func (c *calculator) next() string {
	if c.at < len(c.list) {
		return c.list[c.at].kind
	}
	return ""
}

func (c *calculator) sum() float64 {
	x := c.product()
	for {
		switch c.next() {
		case "+":
			c.at++
			x += c.product()
		case "−":
			c.at++
			x -= c.product()
		default:
			return x
		}
	}
}

func (c *calculator) product() float64 {
	x := c.factor()
	for {
		switch c.next() {
		case "×":
			c.at++
			x *= c.factor()
		case "÷", "/":
			c.at++
			x /= c.factor()
		default:
			return x
		}
	}
}

func (c *calculator) factor() float64 {
	switch c.next() {
	case "−":
		c.at++
		return -c.factor()
	case "+":
		c.at++
		return c.factor()
	case "√":
		c.at++
		return math.Sqrt(c.power())
	}
	return c.power()
}

func (c *calculator) power() float64 {
	x := c.single()
	switch c.next() {
	case "power":
		x = math.Pow(x, c.list[c.at].value)
		c.at++
	case "raised":
		c.at++
		x = math.Pow(x, c.factor())
	}
	return x
}

func (c *calculator) single() float64 {
	kind := c.next()
	if kind == "" {
		panic(errNoSum)
	}
	t := c.list[c.at]
	c.at++
	const degree = math.Pi / 180
	switch kind {
	case "number", "time":
		return t.value
	case "π":
		return math.Pi
	case "(":
		x := c.sum()
		if c.next() != ")" {
			panic(errNoSum)
		}
		c.at++
		return x
	case "sin":
		return math.Sin(c.factor() * degree)
	case "cos":
		return math.Cos(c.factor() * degree)
	case "tan":
		return math.Tan(c.factor() * degree)
	case "sin⁻¹":
		return math.Asin(c.factor()) / degree
	case "cos⁻¹":
		return math.Acos(c.factor()) / degree
	case "tan⁻¹":
		return math.Atan(c.factor()) / degree
	}
	panic(errNoSum)
}

// front works out the longest run at the beginning of the tokens and says how long it
// is; 0 where they begin with none.
func front(list []symbol) (value float64, used int) {
	defer func() {
		if recover() != nil {
			value, used = 0, 0
		}
	}()
	c := &calculator{list: list}
	value = c.sum()
	return value, c.at
}

// operation reports whether a symbol joins what stands on both sides of it, so that a
// run beside it is a piece of a formula in words.
func operation(t symbol) bool {
	return slices.Contains([]string{"×", "÷", "/", "+", "−", "√", "power", "raised", "sin", "cos", "tan", "(", ")"}, t.kind)
}

func textOf(text string, list []symbol) string { return text[list[0].at:list[len(list)-1].to] }

func asShown(text string, list []symbol, value float64) shown {
	s := shown{value: value, text: textOf(text, list)}
	signless := list
	if len(list) > 1 && (list[0].kind == "−" || list[0].kind == "+") {
		signless = list[1:]
	}
	if len(signless) == 1 && (signless[0].kind == "number" || signless[0].kind == "time") {
		s.one, s.half = true, signless[0].half
	}
	if len(signless) == 4 && signless[1].kind == "×" && signless[2].value == 10 && signless[3].kind == "power" { // 330 × 10²¹
		s.one, s.half = true, signless[0].half*math.Pow(10, signless[3].value)
	}
	return s
}

// leading is the sum with which a stretch between two = begins, trailing the one with
// which it ends.
func leading(text string, list []symbol) (shown, bool) {
	value, used := front(list)
	if used == 0 || used < len(list) && operation(list[used]) {
		return shown{}, false
	}
	return asShown(text, list[:used], value), true
}

func trailing(text string, list []symbol) (shown, bool) {
	for i := range list {
		if value, used := front(list[i:]); used == len(list)-i {
			if i > 0 && operation(list[i-1]) {
				return shown{}, false
			}
			return asShown(text, list[i:], value), true
		}
	}
	return shown{}, false
}

// equations are the runs of sums with = between them that a text holds.
func (g grammar) equations(text string) (chains [][]shown) {
	var stretches [][]symbol
	stretch := []symbol{}
	for _, t := range g.tokens(text) {
		if t.kind == "=" {
			stretches, stretch = append(stretches, stretch), []symbol{}
			continue
		}
		stretch = append(stretch, t)
	}
	stretches = append(stretches, stretch)
	var chain []shown
	for i := range len(stretches) - 1 {
		left, right := stretches[i], stretches[i+1]
		if len(left) > 0 && len(chain) == 0 {
			if s, ok := trailing(text, left); ok {
				chain = append(chain, s)
			}
		}
		s, ok := leading(text, right)
		if ok {
			chain = append(chain, s)
		}
		if !ok || s.text != textOf(text, right) || i == len(stretches)-2 {
			if len(chain) > 0 {
				chains = append(chains, chain)
			}
			chain = nil
		}
	}
	return chains
}
