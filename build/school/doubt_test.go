package school_test

import (
	"strings"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/build/school"
	"noonbook/compute/place"
)

// Real places with their clocks. Coordinates to 0.1° or better, from memory of maps and
// of the principal places in the IANA database's zone1970.tab; a tenth of a degree is
// 24 seconds of the Sun's noon.
var realPlaces = []struct {
	name     string
	lat, lon float64
	zone     string
}{
	{"Moncton", 46.09, -64.77, "America/Moncton"}, {"St. John's", 47.56, -52.71, "America/St_Johns"}, {"Nain", 56.54, -61.69, "America/Goose_Bay"},
	{"Halifax", 44.65, -63.57, "America/Halifax"}, {"Montréal", 45.50, -73.57, "America/Toronto"}, {"Thunder Bay", 48.38, -89.25, "America/Toronto"},
	{"Regina", 50.45, -104.62, "America/Regina"}, {"Vancouver", 49.26, -123.11, "America/Vancouver"}, {"Whitehorse", 60.72, -135.05, "America/Whitehorse"},
	{"Beaver Creek", 62.38, -140.88, "America/Whitehorse"}, {"Resolute", 74.70, -94.83, "America/Resolute"}, {"Grise Fiord", 76.42, -82.90, "America/Iqaluit"},
	{"New York", 40.71, -74.01, "America/New_York"}, {"Ontonagon", 46.87, -89.31, "America/Detroit"}, {"El Paso", 31.76, -106.49, "America/Denver"},
	{"Midland, Texas", 32.00, -102.08, "America/Chicago"}, {"Williston", 48.15, -103.62, "America/Chicago"}, {"Phoenix", 33.45, -112.07, "America/Phoenix"},
	{"Honolulu", 21.31, -157.86, "Pacific/Honolulu"}, {"Anchorage", 61.22, -149.90, "America/Anchorage"}, {"Nome", 64.50, -165.41, "America/Nome"},
	{"Gambell", 63.78, -171.74, "America/Nome"}, {"Saint Paul, Alaska", 57.12, -170.28, "America/Anchorage"}, {"Adak", 51.88, -176.65, "America/Adak"},
	{"Utqiaġvik", 71.29, -156.79, "America/Anchorage"}, {"Mexico City", 19.43, -99.13, "America/Mexico_City"}, {"Tijuana", 32.53, -117.02, "America/Tijuana"},
	{"Cancún", 21.16, -86.85, "America/Cancun"}, {"Havana", 23.11, -82.37, "America/Havana"}, {"San Juan", 18.47, -66.11, "America/Puerto_Rico"},
	{"Bogotá", 4.71, -74.07, "America/Bogota"}, {"Quito", -0.18, -78.47, "America/Guayaquil"}, {"Galápagos", -0.74, -90.31, "Pacific/Galapagos"},
	{"Lima", -12.05, -77.04, "America/Lima"}, {"La Paz", -16.50, -68.15, "America/La_Paz"}, {"Cruzeiro do Sul", -7.63, -72.67, "America/Rio_Branco"},
	{"Manaus", -3.12, -60.02, "America/Manaus"}, {"São Paulo", -23.55, -46.63, "America/Sao_Paulo"}, {"Recife", -8.05, -34.88, "America/Recife"},
	{"Fernando de Noronha", -3.85, -32.42, "America/Noronha"}, {"Asunción", -25.26, -57.58, "America/Asuncion"}, {"Buenos Aires", -34.60, -58.38, "America/Argentina/Buenos_Aires"},
	{"El Calafate", -50.34, -72.27, "America/Argentina/Rio_Gallegos"}, {"Ushuaia", -54.80, -68.30, "America/Argentina/Ushuaia"}, {"Santiago", -33.45, -70.67, "America/Santiago"},
	{"Punta Arenas", -53.16, -70.91, "America/Punta_Arenas"}, {"Hanga Roa", -27.15, -109.43, "Pacific/Easter"}, {"Stanley", -51.70, -57.86, "Atlantic/Stanley"},
	{"Nuuk", 64.18, -51.72, "America/Nuuk"}, {"Upernavik", 72.79, -56.15, "America/Nuuk"}, {"Qaanaaq", 77.47, -69.23, "America/Thule"},
	{"Ittoqqortoormiit", 70.48, -21.97, "America/Scoresbysund"}, {"Reykjavík", 64.15, -21.94, "Atlantic/Reykjavik"}, {"Ponta Delgada", 37.74, -25.67, "Atlantic/Azores"},
	{"London", 51.51, -0.13, "Europe/London"}, {"Greenwich", 51.48, 0, "Europe/London"}, {"Galway", 53.27, -9.05, "Europe/Dublin"}, {"Lisbon", 38.72, -9.14, "Europe/Lisbon"},
	{"Vigo", 42.24, -8.72, "Europe/Madrid"}, {"Madrid", 40.42, -3.70, "Europe/Madrid"}, {"Las Palmas", 28.12, -15.43, "Atlantic/Canary"}, {"Brest", 48.39, -4.49, "Europe/Paris"},
	{"Berlin", 52.52, 13.40, "Europe/Berlin"}, {"Białystok", 53.13, 23.16, "Europe/Warsaw"}, {"Vardø", 70.37, 31.11, "Europe/Oslo"}, {"Longyearbyen", 78.22, 15.65, "Arctic/Longyearbyen"},
	{"Chișinău", 47.01, 28.86, "Europe/Chisinau"}, {"Minsk", 53.90, 27.57, "Europe/Minsk"}, {"Istanbul", 41.01, 28.98, "Europe/Istanbul"}, {"Edirne", 41.68, 26.56, "Europe/Istanbul"},
	{"Kaliningrad", 54.71, 20.51, "Europe/Kaliningrad"}, {"Moscow", 55.76, 37.62, "Europe/Moscow"}, {"Perm", 58.01, 56.25, "Asia/Yekaterinburg"},
	{"Magadan", 59.56, 150.80, "Asia/Magadan"}, {"Anadyr", 64.73, 177.51, "Asia/Anadyr"}, {"Uelen", 66.16, -169.81, "Asia/Anadyr"},
	{"Casablanca", 33.57, -7.59, "Africa/Casablanca"}, {"Dakhla", 23.68, -15.96, "Africa/El_Aaiun"}, {"Dakar", 14.69, -17.45, "Africa/Dakar"}, {"Praia", 14.93, -23.51, "Atlantic/Cape_Verde"},
	{"Cairo", 30.04, 31.24, "Africa/Cairo"}, {"Kinshasa", -4.32, 15.31, "Africa/Kinshasa"}, {"Lagos", 6.52, 3.38, "Africa/Lagos"}, {"Nairobi", -1.29, 36.82, "Africa/Nairobi"}, {"Marsabit", 2.33, 37.98, "Africa/Nairobi"},
	{"Cape Town", -33.92, 18.42, "Africa/Johannesburg"}, {"Walvis Bay", -22.96, 14.51, "Africa/Windhoek"}, {"Juba", 4.85, 31.58, "Africa/Juba"}, {"Réunion", -20.88, 55.45, "Indian/Reunion"},
	{"Jerusalem", 31.78, 35.22, "Asia/Jerusalem"}, {"Beirut", 33.89, 35.50, "Asia/Beirut"}, {"Baghdad", 33.31, 44.37, "Asia/Baghdad"}, {"Tehran", 35.69, 51.39, "Asia/Tehran"},
	{"Kabul", 34.56, 69.21, "Asia/Kabul"}, {"Karachi", 24.86, 67.00, "Asia/Karachi"}, {"Dong, Arunachal", 28.17, 97.05, "Asia/Kolkata"}, {"Dwarka", 22.24, 68.97, "Asia/Kolkata"},
	{"Kathmandu", 27.72, 85.32, "Asia/Kathmandu"}, {"Colombo", 6.93, 79.86, "Asia/Colombo"}, {"Yangon", 16.87, 96.20, "Asia/Yangon"},
	{"Kashgar by Beijing's clock", 39.47, 75.99, "Asia/Shanghai"}, {"Kashgar by Ürümqi's clock", 39.47, 75.99, "Asia/Urumqi"}, {"Ulugqat", 39.72, 74.24, "Asia/Shanghai"}, {"Fuyuan", 48.36, 134.29, "Asia/Shanghai"}, {"Lhasa", 29.65, 91.14, "Asia/Shanghai"},
	{"Ölgii", 48.97, 89.96, "Asia/Hovd"}, {"Tokyo", 35.68, 139.69, "Asia/Tokyo"}, {"Yonaguni", 24.46, 122.99, "Asia/Tokyo"}, {"Singapore", 1.35, 103.82, "Asia/Singapore"}, {"Perlis", 6.44, 100.20, "Asia/Kuala_Lumpur"},
	{"Pontianak", 0.00, 109.33, "Asia/Pontianak"}, {"Banda Aceh", 5.55, 95.32, "Asia/Jakarta"}, {"Merauke", -8.49, 140.40, "Asia/Jayapura"}, {"Dili", -8.56, 125.57, "Asia/Dili"},
	{"Perth", -31.95, 115.86, "Australia/Perth"}, {"Eucla", -31.68, 128.88, "Australia/Eucla"}, {"Darwin", -12.46, 130.84, "Australia/Darwin"}, {"Adelaide", -34.93, 138.60, "Australia/Adelaide"},
	{"Brisbane", -27.47, 153.03, "Australia/Brisbane"}, {"Sydney", -33.87, 151.21, "Australia/Sydney"}, {"Hobart", -42.88, 147.33, "Australia/Hobart"}, {"Lord Howe Island", -31.55, 159.08, "Australia/Lord_Howe"},
	{"Norfolk Island", -29.05, 167.96, "Pacific/Norfolk"}, {"Dunedin", -45.87, 170.50, "Pacific/Auckland"}, {"Waitangi, Chatham Islands", -43.95, -176.56, "Pacific/Chatham"},
	{"Suva", -18.14, 178.44, "Pacific/Fiji"}, {"Apia", -13.83, -171.77, "Pacific/Apia"}, {"Pago Pago", -14.28, -170.70, "Pacific/Pago_Pago"}, {"Nukuʻalofa", -21.14, -175.20, "Pacific/Tongatapu"},
	{"Kiritimati", 1.87, -157.43, "Pacific/Kiritimati"}, {"Kanton", -2.81, -171.68, "Pacific/Kanton"}, {"Tarawa", 1.33, 172.98, "Pacific/Tarawa"}, {"Fakaofo", -9.38, -171.25, "Pacific/Fakaofo"},
	{"Papeete", -17.54, -149.57, "Pacific/Tahiti"}, {"Taiohae", -8.91, -140.10, "Pacific/Marquesas"}, {"Adamstown", -25.07, -130.10, "Pacific/Pitcairn"}, {"Majuro", 7.09, 171.38, "Pacific/Majuro"},
	{"McMurdo", -77.85, 166.67, "Antarctica/McMurdo"}, {"Scott Base by Auckland's clock", -77.85, 166.76, "Pacific/Auckland"}, {"Villa Las Estrellas", -62.20, -58.96, "America/Punta_Arenas"}, {"Esperanza", -63.40, -57.00, "America/Argentina/Buenos_Aires"},
	{"Halley by London's clock", -75.61, -26.21, "Europe/London"}, {"Troll", -72.01, 2.53, "Antarctica/Troll"}, {"Vostok", -78.46, 106.84, "Antarctica/Vostok"}, {"the South Pole by Auckland's clock", -90, 0, "Pacific/Auckland"}, {"Alert", 82.50, -62.35, "America/Toronto"},
}

