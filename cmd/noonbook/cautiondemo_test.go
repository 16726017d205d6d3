package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"noonbook/content"
)

// A written is one caution block of the demo's pages.
type written struct {
	file   string // of the lesson, without its ending
	words  said
	step   string // words of the step that it stands before
	pupils bool   // the pupils' sheet asks something of that step
}

// demoCautions are all caution blocks of the demo, page by page.
var demoCautions = []written{
	{"0-start-here", says("Nobody looks at the Sun, for any reason, through anything or with bare eyes", "An adult is with the class whenever it is outside", "Craft knives are for adults", "Lenses stay in their closed box", "The school's own rules come before this handbook"), "Read it once before you go outside", false},
	{"1-shadow-clock", says("Pass scissors handles first", "Sit down to cut", "An adult cuts what needs a knife", "Fold tape over each top corner: it is at eye height when you bend over", "Our school's rules come first"), "Glue the printed gnomon on thin card", false},
	{"1-shadow-clock", dialSun, "Hold the compass flat at your belt", false},
	{"2-read-the-dial", dialSun, "Put your dial beside the chalk line", false},
	{"2-read-the-dial", dialKeepers, "Wait for the whole minute", false},
	{"2-clocks-before-clocks", says("Water and sand on the floor are slippery", "wipe or sweep up at once", "Never run", "Keep water away from sockets and computers, and do not drink it", "Do not rub: tell your teacher, and rinse", "Our school's rules come first"), "Stick a strip of paper tape up the wall", false},
	{"2-clocks-before-clocks", says("Never look at the Sun, not for a moment and not through anything: it damages your eyes without pain", "Read the shadow with your back to it", "Go in pairs. Tell an adult when you leave and when you are back", "where an adult can see you", "Our school's rules come first"), "Two of you read the dial", false},
	{"3-paper-strip", floorCare, "The Sun is the first edge of the first whole square", false},
	{"3-paper-strip", pegCare, "Put a cone where the Sun goes", true},
	{"3-two-scales", smallParts, "Choose a ball for the Earth", false},
	{"4-long-story", floorCare, "The first edge is the beginning", false},
	{"5-our-sky", sunCare, "It rises in the", false},
	{"6-telescope", says("Never look at the Sun through a lens or throw its light on anything", "it blinds and lights fires at once", "Work with the lamp, indoors", "Keep lenses out of sunshine and off window sills", "Into its bag", "School rules come first"), "hold the lens upright by its edge", true},
	{"6-telescope", says("look through lenses indoors only, away from windows", "Never point them at the Sun or near it", "Never point them at a window, at the sky or out of the door", "No viewer, dark glass or filter makes that safe", "after sunset only, with an adult beside you", "Caps on, lenses into bags", "School rules come first"), "Look through both", true},
	{"6-telescope", says("Cut sitting down. Pass scissors handles first", "Never saw the tubes", "Tape every cut edge before an eye comes near it", "School rules come first"), "Tape the edges of the wide tube", false},
	{"6-telescope", says("The telescope goes outside after sunset only, when the Sun is wholly down", "A parent, a guardian or a teacher is beside it", "Cap on until then", "Never go out alone", "away from traffic and water, and tell somebody", "it never stands at a window", "The school's rules for evenings come first"), "Lean on a wall or a fence", false},
	{"7-back-to-the-dial", dialSun, "Put the plate on its board", false},
	{"9-rocket-day", says("Cut sitting down. Pass scissors handles first", "nothing hard, sharp or heavy", "Never aim a rocket at anyone", "Keep glue from eyes and mouth", "School rules come first"), "Cut out the bodies", false},
	{"9-rocket-day", says("Never look at the Sun", "Never sight towards it or follow a rocket towards it: look down and wait", "Look up only with the Sun behind you and your shadow in front", "our school's rules"), "Look along the top of the straw", false},
	{"9-rocket-day", says("An adult is in charge of the launcher and gives the count", "only this adult and the group on turn are inside the cones", "Glasses on, all of you. Closed shoes", "one foot, flat, on the side of the bottle", "Never jump, pump or blow", "Never lean over the nose", "Never aim the pipe at anyone", "Look at the bottle, not up", "look down and cover your head", "No launch at thunder, in strong wind, or with a person or animal inside the cones", "School rules and local rules come first"), "The loader slides the rocket on from the side", false},
	{"10-moon-phases", says("An adult covers windows", "the school's own steps", "never from a chair, a table or a window sill"), "Push each ball on its stick", false},
	{"10-moon-phases", says("nobody can knock it over", "tape its cable down", "Never use a cut or loose lead", "Let the lamp cool before you pack it", "The school's rules for electrical things come first"), "Test lamp, lead and torch", false},
	{"10-moon-phases", says("Two carry a table", "Nobody runs or climbs", "Keep the way to the door free"), "Move tables, chairs and bags", false},
	{"10-moon-phases", says("Never look at the Sun, not for a moment and not through anything", "Your teacher finds the Moon first", "Never search beside the Sun", "No lens, no binoculars", "a wall or a tree hides the Sun", "Our school's rules come first"), "Hold the ball beside the Moon", false},
	{"10-moon-phases", says("The lamp gets hot and its cable trips people", "Only the adult goes near or touches it", "never at the bulb", "Nobody walks in the dark", "Keep sticks away from eyes", "Dizzy? Sit down", "bright or flickering light", "Our school's rules come first"), "Carriers, stand three big steps from the lamp", false},
	{"10-more-about-the-moon", says("Look for it only from home, if the family says yes, and with an adult", "Wait until the Sun is wholly down", "nobody looks toward the Sun", "No binoculars before sunset", "The family's rules come first"), "Look when a thin Moon is up", false},
	{"10-more-about-the-moon", says("Nobody looks at the Sun on that day either, eclipsed or not", "The school's own rules come first"), "Venus has phases too", false},
	{"10-more-about-the-moon", says("Ask first about allergies", "the school's rules for food"), "More quick fixes", false},
	{"11-sky-notebook", says("Never look at the Sun, not for a moment and not through anything", "Never search for the Moon beside the Sun", "Your teacher finds it first", "Stand in the shade of a wall or a tree that hides the Sun", "No lenses, no binoculars", "Stay with the class", "our school's rules come first"), "Draw a level line over two pages", false},
	{"11-sky-notebook", says("Look from home only if your family says yes", "an adult comes along", "away from traffic and water", "Nobody gets up or stays up for it", "Never look toward the Sun, not even when it is low", "No telescope or binoculars before sunset", "Family and school rules come first"), "Choose a sky keeper for each week", false},
	{"11-evening-sky", says("Go out in the dark only if your family says yes, and with an adult", "away from traffic and water", "Nobody is left alone", "Point nothing at the sky before the Sun has wholly set, because the Sun blinds", "If the school goes out at night, its own rules come first"), "Hold the chart overhead", false},
	{"11-evening-sky", says("Pass scissors with the handles first and sit down to cut", "Only an adult cuts the window with a knife, on a mat", "The school's own rules come first"), "Glue them on card and cut them out", false},
	{"11-evening-at-school", says("only with the school's leave and a yes from each family", "Walk the ground by day", "away from road and water", "Count the pupils at each station and at the gate", "One adult stays free", "Each child goes home with a grown-up whom the family has named", "after the Sun has wholly set", "No laser pointers", "The school's own rules for evenings and for the way home come first"), "Send the letter by", false},
	{"11-evening-at-school", says("Stay with your adult and your group", "Never run in the dark, and never walk off alone", "Point nothing at the sky before the Sun has wholly set: the Sun blinds", "An adult points the telescope", "No laser pointers: they blind people, and pilots", "Cold, tired or afraid? Say so", "Nobody goes home alone: your grown-up fetches you", "Our school's rules come first"), "Look with bare eyes first", false},
	{"11-evening-at-school", says("Wait until the Sun has wholly set", "An adult points the telescope", "never walk off alone", "Our school's rules come first"), "Find the edge between light and dark", false},
	{"12-explorers", says("The rover walks, with open eyes", "stops at once when anybody says stop", "Nobody is blindfolded"), "One pupil is the rover", true},
	{"12-face-of-the-moon", says("Go out in the dark only if your family says yes, and with an adult", "away from traffic and water", "Nobody is left alone", "look for the Moon with bare eyes only, never beside the Sun, and never with binoculars or a telescope", "They stay packed until the Sun has wholly set, because the Sun blinds", "Never look at the Sun through anything", "The school's own rules come first"), "Look with bare eyes. Which dark seas", false},
	{"13-worlds", says("Craft knives, saws and hot glue are for adults", "Pass scissors handles first, and sit down to cut", "hung by an adult", "No dry ice, no acid and no fire", "The school's own rules come first"), "the question, large, on top", false},
	{"14-fair-of-worlds", says("Nobody stands on chairs or tables", "hung by an adult", "Ways and doors stay free", "without the school's permission"), "Say your question first", false},
	{"15-seasons", says("An adult covers windows", "the school's own steps", "never from a chair, a table or a window sill"), "Choose the wall to which all axes will lean", false},
	{"15-seasons", says("nobody can knock it over", "tape its cable down", "Never use a cut or loose lead", "Let the lamp cool before you pack it", "The school's rules for electrical things come first"), "Test lamp, lead and torches", false},
	{"15-seasons", says("Two carry a table", "Nobody runs or climbs", "Keep the way to the door free"), "Move tables, chairs and bags", false},
	{"15-seasons", says("The lamp gets hot and its cable trips people", "Only the adult goes near or touches it", "never at the bulb", "Nobody walks in the dark", "Keep sticks away from eyes", "Dizzy? Sit down", "bright or flickering light", "Our school's rules come first"), "two big steps from the lamp", false},
	{"15-seasons", says("Never shine a torch into anybody's eyes"), "Lay squared paper down", false},
	{"15-more-about-the-seasons", says("Only the adult carries the lamp", "with the cable behind", "The school's rules for electrical things come first"), "holds the ball on a swivel chair", false},
	{"17-for-families", says("Nobody looks at the Sun, not even for a moment, and never through binoculars, a telescope, a lens or a camera", "No lens is left in sunlight or on a window sill", "Evenings are for children with an adult beside them", "please do not build a launcher at home", "see a doctor on the same day"), "soft two-litre bottles, empty and rinsed", false},
}

