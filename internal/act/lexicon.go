package act

import (
	"slices"
	"strings"
)

// verb is a verb of the kitchen and the kind of act it is when nothing around it says otherwise.
type verb struct {
	name string // plain form
	kind Kind
	noun nounness
}

// nounness says how often a verb's plain form is a noun or an adjective.
type nounness int

const (
	never  nounness = iota // a verb
	often                  // as often a noun: "whisk", "roast", "mix"
	mostly                 // a noun unless the words around it show the verb: "butter", "cream"
)

var verbGroups = []struct {
	kind  Kind
	noun  nounness
	words string
}{
	{Cut, never, "chop slice dice cube peel grate shred trim deseed destone halve flake split julienne fillet debone carve crush bash smash snap shave squeeze snip segment crumble tear dissect butterfly baton spiralise hull shuck descale devein destalk"},
	{Cut, often, "cut skin bone joint"},
	{Cut, mostly, "mince core zest juice quarter score stone shell"},
	{Mix, never, "combine knead stir sift sieve puree fold beat rub add make incorporate mash process blitz bind crack separate pour emulsify dissolve knockback knock whizz"},
	{Mix, often, "mix whisk blend whip break pulse"},
	{Mix, mostly, "cream"},
	{Shape, never, "pleat knot crimp flatten stamp twist divide dimple share"},
	{Shape, often, "roll shape form mould stretch seal portion press"},
	{Shape, mostly, "pipe plait pinch"},
	{Ready, never, "grease"},
	{Ready, mostly, "line flour butter oil"},
	{Fill, never, "dollop slather smear assemble build fill enrobe pane thread wrap arrange"},
	{Fill, mostly, "batter"},
	{Fill, often, "coat stuff layer spread dip sandwich skewer spoon stack breadcrumb transfer"},
	{Decorate, never, "decorate drizzle garnish sprinkle scatter frost"},
	{Decorate, often, "glaze brush finish top"},
	{Decorate, mostly, "ice dust a-eggwash"},
	{Hob, never, "wilt flambe saute simmer boil melt temper poach blanch braise parboil sweat caramelise caramelize scald deglaze soften reduce thicken stirfry deepfry"},
	{Hob, often, "bubble fry brown steam sear griddle stew char"},
	{PutIn, often, "bake roast"},
	{Grill, often, "grill toast"},
	{Microwave, often, "microwave"},
	{Microwave, never, "zap nuke"},
	{Chill, often, "chill"},
	{Chill, never, "refrigerate"},
	{Freeze, never, "freeze"},
	{Prove, never, "prove proof rise ferment"},
	{Rest, often, "rest stand relax"},
	{Cool, often, "cool"},
	{Marinate, never, "marinate marinade marinad"},
	{Soak, never, "soak bloom steep infuse macerate rehydrate"},
	{Reheat, never, "reheat"},
	{KeepHot, never, "keephot"},
	{Serve, often, "serve present"},
	{Serve, never, "eat enjoy"},
	{Plate, never, "plateup readytoserve"},
	{Fill, never, "ladle"},
	{Plate, mostly, "plate dish"},
	{SetUp, never, "gather collect weigh measure organise organize setup hairup laytable fetch"},
	{WashUp, never, "washup tidy"},
	{CleanDown, never, "cleandown sanitise sanitize disinfect wipe antibac"},
	{FinalClean, never, "sweep mop"},
	{WashHands, never, "handwash"},
	{Probe, often, "probe"},
	{Test, never, "check look see inspect observe monitor watch"},
	{Test, often, "test"},
	{Taste, never, "taste"},
	{Taste, mostly, "season salt"},
	{Timer, often, "timer"},
	{Idle, never, "wait linger"},
	{HeatOven, never, "preheat"},
	{Other, never, "open close cover defrost thaw drain strain skim prick pierce dock flip repeat push toss refresh scoop baste shake empty level loosen unmould unmold dismantle document photograph evaluate crispen put place pop move take get bring lift remove takeout remove takeoff getout putin puton turn turndown turnup turnoff turnon turnout switch light leave let allow keep prepare prep wash rinse scrub clean go start begin continue carry store return getready setaside do cook use lower raise insert bung plonk whack stick chuck throw shove slide lay clear ensure ask hand decant discard tie wear swap change increase decrease remember stay follow"},
	{Other, often, "set drop work help dress photo label heat warm dry poke crisp"},
}