func at(t *testing.T, lat, lon float64, zone string) form.Values {
	t.Helper()
	z, err := time.LoadLocation(zone)
	if err != nil {
		t.Fatal(err)
	}
	return school.Latitude.Is(lat).With(school.Longitude.Is(lon)).With(school.TimeZone.Is(z))
}

// No real place is doubted, whatever the month in which the term begins.
func TestRealPlacesAreNotDoubted(t *testing.T) {
	early, late := 24*time.Hour, time.Duration(0)
	first, last := "", ""
	for _, p := range realPlaces {
		for year := 2026; year <= 2034; year++ {
			for month := time.January; month <= time.December; month++ {
				v := at(t, p.lat, p.lon, p.zone)
				date := place.Date{Year: year, Month: month, Day: 11}
				if d, ok := school.DoubtedPlace(v, date); ok {
					t.Fatalf("%s on %s: %s", p.name, date, d.Text)
				}
				if p.lat < -85 {
					continue
				}
				noon := school.SunsNoon(p.lon, school.TimeZone.Of(v), date)
				if noon < early {
					early, first = noon, p.name
				}
				if noon > late {
					late, last = noon, p.name
				}
			}
		}
	}
	t.Logf("%d places; the Sun's noon from %v in %s to %v in %s", len(realPlaces), early, first, late, last)
}

