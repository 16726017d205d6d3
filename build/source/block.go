package source

import "noonbook/build/form"

// Parts of the handbook that a page can be.
const (
	PartStart     = "start"     // the page that a substitute opens first
	PartLesson    = "lesson"    // a lesson, dated, on the dial of the cover
	PartPage      = "page"      // any other page
	PartSafety    = "safety"    // followed by every caution of the unit
	PartGlossary  = "glossary"  // followed by the vocabulary of every lesson
	PartSources   = "sources"   // followed by the sources of every number
	PartReference = "reference" // followed by the settings and placeholders
)

// gathering are the parts that every handbook has; where no file of the unit
// is that part, noonbook's own page stands in.
var gathering = []string{PartSafety, PartGlossary, PartSources, PartReference}

// LessonBlock returns the form of the lesson block, the first block of every
// lesson.
func LessonBlock() form.Form {
	return append(form.Form{
		{Name: "title", Required: true, Doc: "Title of the page."},
		{Name: "summary", Default: "", Doc: "One or two sentences on what happens in it."},
		{Name: "part", Choices: []string{PartLesson, PartStart, PartPage, PartSafety, PartGlossary, PartSources, PartReference}, Default: PartLesson, Doc: "Which part of the handbook the page is."},
		{Name: "order", Kind: form.Number, Min: -1000, Max: 1000, Default: 0.0, Doc: "Place in the unit; lessons of equal order follow their file names."},
		{Name: "date", Kind: form.Date, Choices: []string{"auto"}, Assumed: "auto", Doc: `Date of a lesson; "auto" is the next school day after the lesson before it.`},
		{Name: "start", Kind: form.Clock, Assumed: "the first of term.lesson_times", Doc: "Time of day at which the lesson begins."},
		{Name: "minutes", Kind: form.Whole, Unit: "min", Min: 1, Max: 600, Assumed: "the length of the first of term.lesson_times", Doc: "Length of the lesson."},
		{Name: "needs", Kind: form.Texts, Choices: []string{"sun", "dark", "dry"}, Doc: "What the lesson needs of the sky and the weather; proof compares it with the date."},
		{Name: "goals", Kind: form.Texts, Doc: "What pupils can do afterwards."},
		{Name: "glance", Kind: form.Texts, Doc: `Facts for the margin, each written as in a sentence: "place-facts.local_noon".`},
		{Name: "vocabulary", Kind: form.Tables, Doc: "New words; the glossary gathers them.", Fields: form.Form{
			{Name: "term", Required: true, Doc: "The word."},
			{Name: "meaning", Required: true, Doc: "What it means, in one sentence."},
		}},
		{Name: "kit", Kind: form.Tables, Doc: "What to have ready.", Fields: form.Form{
			{Name: "item", Required: true, Doc: "The thing."},
			{Name: "count", Kind: form.Number, Min: 0, Max: 1000, Default: 1.0, Doc: "How many."},
			{Name: "each", Choices: []string{"pupil", "group", "class"}, Default: "class", Doc: "For whom."},
			{Name: "spare", Kind: form.Whole, Min: 0, Max: 1000, Default: 0, Doc: "How many more for the whole class."},
		}},
	}, sheetKeys()...)
}
