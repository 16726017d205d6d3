package main

// A said is what a sentence must say to people: a distinctive part for each thing
// that it has to tell them, in the order of the sentence. The words stand here and
// are not asked of the words file, so that a sentence that is emptied, cut or
// turned into another one fails. Where the French is open, it must be there and
// be other words than the English.
type said struct{ en, fr []string }

func says(en ...string) said { return said{en: en} }

func (s said) french(fr ...string) said { s.fr = fr; return s }

// What can blind.
var (
	sunCare = says("Never look at the Sun, not even for a moment and not through anything", "Dark glasses, smoked glass and camera screens do not make it safe", "a lens or binoculars can blind at once", "Work with your back to the Sun and look at shadows only", "Never look along a stick or an edge toward the sky", "Hats and sun cream follow the school's own rules, which come first").
		french("Ne regardez jamais le Soleil", "le dos au Soleil", "les règles de l'école")
	lensCare = says("Nobody looks at the Sun through a lens", "nobody projects it onto anything", "blinds at once and sets paper and skin on fire", "Measure with a lamp, indoors", "never lie on a window sill or in sunlight", "Count them out and count them back in", "A cracked one goes to the adult", "The school's own rules come first").
			french("Personne ne regarde le Soleil à travers une lentille", "met le feu au papier et à la peau", "Les règles de l'école")
	telescopeCare = says("By day the telescope is used indoors only", "away from every window", "Never point it at the Sun or near it", "No eclipse viewer, dark glass, film or filter goes into a telescope or before it", "after sunset only, with an adult beside it", "caps on", "The school's own rules come first").
			french("à l'intérieur seulement", "vers le Soleil ni près de lui", "après le coucher du Soleil seulement", "Les règles de l'école")
	moonByDay = says("Never search for the Moon beside the Sun", "never with a lens or binoculars by day", "The adult finds the Moon first", "a wall or a tree hides the Sun", "nearer to the Sun than 35°, three and a half fists at the end of the arm, leave it alone", "The school's own rules for lessons outdoors come first").
			french("Ne cherchez jamais la Lune à côté du Soleil", "jamais avec une lentille", "un mur ou un arbre cache le Soleil", "moins de 35° du Soleil")
	planetsAtDusk = says("when the Sun is below the horizon, with an adult", "Never point a telescope, binoculars or a camera at a planet before the Sun has set or after it has come up", "blinds", "The school's own rules come first").
			french("quand le Soleil est sous l'horizon, avec un adulte", "avant le coucher du Soleil ou après son lever", "aveugle")
	pegCare = says("nobody looks toward the real Sun to take a bearing", "pegs and strings trip people", "Walk", "Stay within the part of the grounds that the school uses", "keep cars and ball games away", "The school's own rules for lessons outdoors come first").
		french("personne ne regarde vers le vrai Soleil", "on trébuche", "Les règles de l'école")
	sightCare = says("Never sight toward the Sun", "never follow a rocket toward it", "the Sun is behind you", "your own shadow points ahead", "Hats and sun cream follow the school's own rules").
			french("Ne visez jamais vers le Soleil", "le Soleil dans le dos", "les règles de l'école")
	sunEclipsed = says("Never look at the Sun, eclipsed or not", "not for a moment, not through sunglasses, smoked glass or film", "a lens, binoculars, a telescope or a camera", "with your back to the Sun", "The school's own rules come first").
			french("Ne regardez jamais le Soleil, éclipsé ou non", "une lentille, des jumelles, un télescope", "le dos au Soleil", "Les règles de l'école passent en premier")
	viewers = says("ISO 12312-2, undamaged and used as their maker says, are for bare eyes only", "never go with a lens of any kind", "An adult hands them out, checks each one").
		french("ISO 12312-2", "pour les yeux nus seulement", "jamais avec une lentille", "un adulte qui les distribue")
	moonEclipsed = says("happens at night", "pupils watch it with a parent or guardian").
			french("la nuit", "avec un parent ou un tuteur")
	familySun = says("never look at the Sun, not even for a moment", "never through a lens, binoculars or a telescope", "Dark glasses do not make it safe").
			french("ne jamais regarder le Soleil", "jamais à travers une lentille, des jumelles ou un télescope", "Des verres sombres ne protègent pas")
)