// forStaffAlone are the pages of the demo that its class edition must not have.
var forStaffAlone = map[string]bool{"start-here": true, "our-weeks": true, "curriculum": true, "more-about-dials": true, "more-about-exploring": true}

// dialSun is what the lessons at the dial tell the class of the Sun, in its own words.
var dialSun = says("Never look at the Sun, not for a moment and not through anything: it damages your eyes without pain", "Dark glasses and camera screens do not make it safe", "Keep your back to it and watch shadows", "Never look along the style towards the sky", "For hats and sun cream our school's rules come first")

// dialKeepers is what those are told who go out alone.
var dialKeepers = says("Hour keepers go in pairs", "Tell an adult when you leave, and again when you are back", "Stay where an adult can see you", "Our school's rules about leaving the room come first")

// computedInDemo are the cautions of the demo's computed blocks, by page.
var computedInDemo = map[string][]said{
	"paper-strip": {floorCare, pegCare},
	"two-scales":  {smallParts},
	"long-story":  {floorCare},
	"our-results": {lensCare},
	"our-sky":     {sunCare, moonByDay, planetsAtDusk, sunEclipsed, viewers, moonEclipsed},

	"more-about-the-seasons": {bareLamp, darkRoom},
}

// computedForStaff are those of blocks that only the staff edition has: an adult cuts.
var computedForStaff = map[string][]said{
	"paper-strip":          {scissors},
	"evening-at-school":    {familyEvening},
	"worlds":               {scissors},
	"telescope":            {lensCare, telescopeCare},
	"rocket-day":           {launcher, sightCare, clearZone},
	"clocks-before-clocks": {scissors},
	"more-about-dials":     {sunCare, scissors},
	"more-about-lenses":    {lensCare, telescopeCare},
	"more-about-rockets":   {sightCare},
}

