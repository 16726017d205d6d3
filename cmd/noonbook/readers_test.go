package main

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/build/markup"
)

// How much each reader is given: running words of the main part, tables, drawings and what
// is computed apart. The limits are ours.
const (
	mostForPupils    = 1200
	mostForStaff     = 2800
	highestGrade     = 6.0
	lessonsOfTheUnit = 15
)

// Each lesson of the demo has a page for pupils and a guide for staff that can be read,
// in words for eleven; the test prints what it counts.
func TestReadersAreGivenEnoughAndNoMore(t *testing.T) {
	unraced(t)
	class, staff := pressedDemo(t)
	lessons := 0
	for _, name := range sortedKeys(class) {
		if !strings.HasSuffix(name, ".html") || class["/pupil-"+name[1:]] == "" {
			continue
		}
		lessons++
		pupils, guide := runningText(class[name]), runningText(staff[name])
		words, all, grade := len(strings.Fields(pupils)), len(strings.Fields(guide)), readingGrade(pupils)
		t.Logf("%-22s pupils %4d words, grade %4.1f; staff %4d words", name[1:], words, grade, all)
		if words > mostForPupils {
			t.Errorf("%s: pupils have %d words to read, more than %d", name, words, mostForPupils)
		}
		if all > mostForStaff {
			t.Errorf("%s: staff have %d words to read, more than %d", name, all, mostForStaff)
		}
		if grade >= highestGrade {
			t.Errorf("%s: the text for pupils is of grade %.1f, and %.1f is too hard", name, grade, highestGrade)
		}
		if words < 100 || all < words {
			t.Errorf("%s: %d and %d words cannot be all", name, words, all)
		}
		if hard := hardWords.FindString(pupils); hard != "" {
			t.Errorf("%s: pupils read of %q", name, hard)
		}
	}
	if lessons != lessonsOfTheUnit {
		t.Errorf("%d lessons have a page", lessons)
	}
}

// hardWords are notions that no text for pupils needs.
var hardWords = regexp.MustCompile(`(?i)\b(tangents?|cosines?|arc ?minutes?|arc ?seconds?|dioptres?|least squares|standard deviation|derivation|et al\.)`)

// The words of a question's answer that were computed for the school do not stand on the
// class page. The test prints each question, its answer in short, and what of the answer
// the page shows.
func TestNoPageAnswersItsQuestions(t *testing.T) {
	unraced(t)
	class, staff := pressedDemo(t)
	asked := 0
	for _, name := range sortedKeys(class) {
		sheet := staff["/pupil-"+strings.TrimPrefix(name, "/")]
		if sheet == "" || !strings.HasSuffix(name, ".html") {
			continue
		}
		page := plain(class[name])
		for _, q := range strings.Split(sheet, `<section class="question">`)[1:] {
			ask, answer, ok := strings.Cut(q, `<section class="answer">`)
			if !ok {
				continue
			}
			asked++
			answer, _, _ = strings.Cut(answer, "</section>")
			short := plain(answer)
			short = strings.TrimPrefix(short, "Answer ")
			var shown []string
			for _, m := range computedWords.FindAllStringSubmatch(answer, -1) {
				value := plain(m[1])
				if len(value) > 2 && strings.ContainsAny(value, "0123456789") && !strings.Contains(plain(ask), value) && contains(page, value) && !slices.Contains(shown, value) {
					shown = append(shown, value)
				}
			}
			t.Logf("%s: %s\n\tanswer: %.160s\n\tshown: %q", name[1:], plain(ask), short, shown)
			for _, value := range shown {
				if why := mayShow[name[1:]+" "+value]; why == "" {
					t.Errorf("%s: the page shows %q, which answers %q", name, value, plain(ask))
				}
			}
		}
	}
	if asked < 80 {
		t.Errorf("only %d questions were looked at", asked)
	}
}

