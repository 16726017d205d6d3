package plan

import (
	"os"
	"strings"
	"testing"

	"noonbook/build/placeholder"
)

// Every page of the staff edition says in its head that it is one, since a day sheet
// that lies about holds the answers; no page of the class edition does. A page of
// sheets says, before them, to print at true size and to measure the bar.
func TestPagesSayWhatTheyAre(t *testing.T) {
	unit, words := read(t, os.DirFS("../../testdata/units/south"), "south")
	sign := words.Say("page.staff_edition")
	how := words.Say("sheet.how")
	for _, edition := range []Edition{Class, Staff} {
		p, err := Make(unit, words, edition, placeholder.Catalogue())
		if err != nil {
			t.Fatal(err)
		}
		files, _ := p.Press(unit.Settings)
		days, printables := 0, 0
		for _, f := range files {
			if !strings.HasSuffix(f.Name, ".html") {
				continue
			}
			page := parsed(t, f.Bytes)
			for _, part := range page.all("p") {
				if strings.Contains(part.at["class"], "running-head") && strings.Contains(part.words(), sign) != (edition == Staff) && !strings.HasPrefix(f.Name, "print-") {
					t.Errorf("edition %d, %s: its head says %q", edition, f.Name, line(part.words()))
				}
			}
			if strings.HasPrefix(f.Name, "day-") {
				days++
			}
			if strings.HasPrefix(f.Name, "print-") {
				printables++
				text := string(f.Bytes)
				if at := strings.Index(line(page.words()), line(how)); at < 0 || strings.Index(text, "before-print") > strings.Index(text, `class="paper-sheet`) {
					t.Errorf("edition %d, %s does not say how to print it", edition, f.Name)
				}
			}
		}
		if edition == Staff && days == 0 || printables == 0 {
			t.Errorf("edition %d has %d day sheets and %d printables", edition, days, printables)
		}
	}
}