// lexicon is the verbs by the stem of their forms.
var lexicon = func() map[string]verb {
	m := map[string]verb{}
	for _, g := range verbGroups {
		for _, w := range strings.Fields(g.words) {
			for _, key := range []string{w, stem(w), stem(strings.TrimSuffix(w, "e") + "ing")} {
				if _, ok := m[key]; !ok {
					m[key] = verb{w, g.kind, g.noun}
				}
			}
		}
	}
	return m
}()

// Raw-risk and ready-to-eat foods, and what makes one the other. UK food-safety
// teaching; the words are common practice, no source.
var (
	meat = words(`chicken turkey duck beef pork lamb mince gammon venison liver steak breast thigh drumstick wing sausage sausages burger burgers bacon kebab kofta koftas meatball meatballs goujon goujons
		sausagemeat ribs loin brisket skirt escalope kiev kievs skewers meat poultry rabbit chorizo lardons pancetta`)
	fish        = words(`fish cod haddock salmon trout mackerel tuna pollock seabass bass plaice sole hake prawn prawns shrimp squid mussels mussel crab scallops shellfish seafood fishcake fishcakes`)
	egg         = words(`egg yolk eggs yolks whites a-eggwash`)
	readyToEat  = words(`salad leaves lettuce rocket cress herbs herb parsley basil mint coriander chives cucumber tomato tomatoes fruit strawberry strawberries raspberry raspberries blueberries berries kiwi mango grapes orange oranges apple banana pineapple melon cream a-cream cheese a-creamcheese mozzarella parmesan cheddar feta mascarpone ham bread baguette dressing a-dressing icing a-icing a-buttercream ganache coleslaw slaw salsa guacamole hummus houmous garnish yogurt yoghurt a-icecream decoration avocado pesto a-sourcream mayonnaise prosciutto salami`)
	cookedWords = exactly(`cooked roasted smoked poached boiled fried grilled baked scrambled tinned canned leftover cold`)
	highRisk    = words(`chicken turkey duck beef pork lamb mince gammon venison liver sausage sausages burger burgers kebab kofta koftas meatball meatballs goujon goujons kiev kievs meat poultry rabbit
		fish cod haddock salmon trout mackerel tuna pollock seabass plaice hake prawn prawns shrimp squid mussels crab scallops seafood fishcake fishcakes rice egg eggs stuffing lasagne ragu bolognese casserole pasties kievs `)
)

// Things of the kitchen that decide what a verb means.
var (
	handWords   = words(`hands hand handwash`)
	potWords    = words(`dishes pots pans utensils equipment crockery cutlery everything washing bowls tins trays plates things stuff whisk mixer blender processor blades saucepan saucepans tools jug items kit`)
	boardWords  = words(`board boards knife knives surface surfaces worktop worktops bench benches workstation station area side sides table tables counter worksurface worksurfaces workspace workbench section unit units space`)
	finalWords  = words(`sink floor drawers cupboards hob cooker kitchen room final bin bins`)
	tinWords    = words(`tin tins tray trays mould moulds ramekin ramekins dish dishes moulds tins sheet a-dish a-tray a-tin paper a-paper cases a-cases bottom case base pan ring rings surface worktop board`)
	cakeTins    = words(`tin tins tray trays mould moulds ramekin ramekins dish dishes sheet a-dish a-tray a-tin a-paper a-cases cases`)
	pastryWords = words(`pastry shortcrust dough filo puff pasta`)
	kitNouns    = words(`tray trays tin tins bowl bowls board boards dish dishes pin bag bags rack racks pan pans jug jugs powder paper parchment beans sheet cloth plate plates knife machine sugar spoon scales soda up liquid equipment apple apples oil water fat stone tools thermometer book books time times class room area bags nozzle
		process method temperature temperatures point instructions skills stage ring cutter cutters brush glove gloves a-paper a-gloves a-dish salt`)
	setupThings = words(`ingredients ingredient equipment utensils bowls apron aprons hair jewellery everything tools kit station area workstation space scales recipe recipes hygiene uniform`)
	produce     = words(`vegetables veg fruit fruits salad lettuce potatoes potato carrots mushrooms spinach rice herbs leaves berries strawberries raspberries grapes tomatoes apples peppers lentils noodles pulses beans cucumber leeks celery produce leek`)
	waterWords  = words(`water kettle a-water`)
	coldPlaces  = words(`fridge refrigerator chiller `)
)