// What is done outside, at night, on a field, with tools.
var (
	keepers = says("in pairs, tell an adult when they leave and when they are back", "where an adult can see them", "school's rules about leaving the room come first").
		french("vont à deux, préviennent un adulte", "Les règles de l'école")
	scissors = says("Pass scissors with the handles first and sit down to cut", "An adult cuts what needs a craft knife, on a mat, along a steel ruler", "The school's own rules come first").
			french("Les ciseaux", "un adulte qui le coupe", "Les règles de l'école")
	sharpTip = says("sharp and at eye height when you bend over the plate", "fold a piece of tape over it").
			french("à la hauteur des yeux", "ruban adhésif")
	floorCare = says("trip hazard", "put a sign and a warden at each end", "tape the paper down", "never run", "Keep doors, stairs and the ways out of the building free", "The school's fire rules come first").
			french("trébucher", "ne courez jamais", "les sorties", "Les règles de l'école en cas d'incendie")
	smallParts = says("can choke", "out of mouths and away from small children", "count them back in", "the school's rules for allergies").
			french("On peut s'étouffer", "jamais dans la bouche", "les règles de l'école sur les allergies")
	sawCare = says("Only an adult cuts tubes", "away from the class", "taped before anybody puts an eye to them", "Lenses are in their bags while anything is cut", "The school's own rules come first").
		french("Seul un adulte coupe les tubes", "avant que quelqu'un y mette l'œil", "Les règles de l'école")
	bottleHole = says("Only an adult makes holes in bottles and cuts them, away from the class", "never held in the hand", "No hot needle or nail: hot plastic burns and its smoke is bad to breathe", "tape every cut one before a pupil takes it", "no glass", "The school's own rules come first").
			french("Seul un adulte perce et coupe les bouteilles", "jamais tenue à la main", "Ni aiguille ni clou chauffés", "couvrez de ruban tout bord coupé", "pas de verre", "Les règles de l'école passent en premier")
	wetFloor = says("A wet floor is slippery", "in a tray with a rim", "away from sockets, cables and computers", "Wipe up at once", "Nobody runs", "Nobody drinks the water", "The school's own rules come first").
			french("Un sol mouillé glisse", "loin des prises", "Essuyez tout de suite", "Personne ne court", "Personne ne boit", "Les règles de l'école passent en premier")
	sandCare = says("washed play sand that is dry, never builder's sand, cement or fine dust", "do not throw or blow it", "Keep sand out of eyes and do not rub them: rinse with clean water and tell the adult", "sweep it up damp at once", "The school's own rules come first").
			french("sable de jeu lavé et sec, jamais de sable de construction", "loin des yeux et ne les frottez pas", "balayez-le humide", "Les règles de l'école passent en premier")
	homeAtNight = says("pupils whose families say yes", "nobody goes out alone", "an adult of the family comes along", "away from traffic and water", "Nobody stays up or gets up for it", "Nobody looks toward the Sun, not even when it is low", "No telescope or binoculars before sunset", "leave the day empty", "the school's for homework and evenings").
			french("dont la famille est d'accord", "personne ne sort seul", "loin de la circulation et de l'eau", "Personne ne regarde vers le Soleil")
	clearZone = says("Nobody but the launch crew with its adult is within", "of the launcher from the countdown until the adult says that the rocket is down", "No launch in a wind stronger than", "Closed shoes for the pupil who stamps", "The school's own rules and those of the place come first; where they ask for more, they hold").
			french("l'équipe de lancement et son adulte sont à moins de", "Pas de lancement par un vent plus fort que", "Chaussures fermées", "Les règles de l'école et celles du lieu passent en premier")
	launcher = says("stamped on and nothing else", "never pumped up", "must not be able to store pressure", "Never cap or block the pipe", "An adult saws the pipe", "gives way before anything bursts", "The school's rules come first").
			french("On ne le gonfle jamais", "ne doit pas pouvoir garder de pression", "Ne bouchez et ne bloquez jamais le tuyau", "un adulte qui scie le tuyau", "Les règles de l'école passent en premier")
	paperRocket = says("paper and tape and nothing else", "no stick, no wire, no weight in the nose, nothing hard or sharp", "Press the nose blunt", "never aimed at anyone", "from the launcher only, with the adult in charge", "The school's own rules come first").
			french("en papier et en ruban", "ni bâton, ni fil de fer", "On ne la pointe jamais vers quelqu'un", "Les règles de l'école")
	bareLamp = says("A lamp without a shade is hot and glares", "nobody can knock it over", "Only the adult touches, moves or switches it", "two steps away", "Nobody stares at the bulb", "It cools before it is put away", "Tape cables down", "The school's rules for electrical things come first").
			french("Une lampe sans abat-jour est chaude et éblouit", "Seul l'adulte la touche", "Les règles de l'école pour les appareils électriques passent en premier")
	darkRoom = says("out of the way before the light goes out", "only those whose turn it is walk", "Sticks stay away from eyes", "bright or flickering light", "The school's rules for dark rooms come first").
			french("Dégagez les sacs et les chaises", "seuls marchent ceux dont c'est le tour", "loin des yeux", "Les règles de l'école")
	familyEvening = says("after dark is done with an adult", "away from traffic", "only if you agree").
			french("avec un adulte", "loin des voitures", "seulement si vous êtes d'accord")
	rulesFirst = says("school's own rules, the rules of the place and local codes come first", "a licence or training", "cannot be made safe here, we leave it out").
			french("règles de l'école, celles du lieu et les codes locaux passent en premier", "un permis ou une formation", "ne peut pas être rendu sûr ici, nous le laissons")
	signHere      = says("Signature").french("Signature")
	ownForm       = says("does not take the place of the school's own form").french("ne remplace pas le formulaire de l'école")
	noPhotograph  = says("no photograph of your child", "show none, unless you say yes").french("Sans votre oui", "aucune photo de votre enfant")
	eveningAtHome = says("an adult of the family comes along", "away from traffic and water", "Nobody stays up for it").french("un adulte de la famille accompagne", "loin de la circulation et de l'eau")
	familyOutside = says("We go out into the Sun", "Hats, sun cream and water follow the rules of the school").
			french("Nous sortons au soleil", "Pour le chapeau, la crème solaire et l'eau, nous suivons les règles de l'école")
	eveningCare = says("only with the school's leave and a yes from each family", "Walk the ground by day", "away from road and water", "Nobody is alone, and nobody runs in the dark", "count the pupils at each station and at the gate", "Each child goes home with a grown-up whom the family has named", "cold or afraid goes in with the free adult", "Nothing is pointed at the sky before the Sun has wholly set, and then an adult points it", "Red light only, and no laser pointer: it blinds people, and pilots", "The school's own rules for evenings and for the way home come first").
			french("l'accord de l'école et un oui de chaque famille", "loin de la route et de l'eau", "Personne n'est seul", "comptez les élèves", "un adulte que sa famille a nommé", "Qui a froid ou peur", "avant que le Soleil soit tout à fait couché", "aucun pointeur laser", "Les règles de l'école pour les soirées")
	wayHome = says("nobody goes home alone", "We hand each child over, by name, to the grown-up on the slip", "cold or tired waits inside with an adult").
		french("personne ne rentre seul", "Nous remettons chaque enfant, par son nom", "attend à l'intérieur avec un adulte")
	warmClothes  = says("standing still outside", "closed shoes", "Something bright for the way").french("pour rester dehors sans bouger", "chaussures fermées", "Quelque chose de clair pour le chemin")
	classAtNight = says("at night with grown-ups", "within the school's own rules", "bright clothes, away from traffic", "nobody is left alone", "ever looks at the Sun through a lens, binoculars or a telescope", "nothing is pointed at the sky before the Sun has set", "blinds").
			french("la nuit avec des adultes", "selon les règles de l'école", "loin de la circulation", "personne ne reste seul", "ne regarde jamais le Soleil à travers une lentille", "avant le coucher du Soleil")
)