// Noon by the clock, worked by hand with the extremes of the equation of time, −14.2 min
// on 11 February and +16.4 min on 3 November (from memory; two minutes of room).
func TestSunsNoon(t *testing.T) {
	for _, c := range []struct {
		name, zone string
		lon        float64
		date       place.Date
		want       time.Duration
	}{
		{"Greenwich in February", "Europe/London", 0, place.Date{Year: 2027, Month: 2, Day: 11}, 12*time.Hour + 14*time.Minute},
		{"Greenwich in November", "Europe/London", 0, place.Date{Year: 2027, Month: 11, Day: 3}, 12*time.Hour - 16*time.Minute},
		{"Kashgar in February", "Asia/Shanghai", 75.99, place.Date{Year: 2027, Month: 2, Day: 11}, 15*time.Hour + 10*time.Minute},
		{"Kiritimati in February", "Pacific/Kiritimati", -157.43, place.Date{Year: 2027, Month: 2, Day: 11}, 12*time.Hour + 44*time.Minute},
		{"Dunedin in February", "Pacific/Auckland", 170.5, place.Date{Year: 2028, Month: 2, Day: 11}, 13*time.Hour + 52*time.Minute},
	} {
		got := school.SunsNoon(c.lon, school.TimeZone.Of(at(t, 0, c.lon, c.zone)), c.date)
		if (got - c.want).Abs() > 2*time.Minute {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A slip gives one doubt, which names it and stands at the key to change.
func TestSlipsAreNamed(t *testing.T) {
	for _, c := range []struct {
		name     string
		lat, lon float64
		zone     string
		key, say string
	}{
		{"no minus on the longitude", 46.09, 64.77, "America/Moncton", "school.longitude", "school.longitude: the Sun's noon is at 4:42 by the clock of America/Moncton here; with longitude -64.77° it would be at 13:20; is the sign of the longitude wrong?"},
		{"a minus too much", 35.68, -139.69, "Asia/Tokyo", "school.longitude", "with longitude 139.69° it would be at 11:42; is the sign"},
		{"swapped", -64.77, 46.09, "America/Moncton", "school.latitude", "with latitude and longitude exchanged it would be at 13:20; are they swapped?"},
		{"swapped in the south", -77.04, -12.05, "America/Lima", "school.latitude", "with latitude and longitude exchanged it would be at 12:09; are they swapped?"},
		{"swapped in the east", 77.21, 28.61, "Asia/Kolkata", "school.latitude", "are they swapped?"},
		{"no minus on the latitude", 45.87, 170.5, "Pacific/Auckland", "school.latitude", "school.latitude: the clock of Pacific/Auckland is put forward in the summer of the south, and latitude 45.87° is in the north; with latitude -45.87° the two fit; is the sign of the latitude wrong?"},
		{"a minus on a northern latitude", -51.5, -0.1, "Europe/London", "school.latitude", "with latitude 51.5° the two fit"},
		{"no minus at all", 53.16, 70.91, "America/Santiago", "school.longitude", "with latitude -53.16° and longitude -70.91° it would be at 12:44; are both signs wrong?"},
		{"swapped and a minus lost", 64.77, 46.09, "America/Moncton", "school.longitude", "is the sign of the longitude wrong?"}, // a place on Baffin Bay's latitude: the simplest slip
		{"another zone", 46.09, -64.77, "Asia/Kolkata", "school.longitude", "with longitude 64.77°"},
		{"another zone that nothing mends", 10, 100, "America/Sao_Paulo", "school.longitude", "no change of signs mends that; check school.longitude and school.time_zone"},
	} {
		d, ok := school.DoubtedPlace(at(t, c.lat, c.lon, c.zone), place.Date{Year: 2027, Month: 4, Day: 12})
		if !ok || d.Key.Name() != c.key || !strings.Contains(d.Text, c.say) {
			t.Errorf("%s: %v, %q", c.name, ok, d.Text)
		}
	}
}

func TestLessonTimesAtNightAreDoubted(t *testing.T) {
	for span, want := range map[string]string{
		"9:10-10:00":  "",
		"6:00-6:45":   "",
		"20:10-21:00": "",
		"1:15-2:05":   "1:15-2:05 is at night; is 13:15-14:05 meant?",
		"5:59-6:40":   "5:59-6:40 is at night; is 17:59-18:40 meant?",
		"0:00-0:45":   "0:00-0:45 is at night; is 12:00-12:45 meant?",
		"20:30-21:15": "20:30-21:15 is at night; a lesson is hardly before 6:00 or after 21:00",
		"2:00-23:00":  "a lesson is hardly before 6:00",
	} {
		field, _ := school.Settings().Field(school.TermLessonTimes.Name())
		v, complaint := field.ParseText("10:15-11:05," + span)
		if complaint != "" {
			t.Fatal(complaint)
		}
		got := school.Doubts(form.Values{field.Name(): v})
		if want == "" && len(got) > 0 || want != "" && (len(got) != 1 || got[0].Item != 1 || !strings.Contains(got[0].Text, want)) {
			t.Errorf("%s: %v, want %q", span, got, want)
		}
	}
}

// What is not filled in is not doubted.
func TestNothingIsDoubtedWithoutAPlace(t *testing.T) {
	v := at(t, 46, 64, "America/Moncton").With(school.TermFirstDay.Is(place.Date{Year: 2027, Month: 4, Day: 12}))
	if len(school.Doubts(v)) != 1 {
		t.Error("the whole is not doubted")
	}
	for name := range v {
		if got := school.Doubts(v.With(form.Values{name: nil})); len(got) > 0 {
			t.Errorf("without %s: %v", name, got)
		}
	}
}

// Morocco's clock goes back for the month of Ramadan, which is in June in 2049 (IANA
// database); that is not a southern winter.
func TestRamadanIsNoWinter(t *testing.T) {
	v := at(t, 33.57, -7.59, "Africa/Casablanca")
	june := time.Date(2049, time.June, 15, 12, 0, 0, 0, school.TimeZone.Of(v))
	if _, offset := june.Zone(); offset != 0 {
		t.Fatalf("the clock of June 2049 is %d s ahead, want Ramadan's", offset)
	}
	if d, ok := school.DoubtedPlace(v, place.Date{Year: 2049, Month: time.June, Day: 15}); ok {
		t.Error(d.Text)
	}
}
