package typeset

import "html/template"

// The data of the kinds of pages. A string that depends on the school is a mark
// that the press replaces; marks may stand in text only.

// A Shell is what every page carries.
type Shell struct {
	Words    *Words
	Title    string
	Summary  string
	School   string        // mark
	Crest    template.HTML // mark: the school's, or nothing
	Resource template.HTML // mark: the page described for machines
	Unit     string        // mark
	Staff    bool          // the staff edition
	Early    bool          // the script fills the first screen, which is shown when it has
}

// A Contents leads to every page that is in the list of pages.
type Contents struct {
	Lessons []Link // with the page to start with
	All     string // says that the cover has more lessons; "" where these are all
	Others  []Link
}

// A CoverPage is the first page of the handbook.
type CoverPage struct {
	Shell
	Contents
	Lead  string        // mark: the unit's summary
	Line  string        // mark: class and dates
	Here  string        // mark: where the numbers hold
	Dial  template.HTML // mark: with noon up, for a narrow page and for paper
	Fan   template.HTML // mark: turned to the list
	Rows  string        // class of the list, by the height of its rows
	Days  []CoverLesson
	Start *Link // nil for none

	// What the handbook in one file holds, for its print.
	Bound   []BoundPage
	Printed []Link // sheets at true size, with the page that they belong to
}

// A BoundPage is a page of the handbook in one file with the sheets that follow it.
type BoundPage struct {
	Link
	Sheets string // their names, "" for none
}

// A CoverLesson is a line of the cover's list, with what the day of its lesson asks for.
type CoverLesson struct {
	Link
	Weekday string        // mark: "Wednesday 28 April"
	Hours   template.HTML // mark: from when to when
	Reserve template.HTML // mark: the time kept for bad weather, or nothing
	Teach   string        // where in the staff's page the class's part begins, "" for nowhere
	Prints  []Link
}

// A LessonPage is the page of a lesson, or of another file of the unit.
type LessonPage struct {
	Shell
	Contents
	Arc            template.HTML
	Previous, Next *Link
	Number         string // of a lesson in the unit, "2"; "" for other pages
	When           string // mark: the lesson's day and time
	Groups         string // mark
	Glance         []Labelled
	Prints         []Link // the printables of the page
	Room           string // file of the lesson for a projector, "" for none
	Goals          []string
	Kit            []string // marks
	Terms          []Labelled
	Parted         bool          // the lesson is written in openings
	Openings       []Labelled    // the names of those, and which they are
	Head, Before   template.HTML // what of the lesson comes before the goals, and between these and the kit
	Body           template.HTML
	Last           template.HTML // what of the lesson comes after the new words
}

// A StartPage lists the sheets of all lessons.
type StartPage struct {
	LessonPage
	Sheets []Link
}

// A SafetyPage repeats the cautions of all lessons.
type SafetyPage struct {
	LessonPage
	Every template.HTML // mark: those of computed blocks, each once
	Own   []Gathered    // those that lessons have words of their own for
}

// Gathered is what another page says.
type Gathered struct {
	Title, File string // of that page
	Body        template.HTML
}

// A GlossaryPage explains the words of all lessons.
type GlossaryPage struct {
	LessonPage
	Letters []Link // to the first term of each
	Entries []Term
}

// A Term is a word of the glossary.
type Term struct {
	Term, Meaning string
	Also          []string // its other names
	Lesson, File  string
	Anchor        string
	Letter        string // with which it begins, where the term before begins with another
	Odd           bool   // the last of a letter that has an odd number of them
}

// A SourcesPage names what the numbers rest on.
type SourcesPage struct {
	LessonPage
	Cited []Cited
}

// Cited is a placeholder with what its numbers rest on.
type Cited struct {
	Title   string
	Sources []string
}

// A ReferencePage explains every key and every placeholder.
type ReferencePage struct {
	LessonPage
	Reference
}

// A Reference is what may be written in the files of a unit.
type Reference struct {
	Settings, Lesson []KeyGroup
	Days             []Fact // ways to name a day, and what they are
	Cautions         []Fact // by name, with their words
	Shared           []Key  // arguments that many placeholders take alike
	Topics           []Topic
}

// A KeyGroup is the keys of one table of a file.
type KeyGroup struct {
	Title, Anchor string
	Names         []string // of its keys, within the table
	Keys          []Key
}

// A Key is a key of a file or an argument.
type Key struct{ Name, Allowed, Default, Doc string }

// A Topic is placeholders that have to do with one another.
type Topic struct {
	Title, Anchor string
	Placeholders  []Placeholder
}

// A Placeholder is one of the catalogue.
type Placeholder struct {
	Name, Summary string
	Arguments     []Key
	Shared        []string // arguments that many take alike
	Settings      []string
	Cautions      []string // names of those that it brings
	Facts         []Fact
}

// A Fact is what a placeholder puts in a sentence, or a caution.
type Fact struct{ Name, Unit, Doc string }

// A PrintablePage holds sheets at true size.
type PrintablePage struct {
	Shell
	Lesson Link          // the page that it belongs to
	Copies string        // mark, "" where nobody knows how many
	Body   template.HTML // mark
}

// A DaySheet is the page from which a substitute teaches a lesson.
type DaySheet struct {
	Shell
	Lesson Link
	When   string // mark
	Groups string // mark
	Front  []SheetPart
	Back   []SheetPart
}

// Kind is the word for such a sheet, which the head of each of its papers has.
func (DaySheet) Kind() string { return "day-sheet.name" }

// A SheetPart is one part of a day sheet: what the lesson says, or a blank.
type SheetPart struct {
	Name, Title string // "" for a section of the lesson, whose body has its heading
	Numbers     []Labelled
	Body        template.HTML
	Kit         []string // marks
	Prints      []Link
	Blank       []struct{} // ruled lines, where the lesson says nothing
}

// A CardSheet holds steps of a lesson, to copy for the groups.
type CardSheet struct {
	Shell
	Lesson Link
	Copies string // mark, "" where nobody knows how many
	Body   template.HTML
}

// Kind is the word for such a sheet, which the head of each of its papers has.
func (CardSheet) Kind() string { return "card-sheet.name" }

// A PupilSheet is the page on which a pupil writes.
type PupilSheet struct {
	Shell
	Lesson Link
	Copies string // mark, "" where nobody knows how many
	Body   template.HTML
}

// Kind is the word for such a sheet, which the head of each of its papers has.
func (PupilSheet) Kind() string { return "pupil-sheet.name" }

// A Room is a lesson for a class before a projector, one thing at a time.
type Room struct {
	Shell
	Lesson Link
	Number string // of the lesson in the unit
	Body   template.HTML
}

// Kind is the word for such a page, which the head of each of its papers has.
func (Room) Kind() string { return "room.name" }

// Labelled is a value with what it is called.
type Labelled struct{ Label, Value string }

// A Link leads to another page. Note is its date or what it is for.
type Link struct {
	Number, Title, File, Summary string
	Note                         string // mark
	Day, Pupil, Room             string // its sheets, "" for none
	Here                         bool   // the page itself
}