// What must not be trusted or done.
var (
	noNight   = says("No evening of this term will do", "the stars out early enough").french("Aucun soir de ce trimestre ne convient")
	noCompass = says("A compass is of no use here, so near a magnetic pole", "Find true north by the noon shadow").
			french("une boussole ne sert à rien", "par l'ombre de midi")
	weakCompass = says("A compass is weak and slow here, near a magnetic pole", "Find true north by the noon shadow").
			french("une boussole est faible et lente", "par l'ombre de midi")
	oldModel = says("The magnetic model holds from 2025 to 2030", "the compass numbers are a guess").
			french("Le modèle magnétique vaut de 2025 à 2030", "une supposition")
	bareEyesByDay = says("The Sun is up at this time", "Look with bare eyes only", "keep the Sun hidden behind a wall", "stay packed until the Sun has wholly set").
			french("Le Soleil est levé à cette heure", "à l'œil nu seulement", "cachez le Soleil derrière un mur", "tout à fait couché")
	moonDown  = says("the Moon is below our horizon", "It next rises on").french("la Lune est sous notre horizon", "Prochain lever")
	noMoonYet = says("The Moon is new or nearly so", "too near the Sun to be looked for").french("La Lune est nouvelle", "trop près du Soleil pour qu'on la cherche")
	sunIsUp   = says("The Sun is up at this time", "Never look for it near the Sun").
			french("Le Soleil est levé à cette heure", "Ne cherchez jamais près du Soleil")
	smallField = says("The field is too small", "Do not launch there as it is").
			french("Le terrain est trop petit", "Ne lancez pas sur ce terrain")
	steeperPipe = says("Fix the pipe in a stand that cannot tip below", "check the angle before each launch").
			french("un support qui ne peut pas pencher", "vérifiez l'angle avant chaque lancement")
	softerStamp = says("Stamp with less", "from any stamp").french("Frappez moins fort")
	moreDrag    = says("A rocket with more drag", "Measure before you trust it").french("plus de traînée", "Mesurez avant de vous y fier")
	otherField  = says("No steeper pipe, weaker stamp or other rocket is enough", "a larger field, or a calmer day").french("aucune autre fusée ne suffit")
	tumbles     = says("This rocket tumbles", "larger fins or a longer body").french("Cette fusée culbute")
	tightTube   = says("rolled paper that has drawn damp jams on the pipe", "a rocket that jams can burst the bottle's joint").
			french("une fusée coincée peut faire éclater le joint")
	shortRun    = says("This bottle runs for 1 min 12 s only", "smaller hole").french("Prenez un trou plus petit")
	dropsBelow  = says("The last mark is only 20 mm above the hole", "the mark cannot be trusted").french("on ne peut pas se fier à la marque")
	misreadRun  = says("Measure the bottle, the hole and the time again").french("Mesurez de nouveau la bouteille")
	neverDark   = says("It does not get dark on this night", "less than 9° below the horizon")
	brightSky   = says("The sky is still bright at this time")
	noSunHours  = says("The Sun is not up in school hours on 21 December 2027", "choose another day")
	clockChange = says("The clocks change by", "on this day", "choose another day")
	noSunAtAll  = says("On 21 December 2027 the Sun does not come up here", "no shadow falls")
	noFullHour  = says("On 21 December 2027 the Sun is not up here at any full hour")
	overhead    = says("the Sun stands almost overhead at noon", "too short to show a direction", "Use equal shadows")
	unreadable  = says("A level dial is hard to build and to read here", "Choose another kind")
	shrinks     = says("This telescope shrinks", "The stronger lens is in front", "Swap them")
	equalLenses = says("Two lenses of", "do not magnify")
	weakPair    = says("too little to show more than the eye does")
	blurredPair = says("more than a single front lens of", "dark or has wide coloured rims")
	noPair      = says("No two lenses in the box make a telescope that is of use")
	disagree    = says("The two do not belong to one lens", "Measure again")
	noPupils    = says("No pupils are entered yet", "only what the class shares is counted")
	onlySun     = says("The strip ends before Mercury", "only the Sun fits")
	endsBefore  = says("The strip ends before", "and the strip has")
	fewSquares  = says("the inner planets crowd together", "Use a longer roll")
	beforeSpace = says("The space age began in 1957")
	crowded     = says("The field is small", "the inner planets stand on each other's feet")
	tooFewTubes = says("are needed, and the box holds", "Let groups share")
)
