package typeset

import (
	"fmt"
	"math"
	"strconv"
)

// A Colour is the school's own: as given, for a band that holds no words, and
// dark or light enough for words on paper and on a dark screen.
type Colour struct {
	Given                 bool
	Band, OnPaper, OnDark string // "#1a5c3a"
}

// The grounds that words stand on, as the style sheet has them.
const (
	paperGround = "#fbfaf5"
	darkGround  = "#15191e"
)

// Legible is the least contrast of words with their ground: WCAG 2.2, success
// criterion 1.4.3.
const Legible = 4.5

// ColourOf reads a colour written as "#rrggbb". One that is too near its ground
// is brought towards black on paper, and towards white in the dark, in steps of
// a hundredth, until words in it can be read.
func ColourOf(hex string) (Colour, error) {
	c, err := readRGB(hex)
	if err != nil {
		return Colour{}, err
	}
	paper, _ := readRGB(paperGround)
	dark, _ := readRGB(darkGround)
	return Colour{true, c.String(), c.towards(rgb{}, paper).String(), c.towards(rgb{255, 255, 255}, dark).String()}, nil
}

// OnPaperContrast returns the contrast of the colour as given with paper.
func (c Colour) OnPaperContrast() float64 {
	given, _ := readRGB(c.Band)
	paper, _ := readRGB(paperGround)
	return contrast(given, paper)
}

// An rgb is a colour of sRGB, 0 to 255 each.
type rgb [3]float64

func readRGB(hex string) (rgb, error) {
	n, err := strconv.ParseUint(hex[min(1, len(hex)):], 16, 32)
	if err != nil || len(hex) != 7 || hex[0] != '#' {
		return rgb{}, fmt.Errorf(`colour %q is not written like "#1a5c3a"`, hex)
	}
	return rgb{float64(n >> 16), float64(n >> 8 & 255), float64(n & 255)}, nil
}

func (c rgb) String() string {
	return fmt.Sprintf("#%02x%02x%02x", int(math.Round(c[0])), int(math.Round(c[1])), int(math.Round(c[2])))
}

func (c rgb) towards(end, ground rgb) rgb {
	mixed := c
	for i := 0; i < 100 && contrast(mixed.rounded(), ground) < Legible; i++ {
		share := float64(i+1) / 100
		for j := range mixed {
			mixed[j] = c[j] + (end[j]-c[j])*share
		}
	}
	return mixed.rounded()
}

func (c rgb) rounded() rgb { return rgb{math.Round(c[0]), math.Round(c[1]), math.Round(c[2])} }

// contrast is the contrast ratio of WCAG 2.2, "contrast ratio" in its glossary.
func contrast(a, b rgb) float64 {
	light, dark := a.luminance(), b.luminance()
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

// luminance is the relative luminance of WCAG 2.2.
func (c rgb) luminance() float64 {
	var linear rgb
	for i, v := range c {
		if v /= 255; v <= 0.04045 {
			linear[i] = v / 12.92
		} else {
			linear[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return 0.2126*linear[0] + 0.7152*linear[1] + 0.0722*linear[2]
}
