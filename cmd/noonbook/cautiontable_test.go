package main

// A warned is one use of a placeholder and what it must tell people: the cautions,
// where the work can hurt somebody, and the warnings, about what must not be
// trusted or done. It tells no more than these.
type warned struct {
	name     string // of the placeholder
	when     string // what brings it out, for messages
	given    string // arguments and settings, a line each as in a block
	cautions []said
	renewed  []said // of these, what has other numbers than on the page before
	warnings []said
	also     []said // in its tables, drawings and notes
	paper    []said // on the sheets to print themselves
	unsaid   []said // what it must not say here
}

const (
	northPole  = "school.latitude = 90\nschool.longitude = 0\nschool.time_zone = \"UTC\"\n"
	resolute   = "school.latitude = 74.7\nschool.longitude = -94.97\nschool.time_zone = \"America/Resolute\"\n"
	tromso     = "school.latitude = 69.65\nschool.longitude = 18.96\nschool.time_zone = \"Europe/Oslo\"\n"
	onTheLine  = "school.latitude = 0\nschool.longitude = 6.7\nschool.time_zone = \"Africa/Lagos\"\n"
	onTropic   = "school.latitude = 23.4\nschool.longitude = 0\nschool.time_zone = \"UTC\"\n"
	cadiz      = "school.latitude = 36.5\nschool.longitude = -6.3\nschool.time_zone = \"Europe/Madrid\"\n"
	april      = "date = 2027-04-20\n"
	midsummer  = "date = 2027-06-21\n"
	midwinter  = "date = 2027-12-21\n"
	afterModel = "date = 2031-04-20\n" // the magnetic model ends with 2029
)

