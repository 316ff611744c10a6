package ingredient

import "strings"

// unitKind is the sort of thing a unit word measures.
type unitKind int

const (
	notUnit unitKind = iota
	weight
	volume
	length
	pack  // a container whose size varies: tin, packet
	piece // a part or a count: clove, slice, pinch
)

// unitWords are the words that measure, by sort; each entry is the singular, then other spellings.
var unitWords = map[unitKind]string{
	weight: `gram,grams,gramme,grammes,gms,gm,gr g,gs kilogram,kilograms,kilo,kilos kg,kgs milligram,milligrams mg ounce,ounces oz,ozs pound,pounds lb,lbs`,
	volume: `cup,cups,cupful,cupfuls,cupsful c tablespoon,tablespoons,tablespoonful,tablespoonfuls,tablesp tbsp,tbsps,tbs,tbl,tblsp,tblspn,tbls
		teaspoon,teaspoons,teaspoonful,teaspoonfuls,teapoon,teapoons tsp,tsps dessertspoon,dessertspoons,dessertspoonful dsp,dsps spoon,spoons,spoonful,spoonfuls
		pint,pints pt,pts quart,quarts qt,qts gallon,gallons gal gill,gills liter,liters litre,litres l,ltr
		milliliter,milliliters millilitre,millilitres ml,mls centilitre,centilitres cl decilitre,decilitres dl fl floz jigger,jiggers teacup,teacups,teacupful,teacupfuls breakfastcup,breakfastcups,breakfastcupful,breakfastcupfuls wineglass,wineglasses,wineglassful,wineglassfuls glass,glasses mug,mugs bowl,bowls`,
	length: `inch,inches centimeter,centimeters,centimetre,centimetres cm,cms mm`,
	pack: `can,cans tin,tins jar,jars packet,packets,pkt,pkts package,packages,pkg,pkgs pack,packs sachet,sachets bag,bags box,boxes tub,tubs carton,cartons
		bottle,bottles tube,tubes container,containers envelope,envelopes pouch,pouches punnet,punnets pot,pots basket,baskets tray,trays`,
	piece: `clove,cloves slice,slices piece,pieces sprig,sprigs bunch,bunches head,heads stalk,stalks stick,sticks rib,ribs pinch,pinches dash,dashes
		handful,handfuls knob,knobs rasher,rashers sheet,sheets strip,strips drop,drops splash,splashes drizzle,drizzles glug,glugs ear,ears bulb,bulbs block,blocks loaf,loaves
		pair,pairs leaf,leaves fillet,fillets cube,cubes bar,bars ball,balls scoop,scoops shake,shakes grinding,grindings grind,grinds twist,twists
		squeeze dollop,dollops nest,nests wedge,wedges round,rounds chunk,chunks square,squares bouquet,bouquets branch,branches rack,racks
		side,sides recipe,recipes batch,batches shot,shots part,parts pod,pods thumb,thumbs dozen sprinkle sprinkling pat,pats portion,portions serving,servings link,links
		stem,stems log,logs wheel,wheels crown,crowns cob,cobs cake,cakes fifth,fifths cutlet,cutlets
		spear,spears fistful,fistfuls sleeve,sleeves hand,hands`,
}

// inName are unit words that at the head of a line are more often part of the name
// ("8 leaves of arugula" is marked so, "2 fillets" names what is cooked).
var inName = words(`leaf fillet pod side crown rack round chunk link portion serving part cob hand`)

// bare are the units that open a line without a figure: "pinch of salt".
var bare = words(`pinch dash handful bunch sprig splash drop drizzle glug knob shake squeeze dollop grinding sprinkle sprinkling twist few cup tbsp tsp tablespoon teaspoon`)

// after are the units that follow the thing they count: "2 garlic cloves".
var after = words(`clove bulb sprig stick stalk rib wedge`)

// sizes stand where a unit stands and count as one in the marked sets.
var sizes = words(`large medium small medium-size medium-sized large-size large-sized small-size small-sized extra-large extra-small jumbo big tiny
	medium-large medium-to-large small-to-medium lrg lge heaping heaped level scant generous rounded thin thick good-size good-sized fat long lg med sm xl`)

// spoonSizes count only before a unit: "1 heaping teaspoon", "12 thin slices".
var spoonSizes = words(`heaping heaped level scant generous rounded thin thick fat long big tiny`)

// approximate words say that a figure is rough.
var approximate = words(`~ ≈ c. about approximately approx around roughly nearly almost circa ca generous scant`)

// abbreviations keep their full stop.
var abbreviations = words(`approx st mt dr e.g i.e e i ex no med lg sm etc vs ca`)

// adverbs belong to the preparation that follows them.
var adverbs = words(`finely coarsely freshly thinly roughly very well lightly thickly gently slightly loosely firmly tightly partly partially
	newly crosswise lengthwise lengthways diagonally fairly fully just thoroughly evenly extra-finely medium-finely neatly cleanly carefully not quite`)

// done are words for what is done to the food before it is used.
var done = words(`chopped minced diced sliced grated peeled cooked toasted crushed mixed melted seeded deseeded slivered drained shredded cubed halved
	quartered crumbled torn squeezed pitted stoned blanched trimmed chilled packed tight-packed sifted husked shucked softened beaten mashed pureed puréed
	rinsed washed scrubbed cored deveined shelled hulled stemmed julienned snipped strained warmed heated cooled defrosted thawed soaked boned skinned
	scalded poached boiled hard-boiled hard-cooked soft-boiled uncooked parboiled steamed-and-peeled zested pounded ground-up split picked cut cut-up broken
	dissolved packaged tepid warm lukewarm cleaned flaked rolled-out scraped shaved sieved clarified rendered reserved pared unpeeled cracked squeezed-out
	shaven slit bruised smashed juiced torn-up crumpled slashed grilled-and-sliced pressed deribbed separated sectioned segmented scaled gutted filleted butterflied browned sauteed sautéed
	scored hand-torn leftover-cooked crumbed lukewarm cold hot-melted spiralized wilted whisked popped riced thin-sliced thinly-sliced
	fine-chopped coarse-chopped unsifted refrigerated marinated simmering boiling ice-cold iced heaped-up discarded removed dusted stripped tied`)