// everyday are common English words that are never taken for misspelt words of the kitchen.
var everyday = words(`about above across after again against all almost along already also always another any are around ask away back because become been before begin behind being below best better between big bit both bottom bring but call can careful carefully
	change check close clear come complete completely could cover day different does down during each early easy either else end enough even every everyone everything extra far few final finally find first five four fresh from front full further gently get give good great group half hand hard have heavy help here high hold hour
	how if important inside instead into just keep kind know large last late later least leave left less let level light like little long look lots low lower made main make many may maybe mean might minute minutes more most move much must name near need never new next nice night none not nothing now off often once one only open order other our out over own
	part people place plan point possible practice practical present probably process put quick quickly quite ready really rest right room round same second see seem sense separate set seven several shape share short should show side simple since single six size slow slowly small smooth soft some something soon sort spare stage stand start state stay step still stop strong
	such sure take task taste teacher team ten than that the their them then there these they thing think third this those three through time times to together too top total towards tried turn twice two under until up upon use used using usual very wait want was watch way well were what when where which while white whole why will with within without work would write wrong year yes yet you your
	yourself teacher lesson class finish finished started start starting second safety hygiene health quality control point points risk critical contamination cross bacteria danger avoid prevent ensure make sure safe thirty twenty forty fifty fifteen minute middle evenly equal equally thin thick thinly thickly rough roughly fine finely remaining remain approx approximately meanwhile whilst repeat straight immediately
	allow allowing allows burn burns burning brown black green blue yellow purple orange colour colours coloured texture flavour flavours appearance presentation lovely picture photo photos evaluate evaluation apron aprons jewellery sleeves lesson pupils student students candidate spring string spice spices spicy stick sticky sticks strip strips stripe stain strain store stock stove later layer paste paper pepper peppers piece pieces matter bitter batter batch butter
	plates places planes splash touch touching rather father mother other weather leather whether feather sharp sharper crust crusts carne pulled pulls peeler peelers pinch frosty slicer finest biggest sliced diced waste waist taste tested paste pasty party parts steam steak stead store score shore share shape shave shake shade brake break brush crush crash trash trays tried fried dried tries fries cries stretchy springy crispy creamy sticky crunchy chewy crusty lumpy crumb crumbs bain marie frame flame blame blend bland brand bread break bring being beans means jeans lean
	measure treasure pressure heavily heaped level spoonful tablespoon tablespoons teaspoon teaspoons grams gram litre litres millilitres centimetres pinch handful portion portions serving servings`)

// kitchenWords are further words of the kitchen, for spelling alone.
const kitchenWords = `allergen allergens allergy allergies apron aprons cake cakes sponge pudding dessert starter main muffins scones biscuits cookies brownies meringue pavlova cheesecake mousse custard jelly trifle crumble tart tartlet flan quiche pie pasty pasties lasagne spaghetti tagliatelle ravioli gnocchi noodles risotto paella curry korma tikka masala naan chapati pakora samosa bhaji raita
	chilli tortilla fajitas burrito enchiladas nachos pizza calzone focaccia baguette brioche ciabatta challah dough batter pancakes waffles crepes yorkshire toad croissant danish eclairs profiteroles choux shortcrust filo rough puff vanilla chocolate cocoa ganache caramel toffee honey syrup treacle lemon lime orange apple apples pear cherry cherries peach plum rhubarb banana
	raspberry raspberries strawberry strawberries blueberry blueberries blackberry currants sultanas raisins almonds walnuts pecans hazelnuts pistachio coconut peanut nutmeg cinnamon ginger garlic onion onions shallot leek carrot carrots potato potatoes parsnip swede turnip celery celeriac beetroot cabbage broccoli cauliflower courgette courgettes aubergine pepper peppers mushroom mushrooms
	spinach lettuce cucumber tomato tomatoes avocado sweetcorn asparagus squash pumpkin beans chickpeas lentils peas parsley basil coriander thyme rosemary oregano chives turmeric paprika cumin cardamom cloves saffron mustard vinegar mayonnaise ketchup pesto houmous salsa guacamole dressing marinade stock gravy sauce roux bechamel veloute hollandaise bolognese ragu soup
	broth chowder stew casserole hotpot tagine burger burgers sausage sausages meatballs kofta kebab skewers bacon gammon chicken turkey lamb mince steak pork beef salmon haddock prawns mackerel cheddar mozzarella parmesan mascarpone ricotta halloumi yoghurt yogurt cream butter margarine sugar caster icing flour yeast gelatine agar breadcrumbs couscous bulgur quinoa polenta semolina
	saucepan frying grater whisk spatula sieve colander rolling ramekin ramekins parchment greaseproof clingfilm thermometer probe temperature degrees preheat oven fridge freezer microwave grill hob processor blender mixer scales measuring ingredients equipment utensils surface surfaces serving plating garnish decorate presentation washing drying vegetables thoroughly kitchen dishes towel
	mixture filling topping base buttercream frosting meringues florentines shortbread gingerbread flapjack roulade swiss roll bavarois panna cotta creme brulee caramelised tatin souffle souffles dauphinoise duchess croquettes fishcakes goujons wellington stroganoff moussaka cannelloni carbonara arrabbiata primavera bruschetta crostini tapenade coulis compote chutney relish coleslaw`

