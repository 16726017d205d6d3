package source

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/gif"
	"image/jpeg"
	"image/png"
	"io"
	"math"
	"strconv"
	"strings"
)

// pictureSize returns the size of a picture in CSS pixels, read from the head of
// its file, or zeros for one that is none of PNG, JPEG, GIF and SVG. A page that
// knows it does not move while its pictures load.
func pictureSize(src []byte) (width, height int) {
	for _, format := range []struct {
		begins string
		read   func(io.Reader) (image.Config, error)
	}{
		{"\x89PNG\r\n\x1a\n", png.DecodeConfig}, // PNG 3rd edition, section 5.2
		{"\xff\xd8\xff", jpeg.DecodeConfig},     // ITU-T T.81, B.1.1.3: SOI and the next marker
		{"GIF8", gif.DecodeConfig},              // GIF89a, section 17
	} {
		if bytes.HasPrefix(src, []byte(format.begins)) {
			config, err := format.read(bytes.NewReader(src))
			if err != nil {
				return 0, 0
			}
			return config.Width, config.Height
		}
	}
	return svgSize(src)
}

// boundless is the width in CSS pixels given to an SVG that names none: wider
// than any text, so that it is shown as wide as its text, in its own shape.
const boundless = 1200

// svgSize reads the first tag of an SVG: its width and height where both are
// lengths, else the shape of its viewBox (SVG 2, sections 8.2 and 8.6).
func svgSize(src []byte) (width, height int) {
	decoder := xml.NewDecoder(bytes.NewReader(src))
	decoder.Strict = false
	for {
		token, err := decoder.RawToken()
		if err != nil {
			return 0, 0
		}
		root, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		if root.Name.Local != "svg" {
			return 0, 0
		}
		at := map[string]string{}
		for _, a := range root.Attr {
			at[a.Name.Local] = a.Value
		}
		w, h := cssPixels(at["width"]), cssPixels(at["height"])
		if w >= 1 && h >= 1 {
			return int(math.Round(w)), int(math.Round(h))
		}
		box := strings.FieldsFunc(at["viewBox"], func(r rune) bool { return r == ' ' || r == ',' || r == '\n' || r == '\t' })
		if len(box) != 4 {
			return 0, 0
		}
		w, h = cssPixels(box[2]), cssPixels(box[3])
		if !(w > 0 && h > 0) {
			return 0, 0
		}
		return boundless, int(math.Round(boundless * h / w))
	}
}

// cssPixels reads a CSS length; 0 for a percentage, for a unit that depends on
// the page, and for what is no length. 96 pixels are an inch of 25.4 mm: CSS
// Values and Units Level 3, section 6.2.
func cssPixels(s string) float64 {
	s = strings.TrimSpace(s)
	number := strings.TrimRight(s, "abcdefghijklmnopqrstuvwxyz%")
	scale := map[string]float64{"": 1, "px": 1, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96, "pt": 96.0 / 72, "pc": 16}[s[len(number):]]
	x, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsNaN(x) || x < 0 || x > 1e5 {
		return 0
	}
	return x * scale
}