// outdoorLines are what the day sheets of the demo say of the world outside, by
// sheet and part (none is the whole sheet): whom to ask, where to stand, who watches, what not to look at.
var outdoorLines = []struct {
	sheet, part string
	lines       said
}{
	{"shadow-clock", "sections", says("level, away from cars and steel")},
	{"shadow-clock", "care", dialSun},
	{"shadow-clock", "care", says("School rules come first", "All cautions of the unit together: Safety")},
	{"read-the-dial", "care", dialSun},
	{"read-the-dial", "care", dialKeepers},
	{"back-to-the-dial", "care", dialSun},
	{"paper-strip", "care", pegCare},
	{"telescope", "care", says("outside after sunset only", "Never go out alone")},
	{"moon-phases", "care", says("Your teacher finds the Moon first", "Never search beside the Sun", "a wall or a tree hides the Sun")},
	{"sky-notebook", "care", says("Never search for the Moon beside the Sun", "Your teacher finds it first", "a wall or a tree that hides the Sun")},
	{"sky-notebook", "care", says("an adult comes along", "away from traffic and water", "Never look toward the Sun")},
	{"long-story", "care", floorCare},
}

// safetyRules are what the demo's own page of safety must say, besides what it
// gathers.
var safetyRules = []said{
	says("The rules of our school come first, then local codes and the law, and the advice of people who are licensed for the work", "If you cannot do a step safely today, leave it out"),
	says("Never look at the Sun, not even for a moment, and never through a lens, binoculars, a telescope or a camera", "Smoked glass, dark glasses and exposed film do not protect", "ISO 12312-2", "never used with a lens"),
	says("A lens in sunlight lights fires", "not on the Sun", "a telescope is used after sunset only, with an adult beside it", "no viewer, no dark glass, no film, no filter"),
	says("never searches near the Sun", "Bare eyes only"),
	says("A lamp without a shade gets hot", "Nobody walks in the dark"),
	says("Craft knives are for adults"),
	says("Only an adult makes a hole in a bottle or cuts one", "never held in the hand", "No hot needle: hot plastic burns", "A wet floor is slippery", "away from sockets and cables", "Use washed play sand that is dry", "Do not rub: rinse with clean water and tell the adult"),
	says("An adult goes out with the class and stays. Count out, count in", "Keep off roads, car parks, water and slopes", "At the first thunder everyone goes indoors", "ANSI/ISEA Z87.1", "stamped, never pumped up"),
	says("put a warden at each end"),
	says("No pupil goes out alone for this unit", "away from traffic and water"),
	says("first-aid and emergency rules", "have a doctor see the eye on the same day"),
	says("None of these bodies has looked at this handbook"),
}

