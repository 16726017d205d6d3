package typeset

import (
	"math"
	"regexp"
	"strings"
	"testing"
)

// Black on white is 21 to 1 by the definition of WCAG 2.2; #767676 is known as the
// lightest grey that reaches 4.5 on white, #777777 misses it at 4.48 (from memory).
func TestContrast(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#ffffff", "#ffffff", 1}, {"#767676", "#ffffff", 4.54}, {"#ffffff", "#777777", 4.48}} {
		a, _ := readRGB(c.a)
		b, _ := readRGB(c.b)
		if got := contrast(a, b); math.Abs(got-c.want) > 0.005 { // as rounded
			t.Errorf("%s on %s: %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// Whatever colour a school has, words in it can be read, and one that needs no
// change keeps its bytes.
func TestColourIsLegible(t *testing.T) {
	paper, _ := readRGB(paperGround)
	dark, _ := readRGB(darkGround)
	for _, hex := range []string{"#1a5c3a", "#ffe000", "#ffffff", "#000000", "#fbfaf5", "#15191e", "#7f7f7f", "#0000ff", "#C8102E"} {
		c, err := ColourOf(hex)
		if err != nil {
			t.Fatal(err)
		}
		onPaper, _ := readRGB(c.OnPaper)
		onDark, _ := readRGB(c.OnDark)
		if got := contrast(onPaper, paper); got < Legible {
			t.Errorf("%s becomes %s on paper, %.2f to 1", hex, c.OnPaper, got)
		}
		if got := contrast(onDark, dark); got < Legible {
			t.Errorf("%s becomes %s in the dark, %.2f to 1", hex, c.OnDark, got)
		}
		if c.OnPaperContrast() >= Legible && c.OnPaper != strings.ToLower(hex) {
			t.Errorf("%s was changed to %s for no reason", hex, c.OnPaper)
		}
	}
	for _, bad := range []string{"", "#", "red", "#12345", "#1234567", "1a5c3a7", "#12g456", "#+12345"} {
		if c, err := ColourOf(bad); err == nil {
			t.Errorf("%q becomes %v", bad, c)
		}
	}
}

// The grounds are those of the style sheet.
func TestGrounds(t *testing.T) {
	for _, ground := range []string{paperGround, darkGround} {
		if !strings.Contains(string(Style()), "--paper: "+ground+";") {
			t.Errorf("the style sheet has no paper %s", ground)
		}
	}
}

// Words run under the shade at the edge of a wide table: they can be read there.
func TestShadeIsLegible(t *testing.T) {
	colours := func(name string) []string {
		var hex []string
		for _, m := range regexp.MustCompile("--"+name+": (#[0-9a-f]{6});").FindAllStringSubmatch(string(Style()), -1) {
			hex = append(hex, m[1])
		}
		return hex
	}
	shades := colours("scroll-shade")
	if len(shades) != 2 {
		t.Fatalf("the style sheet has the shades %q, want one for paper and one for the dark", shades)
	}
	for i, shade := range shades {
		ground, _ := readRGB(shade)
		for _, name := range []string{"ink", "graphite", "shadow"} {
			if words, _ := readRGB(colours(name)[i]); contrast(words, ground) < Legible {
				t.Errorf("--%s on the shade %s: %.2f to 1", name, shade, contrast(words, ground))
			}
		}
	}
}