// everyPlaceholder is what each placeholder of the catalogue must tell, and when.
// One that tells nothing is listed too, at an ordinary school on an ordinary day.
//
// Where a compass fails is the World Magnetic Model's: its blackout zone, where the
// horizontal field is below 2000 nT, holds the geographic north pole in these years,
// and its caution zone, below 6000 nT, holds Resolute. The Sun does not rise at 70°
// north on 21 December and does not set there on 21 June. On 2 August 2027 an
// eclipse of the Sun is total at Cádiz (NASA/TP-2006-214141).
var everyPlaceholder = []warned{
	{name: "class-facts"},
	{name: "code-list"},
	{name: "day", given: april},
	{name: "dial-blank", given: april, cautions: []said{scissors, sunCare}, paper: []said{lineScissors, lineSun}},
	{name: "dial-blank", when: "on the equator", given: onTheLine + april, cautions: []said{scissors, sunCare}, paper: []said{lineScissors, lineSun}},
	{name: "dial-clock", given: april, cautions: []said{scissors}, paper: []said{lineScissors, lineSun}},
	{name: "dial-day", given: april, cautions: []said{sunCare}},
	{name: "dial-day", when: "at the pole", given: northPole + midsummer, cautions: []said{sunCare}, warnings: []said{noCompass}},
	{name: "dial-day", when: "near the magnetic pole", given: resolute + april, cautions: []said{sunCare}, warnings: []said{weakCompass}},
	{name: "dial-day", when: "after the model", given: afterModel, cautions: []said{sunCare}, warnings: []said{oldModel}},
	{name: "dial-day", when: "in polar night", given: tromso + midwinter, cautions: []said{sunCare}, warnings: []said{noSunAtAll}},
	{name: "dial-drift", given: april},
	{name: "dial-face", given: april, cautions: []said{scissors}, paper: []said{lineScissors, lineSun}},
	{name: "dial-face", when: "on the equator", given: onTheLine + april, cautions: []said{scissors}, paper: []said{lineScissors, lineSun}},
	{name: "dial-face", when: "level on the equator", given: "school.latitude = 0\nkind = \"level\"\n" + april, cautions: []said{scissors}, warnings: []said{unreadable}, paper: []said{lineScissors, lineSun}},
	{name: "dial-gnomon", cautions: []said{scissors, sharpTip}, paper: []said{lineScissors, lineTip, lineSun}},
	{name: "dial-gnomon", when: "on the equator", given: onTheLine, cautions: []said{scissors, sharpTip}, paper: []said{lineScissors, lineTip, lineSun}},
	{name: "dial-gnomon", when: "level on the equator", given: "school.latitude = 0\nkind = \"level\"\n", cautions: []said{scissors, sharpTip}, warnings: []said{unreadable}, paper: []said{lineScissors, lineTip, lineSun}},
	{name: "dial-gnomon", when: "a rod", given: "kind = \"equatorial\"\n", cautions: []said{scissors, sharpTip}, also: []said{says("Blunt its end")}, paper: []said{lineScissors, lineTip, lineSun}},
	{name: "dial-hours", given: april, cautions: []said{sunCare, keepers}},
	{name: "dial-hours", when: "in polar night", given: tromso + midwinter, cautions: []said{sunCare, keepers}, warnings: []said{noSunHours}},
	{name: "dial-hours", when: "on the day of a clock change", given: "date = 2027-03-14\n", cautions: []said{sunCare, keepers}, warnings: []said{clockChange}},
	{name: "dial-lesson", given: april},
	{name: "dial-marks"},
	{name: "dial-north", given: april, cautions: []said{sunCare}},
	{name: "dial-north", when: "at the pole", given: northPole + midsummer, cautions: []said{sunCare}, warnings: []said{noCompass}},
	{name: "dial-north", when: "near the magnetic pole", given: resolute + april, cautions: []said{sunCare}, warnings: []said{weakCompass}},
	{name: "dial-north", when: "after the model", given: afterModel, cautions: []said{sunCare}, warnings: []said{oldModel}},
	{name: "dial-north", when: "under the Sun", given: onTropic + midsummer, cautions: []said{sunCare}, warnings: []said{overhead}},
	{name: "dial-plate", given: april},
	{name: "dial-table", given: april},
	{name: "dial-table", when: "at the pole", given: northPole + midsummer, warnings: []said{noCompass}},
	{name: "dial-table", when: "near the magnetic pole", given: resolute + april, warnings: []said{weakCompass}},
	{name: "dial-table", when: "after the model", given: afterModel, warnings: []said{oldModel}},
	{name: "dial-table", when: "on the equator", given: onTheLine + april},
	{name: "eclipse-list", given: april, cautions: []said{sunEclipsed, viewers, moonEclipsed}},
	{name: "eclipse-list", when: "where no eclipse is listed", given: "years = 1\n" + april, cautions: []said{sunEclipsed, viewers, moonEclipsed}},
	{name: "evening-note", cautions: []said{familyEvening}, also: []said{wayHome, warmClothes, says("Please no laser pointers").french("Pas de pointeur laser")},
		paper: []said{says("Fetched by").french("Vient le chercher"), says("No answer is a no", "own rules come first").french("Sans réponse, c'est non", "règles de l'école passent en premier")}},
	{name: "evening-note", when: "where it does not get dark", given: tromso, cautions: []said{familyEvening}, warnings: []said{noNight}},
	{name: "evening-plan", cautions: []said{eveningCare}, also: []said{says("The adults walk with the groups from place to place", "each with about eight pupils", "stays free", "own number of adults comes first").french("Les adultes vont avec les équipes", "Le nombre d'adultes que demande l'école passe en premier")}},
	{name: "evening-plan", when: "where it does not get dark", given: tromso, warnings: []said{noNight}, unsaid: []said{eveningCare}},
	{name: "family-note", when: "of the whole unit", given: "lesson = 0\n", cautions: []said{familySun, familyOutside, familyEvening},
		also: []said{says("outside in the Sun: hat, sun cream, water"), says("in the dark, with an adult: a warm coat"), says("outside: shoes and a coat"), noPhotograph, says("Where we have no answer we take it as a no")}},
	{name: "family-note", when: "of a lesson in the Sun", given: "lesson = 1\n", cautions: []said{familySun, familyOutside},
		also: []said{says("outside in the Sun: hat, sun cream, water")}, unsaid: []said{familyEvening}},
	{name: "family-note", when: "of a lesson in the dark", given: "lesson = 2\n", cautions: []said{familySun, familyEvening},
		also: []said{says("in the dark, with an adult: a warm coat")}, unsaid: []said{familyOutside}},
	{name: "family-note", when: "of a lesson indoors", given: "lesson = 3\n", cautions: []said{familySun}, also: []said{noPhotograph}, unsaid: []said{familyOutside, familyEvening, says("Evenings at home").french("Le soir à la maison")}},
	{name: "family-note", when: "about evenings at home", given: "lesson = 3\nevenings = true\n", cautions: []said{familySun, familyEvening}, also: []said{eveningAtHome},
		paper: []said{says("after dark, with an adult").french("le soir, avec un adulte"), says("No answer is a no", "own rules come first").french("Sans réponse, c'est non", "règles de l'école passent en premier")}},
	{name: "journey-table", given: april},
	{name: "kit-list"},
	{name: "kit-list", when: "without pupils", given: "class.pupils = 0\n", warnings: []said{noPupils}},
	{name: "lens-log", cautions: []said{lensCare}},
	{name: "lens-pairs", when: "with useless lenses", cautions: []said{lensCare}, warnings: []said{noPair}},
	{name: "lens-power", cautions: []said{lensCare}},
	{name: "lens-power", when: "with labels that contradict each other", given: "power_dioptres = 4.0\nmagnifier_times = 12.0\n", cautions: []said{lensCare}, warnings: []said{disagree}},
	{name: "lens-rays", cautions: []said{lensCare}},
	{name: "lens-rays", when: "the wrong way round", given: "stock.front_lens_focal_mm = 50\nstock.eye_lens_focal_mm = 250\n", cautions: []said{lensCare}, warnings: []said{shrinks}},
	{name: "lens-rays", when: "with equal lenses", given: "stock.front_lens_focal_mm = 100\nstock.eye_lens_focal_mm = 100\n", cautions: []said{lensCare}, warnings: []said{equalLenses}},
	{name: "lens-rays", when: "with lenses nearly alike", given: "stock.front_lens_focal_mm = 110\nstock.eye_lens_focal_mm = 100\n", cautions: []said{lensCare}, warnings: []said{weakPair}},
	{name: "lens-rays", when: "with too strong an eye lens", given: "stock.front_lens_focal_mm = 300\nstock.eye_lens_focal_mm = 6\n", cautions: []said{lensCare}, warnings: []said{blurredPair}},
	{name: "lesson-sky", when: "with the Moon beside the Sun", given: "lesson = 4\n", also: []said{says("too near the Sun: do not search").french("trop près du Soleil : ne pas chercher")}},
	{name: "marking-grid"},
	{name: "mars-blank"},
	{name: "mars-map"},
	{name: "mars-map-key"},
	{name: "mars-poster"},
	{name: "moon-diary", given: april, cautions: []said{moonByDay, homeAtNight}, also: []said{says("too near the Sun")}, paper: []said{lineMoon, says("with an adult")}},
	{name: "moon-diary", when: "in the dark", given: "date = 2027-11-15\n", cautions: []said{moonByDay, homeAtNight}, also: []said{says("with an adult"), says("too near the Sun")}, paper: []said{lineMoon, says("with an adult")}},
	{name: "mission-plans"},
	{name: "mission-record"},
	{name: "moon-log"},
	{name: "moon-diary-key", given: april, cautions: []said{moonByDay, homeAtNight}},
	{name: "moon-blank"},
	{name: "moon-map", given: april, cautions: []said{classAtNight, moonByDay, telescopeCare}},
	{name: "moon-map", when: "by day", given: "time = \"17:00\"\ndate = 2027-04-13\n", cautions: []said{classAtNight, moonByDay, telescopeCare}, warnings: []said{bareEyesByDay}},
	{name: "moon-map", when: "with the Moon down", given: "time = \"9:00\"\ndate = 2027-04-13\n", cautions: []said{classAtNight, moonByDay, telescopeCare}, warnings: []said{moonDown}},
	{name: "moon-map", when: "about new Moon", given: "time = \"19:00\"\ndate = 2027-04-06\n", cautions: []said{classAtNight, moonByDay, telescopeCare}, warnings: []said{noMoonYet, bareEyesByDay}},
	{name: "moon-map-key"},
	{name: "moon-month", given: april},
	{name: "moon-poster"},
	{name: "moon-ring", given: april, cautions: []said{bareLamp, darkRoom}},
	{name: "moon-school", cautions: []said{moonByDay}},
	{name: "place-facts", given: april},
	{name: "place-facts", when: "at the pole", given: northPole + midsummer, warnings: []said{noCompass}},
	{name: "place-facts", when: "near the magnetic pole", given: resolute + april, warnings: []said{weakCompass}},
	{name: "place-facts", when: "after the model", given: afterModel, warnings: []said{oldModel}},
	{name: "planets-week", given: april, cautions: []said{planetsAtDusk}},
	{name: "print-list"},
	{name: "print-list", when: "without pupils", given: "class.pupils = 0\n", warnings: []said{noPupils}},
	{name: "risk-notes", when: "of the whole unit", given: "lesson = 0\n", also: []said{rulesFirst, sunCare, keepers, scissors, sharpTip, lensCare, bareLamp, darkRoom, paperRocket, sightCare, homeAtNight, classAtNight, signHere, ownForm}},
	{name: "rocket-clinometer", cautions: []said{scissors, sightCare}, paper: []said{lineScissors, lineSight}},
	{name: "rocket-height", cautions: []said{sightCare}},
	{name: "rocket-list", cautions: []said{sightCare}, paper: []said{lineSight}},
	{name: "rocket-log"},
	{name: "rocket-parts", cautions: []said{launcher}, also: []said{says("a pipe that is cracked, whitened or deeply scratched goes in the bin"), says("A flattened bottle is changed")}},
	{name: "rocket-parts", when: "drawn alone", given: "show = [\"drawing\"]\n", cautions: []said{launcher}},
	{name: "rocket-path"},
	{name: "rocket-wrap", cautions: []said{scissors, paperRocket}, paper: []said{lineScissors, lineRocket}},
	{name: "rocket-wrap", when: "with small fins", given: "fin_span_mm = 10.0\nfin_root_mm = 15.0\nfin_tip_mm = 5.0\nbody_mm = 120.0\n", cautions: []said{scissors, paperRocket}, warnings: []said{tumbles}, paper: []said{lineScissors, lineRocket}},
	{name: "rocket-wrap", when: "with little play", given: "stock.pipe_play_mm = 0.2\n", cautions: []said{scissors, paperRocket}, warnings: []said{tightTube}, paper: []said{lineScissors, lineRocket}},
	{name: "rocket-zone", cautions: []said{sightCare, clearZone}, also: append([]said{sunBehind, says("Nobody launches as soon as leaves and small twigs move all the time")}, wardens...)},
	{name: "rocket-zone", when: "drawn alone", given: "show = [\"drawing\"]\nfield.length_m = 66\nfield.width_m = 66\n", cautions: []said{sightCare, clearZone}, warnings: []said{smallField, steeperPipe, softerStamp}},
	{name: "rocket-zone", when: "on a small field", given: "field.length_m = 40\nfield.width_m = 40\n", cautions: []said{sightCare, clearZone}, warnings: []said{smallField, steeperPipe, softerStamp}, also: wardens},
	{name: "rocket-zone", when: "where more drag would do", given: "field.length_m = 86\nfield.width_m = 86\nfield.margin_percent = 90\n", cautions: []said{sightCare, clearZone}, renewed: []said{clearZone}, warnings: []said{smallField, steeperPipe, softerStamp, moreDrag}, also: wardens},
	{name: "rocket-zone", when: "where no drag would do", given: "field.length_m = 66\nfield.width_m = 66\n", cautions: []said{sightCare, clearZone}, warnings: []said{smallField, steeperPipe, softerStamp}, also: wardens, unsaid: []said{moreDrag}},
	{name: "rocket-zone", when: "by night", given: "day = 2027-04-20\ntime = \"2:00\"\n", cautions: []said{sightCare, clearZone}, also: append([]said{says("so there is no side of the Sun", "to its side, so that shadows fall in front of those who sight")}, wardens...)},
	{name: "rocket-zone", when: "where nothing helps", given: "field.length_m = 4\nfield.width_m = 4\n", cautions: []said{sightCare, clearZone}, warnings: []said{smallField, otherField}, also: wardens},
	{name: "rubric"},
	{name: "sand-glass", cautions: []said{bottleHole, sandCare}},
	{name: "season-dates", given: april},
	{name: "season-model", given: april, cautions: []said{bareLamp, darkRoom}},
	{name: "sky-alerts", given: "from = 2027-04-12\nto = 2027-05-14\n", also: []said{watchedAtHome}, unsaid: []said{sunEclipsed}},
	{name: "sky-alerts", when: "with an eclipse of the Sun", given: cadiz + "from = 2027-08-01\nto = 2027-08-03\n", cautions: []said{sunEclipsed, viewers}, also: []said{watchedAtHome}},
	{name: "sky-map", given: april, cautions: []said{classAtNight}, paper: []said{says("Go out with grown-ups, never alone").french("Sors avec des adultes, jamais seul")}},
	{name: "sky-map", when: "in the midnight Sun", given: tromso + midsummer, cautions: []said{classAtNight}, warnings: []said{neverDark, sunIsUp}},
	{name: "sky-map", when: "by day", given: "time = \"12:00\"\n" + april, cautions: []said{classAtNight}, warnings: []said{sunIsUp}},
	{name: "sky-map", when: "just after sunset", given: "time = \"20:25\"\n" + april, cautions: []said{classAtNight}, warnings: []said{brightSky}},
	{name: "sky-wheel", given: april, cautions: []said{scissors, classAtNight},
		paper: []said{says("A grown-up cuts the window out of the mask with a knife").french("Un adulte découpe la fenêtre"), says("Go out with grown-ups").french("Sors avec des adultes")}},
	{name: "strip-balls", cautions: []said{smallParts}},
	{name: "strip-cards", cautions: []said{scissors}, paper: []said{lineScissors}},
	{name: "strip-field", given: april, cautions: []said{pegCare}},
	{name: "strip-field", when: "at the pole", given: northPole + midsummer, cautions: []said{pegCare}, warnings: []said{noCompass}},
	{name: "strip-field", when: "near the magnetic pole", given: resolute + april, cautions: []said{pegCare}, warnings: []said{weakCompass}},
	{name: "strip-field", when: "after the model", given: afterModel, cautions: []said{pegCare}, warnings: []said{oldModel}},
	{name: "strip-field", when: "on a small field", given: "field.length_m = 20\nfield.width_m = 20\n" + april, cautions: []said{pegCare}, warnings: []said{crowded}},
	{name: "strip-log"},
	{name: "strip-moon", cautions: []said{smallParts}},
	{name: "strip-picture"},
	{name: "strip-picture", when: "too short", given: "stock.strip_squares = 1\nmillion_km_a_square = 15.0\n", warnings: []said{onlySun}},
	{name: "strip-plate"},
	{name: "strip-plate", when: "too short", given: "stock.strip_squares = 1\nmillion_km_a_square = 15.0\n", warnings: []said{onlySun}},
	{name: "strip-table", cautions: []said{floorCare}},
	{name: "strip-table", when: "too short", given: "stock.strip_squares = 1\nmillion_km_a_square = 15.0\n", cautions: []said{floorCare}, warnings: []said{onlySun}},
	{name: "strip-table", when: "shorter than its scale", given: "stock.strip_squares = 100\nmillion_km_a_square = 15.0\n", cautions: []said{floorCare}, warnings: []said{endsBefore}},
	{name: "strip-table", when: "of few squares", given: "stock.strip_squares = 40\n", cautions: []said{floorCare}, warnings: []said{fewSquares}},
	{name: "strip-time", given: april, cautions: []said{floorCare}},
	{name: "strip-time", when: "before the space age", given: "date = 1956-04-20\n", cautions: []said{floorCare}, warnings: []said{beforeSpace}},
	{name: "sun-day", given: april},
	{name: "sun-path", given: april, cautions: []said{sunCare}},
	{name: "sun-path", when: "in polar night", given: tromso + midwinter, cautions: []said{sunCare}, warnings: []said{noFullHour}},
	{name: "sun-year", given: april},
	{name: "tube-parts", cautions: []said{lensCare, telescopeCare}},
	{name: "tube-plan", cautions: []said{lensCare, telescopeCare, sawCare, scissors}, warnings: []said{tooFewTubes, tooFewTubes}, paper: []said{lineLenses, lineTelescope, lineScissors}},
	{name: "unit-map"},
	{name: "unit-plan"},
	{name: "water-clock", cautions: []said{bottleHole, wetFloor, scissors}, paper: []said{lineBottle, lineWet, lineScissors}},
	{name: "water-clock", when: "that runs out at once", given: "hole_mm = 5.0\n", cautions: []said{bottleHole, wetFloor, scissors}, warnings: []said{shortRun}, paper: []said{lineBottle, lineWet, lineScissors}},
	{name: "water-clock", when: "down to the drops", given: "last_mm = 20.0\n", cautions: []said{bottleHole, wetFloor, scissors}, warnings: []said{dropsBelow}, paper: []said{lineBottle, lineWet, lineScissors}},
	{name: "water-clock", when: "with a time that cannot be", given: "timed_s = 1000.0\n", cautions: []said{bottleHole, wetFloor, scissors}, warnings: []said{misreadRun}, paper: []said{lineBottle, lineWet, lineScissors}},
	{name: "weight-table", given: april},
	{name: "world-cards", given: april, cautions: []said{scissors}, paper: []said{lineScissors}},
	{name: "world-compare"},
}

