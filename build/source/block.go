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
		{Name: "date", Kind: form.Date, Choices: []string{"auto"}, Assumed: "auto", Doc: `Date of a lesson; "auto" is the first school day after the lessons before it on which everything holds that the lesson asks for.`},
		{Name: "start", Kind: form.Clock, Assumed: "one of term.lesson_times", Doc: "Time of day at which the lesson begins."},
		{Name: "minutes", Kind: form.Whole, Unit: "min", Min: 1, Max: 600, Assumed: "the length of its lesson time", Doc: "Length of the lesson; a longer one runs on through the breaks and lesson times behind it."},
		{Name: "visits", Kind: form.Whole, Min: 1, Max: 12, Default: 1, Doc: "Lesson times of one day that the lesson takes, as when the class comes back to a dial hour by hour."},
		{Name: "needs", Kind: form.Texts, Choices: []string{"sun", "moon", "dark", "dry"}, Doc: "What the lesson needs of the sky and the weather, while it lasts; the calendar sees to it and proof says where it can not be had. The Moon counts when it is up and far enough from the Sun to be found."},
		{Name: "sun_height_deg", Kind: form.Number, Unit: "deg", Min: 0, Max: 89, Assumed: "10°, which clears most roofs", Doc: `How high the Sun must stand; it goes with "sun" or hourly_marks.`},
		{Name: "outside_minutes", Kind: form.Whole, Unit: "min", Min: 1, Max: 600, Assumed: "the whole lesson", Doc: `How long on end pupils are outside and need "sun" or "moon".`},
		{Name: "dark_by", Kind: form.Clock, Doc: "Time of the evening by which it must be dark on the day of the lesson, as for homework under the stars."},
		{Name: "hourly_marks", Kind: form.Span, Doc: `Stretch of the day through which somebody marks a shadow at each full hour, "9:00-14:00"; the Sun must be up high enough each time.`},
		{Name: "follows", Assumed: "the lesson before it", Doc: "File of the earlier lesson that days_after, days_within and same_clock count from."},
		{Name: "days_after", Kind: form.Whole, Unit: "days", Min: 0, Max: 400, Default: 0, Doc: "Days that must lie between that lesson and this one, at least."},
		{Name: "days_within", Kind: form.Whole, Unit: "days", Min: 0, Max: 400, Assumed: "any number", Doc: "Days after that lesson by which this one must be held."},
		{Name: "same_clock", Kind: form.Flag, Default: false, Doc: "No clock change may lie between that lesson and this one, because the watch of one is read against the other."},
		{Name: "if_wet", Choices: []string{"later", "keep", "change", "inside"}, Default: "later", Doc: "What becomes of the lesson when the weather spoils it: it is held in a lesson time later, if one is free; in one that is kept free for it before the next lesson; it changes places with an indoor lesson; or the class stays in, and the lesson says what it does there."},
		{Name: "change_with", Assumed: "the next lesson", Doc: `File of the later lesson without needs that it changes places with; it goes with if_wet = "change".`},
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
			{Name: "source", Choices: []string{"school", "buy", "home"}, Default: "school", Doc: "Where it comes from: the school has it, it is bought, or pupils bring it from home."},
			{Name: "used_up", Kind: form.Flag, Default: false, Doc: "It is gone after the lesson, so that every lesson needs its own; other things serve again."},
			{Name: "price", Kind: form.Number, Min: 0, Max: 1e6, Assumed: "not known", Doc: "What it costs, or a pack of it; in supplies.currency."},
			{Name: "pack", Kind: form.Whole, Min: 1, Max: 100000, Default: 1, Doc: "How many are sold together at that price."},
		}},
	}, sheetKeys()...)
}