func stem(file string) string { return file[strings.Index(file, "-")+1:] }

// Each caution block of the demo stands on its page before the step that it
// belongs to, in both editions and in the single file, and again on the page of
// safety, on the day sheet and, where pupils are asked about the step, on theirs.
func TestDemoCautionsStandBeforeTheirSteps(t *testing.T) {
	unraced(t)
	demo := t.TempDir() // as the program holds it
	if err := os.CopyFS(demo, content.Files()); err != nil {
		t.Fatal(err)
	}
	h := pressCare(t, demo, "en")
	t.Run("every block", func(t *testing.T) { demoBlocksAreListed(t, demo) })
	titles := map[string]string{}
	heading := regexp.MustCompile(`(?s)<h1>(?:<span class="lesson-number">.*?</span>)?(.*?)</h1>`)
	editions := map[string]map[string]string{"class": h.class, "staff": h.staff, "class, single file": h.bound[0], "staff, single file": h.bound[1]}
	for name, text := range h.staff {
		if m := heading.FindStringSubmatch(text); m != nil {
			titles[strings.TrimSuffix(name, ".html")] = strings.TrimSpace(m[1])
		}
	}
	for _, c := range demoCautions {
		page := stem(c.file)
		t.Run(page, func(t *testing.T) {
			alone, prepare := c.readers(t, demo)
			for edition, pages := range editions {
				if alone && strings.HasPrefix(edition, "class") {
					if careWith(pages[page+".html"], c.words) != "" {
						t.Errorf("%s: a caution for staff alone is shown: %q", edition, c.words.en[0])
					}
					continue
				}
				c.beforeStep(t, edition+", page", pages[page+".html"])
				if lacks := missing(gatheredFrom(pages, titles[page]), "en", []said{c.words}); lacks != nil {
					t.Errorf("%s: the page of safety lacks %q", edition, lacks)
				}
				if pupil := pages["pupil-"+page+".html"]; c.pupils && careWith(pupil, c.words) == "" {
					t.Errorf("%s: the pupils' sheet lacks the caution %q", edition, c.words.en[0])
				}
			}
			if h.staff["day-"+page+".html"] != "" && !prepare { // what is done days before is not on the sheet of the day
				for edition, pages := range map[string]map[string]string{"staff": h.staff, "staff, single file": h.bound[1]} {
					c.beforeStep(t, edition+", day sheet", pages["day-"+page+".html"])
				}
			}
		})
	}
	for page := range forStaffAlone {
		for _, edition := range []string{"class", "class, single file"} {
			if editions[edition][page+".html"] != "" {
				t.Errorf("the page %s is in the edition %s", page, edition)
			}
		}
		if h.staff[page+".html"] == "" {
			t.Errorf("the staff edition lacks the page %s", page)
		}
	}
	for page, cautions := range computedInDemo {
		t.Run("computed on "+page, func(t *testing.T) {
			for edition, pages := range editions {
				if strings.HasPrefix(edition, "class") && h.class[page+".html"] == "" { // a page for staff
					continue
				}
				for _, s := range cautions {
					if careWith(pages[page+".html"], s) == "" {
						t.Errorf("%s: the page lacks the caution %q", edition, s.en[0])
					}
					if missing(gatheredFrom(pages, titles[page]), "en", []said{s}) != nil {
						t.Errorf("%s: the page of safety lacks the caution %q", edition, s.en[0])
					}
					if day, ok := pages["day-"+page+".html"]; ok && careWith(day, s) == "" {
						t.Errorf("%s: the day sheet lacks the caution %q", edition, s.en[0])
					}
				}
			}
		})
	}
	for page, cautions := range computedForStaff {
		t.Run("computed for staff on "+page, func(t *testing.T) {
			for edition, pages := range map[string]map[string]string{"staff": h.staff, "staff, single file": h.bound[1]} {
				for _, s := range cautions {
					if careWith(pages[page+".html"], s) == "" {
						t.Errorf("%s: the page lacks the caution %q", edition, s.en[0])
					}
				}
			}
		})
	}
	t.Run("outdoor lines", func(t *testing.T) {
		for _, pages := range []map[string]string{h.staff, h.bound[1]} {
			for _, o := range outdoorLines {
				part := pages["day-"+o.sheet+".html"]
				if o.part != "" {
					part = daySheetParts(part)[o.part]
				}
				if lacks := missing(plain(part), "en", []said{o.lines}); lacks != nil {
					t.Errorf("day sheet of %s, %s: it lacks %q", o.sheet, o.part, lacks)
				}
			}
		}
	})
	t.Run("safety", func(t *testing.T) {
		for edition, pages := range editions {
			safetyIsWhole(t, edition, pages)
			text := plain(pages["safety.html"])
			for _, s := range safetyRules {
				if lacks := missing(text, "en", []said{s}); lacks != nil {
					t.Errorf("%s: the page of safety lacks %q", edition, lacks)
				}
			}
		}
	})
	t.Run("openings", func(t *testing.T) { openingsKeepTheirCautions(t, h, titles) })
}

