package main

import (
	"strings"
	"testing"
)

// staffCautions are the caution blocks of lessons written in openings that are for staff:
// adults do these steps, before the day.
var staffCautions = []written{
	{"2-clocks-before-clocks", bottleHole, "Drill a hole of 2 mm near the foot", false},
	{"6-telescope", says("Only adults cut tubes, with the saw in its guide, away from the class", "Lenses are in their bags while anything is cut", "Cut edges are taped before anybody puts an eye to them", "The school's own rules come first"), "Cut for each group", false},
	{"6-telescope", lensCare, "measure three of each as the class will", false},
	{"6-more-about-lenses", lensCare, "A lens gathers the light", false},
	{"6-more-about-lenses", telescopeCare, "A lens gathers the light", false},
	{"9-rocket-day", says("The launcher is an adult's work", "try it first, on an empty field, with glasses on", "Never let it hold pressure", "NASA withdrew", "cracked, whitened or scratched goes in the bin", "ask about latex", "Ask the school and the field's owner for permission", "their rules and local codes come before this page"), "Inspect the launcher. Stamp once without a rocket", false},
}

// toldBesides are what lessons in openings say of safety outside their cautions, on the
// pages of both editions, or of staff alone, and on the day sheet.
var toldBesides = []struct {
	page               string
	both, staff, sheet []said
}{
	{"telescope",
		each("Cap on when nobody looks", "Point past the tube first"),
		each("adults cut before the day", "into which the Sun does not shine", "never on a sill"),
		each("Pull the blinds", "Lens caution, said back", "Lenses into bags and box. Count", "Caps on. All into the box. Count", "Never leave out a caution, a taped edge, a cap or a count", "Never the Sun, not for a moment")},
	{"rocket-day",
		each("Wardens face outwards and call stop", "Look along the edge", "Only the adult takes it off", "Leave rockets on roofs, in trees and beyond fences", "The crew presses the bottle round by hand", "from the side, arm stretched. Then go behind the bottle", "Each warden raises an arm", "Is your shadow beside or behind you? Call an adult"),
		each("Two outside. One gives the count and does nothing else", "It never points at anyone or anything", "Your shadow must fall in front of you", "Glasses on. Inspect pipe and joints"),
		each("Two adults who stay, the field free, a launcher they have tried", "If not, only build", "Field caution, said back", "Count, out", "Fetch, in, count", "Backs to the Sun", "Nobody goes in before I say fetch", "Never skip a caution or an inspection", "Stop: zone too small", "At thunder all go in at once", "Take the launcher apart, so that nobody can use it alone")},
}

// each is a list of what is said, wherever on the page.
func each(parts ...string) (list []said) {
	for _, part := range parts {
		list = append(list, says(part))
	}
	return list
}

// openingsKeepTheirCautions holds what lessons in openings say to staff alone, and what
// they say of safety in their steps.
func openingsKeepTheirCautions(t *testing.T, h careHandbook, titles map[string]string) {
	for _, c := range staffCautions {
		page := stem(c.file)
		for edition, pages := range map[string]map[string]string{"staff": h.staff, "staff, single file": h.bound[1]} {
			c.beforeStep(t, edition+", page", pages[page+".html"])
			if lacks := missing(gatheredFrom(pages, titles[page]), "en", []said{c.words}); lacks != nil {
				t.Errorf("%s: the page of safety lacks %q", edition, lacks)
			}
		}
		if careWith(h.class[page+".html"], c.words) != "" {
			t.Errorf("class: the caution for staff, %q, is on the page", c.words.en[0])
		}
	}
	for _, o := range toldBesides {
		for where, text := range map[string]string{"class": h.class[o.page+".html"], "staff": h.staff[o.page+".html"]} {
			if lacks := missing(plain(text), "en", o.both); lacks != nil {
				t.Errorf("%s: %s lacks %q", where, o.page, lacks)
			}
		}
		if lacks := missing(plain(h.staff[o.page+".html"]), "en", o.staff); lacks != nil {
			t.Errorf("staff: %s lacks %q", o.page, lacks)
		}
		if lacks := missing(plain(h.staff["day-"+o.page+".html"]), "en", o.sheet); lacks != nil {
			t.Errorf("day sheet of %s: it lacks %q", o.page, lacks)
		}
	}
	for edition, pages := range map[string]map[string]string{"class": h.class, "staff": h.staff} {
		if drawn := strings.Count(pages["rocket-day.html"], `<circle class="warden"`); drawn < 4 {
			t.Errorf("%s: %d wardens are drawn round the clear zone", edition, drawn)
		}
	}
}
