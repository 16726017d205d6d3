package typeset_test

import (
	"strings"
	"testing"
)

// The foot of every printed sheet says school and unit, and in the staff edition that it holds
// answers; no name of a school ends the string of CSS, the rule, or the style element that the
// handbook in one file puts it into. How CSS escapes: CSS Syntax Module Level 3, section 4.3.7.
func TestPageFootSaysWhoseSheetItIs(t *testing.T) {
	w := words(t, false)
	class, staff := string(w.PageFoot("École du Marais", "The sky", false)), string(w.PageFoot("École du Marais", "The sky", true))
	if want := "@page{@bottom-left{content:\"École du Marais · The sky\";font:8pt sans-serif}}\n"; class != want {
		t.Errorf("the class's foot is %q", class)
	}
	if !strings.Contains(staff, "École du Marais · The sky · Staff edition: holds the answers\"") || strings.Contains(class, "answers") {
		t.Errorf("the staff's foot is %q, the class's %q", staff, class)
	}
	hostile := string(w.PageFoot("\"}*{display:none}</style><script>\\", "a\nb", false))
	for _, never := range []string{"</", "<s", "}*", "\\\"", "a\nb"} {
		if strings.Contains(hostile, never) {
			t.Errorf("%q is in %q", never, hostile)
		}
	}
	if !strings.Contains(hostile, `content:"\22 \7d \2a \7b display:none\7d \3c \2f style\3e \3c script\3e \5c  · a\a b"`) {
		t.Errorf("the hostile foot is %q", hostile)
	}
}
