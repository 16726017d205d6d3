package form_test

import (
	"reflect"
	"testing"

	"noonbook/build/form"
	"noonbook/compute/place"
)

var diary = form.Field{Key: form.Key[form.Records]("records.diary"), Max: 20, Fields: form.Form{
	{Key: form.Key[string]("seen"), Choices: []string{"yes", "no", "cloud"}},
	{Key: form.Key[string]("side"), Choices: []string{"upper_right", "Left"}},
	{Key: form.Key[bool]("clear")},
	{Key: form.Key[float64]("lit_percent"), Unit: "percent", Min: 0, Max: 100},
	{Key: form.Key[float64]("altitude_deg"), Unit: "deg", Min: -90, Max: 90},
	{Key: form.Key[float64]("lamp_mm"), Unit: "mm"},
	{Key: form.Key[int]("fins")},
	{Key: form.Key[place.Date]("date")},
	{Key: form.Key[string]("group")},
}}

// What a class types into a spreadsheet: words in any case, numbers with the sign
// of their unit.
func TestCellsInAnyCase(t *testing.T) {
	got, faults := diary.ReadRecords([]byte("Seen,SIDE,clear,Lit_Percent,altitude_deg,lamp_mm,fins,group\n" +
		"Yes,UPPER_RIGHT,TRUE,40%,50°,125mm,3,Owls\n" +
		"CLOUD,left,no,\"12,5 %\",−3.5 deg,\"1,5 mm\",0,YES\n"))
	want := []form.Values{
		{"seen": "yes", "side": "upper_right", "clear": true, "lit_percent": 40.0, "altitude_deg": 50.0, "lamp_mm": 125.0, "fins": 3, "group": "Owls"},
		{"seen": "cloud", "side": "Left", "clear": false, "lit_percent": 12.5, "altitude_deg": -3.5, "lamp_mm": 1.5, "fins": 0, "group": "YES"},
	}
	if len(faults) > 0 || !reflect.DeepEqual(got.Rows, want) {
		t.Errorf("%v\n%v", got.Rows, list(faults))
	}
	for cell, want := range map[string]string{
		"lamp_mm\n12 cm\n":            "  2:1 lamp_mm is \"12 cm\"; write 120, the number of mm\n",
		"lit_percent\n40°\n":          "  2:1 lit_percent is \"40°\", want a number from 0 percent to 100 percent\n",
		"lit_percent\n140%\n":         "  2:1 lit_percent 140 percent is outside 0 percent to 100 percent\n",
		"date\n27/04/2027\n":          "  2:1 date is \"27/04/2027\"; write 2027-04-27\n",
		"seen\nperhaps\n":             "  2:1 seen \"perhaps\" is unknown, want \"yes\", \"no\" or \"cloud\"\n",
		"seen,Seen\n":                 "  1:6 the column seen is there twice\n",
		"group\n\"a\x1b[31m\"\n":      "  2:1 group holds the control character U+001B; delete it\n",
		"group\n\"a\nb\"\n":           "",
		"clear\nperhaps\n":            "  2:1 clear is \"perhaps\", want true or false\n",
		"altitude_deg\n46°05'N\n":     "  2:1 altitude_deg is \"46°05'N\"; write 46.083\n",
		"altitude_deg\n\"1.000,5\"\n": "  2:1 altitude_deg is \"1.000,5\"; write 1000.5\n",
	} {
		if _, faults := diary.ReadRecords([]byte(cell)); list(faults) != want {
			t.Errorf("%q: got\n%swant\n%s", cell, list(faults), want)
		}
	}
}
