package concordance

import (
	"strings"
	"unicode/utf8"
)

// A language says how its words are brought to a stem: letters are folded, then
// each step takes off the first of its endings that fits. The page does the same
// with the same tables, which it finds in the concordance, so that a word that is
// asked for meets the word that is printed.
//
// Partial: the endings are a few that matter for looking things up (plurals,
// participles, feminine forms), chosen by hand; common practice, no source. Two
// words may share a stem (plan, planes); a stem is never printed.
type language struct {
	Fold  map[string]string `json:"fold"`
	Steps [][]ending        `json:"steps"`
}

// An ending becomes With where at least Left letters stay before it.
type ending struct {
	Off  string `json:"off"`
	With string `json:"with"`
	Left int    `json:"left"`
}

// folded pairs letters with what they are looked up as.
const folded = "àa áa âa ãa äa åa æae çc èe ée êe ëe ìi íi îi ïi ñn òo óo ôo õo öo øo œoe ùu úu ûu üu ýy ÿy ßss"

func languageOf(code string) language {
	l := language{Fold: map[string]string{}}
	for _, pair := range strings.Fields(folded) {
		_, size := utf8.DecodeRuneInString(pair)
		l.Fold[pair[:size]] = pair[size:]
	}
	switch code {
	case "fr":
		l.Steps = french
	case "en":
		l.Steps = english
	}
	return l
}

var english = [][]ending{
	{{"lenses", "lens", 0}, {"lens", "lens", 0}, {"ies", "y", 2}, {"sses", "ss", 1}, {"shes", "sh", 1}, {"ches", "ch", 1}, {"xes", "x", 1}, {"ss", "ss", 0}, {"us", "us", 0}, {"is", "is", 0}, {"s", "", 3}},
	{{"ing", "", 4}, {"ied", "y", 2}, {"ed", "", 4}, {"ly", "", 4}},
	{{"bb", "b", 2}, {"dd", "d", 2}, {"gg", "g", 2}, {"mm", "m", 2}, {"nn", "n", 2}, {"pp", "p", 2}, {"rr", "r", 2}, {"tt", "t", 2}},
	{{"e", "", 4}},
}

// The endings of French are written without accents, which are folded first.
var french = [][]ending{
	{{"eaux", "eau", 1}, {"aux", "al", 2}, {"s", "", 3}, {"x", "", 4}},
	{{"ement", "", 4}, {"ent", "", 4}, {"ant", "", 4}, {"ee", "", 3}, {"er", "", 4}, {"ez", "", 4}, {"e", "", 3}},
	{{"nn", "n", 2}, {"tt", "t", 2}, {"ll", "l", 2}, {"ss", "s", 2}},
	{{"e", "", 3}},
}

// stem brings a word in lower case to its stem.
func (l language) stem(word string) string {
	var b strings.Builder
	for _, c := range word {
		if with, ok := l.Fold[string(c)]; ok {
			b.WriteString(with)
		} else {
			b.WriteRune(c)
		}
	}
	word = b.String()
	for _, step := range l.Steps {
		for _, e := range step {
			if rest, ok := strings.CutSuffix(word, e.Off); ok && utf8.RuneCountInString(rest) >= e.Left {
				word = rest + e.With
				break
			}
		}
	}
	return word
}
