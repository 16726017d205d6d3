package typeset

import (
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"noonbook/build/drawing"
	"noonbook/theme"
)

// A lettering is how the theme sets a label.
type lettering struct {
	size float64 // mm
	face face
	rim  bool // of paper, that keeps a line which it crosses off its letters
}

// letteringOf returns how the labels of a role are set in a drawing on a page, or on a
// printable. The style sheet alone says so; this reads it, so that nobody keeps a
// second list.
//
// Partial: of selectors it knows classes, text, descendants and :is with classes, and
// of media the common one, which is all that labels are given their letters by;
// TestLetteringIsTheStyleSheets looks for others.
func letteringOf(name, role string, printable bool) lettering {
	key := letteringKey{name, role, printable}
	if l, ok := letterings.Load(key); ok {
		return l.(lettering)
	}
	l := readLettering(name, role, printable)
	letterings.Store(key, l)
	return l
}

// letterings remembers what letteringOf read: the style sheet is part of the program.
var letterings sync.Map

type letteringKey struct {
	name, role string
	printable  bool
}

func readLettering(name, role string, printable bool) lettering {
	root := "drawing"
	if printable {
		root = "true-size"
	}
	chain := [2][]string{{root}, {}} // the svg of a page has its name itself
	switch {
	case printable:
		chain[1] = strings.Fields(name)
	default:
		chain[0] = append(chain[0], strings.Fields(name)...)
	}
	roles := strings.Fields(role)
	most := map[string]int{}
	said := map[string]string{}
	for i, r := range letterRules() {
		if !r.matches(chain, roles) {
			continue
		}
		for property, value := range r.says {
			if weight := r.weight*10000 + i; weight >= most[property] {
				most[property], said[property] = weight, value
			}
		}
	}
	l := lettering{size: 3.4, rim: strings.HasPrefix(said["paint-order"], "stroke") && said["stroke"] != "none"}
	if size, err := strconv.ParseFloat(strings.TrimSuffix(said["font-size"], "px"), 64); err == nil {
		l.size = size
	}
	weight, err := strconv.Atoi(said["font-weight"])
	bold := err == nil && weight >= 600
	switch label := strings.Contains(said["font-family"], "label"); {
	case label && bold:
		l.face = labelBold
	case label:
		l.face = labelFace
	case bold:
		l.face = textBold
	}
	return l
}

// A letterRule is a rule of the style sheet that says something of letters.
type letterRule struct {
	compounds [][]string // classes of each element, from the outermost; "text" is the element
	weight    int        // specificity: ten for a class, one for an element
	says      map[string]string
}

// matches reports whether a rule speaks of a label: its last compound of the label, the
// others of elements around it.
func (r letterRule) matches(chain [2][]string, roles []string) bool {
	holds := func(compound, classes []string) bool {
		for _, c := range compound {
			if !slices.Contains(classes, c) {
				return false
			}
		}
		return true
	}
	last := len(r.compounds) - 1
	if !holds(r.compounds[last], append([]string{"text"}, roles...)) {
		return last == 0 && !slices.Contains(r.compounds[0], "text") && (holds(r.compounds[0], chain[0]) || len(chain[1]) > 0 && holds(r.compounds[0], chain[1])) && r.inherited()
	}
	level := 0
	for _, c := range r.compounds[:last] {
		for level < 2 && !holds(c, chain[level]) {
			level++
		}
		if level == 2 {
			return false
		}
		level++
	}
	return true
}

// inherited reports whether a rule of the drawing itself says no more than its font,
// which labels take over.
func (r letterRule) inherited() bool { return len(r.says) == 1 && r.says["font-family"] != "" }

var (
	ruleOfStyle   = regexp.MustCompile(`([^{}]+)\{([^{}]*)\}`)
	mediaOfStyle  = regexp.MustCompile(`@media[^{]*\{(?:[^{}]*\{[^{}]*\})*\s*\}`)
	remarkOfStyle = regexp.MustCompile(`(?s)/\*.*?\*/`)
	isOfStyle     = regexp.MustCompile(`:is\(([^()]*)\)`)
	shortFont     = regexp.MustCompile(`^(?:italic )?(?:(\d00) )?([\d.]+px)(?:/[\d.]+)? (.+)$`)
)