// vocabulary is every word of the kitchen and its stem.
var vocabulary = func() set {
	v := words(kitchenWords)
	for _, g := range verbGroups {
		for w := range words(g.words) {
			v[w] = true
		}
	}
	for _, s := range []set{meat, fish, egg, readyToEat, cookedWords, highRisk, handWords, potWords, boardWords, finalWords, tinWords, pastryWords, kitNouns, setupThings, produce, coldPlaces} {
		for w := range s {
			v[w] = true
		}
	}
	return v
}()

// longWords are the words of the kitchen that a misspelt word may be, sorted:
// plain forms, and the forms in -ing and -ed of its verbs; by the first letter
// of the misspelt word, which is the first or the second of theirs.
var longWords = func() (byFirst [256][]string) {
	var list []string
	all := set{}
	for w := range vocabulary {
		all[w] = true
	}
	for _, g := range verbGroups {
		for _, w := range strings.Fields(g.words) {
			all[inflect(w, "ing")], all[inflect(w, "ed")] = true, true
		}
	}
	for w := range all {
		if len(w) >= 4 && !strings.Contains(w, "-") && stem(w) != w || vocabulary[w] && kitchenHas(w) {
			list = append(list, w)
		}
	}
	for _, w := range strings.Fields(foodLists[0] + foodLists[1]) {
		if len(w) >= 6 && lexicon[w].name == "" {
			list = append(list, w)
		}
	}
	slices.Sort(list)
	for _, w := range slices.Compact(list) {
		byFirst[w[0]] = append(byFirst[w[0]], w)
		if w[1] != w[0] {
			byFirst[w[1]] = append(byFirst[w[1]], w)
		}
	}
	return byFirst
}()

func kitchenHas(w string) bool {
	if lexicon[w].name == w && len(w) >= 4 {
		return true
	}
	return len(w) >= 4 && slices.Contains(strings.Fields(kitchenWords), w)
}

// inflect gives a verb's form in -ing or -ed.
func inflect(w, ending string) string {
	n := len(w)
	switch {
	case n < 3:
		return w + ending
	case ending == "ed" && w[n-1] == 'y' && !strings.ContainsRune("aeiou", rune(w[n-2])):
		return w[:n-1] + "ied"
	case w[n-1] == 'e':
		return w[:n-1] + ending
	case doubles(w):
		return w + w[n-1:] + ending
	}
	return w + ending
}

// doubles says whether a verb of one short vowel doubles its last letter: chop, whip, stir.
func doubles(w string) bool {
	n := len(w)
	vowel := func(i int) bool { return strings.ContainsRune("aeiou", rune(w[i])) }
	if vowel(n-1) || strings.ContainsRune("wxy", rune(w[n-1])) || !vowel(n-2) || n > 2 && vowel(n-3) {
		return false
	}
	count := 0
	for i := range n {
		if vowel(i) {
			count++
		}
	}
	return count == 1
}