// careWith returns the section of cautions of a page that says the words, "" where
// none does.
func careWith(page string, words said) string {
	for _, section := range careSection.FindAllString(page, -1) {
		if missing(plain(section), "en", []said{words}) == nil {
			return section
		}
	}
	return ""
}

// beforeStep wants the caution in a section of its own kind, and before the step
// wherever the step is on the page.
func (c written) beforeStep(t *testing.T, where, page string) {
	t.Helper()
	section := careWith(page, c.words)
	if section == "" {
		t.Errorf("%s: no caution says %q", where, c.words.en)
		return
	}
	before, after, _ := strings.Cut(page, section)
	if strings.Contains(plain(before), c.step) {
		t.Errorf("%s: the step %q stands before its caution", where, c.step)
	}
	if strings.HasSuffix(where, "page") && !strings.Contains(plain(after), c.step) {
		t.Errorf("%s: the step %q does not follow its caution", where, c.step)
	}
}

// readers reads the lesson without noonbook: whether the caution is for staff alone, and
// whether it belongs to what is prepared.
func (c written) readers(t *testing.T, demo string) (alone, prepare bool) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(demo, c.file+".md"))
	if err != nil {
		t.Fatal(err)
	}
	whole := strings.Contains(string(text), "\nreader = \"staff\"\n")
	for _, block := range cautionBlock.FindAllStringSubmatchIndex(string(text), -1) {
		if missing(plain(string(text[block[2]:block[3]])), "en", []said{c.words}) != nil {
			continue
		}
		opening := ""
		for _, m := range openingLine.FindAllString(string(text[:block[0]]), -1) {
			opening = m
		}
		return whole || strings.HasSuffix(opening, ": staff"), strings.HasPrefix(opening, "# Prepare")
	}
	return whole, false // a caution by its name alone
}

var (
	cautionBlock = regexp.MustCompile("(?s)\n[ >]*`{3,}caution[^\n]*\n(.*?)`{3,}")
	openingLine  = regexp.MustCompile(`(?m)^# (?:Prepare|Teach|Understand|After): (?:class|staff)$`)
)

var cautionFence = regexp.MustCompile("(?m)^[ >]*`{3,}caution((?: +[a-z-]+)*) *\n(.?)")

// demoBlocksAreListed holds the table against the lessons, read without noonbook:
// a caution block that is taken out or added must be so in the table as well.
func demoBlocksAreListed(t *testing.T, demo string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(demo, "*.md"))
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		found, named := 0, map[string]bool{}
		for _, block := range cautionFence.FindAllStringSubmatch(string(text), -1) {
			if block[2] != "`" {
				found++
				continue
			}
			for _, name := range strings.Fields(block[1]) { // without words: one a name, where it is said first
				if !named[name] {
					found++
				}
				named[name] = true
			}
		}
		listed := 0
		for _, c := range slices.Concat(demoCautions, staffCautions) {
			if c.file == strings.TrimSuffix(filepath.Base(file), ".md") {
				listed++
			}
		}
		if found != listed {
			t.Errorf("%s has %d cautions, the table %d", file, found, listed)
		}
	}
}
