package dial

import (
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/compute/quantity"
)

// A Mark is a pencil mark on the edge of a shadow: the angle from the noon line
// of the plate at which it was made, and where the Sun stood at that time if the
// watch was right.
type Mark struct {
	Line        quantity.Angle // from the noon line of the plate, afternoon positive
	HourAngle   quantity.Angle
	Declination quantity.Angle
}

// Unknown says what a fit looks for; what it does not look for is taken to be
// right.
//
// Near the equinoxes a turned plate and a wrong watch move every mark almost
// alike: turning a dial about the vertical by τ is turning it about the Earth's
// axis by τ·sin φ, which is a wrong watch, and tilting the style by τ·cos φ,
// which shows at a declination δ as τ·cos φ·tan δ only. So marks of one April day
// tell the two apart poorly; a watch that was set tells them apart well.
type Unknown struct {
	Turn, Gnomon, Watch bool
	WatchWithin         time.Duration // standard deviation of a watch that was set; 0 where nothing is known of it
}

// A cause is one unknown, as an index.
type cause int

const (
	turned cause = iota // plate and gnomon together, clockwise seen from above
	sloped              // the style's angle with the plate, less the latitude
	watch               // how far the watch is fast, as the angle that the Sun goes in it
	causes
)

func (u Unknown) causes() []cause {
	var list []cause
	for c, sought := range [causes]bool{turned: u.Turn, sloped: u.Gnomon, watch: u.Watch} {
		if sought {
			list = append(list, cause(c))
		}
	}
	return list
}

// A Fit is what the marks say about the causes. The values of causes that were
// not asked for are zero and certain.
//
// The margins hold together: in at least 95 of 100 classes whose readings
// scatter evenly and without memory, every true value lies within its margin.
// They come from the scatter of the marks themselves, so few marks have wide
// ones; Student's t takes care of that, and Bonferroni's inequality of holding
// all at once. A scatter below finest is taken to be that.
type Fit struct {
	Turn, Gnomon             quantity.Angle
	Watch                    time.Duration
	TurnMargin, GnomonMargin quantity.Angle
	WatchMargin              time.Duration
	Residuals                []quantity.Angle // by mark: as marked less as the fit would have it
	Scatter                  quantity.Angle   // root mean square residual, by degrees of freedom
}

// Limits of what a fit takes for marks of one dial.
const (
	finest      = quantity.Turn / 360 / 10 // 0.1°, finer than a pencil line 1 mm wide reads at 30 cm
	mostScatter = quantity.Turn / 360 * 4  // 4°: marks are sixteen minutes off at random
	spareMarks  = 2                        // more than unknowns, or the scatter is not known at all
	mostMargin  = math.Pi / 4              // rad; 45° of a plate or three hours of a watch are no answer

	firstScatter = quantity.Turn / 360 / 2 // guess, until the marks say
)

// TooFew, Undecided and Contradictory are why marks give no answer.
type (
	// TooFew says that there are fewer marks than an answer needs.
	TooFew struct{ Marks, Want int }
	// Undecided says that the marks fit many answers: they lie too close
	// together in the day, or all near a pole's upright style, to tell a turned
	// plate from a wrong watch.
	Undecided struct{}
	// Contradictory says that no turn, gnomon and watch bring the marks near
	// their places.
	Contradictory struct{ Scatter quantity.Angle }
)

func (e *TooFew) Error() string {
	return fmt.Sprintf("%d marks are too few; %d are needed", e.Marks, e.Want)
}
func (e *Undecided) Error() string { return "the marks fit many answers equally well" }
func (e *Contradictory) Error() string {
	return fmt.Sprintf("the marks contradict each other by %.1f°", e.Scatter.Degrees())
}

// FitMarks finds the turn of the plate, the angle of the gnomon and the error
// of the watch that fit the marks of one level dial best, by least squares of
// angles on the plate. The model is Dial's: shadows by vectors, nothing linear.
//
// The error is a *TooFew, *Undecided or *Contradictory, or says that the
// latitude is none. Marks that tell nothing, such as all at one hour, are
// Undecided, and so are those of a flat style on the equator.
func FitMarks(latitude quantity.Angle, marks []Mark, ask Unknown) (Fit, error) {
	return fitMarks(model{latitude: latitude, marks: marks, ask: ask.causes()}, ask)
}

func fitMarks(m model, ask Unknown) (Fit, error) {
	m.suns = &suns{}
	if err := checkLatitude(m.latitude); err != nil {
		return Fit{}, err
	}
	freedom := len(m.marks) - len(m.ask)
	if freedom < spareMarks {
		return Fit{}, &TooFew{len(m.marks), len(m.ask) + spareMarks}
	}
	x, ok := m.start()
	if !ok {
		return Fit{}, &Undecided{}
	}
	var inverse [][]float64
	scatter := firstScatter
	for range 3 { // a watch that was set counts by how the marks scatter
		if ask.Watch && ask.WatchWithin > 0 {
			m.watchWeight = math.Pow(float64(scatter)/(ask.WatchWithin.Hours()*math.Pi/12), 2)
		}
		x, inverse, ok = m.refine(x)
		scatter = quantity.Angle(math.Sqrt(sumOfSquares(m.residuals(x)) / float64(freedom)))
		if scatter > mostScatter {
			return Fit{}, &Contradictory{scatter}
		}
		if !ok {
			return Fit{}, &Undecided{}
		}
		scatter = max(scatter, finest)
		if m.watchWeight == 0 {
			break
		}
	}
	return m.fit(x, inverse, studentT(1-0.05/2/float64(len(m.ask)), freedom)*float64(scatter))
}

