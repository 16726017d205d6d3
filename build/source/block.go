package source

import (
	"slices"
	"sync"
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// The keys of the lesson block; those of its tables bear the table's name.
const (
	BlockTitle          form.Key[string]        = "title"
	BlockSummary        form.Key[string]        = "summary"
	BlockPart           form.Key[string]        = "part"
	BlockOnly           form.Key[string]        = Only // of the lesson, and in the tables kit, activity and vocabulary of a line
	BlockUnless         form.Key[string]        = Unless
	BlockOrder          form.Key[float64]       = "order"
	BlockReader         form.Key[string]        = "reader"
	BlockDraft          form.Key[bool]          = "draft"
	BlockCore           form.Key[bool]          = "core"
	BlockDate           form.Key[place.Date]    = "date"
	BlockEvening        form.Key[bool]          = "evening"
	BlockStart          form.Key[time.Duration] = "start"
	BlockMinutes        form.Key[int]           = "minutes"
	BlockLessons        form.Key[int]           = "lessons"
	BlockVisits         form.Key[int]           = "visits"
	BlockNeeds          form.Key[[]string]      = "needs"
	BlockSunHeightDeg   form.Key[float64]       = "sun_height_deg"
	BlockOutsideMinutes form.Key[int]           = "outside_minutes"
	BlockDarkBy         form.Key[time.Duration] = "dark_by"
	BlockHourlyMarks    form.Key[form.TimeSpan] = "hourly_marks"
	BlockFollows        form.Key[string]        = "follows"
	BlockDaysAfter      form.Key[int]           = "days_after"
	BlockDaysWithin     form.Key[int]           = "days_within"
	BlockSameClock      form.Key[bool]          = "same_clock"
	BlockIfWet          form.Key[string]        = "if_wet"
	BlockChangeWith     form.Key[string]        = "change_with"
	BlockQuestion       form.Key[string]        = "question"
	BlockGoals          form.Key[[]string]      = "goals"
	BlockEvidence       form.Key[[]string]      = "evidence"
	BlockCodes          form.Key[[]string]      = "codes"
	BlockAbsent         form.Key[string]        = "absent"
	BlockGlance         form.Key[[]string]      = "glance"
	BlockGlanceStaff    form.Key[[]string]      = "glance_staff"
	BlockVocabulary     form.Key[[]form.Values] = "vocabulary"
	VocabularyTerm      form.Key[string]        = "term"
	VocabularyMeaning   form.Key[string]        = "meaning"
	VocabularyAlso      form.Key[[]string]      = "also"
	BlockKit            form.Key[[]form.Values] = "kit"
	KitItem             form.Key[string]        = "item"
	KitCount            form.Key[float64]       = "count"
	KitEach             form.Key[string]        = "each"
	KitSharedBy         form.Key[int]           = "shared_by"
	KitSpare            form.Key[int]           = "spare"
	KitSource           form.Key[string]        = "source"
	KitUsedUp           form.Key[bool]          = "used_up"
	KitPrice            form.Key[float64]       = "price"
	KitPack             form.Key[int]           = "pack"
	KitPrint            form.Key[string]        = "print"
	BlockActivity       form.Key[[]form.Values] = "activity"
	ActivityWhat        form.Key[string]        = "what"
	ActivityEach        form.Key[string]        = "each"
	ActivityCount       form.Key[int]           = "count"
	ActivitySeconds     form.Key[int]           = "seconds"
	ActivityPlaces      form.Key[int]           = "places"
	ActivitySharedBy    form.Key[int]           = "shared_by"
	ActivityMinutes     form.Key[int]           = "minutes"
	ActivityAdults      form.Key[int]           = "adults"
	ActivityUses        form.Key[[]string]      = "uses"
)

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
// lesson. The list is the caller's own; the lists within its fields are everybody's.
func LessonBlock() form.Form { return slices.Clone(lessonBlock()) }

// lessonBlock is made once: it is asked for in every lesson.
var lessonBlock = sync.OnceValue(func() form.Form {
	return slices.Concat(form.Form{
		{Key: BlockTitle, Required: true, Doc: "Title of the page."},
		{Key: BlockSummary, Default: "", Doc: "One or two sentences on what happens in it."},
		{Key: BlockPart, Choices: []string{PartLesson, PartStart, PartPage, PartSafety, PartGlossary, PartSources, PartReference}, Default: PartLesson, Doc: "Which part of the handbook the page is."},
		{Key: BlockReader, Choices: openingReaders(), Default: ForClass, Doc: "Who reads the page: the class, or staff alone; the class edition has no page for staff. Within a lesson, headings such as # Teach: staff say it."},
		{Key: BlockOrder, Min: -1000, Max: 1000, Default: 0.0, Doc: "Place in the unit; lessons of equal order follow their file names."},
		{Key: BlockDraft, Default: false, Doc: "The page is not ready: the handbook has no page of it, and no day for it."},
		{Key: BlockCore, Default: false, Doc: "The unit cannot do without this lesson. Where the term is too short, noonbook says which of the others to leave out."},
		{Key: BlockDate, Named: true, Choices: []string{"auto"}, Assumed: "auto", Doc: `Date of a lesson; "auto" is the first school day after the lessons before it on which everything holds that the lesson asks for.`},
		{Key: BlockEvening, Default: false, Doc: "It is the evening at school under the sky. Its night is the one that evening-plan finds, beside the other lessons, which do not wait for it."},
		{Key: BlockStart, Assumed: "one of term.lesson_times", Doc: "Time of day at which the lesson begins."},
		{Key: BlockMinutes, Unit: "min", Min: 1, Max: 600, Assumed: "the length of its lesson time", Doc: "Length of the lesson from beginning to end, breaks included. A longer one also takes the lesson times behind it, as long as the breaks between them are half an hour at most."},
		{Key: BlockLessons, Min: 1, Max: 4, Default: 1, Doc: "Lesson times in a row that it takes, with breaks of half an hour at most, or longer ones where the timetable has no such row. The minutes of its table count without breaks. It does not go with minutes."},
		{Key: BlockVisits, Min: 1, Max: 12, Default: 1, Doc: "Lesson times of one day that the lesson takes, as when the class comes back to a dial hour by hour."},
		{Key: BlockNeeds, Choices: []string{"sun", "moon", "dark", "dry"}, Doc: "What the lesson needs of the sky and the weather, while it lasts; the calendar sees to it and proof says where it cannot be had. The Moon counts when it is up and far enough from the Sun to be found."},
		{Key: BlockSunHeightDeg, Unit: "deg", Min: 0, Max: 89, Assumed: "10°, which clears most roofs", Doc: `How high the Sun must be, as seen; it goes with "sun" or hourly_marks.`},
		{Key: BlockOutsideMinutes, Unit: "min", Min: 1, Max: 600, Assumed: "the whole lesson", Doc: `How long on end pupils are outside and need "sun" or "moon".`},
		{Key: BlockDarkBy, Doc: "Time of the evening by which it must be dark on the day of the lesson, as for homework under the stars."},
		{Key: BlockHourlyMarks, Doc: `Stretch of the day through which somebody marks a shadow at each full hour, "9:00-14:00"; the Sun must be up high enough each time.`},
		{Key: BlockFollows, Assumed: "the lesson before it", Doc: "File of the earlier lesson that days_after, days_within and same_clock count from."},
		{Key: BlockDaysAfter, Unit: "days", Min: 0, Max: 400, Default: 0, Doc: "Days that must lie between that lesson and this one, at least."},
		{Key: BlockDaysWithin, Unit: "days", Min: 0, Max: 400, Assumed: "any number", Doc: "Days after that lesson by which this one must be held."},
		{Key: BlockSameClock, Default: false, Doc: "No clock change may lie between that lesson and this one, because the watch of one is read against the other."},
		{Key: BlockIfWet, Choices: []string{"later", "keep", "change", "inside"}, Default: "later", Doc: "What becomes of the lesson when the weather spoils it: it is held in a lesson time later, if one is free; in one that is kept free for it before the next lesson; it changes places with an indoor lesson; or the class stays in, and the lesson says what it does there."},
		{Key: BlockChangeWith, Assumed: "the next lesson", Doc: `File of the later lesson without needs that it changes places with; it goes with if_wet = "change".`},
		{Key: BlockQuestion, Assumed: "its summary", Doc: "The question that the lesson asks, for unit-map."},
		{Key: BlockGoals, Doc: "What pupils can do afterwards."},
		{Key: BlockEvidence, Doc: "What shows that pupils can do it: something that they say, make or write. For unit-map."},
		{Key: BlockCodes, Doc: "Codes of the school's own curriculum that the lesson is for, as its papers write them; code-list counts them."},
		{Key: BlockAbsent, Default: "", Doc: "What a pupil does instead who was away; on the day sheet and in unit-map."},
		{Key: BlockGlance, Doc: `Facts for the margin, each written as in a sentence: "place-facts.local_noon".`},
		{Key: BlockGlanceStaff, Doc: "Facts that only staff see: in the margin of their page, and as the numbers of the day sheet."},
		{Key: BlockVocabulary, Doc: "New words; the glossary gathers them.", Fields: append(form.Form{
			{Key: VocabularyTerm, Required: true, Doc: "The word."},
			{Key: VocabularyMeaning, Required: true, Doc: "What it means, in one sentence."},
			{Key: VocabularyAlso, Doc: "Other names of it; the glossary shows them, and the finder leads from them to the word."},
		}, standingKeys("the word")...)},
		{Key: BlockKit, Doc: "What to have ready.", Fields: append(form.Form{
			{Key: KitItem, Required: true, Doc: "The thing."},
			{Key: KitCount, Min: 0, Max: 1000, Default: 1.0, Doc: "How many."},
			{Key: KitEach, Choices: []string{"pupil", "group", "class"}, Default: "class", Doc: "For whom."},
			{Key: KitSharedBy, Min: 1, Max: 1000, Assumed: "nobody shares", Doc: `How many groups or pupils share that count, rounded up: 3 with each = "group" is one for three groups. It goes with each = "group" or "pupil".`},
			{Key: KitSpare, Min: 0, Max: 1000, Default: 0, Doc: "How many more for the whole class."},
			{Key: KitSource, Choices: []string{"school", "buy", "home"}, Default: "school", Doc: "Where it comes from: the school has it, it is bought, or pupils bring it from home."},
			{Key: KitUsedUp, Default: false, Doc: "It is gone after the lesson, so that every lesson needs its own; other things serve again."},
			{Key: KitPrice, Min: 0, Max: 1e6, Assumed: "not known", Doc: "What it costs, or a pack of it; in supplies.currency."},
			{Key: KitPack, Min: 1, Max: 100000, Default: 1, Doc: "How many are sold together at that price."},
			{Key: KitPrint, Assumed: "it is not printed", Doc: `What it is printed from: a placeholder whose sheets this lesson shows, "pupil-sheet" or "card". The sheets then say how many copies the class needs, and print-list lists them. Of several things from one placeholder the first is its first sheet, the second its second, and so on.`},
		}, standingKeys("the thing")...)},
		{Key: BlockActivity, Doc: "What pupils do in turns, so that they may have to queue; proof works out for the school's class whether there is time for it.", Fields: append(form.Form{
			{Key: ActivityWhat, Required: true, Doc: "What is done."},
			{Key: ActivityEach, Choices: []string{"pupil", "group", "class"}, Required: true, Doc: "Who takes turns."},
			{Key: ActivityCount, Min: 1, Max: 1000, Default: 1, Doc: "Turns that each takes."},
			{Key: ActivitySeconds, Unit: "s", Min: 1, Max: 36000, Required: true, Doc: "How long one turn takes, with stepping up and making room."},
			{Key: ActivityPlaces, Min: 1, Max: 1000, Default: 1, Doc: "Turns that can be taken at once."},
			{Key: ActivitySharedBy, Min: 1, Max: 1000, Assumed: "places says how many", Doc: "How many groups or pupils share a place, rounded up, where the places grow with the class; it stands in for places."},
			{Key: ActivityMinutes, Unit: "min", Min: 1, Max: 600, Assumed: "the whole lesson", Doc: "Time that the lesson gives it."},
			{Key: ActivityAdults, Min: 0, Max: 10, Default: 0, Doc: "Adults who must be at each place."},
			{Key: ActivityUses, Doc: "Things of this lesson's kit that it takes, each by the first words of its item."},
		}, standingKeys("the activity")...)},
	}, standingKeys("the whole lesson"), sheetKeys())
})
