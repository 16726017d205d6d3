package form_test

import (
	"reflect"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

const (
	typedLatitude form.Key[float64]         = "latitude"
	typedLength   form.Key[float64]         = "length"
	typedCount    form.Key[int]             = "count"
	typedDay      form.Key[place.Date]      = "day"
	typedDays     form.Key[[]place.Date]    = "days"
	typedTimes    form.Key[[]form.TimeSpan] = "times"
	typedPaper    form.Key[string]          = "paper"
	typedWeek     form.Key[[]string]        = "week"
	typedZone     form.Key[*time.Location]  = "zone"
)

var typedForm = form.Form{
	{Key: typedLatitude, Unit: "deg", Min: -90, Max: 90},
	{Key: typedLength, Unit: "mm", Min: 1, Max: 5000},
	{Key: typedCount, Min: 0, Max: 500},
	{Key: typedDay}, {Key: typedDays, Max: 3}, {Key: typedTimes, Max: 3},
	{Key: typedPaper, Choices: []string{"A4", "Letter"}},
	{Key: typedWeek, Choices: []string{"monday", "tuesday"}},
	{Key: typedZone},
}

func day(y int, m time.Month, d int) place.Date { return place.Date{Year: y, Month: m, Day: d} }

// What people write for a value is taken where it means one thing. A minute of arc is
// a sixtieth of a degree, a second a sixtieth of that: SI Brochure, 9th edition, table 8.
func TestTake(t *testing.T) {
	hour := time.Hour
	for _, c := range []struct {
		key  form.AnyKey
		text string
		want any // nil where it must complain
	}{
		{typedLatitude, "46.09", 46.09}, {typedLatitude, "−64.77", -64.77}, {typedLatitude, "-64,77", -64.77},
		{typedLatitude, "46°05′N", 46.083}, {typedLatitude, "64° 46' 12\" S", -64.77}, {typedLatitude, " 46.09\u00a0°\u00a0N", 46.09},
		{typedLatitude, "95", nil}, {typedLatitude, "north", nil}, {typedLatitude, "64 O", nil}, {typedLatitude, "", nil},
		{typedLength, "250 mm", 250.0}, {typedLength, "25 cm", 250.0}, {typedLength, "21,3", 21.3}, {typedLength, "250 kg", nil},
		{typedLength, "1,234", 1.234}, // as in a cell
		{typedCount, "27", 27}, {typedCount, "27.5", nil}, {typedCount, "27 pupils", 27}, {typedCount, "twenty", nil},
		{typedDay, "2027-04-12", day(2027, 4, 12)}, {typedDay, "12 April 2027", day(2027, 4, 12)}, {typedDay, "April 12, 2027", day(2027, 4, 12)},
		{typedDay, "1er août 2027", day(2027, 8, 1)}, {typedDay, "04/05/2027", nil}, {typedDay, "31 April 2027", nil},
		{typedDays, "2027-04-16, 24 May 2027", []place.Date{day(2027, 4, 16), day(2027, 5, 24)}},
		{typedDays, "April 16, 2027, May 24, 2027", []place.Date{day(2027, 4, 16), day(2027, 5, 24)}},
		{typedDays, "2027-04-16\n2027-05-24\n", []place.Date{day(2027, 4, 16), day(2027, 5, 24)}},
		{typedDays, "2027-04-16, some day", nil}, {typedDays, "2027-04-16,2027-04-17,2027-04-18,2027-04-19", nil},
		{typedTimes, "9:10–10:00, 13h15-14h05", []form.TimeSpan{{9*hour + 10*time.Minute, 10 * hour}, {13*hour + 15*time.Minute, 14*hour + 5*time.Minute}}},
		{typedTimes, "10:00-9:10", nil},
		{typedPaper, "letter", "Letter"}, {typedPaper, "A5", nil},
		{typedWeek, "Monday, tuesday", []string{"monday", "tuesday"}}, {typedWeek, "monday, toosday", nil},
		{typedZone, "Moncton", nil},
	} {
		field, _ := typedForm.Field(c.key.Name())
		got, complaint := field.Take(c.text)
		if c.want == nil {
			if complaint == "" {
				t.Errorf("%s %q is taken for %v", c.key.Name(), c.text, got)
			}
			continue
		}
		if complaint != "" || !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s %q: %v %s, want %v", c.key.Name(), c.text, got, complaint, c.want)
			continue
		}
		text, ok := field.Typed(got)
		if again, complaint := field.Take(text); !ok || complaint != "" || !reflect.DeepEqual(again, got) {
			t.Errorf("%s: %v is typed %q and read %v %s", c.key.Name(), got, text, again, complaint)
		}
	}
}

// The complaint about what cannot be taken is the one that proof has.
func TestTakeComplainsAsProof(t *testing.T) {
	field, _ := typedForm.Field("latitude")
	_, faults, _ := typedForm.Read([]byte("latitude = 95\n"))
	if _, complaint := field.Take("95"); len(faults) != 1 || faults[0].Text != "latitude "+complaint {
		t.Errorf("%q, proof says %v", complaint, faults)
	}
}
