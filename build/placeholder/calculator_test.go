package placeholder_test

import (
	"math"
	"strings"
	"testing"
)

// The calculator of the workings' test itself, by hand: what it finds in a sentence and
// what it makes of it. The first four are steps that once went wrong.
func TestCalculatorReadsASentence(t *testing.T) {
	for _, c := range []struct {
		text string
		want []float64 // of all runs with two sides, one after the other; none where there is no sum
	}{
		{"Power = 1000 ÷ focal length in mm = 1000 ÷ 83 mm = 12.00 D. Some add 1.", []float64{12.048193, 12}},
		{"cos H = −tan ({1}) = −tan (46.1°) × tan (8.7°) = −0.1599, so H is known", []float64{-0.15901287, -0.1599}},
		{"In 105 days the goal goes 105 days ÷ 88.0 days × 360° = 432° round", []float64{429.54545, 432}},
		{"= 50 mm ÷ 3.6 = 13.7 mm.", []float64{13.888889, 13.7}},
		{"Longitude × 4 min a degree: −64.77° × 4 min a degree = −4 h 19 min 5 s; more", []float64{-15544.8, -15545}},
		{"So 12:00 − (−4 h 19 min 5 s) + (−3 h) − (1 min 5 s) = 13:18.", []float64{47880, 47880}},
		{"299 792 km a second; 149 597 871 km ÷ 299 792 km = 499 s = 8 min 19 s", []float64{499.00555, 499, 499}},
		{"√((3 mm)² + (4 mm)²) = 5 mm and 2 to the power of 3 = 8 times", []float64{5, 5, 8, 8}},
		{"22 032 × 10⁹ ÷ (6.67430 × 10⁻¹¹) = 330.1 × 10²¹ kg", []float64{3.3010203e23, 3.301e23}},
		{"so X = tan⁻¹ 0.7204 = 35.8° and H = cos⁻¹ (−0.5) = 120°", []float64{35.768994, 35.8, 120, 120}},
		{"Volume = 4 ÷ 3 × π × (2 m)³ = 33.5", []float64{33.510322, 33.5}},
		{"Shadow = height ÷ tan (Sun's height) = 86 mm ÷ tan (Sun's height)", nil},
		{"Distance = half × density × speed², divided by 3", nil},
		{"On 20 April 2027 latitude = 46.1°", nil},
	} {
		var got []float64
		for _, chain := range englishGrammar.equations(strings.ReplaceAll(c.text, "({1}) = ", "(a) = ")) {
			for _, s := range chain {
				if len(chain) > 1 {
					got = append(got, s.value)
				}
			}
		}
		if len(got) != len(c.want) {
			t.Errorf("%q holds %v, want %v", c.text, got, c.want)
			continue
		}
		for i, want := range c.want {
			if math.Abs(got[i]-want) > 1e-6*math.Abs(want) {
				t.Errorf("%q gives %v, want %v", c.text, got[i], want)
			}
		}
	}
}

// French, with its comma, its narrow spaces between groups of digits and its clock.
func TestCalculatorReadsFrench(t *testing.T) {
	for text, want := range map[string][]float64{
		"Vergence en dioptries = 1000 ÷ distance focale en mm = 1000 ÷ 83\u00a0mm = 12,05\u00a0D.":                                    {12.048193, 12.05},
		"149\u202f597\u202f871\u00a0km ÷ 299\u202f792\u00a0km = 499\u00a0s = 8\u00a0min\u00a019\u00a0s.":                              {499.00555, 499, 499},
		"Donc 12\u00a0h − (−4\u00a0h\u00a019\u00a0min\u00a05\u00a0s) + (−3\u00a0h) − (1\u00a0min\u00a05\u00a0s) = 13\u00a0h\u00a018.": {47880, 47880},
		"2 × 99,5° × 4\u00a0min par degré = 13\u00a0h\u00a016\u00a0min. Le jour":                                                      {47760, 47760},
		"2,512 à la puissance 3 = 15,9\u00a0fois la lumière":                                                                          {15.851, 15.9},
		"Densité = masse ÷ volume, et 5,97 × 10²¹ ÷ (4 ÷ 3 × π × (6371)³ × 10⁹) = 5,51":                                               {5.5114369, 5.51},
		"Longueur de l’ombre = hauteur ÷ tan (hauteur du Soleil) = 86\u00a0mm ÷ tan (hauteur du Soleil)":                              nil,
	} {
		var got []float64
		for _, chain := range frenchGrammar.equations(text) {
			for _, s := range chain {
				if len(chain) > 1 {
					got = append(got, s.value)
				}
			}
		}
		if len(got) != len(want) {
			t.Errorf("%q holds %v, want %v", text, got, want)
			continue
		}
		for i := range want {
			if math.Abs(got[i]-want[i]) > 1e-4*math.Abs(want[i]) {
				t.Errorf("%q gives %v, want %v", text, got[i], want[i])
			}
		}
	}
}