var letterRules = sync.OnceValue(func() []letterRule {
	var rules []letterRule
	for _, name := range []string{"drawings.css", "paper.css"} {
		css, err := fs.ReadFile(theme.Files(), "styles/"+name)
		if err != nil {
			panic(err) // the files are embedded, and a test reads them
		}
		plain := mediaOfStyle.ReplaceAllString(remarkOfStyle.ReplaceAllString(string(css), ""), "")
		for _, m := range ruleOfStyle.FindAllStringSubmatch(plain, -1) {
			says := saidOfLetters(m[2])
			if len(says) == 0 {
				continue
			}
			for _, selector := range selectors(m[1]) {
				rules = append(rules, ruleOf(selector, says))
			}
		}
	}
	return rules
})

// saidOfLetters returns the declarations that letters are set by, a short one taken apart.
func saidOfLetters(block string) map[string]string {
	says := map[string]string{}
	for declaration := range strings.SplitSeq(block, ";") {
		property, value, ok := strings.Cut(declaration, ":")
		property, value = strings.TrimSpace(property), strings.TrimSpace(value)
		switch {
		case !ok:
		case property == "font":
			if m := shortFont.FindStringSubmatch(value); m != nil {
				says["font-weight"], says["font-size"], says["font-family"] = m[1], m[2], m[3]
			}
		case property == "font-size" || property == "font-weight" || property == "font-family" || property == "paint-order" || property == "stroke":
			says[property] = value
		}
	}
	if _, ok := says["stroke"]; ok && len(says) == 1 && says["stroke"] != "none" {
		return nil // of a line
	}
	return says
}

// selectors takes a list apart, and each :is with it.
func selectors(list string) []string {
	if at := isOfStyle.FindStringSubmatchIndex(list); at != nil {
		from := strings.LastIndex(depthless(list[:at[0]]), ",") + 1
		to := len(list)
		if end := strings.Index(depthless(list[at[1]:]), ","); end >= 0 {
			to = at[1] + end
		}
		var all []string
		for choice := range strings.SplitSeq(list[at[2]:at[3]], ",") {
			all = append(all, selectors(list[from:at[0]]+strings.TrimSpace(choice)+list[at[1]:to])...)
		}
		if before := strings.TrimSpace(list[:from]); before != "" {
			all = append(selectors(strings.TrimSuffix(before, ",")), all...)
		}
		if to < len(list) {
			all = append(all, selectors(list[to+1:])...)
		}
		return all
	}
	var all []string
	for s := range strings.SplitSeq(list, ",") {
		all = append(all, strings.TrimSpace(s))
	}
	return all
}

// depthless blanks what stands between brackets.
func depthless(s string) string {
	b, deep := []byte(s), 0
	for i, c := range b {
		switch {
		case c == '(':
			deep++
		case c == ')':
			deep--
		case deep > 0:
			b[i] = ' '
		}
	}
	return string(b)
}

func ruleOf(selector string, says map[string]string) letterRule {
	r := letterRule{says: says}
	for part := range strings.FieldsSeq(selector) {
		var compound []string
		for i, c := range strings.Split(part, ".") {
			if c == "" {
				continue
			}
			compound = append(compound, c)
			if i == 0 {
				r.weight++ // an element
			} else {
				r.weight += 10
			}
		}
		r.compounds = append(r.compounds, compound)
	}
	return r
}

// A hand knows the letters of one drawing.
type hand struct {
	name      string
	printable bool
	known     map[string]lettering
}

func handOf(d *drawing.Drawing, printable bool) hand {
	return hand{d.Name, printable, map[string]lettering{}}
}

func (h hand) of(role string) lettering {
	l, ok := h.known[role]
	if !ok {
		l = letteringOf(h.name, role, h.printable)
		h.known[role] = l
	}
	return l
}
