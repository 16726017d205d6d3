package school

import (
	"noonbook/build/form"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// FieldSettings are the settings that Outline reads.
func FieldSettings() form.Keys {
	return form.Keys{FieldLengthM, FieldWidthM, FieldBearingDeg, FieldOutline}
}

// Outline returns the field that the values describe.
func Outline(v form.Values) strip.Outline {
	var o strip.Outline
	for _, corner := range FieldOutline.Of(v) {
		o = append(o, strip.Spot{East: quantity.Metres(OutlineEastM.Of(corner)), North: quantity.Metres(OutlineNorthM.Of(corner))})
	}
	if FieldOutline.In(v) {
		return o
	}
	return strip.Rectangle(quantity.Metres(FieldLengthM.Of(v)), quantity.Metres(FieldWidthM.Of(v)), quantity.Degrees(FieldBearingDeg.Of(v)))
}
