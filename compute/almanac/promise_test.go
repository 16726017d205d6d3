package almanac_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"noonbook/compute/almanac"
)

// What doc.go promises under Accuracy; the tests of this package take their limits
// from here, and TestDocsMakeThesePromises finds each in the words for it.
const (
	sunPlaceLimit        = 0.5    // ″
	moonPlaceLimit       = 3.0    // ″
	moonDistanceLimit    = 15.0   // km
	planetPlaceLimit     = 10.0   // ″, from the Earth and from the Sun
	planetDistanceLimit  = 0.01   // %, from the Sun
	sunHorizontalLimit   = 0.0002 // °
	moonHorizontalLimit  = 0.001  // °
	siderealTimeLimit    = 0.002  // s
	equationOfTimeLimit  = 0.05   // s
	sunRiseLimit         = 0.2    // s
	bodyRiseLimit        = 2.0    // s, Moon and planets
	grazing              = 3.0    // ° an hour, below which a body grazes the horizon
	sunTransitLimit      = 0.1    // s
	moonTransitLimit     = 0.2    // s
	planetTransitLimit   = 0.5    // s
	phasesLimit          = 5.0    // s
	seasonsLimit         = 10.0   // s
	greatestLimit        = 10.0   // s, of solar and lunar eclipses
	gammaLimit           = 0.0003
	umbralContactLimit   = 25.0  // s
	penumbraContactLimit = 70.0  // s
	localContactLimit    = 20.0  // s
	eclipseDepthLimit    = 0.002 // magnitude, obscuration
	litLimit             = 0.0005
	elongationLimit      = 0.01 // °
	phaseAngleLimit      = 0.02 // °
	limbMiddleLimit      = 0.1  // °
	magnitudeLimit       = 0.02
	ringMagnitudeLimit   = 0.05 // Saturn, Uranus
	moonMagnitudeLimit   = 0.2
)

func TestDocsMakeThesePromises(t *testing.T) {
	for file, phrases := range map[string][]string{
		"doc.go": {
			fmt.Sprintf("Sun %g″", sunPlaceLimit),
			fmt.Sprintf("Moon %g″ and %g km", moonPlaceLimit, moonDistanceLimit),
			fmt.Sprintf("planets and Pluto %g″ from the Earth and from the Sun, and %g %% of the distance from the Sun", planetPlaceLimit, planetDistanceLimit),
			fmt.Sprintf("Altitude and azimuth: Sun %g°, Moon %g°", sunHorizontalLimit, moonHorizontalLimit),
			fmt.Sprintf("Sidereal time %g s", siderealTimeLimit),
			fmt.Sprintf("equation of time %g s", equationOfTimeLimit),
			fmt.Sprintf("Rises and sets: Sun %g s, Moon and planets %g s", sunRiseLimit, bodyRiseLimit),
			fmt.Sprintf("slower than %g° an hour", grazing),
			fmt.Sprintf("Transits: Sun %g s, Moon %g s, planets %g s", sunTransitLimit, moonTransitLimit, planetTransitLimit),
			fmt.Sprintf("Phases %g s, seasons %g s", phasesLimit, seasonsLimit),
			fmt.Sprintf("greatest %g s", greatestLimit),
			fmt.Sprintf("gamma %g", gammaLimit),
			fmt.Sprintf("umbra %g s, with the penumbra %g s", umbralContactLimit, penumbraContactLimit),
			fmt.Sprintf("at a place %g s", localContactLimit),
			fmt.Sprintf("magnitude and obscuration %g", eclipseDepthLimit),
			fmt.Sprintf("Lit fraction %g", litLimit),
			fmt.Sprintf("elongation %g°, phase angle %g°", elongationLimit, phaseAngleLimit),
			fmt.Sprintf("middle of the lit limb %g°", limbMiddleLimit),
			fmt.Sprintf("%g from the formulae of the Astronomical Almanac", magnitudeLimit),
			fmt.Sprintf("Saturn and Uranus %g, the Moon %g", ringMagnitudeLimit, moonMagnitudeLimit),
			fmt.Sprintf("from %d to %d", almanac.FirstYear, almanac.LastYear),
		},
		"sun.go":           {fmt.Sprintf("good to %g″", sunPlaceLimit), fmt.Sprintf("good to %g s", equationOfTimeLimit)},
		"moon.go":          {fmt.Sprintf("good to %g″ and %g km", moonPlaceLimit, moonDistanceLimit), fmt.Sprintf("good to %g°", moonHorizontalLimit)},
		"body.go":          {fmt.Sprintf("good to %g″, the Moon to %g″, the planets and Pluto to %g″", sunPlaceLimit, moonPlaceLimit, planetPlaceLimit)},
		"planets.go":       {fmt.Sprintf("good to %g″", planetPlaceLimit)},
		"horizontal.go":    {fmt.Sprintf("good to %g°", sunHorizontalLimit)},
		"limb.go":          {fmt.Sprintf("good to %g°", limbMiddleLimit)},
		"aspect.go":        {fmt.Sprintf("elongation is good to %g°, the phase angle to %g°, the lit fraction to %g", elongationLimit, phaseAngleLimit, litLimit)},
		"phases.go":        {fmt.Sprintf("good to %g s", phasesLimit)},
		"seasons.go":       {fmt.Sprintf("good to %g s", seasonsLimit)},
		"eclipse_solar.go": {fmt.Sprintf("good to %g s, ΔT apart, gamma to %g", greatestLimit, gammaLimit)},
		"eclipse_lunar.go": {fmt.Sprintf("good to %g s, contacts with the umbra to %g s, with the penumbra to %g s", greatestLimit, umbralContactLimit, penumbraContactLimit)},
		"eclipse_view.go":  {fmt.Sprintf("good to %g s", localContactLimit)},
	} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		words := strings.Join(strings.Fields(strings.ReplaceAll(string(text), "\n//", "\n")), " ")
		for _, phrase := range phrases {
			if !strings.Contains(words, phrase) {
				t.Errorf("%s does not say %q", file, phrase)
			}
		}
	}
}

// An aside is by how much a library lies from the first of its table, ERFA or the
// Swiss Ephemeris, where its own error is known to be greater than our promise
// (testdata/reference/agreement.py prints it): astronomy-engine cuts its series at
// 1′, pyephem has an older precession and a fit of its own for Pluto. It is
// granted to that library besides the promise; the others have none.
type aside map[string]float64

// promise is the limit for a library.
func (a aside) promise(limit float64, library string) float64 { return limit + a[library] }
