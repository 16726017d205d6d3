package school

import (
	"noonbook/build/form"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// FieldSettings are the settings that Outline reads.
func FieldSettings() []string {
	return []string{"field.length_m", "field.width_m", "field.bearing_deg", "field.outline"}
}

// Outline returns the field that the values describe.
func Outline(v form.Values) strip.Outline {
	var o strip.Outline
	for _, corner := range v.Tables("field.outline") {
		o = append(o, strip.Spot{East: quantity.Metres(corner.Number("east_m")), North: quantity.Metres(corner.Number("north_m"))})
	}
	if v.Has("field.outline") {
		return o
	}
	return strip.Rectangle(quantity.Metres(v.Number("field.length_m")), quantity.Metres(v.Number("field.width_m")), quantity.Degrees(v.Number("field.bearing_deg")))
}