// kindly are words of doing that in the name of a product stay in the name: "boiling potatoes".
var product = map[string]string{
	"boiling": "potato potatoes onion onions", "cold": "cuts", "mixed": "candied greens herbs salad spice peel nuts berries fruit vegetables dried root baby leaves vegetable",
	"whipped": "cream topping", "cracked": "wheat bulgur", "crushed": "tomatoes", "sliced": "bread", "cut": "pasta", "clarified": "butter",
	"packed": "", "split": "peas lentils pea", "shelled": "", "mashed": "potato", "pressed": "caviar", "stewed": "tomatoes", "rolled": "oats", "marinated": "artichoke artichokes",
	"warm": "", "hard": "cider", "soft": "cheese", "broken": "", "soaked": "", "boiled": "ham",
}

// state words describe how the food is bought; joined by "or" before the name they are a comment:
// "fresh or frozen raspberries".
var state = words(`fresh frozen canned dried homemade home-made low-sodium unsalted salted heavy light roasted smoked store-bought commercial bottled medium large small
	sweet hot dry tinned whole skim jarred raw cooked good strong prepared low-fat plain best`)

// aside are words before the name that say something else than its kind: "good red wine".
var aside = words(`good homemade home-made commercial additional leftover top-quality good-quality high-quality best-quality best imported thick ready-cut extra several
	store-bought excellent quality favorite favourite desired your some optional freshly-made more loosely firmly tightly the any each a an another approximately about
	plump nice store-made domestic`)

// opens begin a comment that runs to the end of its segment.
var opens = words(`for plus if like preferably with from optional see more as such about approximately depending or to enough available preferred note without including
	use using until sufficient garnish additional adjust according eg e.g ie i.e which when but not each total rather instead + & - : / *`)

// attributes are words that can only stand before a name, so a comma after one does not end it:
// "firm, unblemished watercress".
var attributes = words(`firm red green yellow orange white black ripe skinless boneless fresh young tender sweet hot large small medium plain lean thick thin dry mild
	dark light smoked salted unsalted raw whole crisp soft bone-in skin-on center-cut extra-virgin unbleached unblemished seedless cold-pressed organic frozen canned dried
	day-old low-fat low-sodium unsweetened sweetened meaty freshly crusty pink brown purple heavy good`)

// parts are what is taken from the thing counted: "juice of 1 lemon".
var parts = words(`juice zest rind peel seeds leaves meat flesh pulp kernels yolks yolk white whites grated finely freshly squeezed strained pared julienned strips
	and the stems tops skin of from chopped fresh leaf thinly julienne slivered petals seed pieces`)

func words(s string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(s) {
		out[w] = true
	}
	return out
}

// spelling is every unit word with its sort and its singular.
var spelling = func() map[string]struct {
	kind     unitKind
	singular string
} {
	out := map[string]struct {
		kind     unitKind
		singular string
	}{}
	for k, list := range unitWords {
		for _, group := range strings.Fields(list) {
			forms := strings.Split(group, ",")
			for _, f := range forms {
				s := forms[0]
				if f != s && f != s+"s" && f != s+"es" && s != "leaf" && s != "loaf" && s != "g" {
					s = singularForm(f, forms)
				}
				out[f] = struct {
					kind     unitKind
					singular string
				}{k, s}
			}
		}
	}
	return out
}()

// singularForm keeps another spelling as it is written, less its plural s: "kilos" is "kilo".
func singularForm(f string, forms []string) string {
	for _, other := range forms {
		if f == other+"s" || f == other+"es" {
			return other
		}
	}
	return f
}

func isUnit(w string) unitKind {
	w = strings.TrimSuffix(w, ".")
	if s, ok := spelling[w]; ok {
		return s.kind
	}
	return spelling[meant(w)].kind
}

// singular gives the singular of a unit word, and any other word as it is.
func singular(w string) string {
	w = strings.TrimSuffix(w, ".")
	if s, ok := spelling[w]; ok {
		return s.singular
	}
	if m := meant(w); m != "" {
		return spelling[m].singular
	}
	return w
}

// meant gives the long unit word that a misspelling stands for, one letter wrong, missing, added or
// two changed about: "teapsoon". Short words are left alone: too many are near another.
func meant(w string) string {
	if len(w) < 7 || len(w) > 12 {
		return ""
	}
	for _, u := range []string{"teaspoon", "teaspoons", "tablespoon", "tablespoons", "kilogram", "kilograms", "millilitre", "millilitres", "package", "packages"} {
		if oneOff(w, u) {
			return u
		}
	}
	return ""
}

func oneOff(a, b string) bool {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	x, y := a[i:], b[i:]
	switch {
	case i == 0:
		return false
	case len(x) == len(y) && len(x) > 0:
		return x[1:] == y[1:] || len(x) > 1 && x[0] == y[1] && x[1] == y[0] && x[2:] == y[2:]
	case len(x) == len(y)+1:
		return x[1:] == y
	case len(x)+1 == len(y):
		return x == y[1:]
	}
	return false
}
