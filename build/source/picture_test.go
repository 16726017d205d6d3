package source

import (
	"bytes"
	"image"
	"image/color"
	"image/gif"
	"image/jpeg"
	"image/png"
	"testing"
)

// Pictures are written by the encoders of the standard library; sizes of SVG
// follow from 96 pixels to an inch of 25.4 mm (CSS Values and Units Level 3).
func TestPictureSize(t *testing.T) {
	picture := image.NewPaletted(image.Rect(0, 0, 30, 17), color.Palette{color.Black, color.White})
	var asPNG, asJPEG, asGIF bytes.Buffer
	for _, err := range []error{png.Encode(&asPNG, picture), jpeg.Encode(&asJPEG, picture, nil), gif.Encode(&asGIF, picture, nil)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		name, src     string
		width, height int
	}{
		{"PNG", asPNG.String(), 30, 17},
		{"JPEG", asJPEG.String(), 30, 17},
		{"GIF", asGIF.String(), 30, 17},
		{"PNG cut off in its head", asPNG.String()[:20], 0, 0},
		{"SVG in millimetres", `<svg xmlns="http://www.w3.org/2000/svg" width="25.4mm" height="50.8mm"/>`, 96, 192},
		{"SVG in pixels", `<?xml version="1.0"?><!-- a leaf --><!DOCTYPE svg><svg width="40" height="20px"/>`, 40, 20},
		{"SVG of a shape", `<svg viewBox="0 0 200 50"/>`, 1200, 300},
		{"SVG of a shape, with commas", "<svg viewBox='0,0,\n10,5' width='100%' height='100%'/>", 1200, 600},
		{"SVG with a prefix", `<s:svg xmlns:s="http://www.w3.org/2000/svg" viewBox="0 0 3 1"/>`, 1200, 400},
		{"SVG without a size", `<svg/>`, 0, 0},
		{"SVG of no width", `<svg viewBox="0 0 0 5"/>`, 0, 0},
		{"something else", "Alder Reach", 0, 0},
		{"a page", "<html><svg width='1' height='1'/></html>", 0, 0},
		{"nothing", "", 0, 0},
	} {
		if w, h := pictureSize([]byte(c.src)); w != c.width || h != c.height {
			t.Errorf("%s: %d × %d, want %d × %d", c.name, w, h, c.width, c.height)
		}
	}
}