// What the paper itself says to whoever carries it away.
var (
	lineSun       = says("Never look at the Sun. Look at shadows, with your back to it").french("Ne regarde jamais le Soleil")
	lineScissors  = says("Sit down to cut. An adult uses the knife").french("Assois-toi pour couper")
	lineTip       = says("Fold tape over the sharp corner").french("Replie du ruban sur la pointe")
	lineLenses    = says("Never look at the Sun through a lens").french("Ne regarde jamais le Soleil à travers une lentille")
	lineTelescope = says("Never point the telescope at the Sun or near it", "after sunset only, with an adult").french("Ne pointe jamais la lunette vers le Soleil")
	lineRocket    = says("Never aim a rocket at anyone").french("Ne vise jamais personne")
	lineSight     = says("Never sight toward the Sun: keep it behind you").french("Ne vise jamais vers le Soleil")
	lineBottle    = says("An adult makes the holes and tapes the cut edges").french("Un adulte fait les trous")
	lineWet       = says("Wipe up water at once. Never run").french("Essuie l'eau tout de suite")
	lineMoon      = says("Never look for the Moon near the Sun. Go out in the dark only with an adult").french("Ne cherche jamais la Lune près du Soleil", "Sors dans le noir seulement avec un adulte")
)

// wardens are the people who keep a launch safe, in the table and the drawing.
var wardens = []said{
	says("Warden of the edge").french("Garde du bord"),
	says("Countdown caller, beside the adult").french("Compte à rebours, à côté de l'adulte"),
	says("at the bottle, behind it, never over the nose"),
	says("slides the rocket on, then goes behind the bottle"),
	says("goes on the word only"),
	says("outside the clear zone"),
	says("Wardens face outward and watch the ground along the edge"),
}

// sunBehind is where the stations are, and how anybody checks it.
var sunBehind = says("Keep the Sun behind those who sight", "both stations are behind you", "your own shadow must point ahead of you").
	french("garde le Soleil dans le dos", "les deux stations sont derrière vous", "votre propre ombre doit pointer devant vous")

var watchedAtHome = says("What happens at night is watched at home, with an adult").french("avec un adulte")