// mayShow are computed words of an answer that the class page may show, with the reason.
var mayShow = map[string]string{
	"explorers.html December 31, 2024":    "the day of the plans, to be copied into a good sentence",
	"long-story.html 240":                 "the squares, out of which the answer is worked out",
	"long-story.html 0.00048 mm":          "what a life is long, given by the question before",
	"looking-back.html +1 h 16 min":       "one of the choices of another question, and not what settles which dial is wrong",
	"paper-strip.html 0.078 mm":           "the width of the Earth's mark, out of which the answer is worked out",
	"paper-strip.html 27.6 m":             "the length of the strip, out of which the answer is worked out",
	"rocket-day.html 42 m":                "the clear zone, which the caution needs",
	"seasons.html 23.4°":                  "the tilt of the axis, which the lesson teaches",
	"sky-notebook.html Tuesday, April 13": "a day of the diary",
	"sky-notebook.html Tuesday, April 20": "a day of the diary",
	"sky-notebook.html Thursday, May 6":   "a day of the diary",
	"telescope.html 5.0 m":                "how far off the sign hangs",
}

var computedWords = regexp.MustCompile(`(?:<data\b[^>]*|<time\b[^>]*|<span class="fact(?: first)?")>(.*?)</(?:data|time|span)>`)

// contains looks for a value that is not part of a longer number.
func contains(page, value string) bool {
	return regexp.MustCompile(`(^|[^0-9.,])` + regexp.QuoteMeta(value) + `($|[^0-9])`).MatchString(page)
}

func pressedDemo(t *testing.T) (class, staff map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	must(t, "press", "--staff")
	return tree(t, "handbook"), tree(t, "handbook-staff")
}

// runningText is the running text of a page's article, a line for each paragraph.
func runningText(page string) string {
	var out strings.Builder
	var skipped []string // elements that are passed over, the outermost first
	within := false
	for piece := range markup.Pieces([]byte(page)) {
		class, _ := piece.Attribute("class")
		switch {
		case piece.Tag == "article":
			within = !piece.End
		case !within:
		case len(skipped) > 0:
			if piece.Tag == skipped[0] {
				if piece.End {
					skipped = skipped[1:]
				} else if !strings.HasSuffix(string(piece.Raw), "/>") {
					skipped = append(skipped, piece.Tag)
				}
			}
		case piece.Tag == "" || piece.Tag == "!":
			out.WriteString(piece.Text())
		case !piece.End && (slices.Contains([]string{"table", "svg", "figure", "aside", "nav"}, piece.Tag) || slices.Contains([]string{"have-ready", "new-words", "print-link", "side-label"}, class)):
			skipped = append(skipped, piece.Tag)
		case slices.Contains([]string{"p", "li", "h1", "h2", "h3", "h4", "dt", "dd"}, piece.Tag):
			out.WriteString("\n")
		}
	}
	return out.String()
}

// readingGrade is the grade of school at which a text can be read: Kincaid, Fishburne,
// Rogers and Chissom, Research Branch Report 8-75, Naval Technical Training, 1975, from
// memory; syllables are counted by their vowels.
func readingGrade(text string) float64 {
	sentences, words, sounds := 0, 0, 0
	for _, sentence := range regexp.MustCompile(`[.!?:]\s|\n`).Split(text, -1) {
		fields := strings.Fields(sentence)
		if len(fields) < 3 {
			continue
		}
		sentences++
		for _, word := range fields {
			words++
			sounds += syllables(word)
		}
	}
	return 0.39*float64(words)/float64(max(1, sentences)) + 11.8*float64(sounds)/float64(max(1, words)) - 15.59
}

var vowels = regexp.MustCompile(`[aeiouy]+`)

func syllables(word string) int {
	word = strings.Trim(strings.ToLower(word), ".,;:!?“”‘’'\"()")
	n := len(vowels.FindAllString(word, -1))
	if n > 1 && (strings.HasSuffix(word, "e") && !strings.HasSuffix(word, "le") || strings.HasSuffix(word, "ed") && !strings.HasSuffix(word, "ted") && !strings.HasSuffix(word, "ded")) {
		n--
	}
	return max(1, n)
}

// Syllables as dictionaries part them.
func TestSyllables(t *testing.T) {
	for word, want := range map[string]int{"sun": 1, "shadow": 2, "latitude": 3, "the": 1, "planet": 2, "marked": 1, "pointed": 2, "table": 2, "telescope": 3} {
		if got := syllables(word); got != want {
			t.Errorf("%s has %d syllables, want %d", word, got, want)
		}
	}
	if easy, hard := readingGrade("The cat sat on the mat. The sun is hot today. We go out to play."), readingGrade("Considerable astronomical instrumentation necessitates extraordinarily sophisticated environmental stabilization."); easy > 2 || hard < 15 {
		t.Error(fmt.Sprint("grades are ", easy, " and ", hard))
	}
}