// fit states the answer; wide is the margin of a reading.
func (m model) fit(x causeValues, inverse [][]float64, wide float64) (Fit, error) {
	var margins causeValues
	for i, cause := range m.ask {
		margins[cause] = wide * math.Sqrt(inverse[i][i])
	}
	if margins[turned] > mostMargin || margins[sloped] > mostMargin || margins[watch] > mostMargin {
		return Fit{}, &Undecided{}
	}
	f := Fit{
		Turn: quantity.Angle(x[turned]).Signed(), Gnomon: quantity.Angle(x[sloped]), Watch: sunTime(quantity.Angle(x[watch])),
		TurnMargin: quantity.Angle(margins[turned]), GnomonMargin: quantity.Angle(margins[sloped]), WatchMargin: sunTime(quantity.Angle(margins[watch])),
	}
	residuals, _ := m.residuals(x)
	for _, r := range residuals {
		f.Residuals = append(f.Residuals, quantity.Angle(r))
	}
	f.Scatter = quantity.Angle(math.Sqrt(sumOfSquares(residuals, true) / float64(len(m.marks)-len(m.ask))))
	return f, nil
}

// A model predicts marks from causes, all in radians.
type model struct {
	latitude    quantity.Angle
	marks       []Mark
	ask         []cause
	polar       bool    // a polar dial, not a level one
	watchWeight float64 // of the knowledge that the watch is right, one mark being 1
	suns        *suns
}

// suns are where the Sun stood at each mark, by watches that are so fast: those that were
// asked for last. A fit asks for the same few again and again, since other causes leave the
// Sun where it is.
type suns struct {
	watches [4]float64
	at      [4][]sunAt
	next    int
}

type sunAt struct {
	azimuth, altitude quantity.Angle
	direction         vector
}

// sunsBy returns where the Sun stood at each mark by a watch that is so fast, in radians.
func (m model) sunsBy(fast float64) []sunAt {
	for i, watch := range m.suns.watches {
		if watch == fast && m.suns.at[i] != nil {
			return m.suns.at[i]
		}
	}
	i := m.suns.next
	m.suns.next = (i + 1) % len(m.suns.at)
	if m.suns.at[i] == nil {
		m.suns.at[i] = make([]sunAt, len(m.marks))
	}
	m.suns.watches[i] = fast
	for k, mark := range m.marks {
		azimuth, altitude := SunDirection(m.latitude, mark.Declination, mark.HourAngle-quantity.Angle(fast))
		m.suns.at[i][k] = sunAt{azimuth, altitude, toward(azimuth, altitude)}
	}
	return m.suns.at[i]
}

type causeValues [causes]float64

// residuals returns marked less predicted angles. ok is false where a mark
// could not have been made: the Sun was down.
func (m model) residuals(x causeValues) ([]float64, bool) {
	lineOf := m.levelShown(x)
	if m.polar {
		lineOf = m.polarShown(x)
	}
	residuals := make([]float64, len(m.marks))
	for i, sun := range m.sunsBy(x[watch]) {
		line, ok := lineOf(sun)
		if !ok {
			return nil, false
		}
		residuals[i] = float64((m.marks[i].Line - line).Signed())
	}
	return residuals, true
}

// levelShown predicts marks on a level dial from causes, as Dial.Line does.
func (m model) levelShown(x causeValues) func(sunAt) (line quantity.Angle, ok bool) {
	d := True(m.latitude)
	d.Style.Elevation += quantity.Angle(x[sloped])
	d = d.Turned(quantity.Angle(x[turned]))
	edge := toward(d.Style.Azimuth, d.Style.Elevation)
	return func(sun sunAt) (quantity.Angle, bool) {
		shadow, ok := shadowOf(edge, sun.direction)
		return d.fromNoon(shadow), ok
	}
}

// squares is what least squares make least, infinite where a mark could not
// have been made.
func (m model) squares(x causeValues) float64 {
	return sumOfSquares(m.residuals(x)) + m.watchWeight*x[watch]*x[watch]
}

func sumOfSquares(residuals []float64, ok bool) float64 {
	if !ok {
		return math.Inf(1)
	}
	sum := 0.0
	for _, r := range residuals {
		sum += r * r
	}
	return sum
}

// start tries turns all round and watches an hour out, for a forgotten clock
// change; a plate can lie the wrong way about.
func (m model) start() (best causeValues, ok bool) {
	turns, hours := []float64{0}, []float64{0}
	if slices.Contains(m.ask, turned) {
		for turn := 15.0; turn < 360; turn += 15 {
			turns = append(turns, turn*math.Pi/180)
		}
	}
	if slices.Contains(m.ask, watch) {
		hours = []float64{0, -math.Pi / 12, math.Pi / 12}
	}
	least := math.Inf(1)
	for _, turn := range turns {
		for _, hour := range hours {
			x := causeValues{turned: turn, watch: hour}
			if s := m.squares(x); s < least {
				best, least, ok = x, s, true
			}
		}
	}
	return best, ok
}
