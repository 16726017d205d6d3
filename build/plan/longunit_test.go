package plan

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"
)

// In a unit of more than sixty lessons a lesson's page lists the twelve before it and the
// twelve behind it, and leads to the cover, which has all; a page that is no lesson has all
// too. In one of sixty every page has every lesson.
func TestLongUnitListsWhatIsNear(t *testing.T) {
	for _, lessons := range []int{60, 61} {
		files := fstest.MapFS{"unit.toml": {Data: []byte(strings.Replace(cycled, "2027-04-23", "2028-03-31", 1))}}
		for i := range lessons {
			files[fmt.Sprintf("%03d-l%d.md", i+1, i+1)] = &fstest.MapFile{Data: fmt.Appendf(nil, "```lesson\ntitle = \"L%d\"\n```\n", i+1)}
		}
		unit, words := read(t, files, "unit")
		class, _ := pressings(t, unit, words, unit.Settings)
		for page, want := range map[string][2]int{
			unit.Lessons[0].Page:  {1, 13},
			unit.Lessons[29].Page: {18, 42},
			"safety.html":         {1, lessons},
			"index.html":          {1, lessons},
		} {
			if lessons == 60 {
				want = [2]int{1, 60}
			}
			var listed []int
			for i := range lessons {
				if strings.Contains(class[page], fmt.Sprintf(">L%d</a>", i+1)) {
					listed = append(listed, i+1)
				}
			}
			if len(listed) == 0 || listed[0] != want[0] || listed[len(listed)-1] != want[1] || len(listed) != want[1]-want[0]+1 {
				t.Errorf("of %d lessons %s lists %v, want %d to %d", lessons, page, listed, want[0], want[1])
			}
			some := len(listed) < lessons
			if says := strings.Contains(class[page], `<a href="index.html">All 61 lessons</a>`); says != some {
				t.Errorf("of %d lessons %s leads to all on the cover: %v, want %v", lessons, page, says, some)
			}
		}
	}
}
